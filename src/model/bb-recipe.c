/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-recipe.h"

#include "bb-error.h"

BB_DEFINE_CHOICES (bb_shade, "shade", BB_SHADE_CHOICES);
BB_DEFINE_CHOICES (bb_basis, "basis", BB_BASIS_CHOICES);
BB_DEFINE_CHOICES (bb_pretreat_method, "pretreat method", BB_PRETREAT_METHOD_CHOICES);
BB_DEFINE_CHOICES (bb_heat_method, "heat method", BB_HEAT_METHOD_CHOICES);
BB_DEFINE_CHOICES (bb_print_mode, "print mode", BB_PRINT_MODE_CHOICES);
BB_DEFINE_CHOICES (bb_wash_method, "wash method", BB_WASH_METHOD_CHOICES);
BB_DEFINE_CHOICES (bb_crack, "cracking", BB_CRACK_CHOICES);
BB_DEFINE_CHOICES (bb_state, "state", BB_STATE_CHOICES);

static gboolean
check_recipe (gconstpointer record,
              GError      **error)
{
  const BbRecipe *self = record;

  if (self->blank == 0 && (self->family == NULL || *self->family == '\0'))
    return bb_refuse_value (error, _("blank: choose the blank it is for, or name the family of garments."));

  return TRUE;
}

static gboolean
check_pretreat (const BbRevision *self,
                GError          **error)
{
  if (self->pretreat_method == BB_PRETREAT_NONE)
    return TRUE;
  if (self->pretreat_product == 0)
    return bb_refuse_value (error, _("pretreat_product: choose the pretreat, or set the method to no pretreat."));
  if (isnan (self->pretreat_parts_concentrate) || isnan (self->pretreat_parts_water))
    return bb_refuse_value (error, _("pretreat_parts_concentrate: give the dilution, like 1:3."));
  if (isnan (self->pretreat_laydown_g_per_m2))
    return bb_refuse_value (error, _("pretreat_laydown_g_per_m2: give the laydown."));

  return TRUE;
}

static gboolean
check_heat (const BbRevision *self,
            GError          **error)
{
  if (self->dry_method != BB_HEAT_AIR && self->pretreat_method != BB_PRETREAT_NONE &&
      (isnan (self->dry_c) || isnan (self->dry_s)))
    return bb_refuse_value (error, isnan (self->dry_c) ? _("dry_c: give the temperature.")
                                                       : _("dry_s: give the dwell."));
  if (self->cure_method == BB_HEAT_AIR)
    return bb_refuse_value (error, _("cure_method: pigment ink does not cure in air; choose a press or a tunnel."));

  return TRUE;
}

static gboolean
check_revision (gconstpointer record,
                GError      **error)
{
  const BbRevision *self = record;

  if (!check_pretreat (self, error) || !check_heat (self, error))
    return FALSE;
  if (self->print_mode != BB_PRINT_COLOUR_ONLY && !(self->print_white_g_per_m2 > 0))
    return bb_refuse_value (error, _("print_white_g_per_m2: an underbase needs its white."));
  if (self->number > 1 && (self->reason == NULL || *self->reason == '\0'))
    return bb_refuse_value (error, _("reason: say why this revision differs from the one before."));

  return TRUE;
}

/**
 * bb_state_may_become:
 * @from: the state that a revision is in
 * @to: the state wanted
 *
 * A draft goes on trial, a trial ends in proof, and any of them can be withdrawn. Evidence against a proven
 * revision puts it back on trial. A withdrawal can be undone to the state before it.
 *
 * Returns: %TRUE if the step is allowed
 */
gboolean
bb_state_may_become (BbState from,
                     BbState to)
{
  switch (from)
    {
    case BB_STATE_DRAFT:
      return to == BB_STATE_ON_TRIAL || to == BB_STATE_WITHDRAWN;
    case BB_STATE_ON_TRIAL:
      return to == BB_STATE_PROVEN || to == BB_STATE_WITHDRAWN;
    case BB_STATE_PROVEN:
      return to == BB_STATE_ON_TRIAL || to == BB_STATE_WITHDRAWN;
    case BB_STATE_WITHDRAWN:
      return to != BB_STATE_WITHDRAWN;
    default:
      g_return_val_if_reached (FALSE);
    }
}

BB_DEFINE_TABLE (BbRecipe, bb_recipe, "recipe", N_("Recipe"), BB_RECIPE_FIELDS, check_recipe)
BB_DEFINE_TABLE (BbRevision, bb_revision, "revision", N_("Revision"), BB_REVISION_FIELDS, check_revision)
BB_DEFINE_TABLE (BbStanding, bb_standing, "standing", N_("State"), BB_STANDING_FIELDS, NULL)

/**
 * bb_revision_new_next:
 * @before: a revision that is in use
 * @number: the number of the one that follows
 *
 * Starts the next revision with the same settings. Why it differs is for a person to say.
 *
 * Returns: (transfer full): a revision that is in no book
 */
BbRevision *
bb_revision_new_next (const BbRevision *before,
                      gint64            number)
{
  BbRevision *next = NULL;

  g_return_val_if_fail (before != NULL, NULL);

  next = bb_record_copy (&bb_revision_table, before);
  next->id = BB_INTEGER_NONE;
  next->number = number;
  g_clear_pointer (&next->code, g_free);
  g_clear_pointer (&next->made_at, g_free);
  g_clear_pointer (&next->reason, g_free);
  g_clear_pointer (&next->seal, g_free);

  return next;
}
