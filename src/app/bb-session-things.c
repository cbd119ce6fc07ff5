/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-session-things.h"

#include <glib/gi18n-lib.h>

#include "bb-recall.h"
#include "bb-tag.h"

/* The key of what a record is a part of; 0 where the record can't be read, which is said. */
static gint64
find_owner (BbSession     *self,
            const BbTable *table,
            gint64         id)
{
  const BbField *owner = bb_table_find_owner (table);
  g_autoptr (GError) error = NULL;
  gpointer record = bb_book_load (bb_session_get_book (self), table, id, &error);
  gint64 key = 0;

  if (record == NULL)
    {
      bb_session_report (self, error);
      return 0;
    }
  key = bb_field_get_integer (owner, record);
  bb_record_free (table, record);

  return key;
}

/**
 * bb_session_show_thing:
 * @self: a session
 * @table: the table of what a label can name: jobs, their lines and runs, recipes and revisions, specimens, containers
 * @id: its key
 *
 * Shows that very thing on the page where it stands.
 */
void
bb_session_show_thing (BbSession     *self,
                       const BbTable *table,
                       gint64         id)
{
  g_return_if_fail (BB_IS_SESSION (self) && table != NULL && id != 0);

  if (table == &bb_run_table)
    {
      id = find_owner (self, table, id);
      table = &bb_job_line_table;
    }
  if (table == &bb_job_line_table && id != 0)
    {
      id = find_owner (self, table, id);
      table = &bb_job_table;
    }
  if (id == 0)
    return;

  if (table == &bb_job_table)
    bb_session_show (self, "jobs", id);
  else if (table == &bb_recipe_table)
    bb_session_show (self, "recipes", id);
  else if (table == &bb_wash_test_table)
    bb_session_show (self, "wash", id);
  else if (table == &bb_revision_table)
    bb_session_show_for (self, "recipes", table, id);
  else if (table == &bb_lot_table)
    bb_session_show_for (self, "supplies", table, id);
}

/**
 * bb_session_open_label:
 * @self: a session
 * @text: what a scanner typed, or a person
 *
 * Shows the thing that a label names, or that has @text as its whole code.
 *
 * Returns: %FALSE if @text names nothing, and may be words to search for; %TRUE too where it is a label of something
 *   that is not in this book, which is said
 */
gboolean
bb_session_open_label (BbSession  *self,
                       const char *text)
{
  const BbRecall recall = { .text = text, .limit = 1 };
  g_autoptr (BbRecalled) recalled = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *code = NULL;
  BbTagKind kind = BB_TAG_JOB;

  g_return_val_if_fail (BB_IS_SESSION (self) && text != NULL, FALSE);

  recalled = bb_book_recall (bb_session_get_book (self), &recall, &error);
  if (recalled == NULL)
    bb_session_report (self, error);
  else if (recalled->table != NULL)
    bb_session_show_thing (self, recalled->table, recalled->id);
  else if (bb_tag_parse (text, &kind, &code))
    {
      g_autofree char *message = g_strdup_printf (_("Nothing in this book has the label “%s”."), text);

      bb_session_say (self, message);
    }
  else
    return FALSE;

  return TRUE;
}
