/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-check-private.h"

#include <glib/gi18n-lib.h>

#include "bb-book-private.h"
#include "bb-error.h"
#include "bb-problem.h"
#include "bb-record-sql.h"
#include "bb-text.h"

typedef gboolean (*CheckFunc) (BbCheck  *self,
                               GError  **error);

/**
 * _bb_check_add:
 * @self: a check
 * @finding: (transfer full): what was found, which may quote the file, and that may hold anything
 */
void
_bb_check_add (BbCheck *self,
               char    *finding)
{
  g_ptr_array_add (self->findings, bb_text_quote (finding, -1, LONGEST_FINDING));
  g_free (finding);
}

/* SQLite tells what is wrong with pages in one text of many lines; the first says which database it is. */
static void
add_damage (BbCheck    *self,
            const char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    if (!g_str_has_prefix (lines[i], "*** in database"))
      _bb_check_add (self, g_strdup_printf (_("The file is damaged: %s"), lines[i]));
}

/**
 * _bb_check_absorb:
 * @self: a check
 * @local: (transfer full) (nullable): what came of a part of the check
 * @error: return location for a #GError
 *
 * Damage is what we look for: it is a finding, and the check goes on. Anything else ends it.
 *
 * Returns: %FALSE if the check ends, with @local as its error
 */
gboolean
_bb_check_absorb (BbCheck  *self,
                  GError   *local,
                  GError  **error)
{
  if (local == NULL)
    return TRUE;

  if (local->domain == BB_MODEL_ERROR || g_error_matches (local, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED))
    {
      _bb_check_add (self, g_strdup (local->message));
      g_error_free (local);
      return TRUE;
    }
  g_propagate_error (error, local);

  return FALSE;
}

static gboolean
check_pages (BbCheck  *self,
             GError  **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, "PRAGMA integrity_check", error);
  BbStep step = BB_STEP_ERROR;

  if (statement == NULL)
    return FALSE;

  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    if (g_strcmp0 (bb_statement_get_text (statement, 0), "ok") != 0)
      add_damage (self, bb_statement_get_text (statement, 0));

  return step == BB_STEP_DONE;
}

static gboolean
check_references (BbCheck  *self,
                  GError  **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, "PRAGMA foreign_key_check", error);
  BbStep step = BB_STEP_ERROR;

  if (statement == NULL)
    return FALSE;

  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    /* Translators: a table and a key, then another table, like "colourway 3: its blank is not in the book." */
    _bb_check_add (self, g_strdup_printf (_("%s %s: its %s is not in the book."), bb_statement_get_text (statement, 0),
                                          bb_statement_get_text (statement, 1), bb_statement_get_text (statement, 2)));

  return step == BB_STEP_DONE;
}

/* What is summed up from the runs against the runs themselves. */
#define LAST_RUNS \
  "SELECT j.customer, l.colourway, r.revision, MAX (r.id) FROM run r JOIN job_line l ON l.id = r.line " \
  "JOIN job j ON j.id = l.job GROUP BY j.customer, l.colourway, r.revision"
#define SUMMED_UP "SELECT customer, colourway, revision, run FROM last_run"

static gboolean
check_last_runs (BbCheck  *self,
                 GError  **error)
{
  gint64 n = 0;

  if (!bb_db_query_integer (self->db,
                            "SELECT COUNT (*) FROM (SELECT * FROM (" LAST_RUNS " EXCEPT " SUMMED_UP ") "
                            "UNION SELECT * FROM (" SUMMED_UP " EXCEPT " LAST_RUNS "))", &n, error))
    return FALSE;
  if (n > 0)
    _bb_check_add (self, g_strdup (_("The summary of the runs does not fit the runs.")));

  return TRUE;
}

/* The bytes of pictures against what they are known by, one picture in memory at a time. */
static gboolean
check_pictures (BbCheck  *self,
                GError  **error)
{
  g_autoptr (BbStatement) statement = NULL;
  BbStep step = BB_STEP_ERROR;

  statement = bb_db_prepare (self->db,
                             "SELECT p.code, p.name, c.content FROM picture p "
                             "JOIN picture_content c ON c.picture = p.id ORDER BY p.id",
                             error);
  if (statement == NULL)
    return FALSE;

  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    {
      g_autoptr (GBytes) content = bb_statement_dup_bytes (statement, 2);
      g_autofree char *found = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, content);

      if (!g_str_equal (found, bb_statement_get_text (statement, 0)))
        _bb_check_add (self,
                       g_strdup_printf (_("The picture “%s” is damaged: its bytes are not those that were stored."),
                                        bb_statement_get_text (statement, 1)));
      if (g_cancellable_set_error_if_cancelled (self->cancellable, error))
        return FALSE;
    }

  return step == BB_STEP_DONE;
}

static gboolean
check_record (BbCheck        *self,
              const BbTable  *table,
              BbStatement    *statement,
              GError        **error)
{
  const BbField *key = bb_table_find_field (table, "id");
  gpointer record = bb_record_new (table);
  GError *local = NULL;

  if (bb_record_read (table, record, statement, &local) &&
      bb_record_read_lists (table, record, self->db, &local) &&
      _bb_record_check_seal (table, record, &local))
    {
      bb_record_validate (table, record, &local);
      if (local == NULL)
        bb_record_check_kinds (table, record, self->db, &local);
    }
  if (local != NULL)
    g_prefix_error (&local, "%s %" G_GINT64_FORMAT ": ", table->name, bb_field_get_integer (key, record));
  bb_record_free (table, record);

  return _bb_check_absorb (self, local, error) && !g_cancellable_set_error_if_cancelled (self->cancellable, error);
}

static gboolean
check_table (BbCheck        *self,
             const BbTable  *table,
             GError        **error)
{
  g_autofree char *sql = bb_sql_select (table, "ORDER BY id");
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, sql, error);
  BbStep step = BB_STEP_ERROR;

  if (statement == NULL)
    return FALSE;

  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    if (!check_record (self, table, statement, error))
      return FALSE;

  return step == BB_STEP_DONE;
}

static gboolean
check_records (BbCheck  *self,
               GError  **error)
{
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  for (guint i = 0; i < n_tables; i++)
    {
      GError *local = NULL;

      check_table (self, tables[i], &local);
      if (!_bb_check_absorb (self, local, error))
        return FALSE;
    }

  return TRUE;
}

/* The searches are left out of a book that can only be read: to look at themselves they ask for what they write. */
static gboolean
check_all (BbCheck  *self,
           gboolean  can_write,
           GError  **error)
{
  const CheckFunc funcs[] = {
    check_pages, check_references, _bb_check_schema, _bb_check_search_words, _bb_check_noted_words, check_last_runs,
    check_pictures, check_records,
  };

  if ((can_write && !_bb_check_indexes (self, error)) || !bb_db_begin (self->db, BB_ACCESS_READ, error))
    return FALSE;

  for (guint i = 0; i < G_N_ELEMENTS (funcs); i++)
    {
      GError *local = NULL;

      funcs[i] (self, &local);
      if (!_bb_check_absorb (self, local, error))
        {
          bb_db_rollback (self->db);
          return FALSE;
        }
    }

  return bb_db_commit (self->db, error);
}

/**
 * bb_book_check:
 * @self: a book
 * @cancellable: (nullable): what stops the check
 * @error: return location for a #GError
 *
 * Looks at all of the book: every page of the file, every reference, the rules of the database, the words of the
 * search, every record against its limits, and every revision's seal. A search's own index can't be looked at where the
 * book can only be read.
 *
 * Returns: (transfer full) (nullable) (element-type utf8): what was found, one line each, and nothing in a sound book;
 *   %NULL with %G_IO_ERROR_CANCELLED, or a %BB_STORE_ERROR if the check could not be made
 */
GPtrArray *
bb_book_check (BbBook        *self,
               GCancellable  *cancellable,
               GError       **error)
{
  g_autoptr (GPtrArray) findings = g_ptr_array_new_with_free_func (g_free);
  BbCheck check = { .findings = findings, .cancellable = cancellable };
  gboolean done = FALSE;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return NULL;

  check.db = self->db;
  bb_db_set_cancellable (self->db, cancellable);
  done = check_all (&check, bb_book_can_write (self), error);
  bb_db_set_cancellable (self->db, NULL);

  return done ? g_steal_pointer (&findings) : NULL;
}
