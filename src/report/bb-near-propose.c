/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-near-recipes.h"

#include <glib/gi18n-lib.h>

#include "bb-likest.h"
#include "bb-propose.h"

/* Which of the near recipes another may be started from, for which colours, and what comes of them. */

/* From how many a recipe is started at most: those beyond have little in common with the garment. */
#define MOST_SOURCES 3

/* A recipe for several colours is for the wanted one only where that may be one of them. */
static gboolean
is_source (const BbNearRecipes *self,
           const BbKnownRecipe *recipe)
{
  const guint shades = self->colourway != NULL ? bb_shades_of (self->colourway->srgb) : G_MAXUINT;

  return recipe->state == BB_STATE_PROVEN &&
         (recipe->colourway != BB_INTEGER_NONE || (shades & (1u << recipe->shade)) != 0);
}

/* Which shades a recipe may be for. */
static guint
shades_of_source (const BbKnownRecipe *recipe)
{
  return recipe->colourway != BB_INTEGER_NONE ? bb_shades_of (recipe->srgb) & ~(1u << BB_SHADE_ANY)
         : recipe->shade == BB_SHADE_ANY ? G_MAXUINT : 1u << recipe->shade;
}

/**
 * bb_near_recipes_needs_colour:
 * @self: what was found
 *
 * What is proven on dark garments is wrong on white ones. Where no colour is wanted, and proven recipes for other
 * colours than those of the nearest are near as well, nothing is proposed before a colour is told.
 *
 * Returns: %TRUE if a colour has to be told first
 */
gboolean
bb_near_recipes_needs_colour (const BbNearRecipes *self)
{
  guint shades = G_MAXUINT;

  g_return_val_if_fail (self != NULL, FALSE);

  if (self->colourway != NULL)
    return FALSE;
  for (guint i = 0; i < self->recipes->len; i++)
    if (is_source (self, self->recipes->pdata[i]))
      shades &= shades_of_source (self->recipes->pdata[i]);

  return shades == 0;
}

/**
 * bb_near_recipes_can_propose:
 * @self: what was found
 *
 * Returns: %TRUE if one of the recipes is proven, and for such a colour, so that another can be started from it
 */
gboolean
bb_near_recipes_can_propose (const BbNearRecipes *self)
{
  g_return_val_if_fail (self != NULL, FALSE);

  if (bb_near_recipes_needs_colour (self))
    return FALSE;
  for (guint i = 0; i < self->recipes->len; i++)
    if (is_source (self, self->recipes->pdata[i]))
      return TRUE;

  return FALSE;
}

/**
 * bb_near_recipes_get_shade:
 * @self: what was found
 *
 * Returns: the #BbShade for which a recipe is proposed: that of the nearest proven one, and of one colour the narrowest
 *   that it may be called; any colour where there is none
 */
int
bb_near_recipes_get_shade (const BbNearRecipes *self)
{
  const BbShade narrowest[] = { BB_SHADE_BLACK, BB_SHADE_WHITE, BB_SHADE_DARK, BB_SHADE_LIGHT };
  const BbKnownRecipe *nearest = NULL;

  g_return_val_if_fail (self != NULL, BB_SHADE_ANY);

  for (guint i = 0; i < self->recipes->len && nearest == NULL; i++)
    if (is_source (self, self->recipes->pdata[i]))
      nearest = self->recipes->pdata[i];
  if (nearest == NULL || nearest->colourway == BB_INTEGER_NONE)
    return nearest != NULL ? nearest->shade : (int) BB_SHADE_ANY;
  for (guint i = 0; i < G_N_ELEMENTS (narrowest); i++)
    if ((shades_of_source (nearest) & (1u << narrowest[i])) != 0)
      return (int) narrowest[i];

  return BB_SHADE_ANY;
}

static gboolean
load_sources (const BbNearRecipes  *self,
              BbBook               *book,
              GPtrArray            *revisions,
              GArray               *from,
              GError              **error)
{
  guint shades = G_MAXUINT;

  for (guint i = 0; i < self->recipes->len && from->len < MOST_SOURCES; i++)
    {
      const BbKnownRecipe *recipe = self->recipes->pdata[i];
      BbRevision *revision = NULL;
      BbProposeFrom source = { .distance = bb_near_recipes_get_distance (self, i) };

      /* All are for one shade: a mean of what is for dark garments and for light ones is for neither. */
      if (!is_source (self, recipe) || (shades & shades_of_source (recipe)) == 0)
        continue;
      shades &= shades_of_source (recipe);
      revision = bb_book_load (book, &bb_revision_table, recipe->revision, error);
      if (revision == NULL)
        return FALSE;
      g_ptr_array_add (revisions, revision);
      source.revision = revision;
      g_array_append_val (from, source);
    }
  if (from->len == 0)
    g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND,
                         _("None of the nearest recipes is proven, so there is nothing to start from."));

  return from->len > 0;
}

/* Where from stands in the reason; what was changed for limits in the note, which has room for it. */
static void
put_reasons (BbRevision      *revision,
             const GPtrArray *reasons)
{
  g_autoptr (GString) note = g_string_new (NULL);

  for (guint i = 1; i < reasons->len; i++)
    g_string_append_printf (note, "%s%s", i > 1 ? "\n" : "", (const char *) reasons->pdata[i]);
  if (note->len > 0)
    revision->note = g_strdup (note->str);
}

/**
 * bb_near_recipes_propose:
 * @self: what was found
 * @book: the book that it was found in
 * @context: the units to write reasons in
 * @error: return location for a #GError
 *
 * Makes a recipe to start from out of the nearest proven ones, as bb-propose.h says.
 *
 * Returns: (transfer full) (nullable): a revision without recipe, number and state, whose reason says where it is from
 *   and whose note what was changed to keep limits; %NULL with %BB_STORE_ERROR_NOT_FOUND where none is proven or a
 *   colour has to be told first, or another error
 */
BbRevision *
bb_near_recipes_propose (const BbNearRecipes  *self,
                         BbBook               *book,
                         const BbUnitContext  *context,
                         GError              **error)
{
  g_autoptr (GPtrArray) revisions = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_revision_free);
  g_autoptr (GPtrArray) reasons = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GArray) from = g_array_new (FALSE, FALSE, sizeof (BbProposeFrom));
  g_autoptr (BbSupply) pretreat = NULL;
  BbRevision *revision = NULL;
  gint64 product = 0;

  g_return_val_if_fail (self != NULL && BB_IS_BOOK (book), NULL);

  if (bb_near_recipes_needs_colour (self))
    {
      g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND,
                           _("Recipes for other colours are near as well. Choose the garment's colour first."));
      return NULL;
    }
  if (!load_sources (self, book, revisions, from, error))
    return NULL;
  product = ((const BbRevision *) revisions->pdata[0])->pretreat_product;
  if (product != 0)
    {
      pretreat = bb_book_load (book, &bb_supply_table, product, error);
      if (pretreat == NULL)
        return NULL;
    }
  revision = bb_propose_revision (self->blank, (const BbProposeFrom *) (gpointer) from->data, from->len, pretreat,
                                  context, reasons);
  put_reasons (revision, reasons);

  return revision;
}
