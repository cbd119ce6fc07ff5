/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-session-proof.h"

#include <glib/gi18n-lib.h>

typedef struct {
  gint64 id;
  gboolean overrule;
  char *reason;
} Deed;

static void
deed_free (gpointer data)
{
  Deed *self = data;

  g_free (self->reason);
  g_free (self);
}

static gboolean
write_on_trial (BbBook   *book,
                gpointer  data,
                GError  **error)
{
  const Deed *self = data;

  return bb_book_set_state (book, self->id, BB_STATE_ON_TRIAL, NULL, error);
}

static gboolean
write_signature (BbBook   *book,
                 gpointer  data,
                 GError  **error)
{
  const Deed *self = data;

  return bb_book_sign (book, self->id, self->overrule, self->reason, error);
}

static gboolean
write_seen (BbBook   *book,
            gpointer  data,
            GError  **error)
{
  const Deed *self = data;

  return bb_book_see_notice (book, self->id, error);
}

/**
 * bb_session_put_on_trial:
 * @self: a session
 * @revision: key of a draft
 *
 * From now on specimens are printed and washed by it. A refusal is told to the person.
 */
void
bb_session_put_on_trial (BbSession *self,
                         gint64     revision)
{
  Deed *deed = NULL;

  g_return_if_fail (BB_IS_SESSION (self));

  deed = g_new0 (Deed, 1);
  deed->id = revision;
  bb_session_write (self, write_on_trial, deed, deed_free);
}

/**
 * bb_session_sign_async:
 * @self: a session
 * @revision: key of a revision on trial
 * @overrule: whether it shall be proven although the shop's rule is not met
 * @reason: (nullable): on what grounds
 * @callback: called when that is written; it ends by bb_session_write_finish()
 * @data: for @callback
 *
 * Signs a revision as proven, in the name of the person at the bench.
 */
void
bb_session_sign_async (BbSession           *self,
                       gint64               revision,
                       gboolean             overrule,
                       const char          *reason,
                       GAsyncReadyCallback  callback,
                       gpointer             data)
{
  Deed *deed = NULL;

  g_return_if_fail (BB_IS_SESSION (self));

  deed = g_new0 (Deed, 1);
  deed->id = revision;
  deed->overrule = overrule;
  deed->reason = g_strdup (reason);
  bb_session_write_async (self, write_signature, deed, deed_free, callback, data);
}

/**
 * bb_session_see_notice:
 * @self: a session
 * @notice: key of a notice
 *
 * Records that the person at the bench took note of the news. Where nobody said who that is, this is asked for.
 */
void
bb_session_see_notice (BbSession *self,
                       gint64     notice)
{
  Deed *deed = NULL;

  g_return_if_fail (BB_IS_SESSION (self));

  if (bb_session_get_person (self) == 0)
    {
      bb_session_say (self, _("Say first who is at the bench."));
      return;
    }
  deed = g_new0 (Deed, 1);
  deed->id = notice;
  bb_session_write (self, write_seen, deed, deed_free);
}
