/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-check-private.h"

#include <glib/gi18n-lib.h>

#include "bb-migrate.h"

#define SCHEMA "SELECT type, name, COALESCE (sql, '') FROM sqlite_schema"

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
compare_schemas (BbCheck    *self,
                 GHashTable *wanted,
                 GHashTable *found)
{
  GHashTableIter iter;
  gpointer name = NULL;
  gpointer sql = NULL;

  g_hash_table_iter_init (&iter, wanted);
  while (g_hash_table_iter_next (&iter, &name, &sql))
    if (g_strcmp0 (g_hash_table_lookup (found, name), sql) != 0)
      _bb_check_add (self, g_strdup_printf (_("The book's rules were changed by another program: %s"), (char *) name));

  g_hash_table_iter_init (&iter, found);
  while (g_hash_table_iter_next (&iter, &name, NULL))
    if (!g_hash_table_contains (wanted, name))
      _bb_check_add (self, g_strdup_printf (_("Another program added to the book: %s"), (char *) name));
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

/**
 * _bb_check_schema:
 * @self: a check
 * @error: return location for a #GError
 *
 * A trigger that is gone forbids nothing any more: the book is held against a new one.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_check_schema (BbCheck  *self,
                  GError  **error)
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
