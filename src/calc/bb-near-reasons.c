/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-nearest.h"

#include "bb-fibre-data.h"

/* In what a near recipe is like the wanted garment and in what it differs, in words. */

/* Below this two colours are one to the eye, side by side and at leisure. Common practice, no source. */
#define SAME_COLOUR_DE 1.0

/* A difference of mass that is within what a fabric scatters. Common practice, no source. */
#define SAME_MASS 0.02

static char *
describe_fibres (const GArray *composition)
{
  g_autofree char *fibres = bb_composition_dup_text (composition);

  return g_utf8_strdown (fibres, -1);
}

static char *
lower_title (const BbChoices *choices,
             int              choice)
{
  return g_utf8_strdown (bb_choices_get_title (choices, choice), -1);
}

static char *
instead (const char *this,
         const char *that)
{
  /* Translators: what a garment is, and what the wanted one is: "navy instead of black". */
  return g_strdup_printf (_("%s instead of %s"), this, that);
}

static void
add_fabric (GPtrArray         *parts,
            const BbNear      *self,
            const BbCandidate *garment,
            const BbNearestIn *wanted)
{
  if (self->same_fibres > 0 && self->same_knit > 0 && self->same_finish > 0)
    {
      g_ptr_array_add (parts, g_strdup (_("same fabric")));
      return;
    }
  if (self->same_fibres > 0)
    g_ptr_array_add (parts, g_strdup (_("same fibres")));
  else
    {
      g_autofree char *this = describe_fibres (garment->composition);
      g_autofree char *that = describe_fibres (wanted->composition);

      g_ptr_array_add (parts, instead (this, that));
    }
  if (self->same_knit == 0)
    {
      g_autofree char *this = lower_title (&bb_knit_choices, garment->knit);
      g_autofree char *that = lower_title (&bb_knit_choices, wanted->knit);

      g_ptr_array_add (parts, instead (this, that));
    }
  if (self->same_finish == 0)
    {
      g_autofree char *this = lower_title (&bb_finish_choices, garment->finish);
      g_autofree char *that = lower_title (&bb_finish_choices, wanted->finish);

      /* Translators: what was done to a fabric, and to the wanted one: "finish: softened instead of none known". */
      g_ptr_array_add (parts, g_strdup_printf (_("finish: %s instead of %s"), this, that));
    }
}

static void
add_colour (GPtrArray         *parts,
            const BbNear      *self,
            const BbCandidate *garment,
            const BbNearestIn *wanted)
{
  g_autofree char *names = NULL;

  /* Who does not say which colour is wanted hears nothing of colours. */
  if (isnan (self->de_00))
    {
      if (wanted->srgb == NULL)
        return;
      /* Translators: which colours a recipe is for: "for dark colours". */
      g_ptr_array_add (parts, garment->colour != NULL ? g_strdup_printf (_("for %s"), garment->colour)
                                                      : g_strdup (_("its colour is not known")));
      return;
    }
  if (self->de_00 < SAME_COLOUR_DE)
    {
      g_ptr_array_add (parts, g_strdup (_("same colour")));
      return;
    }

  names = garment->colour != NULL && wanted->colour != NULL ? instead (garment->colour, wanted->colour)
                                                            : g_strdup (_("another colour"));
  /* Translators: two colours and how far they lie apart by CIEDE2000: "navy instead of black, ΔE 11". */
  g_ptr_array_add (parts, g_strdup_printf (_("%s, ΔE %.0f"), names, self->de_00));
}

static void
add_mass (GPtrArray           *parts,
          const BbNear        *self,
          const BbNearestIn   *wanted,
          const BbUnitContext *context)
{
  g_autofree char *by = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, fabs (self->mass_difference_g_per_m2),
                                                      context);

  if (fabs (self->mass_difference_g_per_m2) < SAME_MASS * wanted->mass_g_per_m2)
    return;
  /* Translators: a mass per area, like "40 g/m² heavier". */
  g_ptr_array_add (parts, self->mass_difference_g_per_m2 > 0 ? g_strdup_printf (_("%s heavier"), by)
                                                             : g_strdup_printf (_("%s lighter"), by));
}

static void
add_proof (GPtrArray         *parts,
           const BbCandidate *candidate)
{
  guint passed = (guint) MIN (candidate->passed, G_MAXINT);

  if (candidate->state != BB_STATE_PROVEN)
    g_ptr_array_add (parts, lower_title (&bb_state_choices, candidate->state));
  else if (passed > 0)
    g_ptr_array_add (parts, g_strdup_printf (ngettext ("proven on %u specimen", "proven on %u specimens", passed),
                                             passed));
  else
    g_ptr_array_add (parts, g_strdup (_("proven")));
}

/**
 * bb_near_dup_reasons:
 * @self: one of the nearest recipes
 * @in: what it was found from
 * @context: the units to write in
 *
 * Returns: (transfer full): in what its garment is like the wanted one and in what it differs, as a person reads it:
 *   "same fabric; navy instead of black, ΔE 11; 40 g/m² heavier; proven on 3 specimens"
 */
char *
bb_near_dup_reasons (const BbNear        *self,
                     const BbNearestIn   *in,
                     const BbUnitContext *context)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  const BbCandidate *candidate = NULL;

  g_return_val_if_fail (self != NULL && in != NULL && self->candidate < (gint64) in->candidates->len, NULL);

  candidate = &g_array_index (in->candidates, BbCandidate, self->candidate);
  add_fabric (parts, self, candidate, in);
  add_colour (parts, self, candidate, in);
  add_mass (parts, self, in, context);
  add_proof (parts, candidate);
  g_ptr_array_add (parts, NULL);

  /* Translators: what stands between two reasons. */
  return g_strjoinv (_("; "), (char **) parts->pdata);
}
