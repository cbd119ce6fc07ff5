/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-near-recipes.h"

#include <glib/gi18n-lib.h>

#include "bb-likest.h"
#include "bb-propose.h"

/* As many as the calculator takes: of a book that has more recipes, the proven ones and then the newest. */
#define MOST_RECIPES 10000

/* From how many a recipe is started at most: those beyond have little in common with the garment. */
#define MOST_SOURCES 3

/* Each fibre of the garment. */
static void
copy_list (const BbField *from_field,
           gconstpointer  from,
           const BbField *to_field,
           gpointer       to)
{
  const GArray *items = bb_field_get_array (from_field, from);

  for (guint i = 0; items != NULL && i < items->len; i++)
    {
      gpointer item = bb_field_append_item (to_field, to);

      for (guint f = 0; f < to_field->item->n_fields; f++)
        bb_field_copy (&to_field->item->fields[f], items->data + i * to_field->item->size, item);
    }
}

/* Garments have fields of the same names in the book and in what computes with them. */
static void
copy_fabric (const BbBlank *blank,
             const BbTable *table,
             gpointer       record)
{
  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *to = &table->fields[i];
      const BbField *from = bb_table_find_field (&bb_blank_table, to->name);

      if (from == NULL || from->kind != to->kind)
        continue;
      if (to->kind == BB_KIND_NUMBER)
        bb_field_set_number (to, record, bb_field_get_number (from, blank));
      else if (to->kind == BB_KIND_CHOICE)
        bb_field_set_choice (to, record, bb_field_get_choice (from, blank));
      else if (to->kind == BB_KIND_LIST)
        copy_list (from, blank, to, record);
    }
}

/* Where a recipe is for several colours, they have a name in common and no one sRGB. */
static void
fill_candidate (BbCandidate         *candidate,
                const BbKnownRecipe *recipe,
                const BbBlank       *blank)
{
  copy_fabric (blank, &bb_candidate_table, candidate);
  candidate->name = g_strdup (recipe->name);
  candidate->state = recipe->state;
  candidate->passed = recipe->passed;
  if (recipe->srgb != NULL)
    {
      candidate->colour = g_strdup (recipe->colour);
      candidate->srgb = g_strdup (recipe->srgb);
    }
  else
    candidate->colour = g_utf8_strdown (bb_choices_get_title (&bb_shade_choices, recipe->shade), -1);
}

static void
add_candidates (BbNearestIn     *in,
                const GPtrArray *recipes,
                GHashTable      *blanks)
{
  const BbField *candidates = bb_table_find_field (&bb_nearest_in_table, "candidates");

  bb_field_ensure_array (candidates, in);
  for (guint i = 0; i < recipes->len; i++)
    {
      const BbKnownRecipe *recipe = recipes->pdata[i];

      fill_candidate (bb_field_append_item (candidates, in), recipe, g_hash_table_lookup (blanks, &recipe->blank));
    }
}

/* The blanks of the book by their keys; also those that are withdrawn, whose recipes still tell something. */
static GHashTable *
load_blanks (BbBook  *book,
             GError **error)
{
  g_autoptr (GPtrArray) all = bb_book_load_all (book, &bb_blank_table, TRUE, error);
  GHashTable *blanks = NULL;

  if (all == NULL)
    return NULL;

  blanks = g_hash_table_new_full (g_int64_hash, g_int64_equal, NULL, (GDestroyNotify) bb_blank_free);
  for (guint i = 0; i < all->len; i++)
    {
      BbBlank *blank = g_steal_pointer (&all->pdata[i]);

      g_hash_table_insert (blanks, &blank->id, blank);
    }

  return blanks;
}

static BbNearestIn *
make_in (const BbNearRecipes *self,
         const GPtrArray     *recipes,
         GHashTable          *blanks,
         guint                limit)
{
  BbNearestIn *in = bb_nearest_in_new ();

  copy_fabric (self->blank, &bb_nearest_in_table, in);
  if (self->colourway != NULL)
    {
      in->colour = g_strdup (self->colourway->name);
      in->srgb = g_strdup (self->colourway->srgb);
    }
  in->limit = limit;
  add_candidates (in, recipes, blanks);

  return in;
}

/* Only the nearest are kept, in their order, so that each is at its own place. */
static void
keep_nearest (BbNearRecipes *self,
              GPtrArray     *recipes,
              GHashTable    *blanks,
              guint          limit)
{
  GArray *nearest = self->out->nearest;

  for (guint i = 0; i < nearest->len; i++)
    {
      BbNear *near = &g_array_index (nearest, BbNear, i);

      g_ptr_array_add (self->recipes, g_steal_pointer (&recipes->pdata[near->candidate]));
      near->candidate = i;
    }
  bb_nearest_in_free (self->in);
  self->in = make_in (self, self->recipes, blanks, limit);
}

static gboolean
find_nearest (BbNearRecipes  *self,
              BbBook         *book,
              guint           limit,
              GError        **error)
{
  g_autoptr (GHashTable) blanks = load_blanks (book, error);
  g_autoptr (GPtrArray) recipes = blanks != NULL ? bb_book_load_known_recipes (book, MOST_RECIPES, error) : NULL;

  if (recipes == NULL)
    return FALSE;
  self->in = make_in (self, recipes, blanks, limit);
  self->out = bb_nearest_out_new ();
  if (!bb_calculator_run (&bb_nearest_calculator, self->in, self->out, error))
    return FALSE;
  keep_nearest (self, recipes, blanks, limit);

  return TRUE;
}

/**
 * bb_near_recipes_load:
 * @book: a book
 * @blank: key of a garment; 0 for that of @colourway
 * @colourway: key of the garment in a colour; 0 for any colour
 * @limit: how many recipes at most, from 1
 * @error: return location for a #GError
 *
 * Finds the recipes that are nearest to a garment. It reads all recipes: for a thread, where the book is large.
 *
 * Returns: (transfer full) (nullable): what was found; %NULL with an error
 */
BbNearRecipes *
bb_near_recipes_load (BbBook  *book,
                      gint64   blank,
                      gint64   colourway,
                      guint    limit,
                      GError **error)
{
  g_autoptr (BbNearRecipes) self = g_new0 (BbNearRecipes, 1);

  g_return_val_if_fail (BB_IS_BOOK (book) && (blank != 0 || colourway != 0) && limit > 0, NULL);

  self->recipes = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_known_recipe_free);
  if (colourway != 0)
    {
      self->colourway = bb_book_load (book, &bb_colourway_table, colourway, error);
      if (self->colourway == NULL)
        return NULL;
    }
  self->blank = bb_book_load (book, &bb_blank_table, self->colourway != NULL ? self->colourway->blank : blank, error);

  return self->blank != NULL && find_nearest (self, book, limit, error) ? g_steal_pointer (&self) : NULL;
}

/**
 * bb_near_recipes_free:
 * @self: (transfer full): what was found
 */
void
bb_near_recipes_free (BbNearRecipes *self)
{
  g_clear_pointer (&self->blank, bb_blank_free);
  g_clear_pointer (&self->colourway, bb_colourway_free);
  g_clear_pointer (&self->in, bb_nearest_in_free);
  g_clear_pointer (&self->out, bb_nearest_out_free);
  g_ptr_array_unref (self->recipes);
  g_free (self);
}

static const BbNear *
get_near (const BbNearRecipes *self,
          guint                position)
{
  return &g_array_index (self->out->nearest, BbNear, position);
}

/**
 * bb_near_recipes_get_distance:
 * @self: what was found
 * @position: the place of a recipe
 *
 * Returns: how far the recipe lies from the garment, as bb-nearest.h says: 0 for the same, 1 at most
 */
double
bb_near_recipes_get_distance (const BbNearRecipes *self,
                              guint                position)
{
  g_return_val_if_fail (self != NULL && position < self->recipes->len, 1.0);

  return get_near (self, position)->distance;
}

/**
 * bb_near_recipes_is_same_garment:
 * @self: what was found
 * @position: the place of a recipe
 *
 * Returns: %TRUE if the recipe is for the very garment, and not for another colour of it
 */
gboolean
bb_near_recipes_is_same_garment (const BbNearRecipes *self,
                                 guint                position)
{
  const BbKnownRecipe *recipe = NULL;

  g_return_val_if_fail (self != NULL && position < self->recipes->len, FALSE);

  recipe = self->recipes->pdata[position];

  return recipe->blank == self->blank->id &&
         (self->colourway == NULL || recipe->colourway == BB_INTEGER_NONE || recipe->colourway == self->colourway->id);
}

/**
 * bb_near_recipes_dup_reasons:
 * @self: what was found
 * @position: the place of a recipe
 * @context: the units to write in
 *
 * Returns: (transfer full): in what the recipe's garment is like the wanted one and in what it differs
 */
char *
bb_near_recipes_dup_reasons (const BbNearRecipes *self,
                             guint                position,
                             const BbUnitContext *context)
{
  g_return_val_if_fail (self != NULL && position < self->recipes->len, NULL);

  return bb_near_dup_reasons (get_near (self, position), self->in, context);
}

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
      BbProposeFrom source = { .distance = get_near (self, i)->distance };

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
