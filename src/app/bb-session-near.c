/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-session-near.h"

/* As many as a person compares. */
#define MOST_NEAR 8

typedef struct {
  gint64 blank;
  gint64 colourway;
} Garment;

static gpointer
read_near (BbBook    *book,
           gpointer   data,
           GError   **error)
{
  const Garment *garment = data;

  return bb_near_recipes_load (book, garment->blank, garment->colourway, MOST_NEAR, error);
}

/**
 * bb_session_load_near_async:
 * @self: a session
 * @blank: key of a garment; 0 for that of @colourway
 * @colourway: key of the garment in a colour; 0 for any colour
 * @cancellable: (nullable): drops the result, and the reading where it has not begun
 * @callback: what to call with it
 * @data: for @callback
 *
 * Finds the recipes nearest to a garment, off the main loop: all recipes are read for it.
 */
void
bb_session_load_near_async (BbSession           *self,
                            gint64               blank,
                            gint64               colourway,
                            GCancellable        *cancellable,
                            GAsyncReadyCallback  callback,
                            gpointer             data)
{
  Garment *garment = NULL;

  g_return_if_fail (BB_IS_SESSION (self) && (blank != 0 || colourway != 0));

  garment = g_new0 (Garment, 1);
  *garment = (Garment) { blank, colourway };
  bb_session_read_async (self, read_near, garment, g_free, (GDestroyNotify) bb_near_recipes_free, cancellable, callback,
                         data);
}

/**
 * bb_session_load_near_finish:
 * @self: a session
 * @result: what the callback was given
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): what was found; %NULL with an error
 */
BbNearRecipes *
bb_session_load_near_finish (BbSession     *self,
                             GAsyncResult  *result,
                             GError       **error)
{
  return bb_session_read_finish (self, result, error);
}

/**
 * bb_session_find_blank:
 * @self: a session
 * @words: what a person looks for
 *
 * Returns: key of the blank that has the words; 0 where none has, or there are no words
 */
gint64
bb_session_find_blank (BbSession  *self,
                       const char *words)
{
  const BbQuery query = { .text = words, .limit = 1 };
  g_autoptr (GArray) found = NULL;

  g_return_val_if_fail (BB_IS_SESSION (self) && words != NULL, 0);

  if (*words == '\0')
    return 0;
  found = bb_book_search (bb_session_get_book (self), &bb_blank_table, &query, NULL);

  return found != NULL && found->len > 0 ? g_array_index (found, gint64, 0) : 0;
}

/**
 * bb_session_get_blank_of:
 * @self: a session
 * @recipe: key of a recipe; 0 for none
 *
 * Returns: key of the blank that the recipe is for; 0 where it is for a family of blanks
 */
gint64
bb_session_get_blank_of (BbSession *self,
                         gint64     recipe)
{
  g_autoptr (BbRecipe) record = NULL;

  g_return_val_if_fail (BB_IS_SESSION (self), 0);

  if (recipe != 0)
    record = bb_book_load (bb_session_get_book (self), &bb_recipe_table, recipe, NULL);

  return record != NULL ? record->blank : 0;
}
