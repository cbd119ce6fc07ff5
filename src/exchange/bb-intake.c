/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-exchange"

#include "bb-intake-private.h"

#include "bb-error.h"
#include "bb-exchange-watch.h"
#include "bb-known.h"

/* A part that is counted, like a recipe's revision, is known by the whole's code and its number: they must agree. */
static gboolean
check_part_code (BbIntake       *self,
                 const BbTable  *table,
                 gconstpointer   record,
                 GError        **error)
{
  const BbField *owner = bb_table_find_owner (table);
  const BbField *code = bb_table_find_field (table, "code");
  const BbField *number = bb_table_find_field (table, "number");
  g_autofree char *whole = NULL;
  g_autofree char *wanted = NULL;
  g_autofree char *quote = NULL;

  if (owner == NULL || number == NULL || code == NULL || !bb_field_is_set (owner, record) ||
      !bb_field_is_set (number, record) || !bb_field_is_set (code, record))
    return TRUE;

  whole = bb_codes_name (owner, bb_field_get_integer (owner, record), self->codes, error);
  if (whole == NULL)
    return FALSE;
  wanted = bb_part_make_code (whole, bb_field_get_integer (number, record));
  if (g_str_equal (bb_field_get_text (code, record), wanted))
    return TRUE;

  quote = bb_message_quote (bb_field_get_text (code, record), -1);
  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "code: %s does not fit %s and number, it has to be %s",
               quote, owner->name, wanted);
  return FALSE;
}

static void
note_state (BbIntake      *self,
            const BbTable *table,
            gconstpointer  record)
{
  if (table == &bb_revision_table)
    {
      const BbRevision *revision = record;

      g_hash_table_insert (self->stateless, g_memdup2 (&revision->id, sizeof revision->id),
                           g_strdup (revision->made_at));
    }
  else if (table == &bb_standing_table)
    g_hash_table_remove (self->stateless, &((const BbStanding *) record)->revision);
}

/* A revision that the book has on trial is not proven by what a file says of it: it was, and is so no longer, or came
 * in without what a proof needs. */
static gboolean
is_proof_of_old (const BbTable *table,
                 gconstpointer  known,
                 gconstpointer  record)
{
  return table == &bb_standing_table && ((const BbStanding *) known)->state == BB_STATE_ON_TRIAL &&
         ((const BbStanding *) record)->state == BB_STATE_PROVEN;
}

/**
 * _bb_intake_take:
 * @self: an intake that is under way
 * @table: the record's table
 * @record: a record whose references are resolved; gets its key where it is added
 * @error: return location for a #GError
 *
 * Takes one record in: adds it, or finds that the book has the same.
 *
 * Returns: %FALSE with %BB_EXCHANGE_ERROR_CONFLICT, or another error
 */
gboolean
_bb_intake_take (BbIntake       *self,
                 const BbTable  *table,
                 gpointer        record,
                 GError        **error)
{
  gpointer known = NULL;
  gboolean done = FALSE;

  if (!bb_known_find (self->book, table, record, &known, error))
    return FALSE;

  if (known != NULL)
    {
      done = is_proof_of_old (table, known, record) || bb_known_check_same (table, known, record, error);
      bb_record_free (table, known);
      self->imported.n_same += done ? 1 : 0;
      return done;
    }

  if (!check_part_code (self, table, record, error) || !bb_book_save (self->book, table, record, error))
    return FALSE;
  bb_codes_add (self->codes, table, record);
  note_state (self, table, record);
  self->imported.n_added++;

  return TRUE;
}

/* A revision that came without its state is a draft. */
static gboolean
add_drafts (BbIntake  *self,
            GError   **error)
{
  GHashTableIter iter;
  gpointer id = NULL;
  gpointer made_at = NULL;

  g_hash_table_iter_init (&iter, self->stateless);
  while (g_hash_table_iter_next (&iter, &id, &made_at))
    {
      g_autoptr (BbStanding) standing = bb_standing_new ();

      standing->revision = *(gint64 *) id;
      standing->since = g_strdup (made_at);
      if (!bb_book_save (self->book, &bb_standing_table, standing, error))
        return FALSE;
    }

  return TRUE;
}

/* What an intake does, in its transaction. */
typedef struct {
  BbIntake *intake;
  BbIntakeFunc func;
  gpointer data;
} Work;

static gboolean
take_all (BbBook   *book,
          gpointer  data,
          GError  **error)
{
  const Work *work = data;
  BbIntake *self = work->intake;

  (void) book;

  return work->func (self, work->data, error) && add_drafts (self, error) &&
         _bb_exchange_watch (self->watch, self->total, self->total, error);
}

/**
 * _bb_intake_run:
 * @book: a book
 * @func: takes the records in, by _bb_intake_take()
 * @data: for @func
 * @watch: (nullable): how to follow and stop the work
 * @imported: (out) (optional): what was done
 * @error: return location for a #GError
 *
 * Returns: %FALSE with an error, after which nothing was taken in
 */
gboolean
_bb_intake_run (BbBook                 *book,
                BbIntakeFunc            func,
                gpointer                data,
                const BbExchangeWatch  *watch,
                BbImported             *imported,
                GError                **error)
{
  g_autoptr (BbCodes) codes = bb_codes_new (book);
  g_autoptr (GHashTable) stateless = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
  BbIntake self = { .book = book, .codes = codes, .stateless = stateless, .watch = watch };
  Work work = { &self, func, data };
  gboolean done = FALSE;

  bb_book_set_importing (book, TRUE);
  done = bb_book_in_transaction (book, take_all, &work, error);
  bb_book_set_importing (book, FALSE);
  if (done && imported != NULL)
    *imported = self.imported;

  return done;
}
