/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-book-jobs.h"
#include "bb-moment.h"
#include "bb-session-private.h"

/* Set on a session while forms can't be kept, which the person has been told. */
#define UNKEPT "blankbook-forms-unkept"

typedef struct {
  char *key;
  char *state;
} KeptForm;

static void
kept_form_free (gpointer data)
{
  KeptForm *self = data;

  g_free (self->key);
  g_free (self->state);
  g_free (self);
}

static gboolean
write_form (BbBook   *book,
            gpointer  data,
            GError  **error)
{
  const KeptForm *self = data;

  if (self->state == NULL)
    return bb_book_drop_form (book, self->key, error);

  return bb_book_keep_form (book, self->key, self->state, error);
}

/* Each letter that is typed is kept: that it can't be is told once, until it can again. */
static void
form_kept_cb (GObject      *source,
              GAsyncResult *result,
              gpointer      data)
{
  g_autoptr (BbSession) self = data;
  g_autoptr (GError) error = NULL;

  gboolean is_kept = bb_book_thread_run_finish (BB_BOOK_THREAD (source), result, &error);
  gboolean was_unkept = g_object_get_data (G_OBJECT (self), UNKEPT) != NULL;

  if (!is_kept && !was_unkept)
    bb_session_report (self, error);
  g_object_set_data (G_OBJECT (self), UNKEPT, GINT_TO_POINTER (!is_kept));
}

/**
 * bb_session_keep_form:
 * @self: a session
 * @key: which form
 * @state: (nullable): what is typed in it, or %NULL once it is saved or given up
 *
 * Keeps a half-typed form in the book, so that it survives the window. Nobody is told that the book changed; that
 * it can't be kept is told once, until it can again.
 */
void
bb_session_keep_form (BbSession  *self,
                      const char *key,
                      const char *state)
{
  KeptForm *form = NULL;

  g_return_if_fail (BB_IS_SESSION (self) && key != NULL);

  form = g_new0 (KeptForm, 1);
  form->key = g_strdup (key);
  form->state = g_strdup (state);
  _bb_session_write_quietly (self, write_form, form, kept_form_free, form_kept_cb, g_object_ref (self));
}

/**
 * bb_session_dup_form:
 * @self: a session
 * @key: which form
 *
 * Returns: (transfer full) (nullable): what was typed in the form and not saved
 */
char *
bb_session_dup_form (BbSession  *self,
                     const char *key)
{
  g_autoptr (GError) error = NULL;
  char *state = NULL;

  g_return_val_if_fail (BB_IS_SESSION (self) && key != NULL, NULL);

  state = bb_book_dup_form (bb_session_get_book (self), key, &error);
  if (error != NULL)
    bb_session_report (self, error);

  return state;
}

/**
 * bb_session_put_aside:
 * @self: a session
 * @key: which form
 * @name: what it is the form of, for a person
 * @state: what is typed in it
 *
 * Keeps a cancelled form no longer, and offers the person to undo that.
 */
void
bb_session_put_aside (BbSession  *self,
                      const char *key,
                      const char *name,
                      const char *state)
{
  g_return_if_fail (BB_IS_SESSION (self) && key != NULL && name != NULL && state != NULL);

  bb_session_keep_form (self, key, NULL);
  g_signal_emit_by_name (self, "put-aside", name, key, state);
}

/**
 * bb_session_take_up:
 * @self: a session
 * @key: which form
 * @state: what was typed in it when it was put aside
 *
 * Has a form opened again as it was, where it was.
 */
void
bb_session_take_up (BbSession  *self,
                    const char *key,
                    const char *state)
{
  g_return_if_fail (BB_IS_SESSION (self) && key != NULL && state != NULL);

  g_signal_emit_by_name (self, "taken-up", key, state);
}

/**
 * bb_session_give_up:
 * @self: a session
 * @key: which form
 *
 * To be called when a form that was put aside is no longer offered.
 */
void
bb_session_give_up (BbSession  *self,
                    const char *key)
{
  g_return_if_fail (BB_IS_SESSION (self) && key != NULL);

  g_signal_emit_by_name (self, "given-up", key);
}

static void
number_job (BbSession  *self,
            const char *today,
            BbJob      *job)
{
  g_autoptr (GError) error = NULL;

  g_free (job->code);
  job->code = bb_book_dup_next_job_code (bb_session_get_book (self), today, &error);
  if (job->code == NULL)
    bb_session_report (self, error);
}

/**
 * bb_session_fill_in:
 * @self: a session
 * @table: the record's table
 * @record: a new record
 *
 * Fills in what is known of a new record: that it is of today, who is at the bench, and a job's number. The person can
 * change them.
 */
void
bb_session_fill_in (BbSession     *self,
                    const BbTable *table,
                    gpointer       record)
{
  g_autofree char *today = bb_dup_today ();

  g_return_if_fail (BB_IS_SESSION (self) && table != NULL && record != NULL);

  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];

      if (field->derived || bb_field_is_set (field, record))
        continue;
      if (field->kind == BB_KIND_DATE && field->required)
        bb_field_set_text (field, record, today);
      else if (field->kind == BB_KIND_REFERENCE && field->target == &bb_person_table)
        bb_field_set_integer (field, record, bb_session_get_person (self));
    }
  if (table == &bb_job_table)
    number_job (self, today, record);
}
