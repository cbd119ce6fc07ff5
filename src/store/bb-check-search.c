/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-check-private.h"

#include <glib/gi18n-lib.h>

#include "bb-book-index.h"
#include "bb-search-words.h"
#include "bb-store-error.h"

/* Whether what the searches have noted is what the records say. */

static gboolean
check_words_of (BbCheck         *self,
                const BbSearch  *search,
                GError         **error)
{
  g_autofree char *wanted = bb_search_dup_wanted (search);
  g_autofree char *found = bb_search_dup_found (search);
  g_autofree char *sql = g_strdup_printf ("SELECT DISTINCT abs (id) FROM (SELECT * FROM (%s EXCEPT %s) "
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
    _bb_check_add (self, g_strdup_printf (ngettext ("%s: %u record is found by the wrong words.",
                                                    "%s: %u records are found by the wrong words.", n),
                                          search->table->name, n));

  return step == BB_STEP_DONE;
}

/**
 * _bb_check_noted_words:
 * @self: a check
 * @error: return location for a #GError
 *
 * Looks whether every word of the searches is noted for those that are mistyped.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_check_noted_words (BbCheck  *self,
                       GError  **error)
{
  guint n = 0;

  if (!bb_search_words_count_missing (self->db, &n, error))
    return FALSE;
  if (n > 0)
    _bb_check_add (self, g_strdup_printf (ngettext ("%u word is not found when it is mistyped.",
                                                    "%u words are not found when they are mistyped.", n), n));

  return TRUE;
}

/**
 * _bb_check_search_words:
 * @self: a check
 * @error: return location for a #GError
 *
 * Holds the words by which each record is found against those it has.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_check_search_words (BbCheck  *self,
                        GError  **error)
{
  for (guint i = 0; i < BB_N_SEARCHES; i++)
    {
      GError *local = NULL;

      check_words_of (self, &bb_searches ()[i], &local);
      if (!_bb_check_absorb (self, local, error))
        return FALSE;
    }

  return TRUE;
}

/* A search's own check is a command in the form of a write, so it needs the book for itself. */
static gboolean
check_index (BbCheck         *self,
             const BbSearch  *search,
             GError         **error)
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
      _bb_check_add (self, g_strdup_printf (_("%s: the search is damaged."), search->table->name));
    }

  return _bb_check_absorb (self, local, error);
}

/**
 * _bb_check_indexes:
 * @self: a check, outside a transaction
 * @error: return location for a #GError
 *
 * Lets every search look at itself.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_check_indexes (BbCheck  *self,
                   GError  **error)
{
  for (guint i = 0; i < BB_N_SEARCHES; i++)
    if (!check_index (self, &bb_searches ()[i], error))
      return FALSE;

  return TRUE;
}
