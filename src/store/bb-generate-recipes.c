/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-generate-private.h"

/* Recipes and their revisions, the last of each in use. */

static BbRevision *
make_revision (BbGenerator *self,
               gint64       recipe,
               guint        number)
{
  BbRevision *revision = bb_revision_new ();

  revision->recipe = recipe;
  revision->number = number;
  revision->made_at = _bb_generator_dup_day ((double) self->revisions->len / self->plan->n_revisions);
  revision->made_by = 1 + _bb_generator_below (self, BB_GENERATED_PEOPLE);
  revision->reason = number > 1 ? g_strdup_printf ("Less %s.", _bb_generator_word (self)) : NULL;
  revision->pretreat_product = self->pretreat;
  revision->pretreat_parts_concentrate = 1;
  revision->pretreat_parts_water = 1 + _bb_generator_below (self, 4);
  revision->pretreat_laydown_g_per_m2 = 90 + 5 * _bb_generator_below (self, 22);
  revision->pretreat_margin_mm = 10;
  revision->dry_c = 160;
  revision->dry_s = 35;
  revision->print_mode = BB_PRINT_UNDERBASE;
  revision->print_white_g_per_m2 = 150 + 5 * _bb_generator_below (self, 12);
  revision->cure_c = 140 + _bb_generator_below (self, 25);
  revision->cure_s = 35;
  revision->proof_cycles = 20;

  return revision;
}

/* No specimens are invented, so that a lead has overruled the shop's rule each time. */
static gboolean
sign (BbGenerator       *self,
      const BbRevision  *revision,
      BbStanding        *standing,
      GError           **error)
{
  g_autoptr (BbSignature) signature = bb_signature_new ();

  signature->revision = revision->id;
  signature->signed_at = g_strdup (revision->made_at);
  signature->person = BB_GENERATED_SIGNER;
  signature->overruled = 1;
  signature->reason = g_strdup ("Invented.");
  signature->passed = 0;
  signature->failed = 0;
  signature->needed = 1;
  standing->person = BB_GENERATED_SIGNER;

  return _bb_generator_add (self, &bb_signature_table, signature, error);
}

static gboolean
add_revision (BbGenerator  *self,
              gint64        recipe,
              guint         number,
              gboolean      last,
              GError      **error)
{
  g_autoptr (BbRevision) revision = make_revision (self, recipe, number);
  g_autoptr (BbStanding) standing = bb_standing_new ();

  if (!_bb_generator_add (self, &bb_revision_table, revision, error))
    return FALSE;
  standing->revision = revision->id;
  standing->state = BB_STATE_WITHDRAWN;
  if (last)
    standing->state = _bb_generator_below (self, 5) == 0 ? BB_STATE_ON_TRIAL : BB_STATE_PROVEN;
  standing->since = g_strdup (revision->made_at);
  g_array_append_val (self->revisions, revision->id);

  return (standing->state != BB_STATE_PROVEN || sign (self, revision, standing, error)) &&
         _bb_generator_add (self, &bb_standing_table, standing, error);
}

static gboolean
add_recipe (BbGenerator  *self,
            guint         nth,
            GError      **error)
{
  guint garment = _bb_generator_often (self, BB_GENERATED_BLANKS);
  guint n = MIN (1 + _bb_generator_below (self, 3), self->plan->n_revisions - self->revisions->len);
  g_autoptr (BbRecipe) recipe = bb_recipe_new ();

  recipe->code = g_strdup_printf ("R-%05u", nth + 1);
  recipe->name = g_strdup_printf ("%s on %s", _bb_generator_word (self), _bb_generator_garment (self));
  recipe->blank = garment + 1;
  if (_bb_generator_below (self, 2) == 0)
    recipe->colourway = self->colourways[garment * BB_GENERATED_COLOURS +
                                         _bb_generator_below (self, BB_GENERATED_COLOURS)];
  if (!_bb_generator_add (self, &bb_recipe_table, recipe, error))
    return FALSE;
  for (guint i = 1; i <= n; i++)
    if (!add_revision (self, recipe->id, i, i == n, error))
      return FALSE;

  return TRUE;
}

/**
 * _bb_generator_add_recipes:
 * @self: a book in the making that has its shop
 * @error: return location for a #GError
 *
 * Adds as many recipes as make the revisions that are planned.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_generator_add_recipes (BbGenerator *self,
                           GError     **error)
{
  for (guint i = 0; self->revisions->len < self->plan->n_revisions; i++)
    if (!add_recipe (self, i, error))
      return FALSE;

  return TRUE;
}
