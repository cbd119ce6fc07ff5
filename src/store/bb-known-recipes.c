/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-known-recipes.h"

#include "bb-book-current.h"
#include "bb-book-private.h"
#include "bb-record-sql.h"

BB_DEFINE_TABLE (BbKnownRecipe, bb_known_recipe, "known_recipe", N_("Recipe"), BB_KNOWN_RECIPE_FIELDS, NULL)

#define KNOWN_RECIPES \
  "SELECT r.id AS id, r.code AS code, r.name AS name, COALESCE (r.blank, c.blank) AS blank, c.id AS colourway, " \
  "COALESCE (c.name, '') AS colour, c.srgb AS srgb, r.shade AS shade, v.id AS revision, v.code AS revision_code, " \
  "COALESCE (s.state, 'draft') AS state, " \
  "COALESCE ((SELECT g.passed FROM signature g WHERE g.revision = v.id ORDER BY g.signed_at DESC LIMIT 1), 0) " \
  "AS passed " \
  "FROM recipe r LEFT JOIN colourway c ON c.id = r.colourway " \
  "JOIN revision v ON v.id = (" BB_SQL_CURRENT_OF ("r.id") ") LEFT JOIN standing s ON s.revision = v.id " \
  "WHERE r.withdrawn_at IS NULL AND COALESCE (r.blank, c.blank) IS NOT NULL"

/**
 * bb_book_load_known_recipes:
 * @self: a book
 * @limit: how many at most
 * @error: return location for a #GError
 *
 * Loads what recipes there are to go by for a garment that nobody has printed: those that are in use, have a revision,
 * and are for a blank and not for a family of blanks. It reads all recipes and is nothing for each key that is typed.
 *
 * Returns: (transfer full) (nullable) (element-type BbKnownRecipe): the proven ones first, then the newest first; %NULL
 *   with an error
 */
GPtrArray *
bb_book_load_known_recipes (BbBook  *self,
                            guint    limit,
                            GError **error)
{
  g_autofree char *columns = bb_sql_columns (&bb_known_recipe_table);
  g_autofree char *sql = g_strdup_printf ("WITH known AS (" KNOWN_RECIPES ") SELECT %s FROM known "
                                          "ORDER BY state <> 'proven', id DESC LIMIT ?1", columns);
  g_autoptr (GPtrArray) recipes = g_ptr_array_new_with_free_func (bb_known_recipe_table.free_record);
  g_autoptr (BbStatement) statement = NULL;
  BbStep step = BB_STEP_ROW;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  statement = bb_db_prepare (self->db, sql, error);
  if (statement == NULL)
    return NULL;
  bb_statement_bind_integer (statement, 1, limit);
  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    {
      BbKnownRecipe *recipe = bb_known_recipe_new ();

      g_ptr_array_add (recipes, recipe);
      if (!bb_record_read (&bb_known_recipe_table, recipe, statement, error))
        return NULL;
    }

  return step == BB_STEP_DONE ? g_steal_pointer (&recipes) : NULL;
}
