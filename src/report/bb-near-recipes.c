/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-near-recipes.h"

/* As many as the calculator takes: of a book that has more recipes, the proven ones and then the newest. */
#define MOST_RECIPES 10000

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
