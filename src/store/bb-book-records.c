/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

#include "bb-canonical.h"
#include "bb-moment.h"
#include "bb-problem.h"
#include "bb-record-sql.h"

/* Adds the record, or changes the columns of @scope where it has a key. */
static gboolean
write_columns (BbBook         *self,
               const BbTable  *table,
               gpointer        record,
               BbColumns       scope,
               GError        **error)
{
  const BbField *key = bb_table_find_field (table, "id");
  gboolean inserting = !bb_field_is_set (key, record);
  g_autofree char *sql = inserting ? bb_sql_insert (table) : bb_sql_update (table, scope);
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, sql, error);
  gint64 id = BB_INTEGER_NONE;
  guint n = 0;

  if (statement == NULL)
    return FALSE;

  n = bb_record_bind (table, record, inserting ? BB_COLUMNS_ALL : scope, statement);
  if (!inserting)
    bb_statement_bind_integer (statement, (int) n + 1, bb_field_get_integer (key, record));

  switch (bb_statement_step (statement, error))
    {
    case BB_STEP_ROW:
      id = bb_statement_get_integer (statement, 0);
      break;
    case BB_STEP_DONE:
      _bb_book_set_missing (table, bb_field_get_integer (key, record), error);
      return FALSE;
    case BB_STEP_ERROR:
    default:
      return FALSE;
    }

  if (!bb_statement_run (statement, error))
    return FALSE;
  bb_field_set_integer (key, record, id);

  return TRUE;
}

/* The database refuses what a proof does not survive: then the proof goes first, in the same transaction. */
static gboolean
write_columns_or_give_up_proof (BbBook         *self,
                                const BbTable  *table,
                                gpointer        record,
                                BbColumns       scope,
                                GError        **error)
{
  GError *local = NULL;

  if (write_columns (self, table, record, scope, &local) ||
      (_bb_book_give_up_proof (self, table, record, &local) && write_columns (self, table, record, scope, &local)))
    return TRUE;

  g_propagate_error (error, local);

  return FALSE;
}

/**
 * _bb_book_add_event:
 * @self: a book, within a transaction
 * @deed: what was done
 * @table: the record's table
 * @record: the record as it was written
 * @error: return location for a #GError
 *
 * Records who did what, and when.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_book_add_event (BbBook         *self,
                    BbDeed          deed,
                    const BbTable  *table,
                    gconstpointer   record,
                    GError        **error)
{
  g_autoptr (BbEvent) event = bb_event_new ();

  event->at = bb_dup_now ();
  event->person = self->person;
  event->deed = (int) deed;
  event->subject = g_strdup (table->name);
  event->subject_id = bb_field_get_integer (bb_table_find_field (table, "id"), record);
  event->detail = bb_record_to_json (table, record, BB_SCOPE_ALL);

  if (write_columns (self, &bb_event_table, event, BB_COLUMNS_SAVED, error))
    return TRUE;
  _bb_book_name_cause (self, &bb_event_table, event, error);

  return FALSE;
}

/**
 * _bb_book_write_record:
 * @self: a book, within a transaction
 * @table: the record's table
 * @record: a record that is complete and valid; gets its key where it has none
 * @error: return location for a #GError
 *
 * Writes a record with its lists, and neither its event nor its words.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_book_write_record (BbBook         *self,
                       const BbTable  *table,
                       gpointer        record,
                       GError        **error)
{
  /* A finished run takes no lists any more: one that comes finished is finished only once it has them. */
  const BbField *key = bb_table_find_field (table, "id");
  BbRun *run = table == &bb_run_table && !bb_field_is_set (key, record) ? record : NULL;
  char *finished_at = run != NULL ? g_steal_pointer (&run->finished_at) : NULL;
  gboolean done = write_columns_or_give_up_proof (self, table, record, BB_COLUMNS_SAVED, error) &&
                  bb_record_write_lists (table, record, bb_field_get_integer (key, record), self->db, error);

  if (finished_at == NULL)
    return done;
  run->finished_at = finished_at;

  return done && write_columns (self, table, record, BB_COLUMNS_STEPS, error);
}

/**
 * _bb_book_write_row:
 * @self: a book, within a transaction
 * @table: the record's table
 * @record: a record that is complete and valid; gets its key where it has none
 * @deed: what the event of it says
 * @error: return location for a #GError
 *
 * Writes a record with its lists and its event.
 *
 * Returns: %FALSE with an error that names the cause
 */
gboolean
_bb_book_write_row (BbBook         *self,
                    const BbTable  *table,
                    gpointer        record,
                    BbDeed          deed,
                    GError        **error)
{
  /* Before: where a garment's colour moves to another blank, recipes of both are found by other words. */
  if (!_bb_book_mark_stale (self, table, record, error))
    return FALSE;

  if (!_bb_book_write_record (self, table, record, error))
    {
      _bb_book_name_cause (self, table, record, error);
      return FALSE;
    }

  return _bb_book_mark_stale (self, table, record, error) &&
         (table == &bb_event_table || _bb_book_add_event (self, deed, table, record, error));
}

/**
 * _bb_book_write_steps:
 * @self: a book, within a transaction
 * @table: the record's table
 * @record: a record with its key
 * @deed: what the event of it says
 * @error: return location for a #GError
 *
 * Writes what only a step of its own changes, and the event of that.
 *
 * Returns: %FALSE with an error that names the cause
 */
gboolean
_bb_book_write_steps (BbBook         *self,
                      const BbTable  *table,
                      gpointer        record,
                      BbDeed          deed,
                      GError        **error)
{
  return write_columns_or_give_up_proof (self, table, record, BB_COLUMNS_STEPS, error) &&
         _bb_book_mark_stale (self, table, record, error) &&
         _bb_book_add_event (self, deed, table, record, error);
}

/**
 * _bb_book_validate:
 * @self: a book
 * @table: the record's table
 * @record: a record
 * @error: return location for a #GError
 *
 * Holds a record against its limits, and what it refers to against the kind that it has to be of.
 *
 * Returns: %FALSE with %BB_MODEL_ERROR that names the field, or another error
 */
gboolean
_bb_book_validate (BbBook         *self,
                   const BbTable  *table,
                   gconstpointer   record,
                   GError        **error)
{
  return bb_record_validate (table, record, error) && bb_record_check_kinds (table, record, self->db, error);
}

/**
 * _bb_book_save_within:
 * @self: a book, within a transaction that ends if this fails
 * @table: the record's table
 * @record: a record
 * @error: return location for a #GError
 *
 * Does what bb_book_save() does, without a transaction of its own.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_book_save_within (BbBook         *self,
                      const BbTable  *table,
                      gpointer        record,
                      GError        **error)
{
  gboolean adding = !bb_field_is_set (bb_table_find_field (table, "id"), record);
  BbDeed deed = adding ? (self->importing ? BB_DEED_IMPORTED : BB_DEED_ADDED) : BB_DEED_CHANGED;

  if (!_bb_book_complete (self, table, record, error))
    return FALSE;
  if (table == &bb_wash_test_table && !_bb_book_fill_from_plan (self, record, error))
    return FALSE;

  return _bb_book_validate (self, table, record, error) &&
         _bb_book_write_row (self, table, record, deed, error) &&
         (adding || _bb_book_rename_parts (self, table, record, error));
}

/**
 * bb_book_save:
 * @self: a book
 * @table: a table of the book
 * @record: a record of it; gets its key where it has none
 * @error: return location for a #GError
 *
 * Adds a record without a key, or changes the one of that key. When a record was withdrawn is not changed: see
 * bb_book_withdraw() and bb_book_restore().
 *
 * A revision is written with the number, date and person that it has, so that a whole book can be brought in; it gets
 * a code where it has none, and always its seal, but no state: save a standing too, which may begin in any state. To
 * write a revision as a person does, use bb_book_save_revision(). Changing a recipe's code gives its drafts
 * new codes, and a job's number its lines. What only a step of its own changes, like a job's state, stays as it is.
 * A wash test takes from its plan what it does not say itself. A reading or wash test that a proof does not survive
 * puts the revision back on trial, with a notice.
 *
 * Returns: %FALSE with %BB_MODEL_ERROR where a value is not allowed, %BB_STORE_ERROR_EXISTS where the code is taken,
 *   %BB_STORE_ERROR_NOT_FOUND where it, or what it refers to, is not in the book, %BB_STORE_ERROR_REFUSED where the
 *   book forbids it, or another %BB_STORE_ERROR
 */
gboolean
bb_book_save (BbBook         *self,
              const BbTable  *table,
              gpointer        record,
              GError        **error)
{
  const BbField *key = bb_table_find_field (table, "id");
  gint64 before = BB_INTEGER_NONE;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), FALSE);
  g_return_val_if_fail (bb_book_find_table (table->name) == table && record != NULL, FALSE);

  before = bb_field_get_integer (key, record);
  if (_bb_book_begin (self, error) && _bb_book_end (self, _bb_book_save_within (self, table, record, error), error))
    return TRUE;
  bb_field_set_integer (key, record, before);

  return FALSE;
}
