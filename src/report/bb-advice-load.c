/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-advice-load.h"

/* A recipe for a family of garments names none whose fibres are known. */
static BbBlank *
load_blank (BbBook   *book,
            gint64    id,
            GError  **error)
{
  g_autoptr (BbRecipe) recipe = bb_book_load (book, &bb_recipe_table, id, error);

  return recipe != NULL && recipe->blank != 0 ? bb_book_load (book, &bb_blank_table, recipe->blank, error) : NULL;
}

/**
 * bb_advice_load:
 * @book: a book
 * @revision: a revision, which may be half typed
 * @units: the units to write in
 * @error: return location for a #GError
 *
 * Loads the revision's pretreat and garment, and says by bb_advise() what a person should know of its settings. Pages,
 * forms and the command line all take their sentences from there.
 *
 * Returns: (transfer full) (nullable) (element-type BbAdvice): the advice, empty for none; %NULL with an error of the
 *   book
 */
GPtrArray *
bb_advice_load (BbBook               *book,
                const BbRevision     *revision,
                const BbUnitContext  *units,
                GError              **error)
{
  g_autoptr (GError) local_error = NULL;
  g_autoptr (BbSupply) pretreat = NULL;
  g_autoptr (BbBlank) blank = NULL;

  g_return_val_if_fail (BB_IS_BOOK (book) && revision != NULL, NULL);

  if (revision->pretreat_product != 0)
    pretreat = bb_book_load (book, &bb_supply_table, revision->pretreat_product, &local_error);
  if (local_error == NULL && revision->recipe != 0)
    blank = load_blank (book, revision->recipe, &local_error);
  if (local_error != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&local_error));
      return NULL;
    }

  return bb_advise (revision, pretreat, blank, units);
}
