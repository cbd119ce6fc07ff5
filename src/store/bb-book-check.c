/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

#include <glib/gi18n-lib.h>

#include "bb-book-index.h"
#include "bb-error.h"
#include "bb-migrate.h"
#include "bb-problem.h"
#include "bb-record-sql.h"
#include "bb-search-words.h"
#include "bb-text.h"

#define SCHEMA "SELECT type, name, COALESCE (sql, '') FROM sqlite_schema"

/*
 * @findings: what was found so far
 * @cancellable: (nullable): what stops the check
 */
typedef struct {
  BbDb *db;
  GPtrArray *findings;
  GCancellable *cancellable;
} Check;

typedef gboolean (*CheckFunc) (Check   *self,
                               GError **error);

/* What is found may quote the file, which may hold anything. */
static void
add (Check *self,
     char  *finding)
{
  g_ptr_array_add (self->findings, bb_text_quote (finding, -1, LONGEST_FINDING));
  g_free (finding);
}

/* SQLite tells what is wrong with pages in one text of many lines; the first says which database it is. */
static void
add_damage (Check      *self,
            const char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    if (!g_str_has_prefix (lines[i], "*** in database"))
      add (self, g_strdup_printf (_("The file is damaged: %s"), lines[i]));
}

/* Damage is what we look for: it is a finding, and the check goes on. Anything else ends it. */
static gboolean
absorb (Check   *self,
        GError  *local,
        GError **error)
{
  if (local == NULL)
    return TRUE;

  if (local->domain == BB_MODEL_ERROR || g_error_matches (local, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED))
    {
      add (self, g_strdup (local->message));
      g_error_free (local);
      return TRUE;
    }
  g_propagate_error (error, local);

  return FALSE;
}

static gboolean
check_pages (Check   *self,
             GError **error)
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
check_references (Check   *self,
                  GError **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, "PRAGMA foreign_key_check", error);
  BbStep step = BB_STEP_ERROR;

  if (statement == NULL)
    return FALSE;

  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    /* Translators: a table and a key, then another table, like "colourway 3: its blank is not in the book." */
    add (self, g_strdup_printf (_("%s %s: its %s is not in the book."), bb_statement_get_text (statement, 0),
                                bb_statement_get_text (statement, 1), bb_statement_get_text (statement, 2)));

  return step == BB_STEP_DONE;
}

static GHashTable *
read_schema (BbDb    *db,
             GError **error)
{
  g_autoptr (GHashTable) schema = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (BbStatement) statement = bb_db_prepare (db, SCHEMA, error);
  BbStep step = BB_STEP_ERROR;

  if (statement == NULL)
    return NULL;

  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    g_hash_table_insert (schema,
                         g_strdup_printf ("%s %s", bb_statement_get_text (statement, 0),
                                          bb_statement_get_text (statement, 1)),
                         g_strdup (bb_statement_get_text (statement, 2)));

  return step == BB_STEP_DONE ? g_steal_pointer (&schema) : NULL;
}

static void
compare_schemas (Check      *self,
                 GHashTable *wanted,
                 GHashTable *found)
{
  GHashTableIter iter;
  gpointer name = NULL;
  gpointer sql = NULL;

  g_hash_table_iter_init (&iter, wanted);
  while (g_hash_table_iter_next (&iter, &name, &sql))
    if (g_strcmp0 (g_hash_table_lookup (found, name), sql) != 0)
      add (self, g_strdup_printf (_("The book's rules were changed by another program: %s"), (char *) name));

  g_hash_table_iter_init (&iter, found);
  while (g_hash_table_iter_next (&iter, &name, NULL))
    if (!g_hash_table_contains (wanted, name))
      add (self, g_strdup_printf (_("Another program added to the book: %s"), (char *) name));
}

static GHashTable *
make_schema (GError **error)
{
  BbDb *model = bb_db_open_memory (error);
  g_autoptr (GHashTable) schema = NULL;

  if (model == NULL)
    return NULL;
  if (bb_book_migrate (model, error))
    schema = read_schema (model, error);
  if (!bb_db_close (model, FALSE, schema != NULL ? error : NULL))
    return NULL;

  return g_steal_pointer (&schema);
}

/* What a new book has. It is the same as long as the program runs, and takes longer to make than a book to check. */
static GHashTable *
get_schema (GError **error)
{
  static GHashTable *schema = NULL;
  GHashTable *made = NULL;

  if (g_atomic_pointer_get (&schema) != NULL)
    return g_atomic_pointer_get (&schema);

  made = make_schema (error);
  if (made == NULL)
    return NULL;
  if (!g_atomic_pointer_compare_and_exchange (&schema, NULL, made))
    g_hash_table_unref (made);

  return g_atomic_pointer_get (&schema);
}

/* A trigger that is gone forbids nothing any more: the book is held against a new one. */
static gboolean
check_schema (Check   *self,
              GError **error)
{
  GHashTable *wanted = get_schema (error);
  g_autoptr (GHashTable) found = NULL;

  if (wanted == NULL)
    return FALSE;

  found = read_schema (self->db, error);
  if (found != NULL)
    compare_schemas (self, wanted, found);

  return found != NULL;
}

static gboolean
check_words_of (Check          *self,
                const BbSearch *search,
                GError        **error)
{
  g_autofree char *wanted = bb_search_dup_wanted (search);
  g_autofree char *found = bb_search_dup_found (search);
  g_autofree char *sql = g_strdup_printf ("SELECT DISTINCT id FROM (SELECT * FROM (%s EXCEPT %s) "
                                          "UNION SELECT * FROM (%s EXCEPT %s))", wanted, found, found, wanted);
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, sql, error);
  BbStep step = BB_STEP_ERROR;
  guint n = 0;

  if (statement == NULL)
    return FALSE;

  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    n++;
  if (n > 0)
    /* Translators: a table, like "recipe: 3 records are found by the wrong words." */
    add (self, g_strdup_printf (ngettext ("%s: %u record is found by the wrong words.",
                                          "%s: %u records are found by the wrong words.", n), search->table->name, n));

  return step == BB_STEP_DONE;
}

static gboolean
check_noted_words (Check   *self,
                   GError **error)
{
  guint n = 0;

  if (!bb_search_words_count_missing (self->db, &n, error))
    return FALSE;
  if (n > 0)
    add (self, g_strdup_printf (ngettext ("%u word is not found when it is mistyped.",
                                          "%u words are not found when they are mistyped.", n), n));

  return TRUE;
}

/* What is summed up from the runs against the runs themselves. */
#define LAST_RUNS \
  "SELECT j.customer, l.colourway, r.revision, MAX (r.id) FROM run r JOIN job_line l ON l.id = r.line " \
  "JOIN job j ON j.id = l.job GROUP BY j.customer, l.colourway, r.revision"
#define SUMMED_UP "SELECT customer, colourway, revision, run FROM last_run"

static gboolean
check_last_runs (Check   *self,
                 GError **error)
{
  gint64 n = 0;

  if (!bb_db_query_integer (self->db,
                            "SELECT COUNT (*) FROM (SELECT * FROM (" LAST_RUNS " EXCEPT " SUMMED_UP ") "
                            "UNION SELECT * FROM (" SUMMED_UP " EXCEPT " LAST_RUNS "))", &n, error))
    return FALSE;
  if (n > 0)
    add (self, g_strdup (_("The summary of the runs does not fit the runs.")));

  return TRUE;
}

/* The bytes of pictures against what they are known by, one picture in memory at a time. */
static gboolean
check_pictures (Check   *self,
                GError **error)
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
        add (self, g_strdup_printf (_("The picture “%s” is damaged: its bytes are not those that were stored."),
                                    bb_statement_get_text (statement, 1)));
      if (g_cancellable_set_error_if_cancelled (self->cancellable, error))
        return FALSE;
    }

  return step == BB_STEP_DONE;
}

static gboolean
check_search_words (Check   *self,
                    GError **error)
{
  for (guint i = 0; i < BB_N_SEARCHES; i++)
    {
      GError *local = NULL;

      check_words_of (self, &bb_searches ()[i], &local);
      if (!absorb (self, local, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
check_record (Check          *self,
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

  return absorb (self, local, error) && !g_cancellable_set_error_if_cancelled (self->cancellable, error);
}

static gboolean
check_table (Check          *self,
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
check_records (Check   *self,
               GError **error)
{
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  for (guint i = 0; i < n_tables; i++)
    {
      GError *local = NULL;

      check_table (self, tables[i], &local);
      if (!absorb (self, local, error))
        return FALSE;
    }

  return TRUE;
}

/* A search's own check is a command in the form of a write, so it needs the book for itself. */
static gboolean
check_search (Check          *self,
              const BbSearch *search,
              GError        **error)
{
  g_autofree char *sql = g_strdup_printf ("INSERT INTO %s (%s) VALUES ('integrity-check')", search->index,
                                          search->index);
  GError *local = NULL;

  if (!bb_db_begin (self->db, BB_ACCESS_WRITE, error))
    return FALSE;
  bb_db_run_script (self->db, sql, &local);
  bb_db_rollback (self->db);
  if (g_error_matches (local, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED))
    {
      g_clear_error (&local);
      add (self, g_strdup_printf (_("%s: the search is damaged."), search->table->name));
    }

  return absorb (self, local, error);
}

static gboolean
check_all (Check   *self,
           GError **error)
{
  const CheckFunc funcs[] = {
    check_pages, check_references, check_schema, check_search_words, check_noted_words, check_last_runs,
    check_pictures, check_records,
  };

  for (guint i = 0; i < BB_N_SEARCHES; i++)
    if (!check_search (self, &bb_searches ()[i], error))
      return FALSE;
  if (!bb_db_begin (self->db, BB_ACCESS_READ, error))
    return FALSE;

  for (guint i = 0; i < G_N_ELEMENTS (funcs); i++)
    {
      GError *local = NULL;

      funcs[i] (self, &local);
      if (!absorb (self, local, error))
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
 * search, every record against its limits, and every revision's seal.
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
  Check check = { .findings = findings, .cancellable = cancellable };
  gboolean done = FALSE;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return NULL;

  check.db = self->db;
  bb_db_set_cancellable (self->db, cancellable);
  done = check_all (&check, error);
  bb_db_set_cancellable (self->db, NULL);

  return done ? g_steal_pointer (&findings) : NULL;
}
