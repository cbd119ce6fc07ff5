/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-form"

#include "bb-form-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-problem.h"

/* The row that edits what a path leads to, which may be one in a line of a list. */
static BbFieldRow *
find_row_at (BbForm     *self,
             const char *path)
{
  const gsize n = strcspn (path, ".[");
  g_autofree char *name = g_strndup (path, n);
  const BbField *field = bb_table_find_field (bb_form_get_table (self), name);
  BbFieldRow *row = field != NULL ? bb_form_find_row (self, field) : NULL;

  return row != NULL ? bb_field_row_find_nested (row, path + n) : NULL;
}

/**
 * bb_form_show_fault:
 * @self: a form
 * @message: what is wrong; a rule between fields and a refusal of the book name the field they speak of before a colon
 * @even_if_untouched: whether to speak of what the person has not come to yet
 *
 * Says what is wrong at the field itself.
 *
 * Returns: %FALSE if the message speaks of no field that the form asks for, and has to be said elsewhere
 */
gboolean
bb_form_show_fault (BbForm     *self,
                    const char *message,
                    gboolean    even_if_untouched)
{
  g_autofree char *path = NULL;
  const char *text = NULL;
  BbFieldRow *row = NULL;

  g_return_val_if_fail (BB_IS_FORM (self) && message != NULL, FALSE);

  text = bb_fault_split (message, &path);
  row = path != NULL ? find_row_at (self, path) : NULL;
  if (row == NULL)
    return FALSE;
  if (even_if_untouched || bb_field_row_is_touched (row))
    {
      g_autofree char *sentence = bb_text_to_sentence (text);

      bb_field_row_set_message (row, sentence);
    }

  return TRUE;
}

/* Nobody is told that a form is not filled in before they come to it. */
static void
complain (BbFieldRow *row,
          const char *message,
          gboolean    even_if_untouched)
{
  if (even_if_untouched || bb_field_row_is_touched (row))
    bb_field_row_set_message (row, message);
}

/* What stands in the book without it was brought in without it: nobody has to make it up. */
static gboolean
is_wanting (BbForm        *self,
            const BbField *field,
            gconstpointer  record)
{
  const BbField *id = bb_table_find_field (self->table, "id");
  const gboolean is_stored = id != NULL && bb_field_is_set (id, self->base);

  return bb_field_is_wanting (field, record) && !(is_stored && bb_field_is_wanting (field, self->base));
}

static char *
judge (BbForm     *self,
       BbFieldRow *row,
       gpointer    record)
{
  const BbField *field = bb_field_row_get_field (row);
  char *message = NULL;
  BbProblem problem;

  if (!bb_field_row_store (row, record, &message))
    return message;
  if (bb_field_find_problem (field, record, &problem))
    return bb_problem_to_text (&problem, bb_session_get_units (self->session));

  return is_wanting (self, field, record) ? bb_text_to_sentence (_(field->wanted)) : NULL;
}

/* What the rows hold, each judged alone. */
static gboolean
gather (BbForm   *self,
        gpointer  record,
        gboolean  even_if_untouched)
{
  gboolean valid = TRUE;

  for (guint i = 0; i < self->rows->len; i++)
    {
      BbFieldRow *row = self->rows->pdata[i];
      g_autofree char *message = judge (self, row, record);

      bb_field_row_set_message (row, NULL);
      /* Rows within the row say it themselves. */
      if (!bb_field_row_judge_nested (row, even_if_untouched))
        valid = FALSE;
      else if (message != NULL)
        {
          complain (row, message, even_if_untouched);
          valid = FALSE;
        }
    }

  return valid;
}

/**
 * bb_form_dup_record:
 * @self: a form
 * @complain_about_all: whether to mark everything that is wrong, not only what the person has touched
 *
 * Returns: (transfer full) (nullable): the record as it is typed, or %NULL if something is wrong with it; the rows
 *   say what
 */
gpointer
bb_form_dup_record (BbForm   *self,
                    gboolean  complain_about_all)
{
  gpointer record = NULL;
  g_autoptr (GError) error = NULL;

  g_return_val_if_fail (BB_IS_FORM (self), NULL);

  record = bb_record_copy (self->table, self->base);
  if (!gather (self, record, complain_about_all))
    {
      bb_record_free (self->table, record);
      return NULL;
    }
  if ((self->table->check != NULL && !self->table->check (record, &error)) ||
      (self->table->check_written != NULL && !self->table->check_written (record, &error)))
    {
      if (!bb_form_show_fault (self, error->message, complain_about_all) && complain_about_all)
        {
          g_autofree char *text = bb_fault_to_text (self->table, error->message);

          bb_session_say (self->session, text);
        }
      bb_record_free (self->table, record);
      return NULL;
    }

  return record;
}

/**
 * bb_form_focus_fault:
 * @self: a form
 *
 * Puts the keyboard where the first thing is marked as wrong.
 *
 * Returns: %FALSE if nothing is
 */
gboolean
bb_form_focus_fault (BbForm *self)
{
  g_return_val_if_fail (BB_IS_FORM (self), FALSE);

  for (guint i = 0; i < self->rows->len; i++)
    {
      BbFieldRow *faulty = bb_field_row_find_faulty (self->rows->pdata[i]);

      if (faulty != NULL)
        return bb_field_row_focus (faulty);
    }

  return FALSE;
}
