/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-session.h"

/**
 * bb_session_show:
 * @self: a session
 * @page: a page's name
 * @id: key of the record to show there, or 0
 */
void
bb_session_show (BbSession  *self,
                 const char *page,
                 gint64      id)
{
  g_return_if_fail (BB_IS_SESSION (self) && page != NULL);

  g_signal_emit_by_name (self, "show", page, id);
}

/**
 * bb_session_show_for:
 * @self: a session
 * @page: a page's name
 * @table: the table of a record of another page
 * @id: its key
 *
 * Shows what a page has for a record: the page of recipes, for a garment, those nearest to it.
 */
void
bb_session_show_for (BbSession     *self,
                     const char    *page,
                     const BbTable *table,
                     gint64         id)
{
  g_return_if_fail (BB_IS_SESSION (self) && page != NULL && table != NULL);

  g_signal_emit_by_name (self, "show-for", page, table, id);
}

/**
 * bb_session_say:
 * @self: a session
 * @text: one translated line
 *
 * Tells the person something that asks for no answer.
 */
void
bb_session_say (BbSession  *self,
                const char *text)
{
  g_return_if_fail (BB_IS_SESSION (self) && text != NULL);

  g_signal_emit_by_name (self, "say", text);
}

/**
 * bb_session_report:
 * @self: a session
 * @error: what went wrong
 */
void
bb_session_report (BbSession    *self,
                   const GError *error)
{
  g_return_if_fail (BB_IS_SESSION (self) && error != NULL);

  if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    bb_session_say (self, error->message);
}
