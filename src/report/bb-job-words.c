/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-job-words.h"

#include <glib/gi18n-lib.h>

#include "bb-advice.h"
#include "bb-rounding.h"
#include "bb-safety.h"
#include "bb-words.h"

static char *
format_mass (double               grams,
             const BbUnitContext *units)
{
  return bb_quantity_format_with_unit (BB_QUANTITY_MASS, bb_round_for_scale (grams), units);
}

/**
 * bb_words_of_mix:
 * @self: a mix
 * @units: the units to show
 *
 * Returns: (transfer full): the product, how it is diluted, and for how many garments
 */
char *
bb_words_of_mix (const BbMixSheet    *self,
                 const BbUnitContext *units)
{
  g_autofree char *dilution = bb_dilution_format (self->parts_concentrate, self->parts_water, units);
  const gulong n = (gulong) self->garments;

  if (self->parts_water <= 0)
    /* Translators: a product, and a count. */
    return g_strdup_printf (ngettext ("%s, undiluted, for %lu garment", "%s, undiluted, for %lu garments", n),
                            self->product, n);
  if (self->basis == BB_BASIS_MASS)
    /* Translators: a product, a dilution like 1:3, and a count. */
    return g_strdup_printf (ngettext ("%s, %s by mass, for %lu garment", "%s, %s by mass, for %lu garments", n),
                            self->product, dilution, n);

  /* Translators: a product, a dilution like 1:3, and a count. */
  return g_strdup_printf (ngettext ("%s, %s by volume, for %lu garment", "%s, %s by volume, for %lu garments", n),
                          self->product, dilution, n);
}

/**
 * bb_words_of_surplus:
 * @self: a mix
 * @units: the units to show
 *
 * Returns: (transfer full) (nullable): why more is made up than is sprayed; %NULL where it is not
 */
char *
bb_words_of_surplus (const BbMixSheet    *self,
                     const BbUnitContext *units)
{
  const double surplus_g = bb_round_for_scale (self->total_g) - bb_round_for_scale (self->needed_g);
  g_autofree char *needed = NULL;
  g_autofree char *surplus = NULL;

  if (!(surplus_g > 0))
    return NULL;
  needed = format_mass (self->needed_g, units);
  surplus = format_mass (surplus_g, units);

  /* Translators: two masses. */
  return g_strdup_printf (_("%s of it are sprayed. The other %s fill the lines, are the shop's reserve, and round it "
                            "up."), needed, surplus);
}

/**
 * bb_words_of_take:
 * @self: what is taken from a container
 * @units: the units to show
 *
 * Returns: (transfer full): how much from which container, until when that may be used, and what is left in it then
 */
char *
bb_words_of_take (const BbTake        *self,
                  const BbUnitContext *units)
{
  g_autofree char *amount = format_mass (self->amount_g, units);
  g_autofree char *day = bb_words_of_day (self->last_day);
  g_autofree char *take = NULL;
  g_autofree char *rest = NULL;

  take = *day != '\0' ? g_strdup_printf (_("Take %s from %s, to be used by %s."), amount, self->code, day)
                      : g_strdup_printf (_("Take %s from %s."), amount, self->code);
  if (isnan (self->left_g))
    return g_steal_pointer (&take);
  if (self->left_g > 0)
    {
      g_autofree char *left = format_mass (self->left_g, units);

      rest = g_strdup_printf (_("%s is left then."), left);
    }

  return g_strjoin (" ", take, rest != NULL ? rest : _("It is empty then."), NULL);
}

/**
 * bb_words_of_mix_warnings:
 * @self: a mix
 * @units: the units to show
 *
 * Returns: (transfer full) (element-type utf8): what to look at before it is poured, a sentence each; the array frees
 *   them
 */
GPtrArray *
bb_words_of_mix_warnings (const BbMixSheet    *self,
                          const BbUnitContext *units)
{
  GPtrArray *warnings = g_ptr_array_new_with_free_func (g_free);

  if (self->short_g > 0)
    {
      g_autofree char *amount = format_mass (self->short_g, units);

      g_ptr_array_add (warnings, g_strdup_printf (_("%s of concentrate is missing: no container in the shop has it."),
                                                  amount));
    }
  else if (self->low == 1)
    g_ptr_array_add (warnings, g_strdup (_("Low stock: less is left then than the shop wants to have.")));
  for (guint i = 0; self->past != NULL && self->past[i] != NULL; i++)
    g_ptr_array_add (warnings, g_strdup_printf (_("%s is past its day and is not used."), self->past[i]));

  return warnings;
}

static const char *
find_state_caution (int state)
{
  switch (state)
    {
    case BB_STATE_WITHDRAWN:
      return _("Withdrawn: ask the process lead before printing by it.");
    case BB_STATE_DRAFT:
    case BB_STATE_ON_TRIAL:
      return _("Not proven: print and wash a specimen before a whole order.");
    case BB_STATE_PROVEN:
    default:
      return NULL;
    }
}

/**
 * bb_words_of_caution:
 * @revision: (nullable): what a line of a job is printed by
 * @state: the #BbState of it
 * @mode_wanted: the #BbPrintMode that the artwork asks for, or %BB_CHOICE_NONE
 *
 * Who prints by a recipe that is not proven, or that prints otherwise than the artwork asks for, has to know it before
 * a whole order is sprayed.
 *
 * Returns: (transfer full) (nullable): what to look at before printing, a sentence or two; %NULL for nothing
 */
char *
bb_words_of_caution (const BbRevision *revision,
                     int               state,
                     int               mode_wanted)
{
  const char *caution = NULL;
  g_autofree char *other = NULL;

  if (revision == NULL)
    return g_strdup (_("No recipe yet: edit the line and choose one."));

  caution = find_state_caution (state);
  if (mode_wanted != BB_CHOICE_NONE && mode_wanted != revision->print_mode)
    /* Translators: two print modes, like "Colour only" and "Underbase". */
    other = g_strdup_printf (_("It prints “%s”, and “%s” is wanted."),
                             bb_choices_get_title (&bb_print_mode_choices, revision->print_mode),
                             bb_choices_get_title (&bb_print_mode_choices, mode_wanted));
  if (caution == NULL || other == NULL)
    return caution != NULL ? g_strdup (caution) : g_steal_pointer (&other);

  return g_strjoin (" ", caution, other, NULL);
}

/**
 * bb_words_of_cautions:
 * @revision: (nullable): what a line of a job is printed by
 * @state: the #BbState of it
 * @mode_wanted: the #BbPrintMode that the artwork asks for, or %BB_CHOICE_NONE
 * @advice: (nullable) (element-type BbAdvice): what there is to know of its settings
 *
 * Returns: (transfer full) (nullable): what bb_words_of_caution() says, and then the advice; %NULL for nothing
 */
char *
bb_words_of_cautions (const BbRevision *revision,
                      int               state,
                      int               mode_wanted,
                      const GPtrArray  *advice)
{
  g_autofree char *caution = bb_words_of_caution (revision, state, mode_wanted);
  g_autofree char *text = advice != NULL ? bb_advice_join (advice, BB_STATION_NONE, " ") : NULL;

  if (caution == NULL || text == NULL)
    return caution != NULL ? g_steal_pointer (&caution) : g_steal_pointer (&text);

  return g_strjoin (" ", caution, text, NULL);
}

/**
 * bb_words_of_line_caution:
 * @line: a line of a job, with its revision, pretreat and garment as far as they are chosen
 * @state: the #BbState of its revision
 * @units: the units to show
 *
 * Returns: (transfer full) (nullable): what bb_words_of_caution() and bb_advise() say of what the line is printed by;
 *   %NULL for nothing
 */
char *
bb_words_of_line_caution (const BbSheetLine   *line,
                          int                  state,
                          const BbUnitContext *units)
{
  g_autoptr (GPtrArray) advice = NULL;

  if (line->revision != NULL)
    advice = bb_advise (line->revision, line->pretreat, line->blank, units);

  return bb_words_of_cautions (line->revision, state, line->line->print_mode, advice);
}

/**
 * bb_words_of_step_cautions:
 * @revision: what is printed by
 *
 * Returns: (transfer full) (element-type utf8): the step's name and what to heed there, for each step that the revision
 *   has; the array frees them
 */
GPtrArray *
bb_words_of_step_cautions (const BbRevision *revision)
{
  GPtrArray *cautions = g_ptr_array_new_with_free_func (g_free);

  for (BbStation station = BB_STATION_PRETREAT; station <= BB_STATION_CURE; station++)
    {
      const BbSafetyNote *note = NULL;

      if ((station == BB_STATION_PRETREAT && revision->pretreat_method == BB_PRETREAT_NONE) ||
          (station == BB_STATION_DRY && revision->dry_method == BB_HEAT_AIR))
        continue;
      for (guint i = 0; (note = bb_safety_find (station, i)) != NULL; i++)
        /* Translators: a step like "Cure", and what to heed there. */
        g_ptr_array_add (cautions, g_strdup_printf (_("%s: %s"), bb_station_get_title (station), _(note->brief)));
    }

  return cautions;
}

/**
 * bb_words_of_spares:
 * @garments: how many garments are printed, spares included
 * @spares: how many of them are spares
 *
 * Returns: (transfer full) (nullable): how the count is made up; %NULL without spares
 */
char *
bb_words_of_spares (gint64 garments,
                    gint64 spares)
{
  if (spares <= 0)
    return NULL;

  return g_strdup_printf (ngettext ("%d ordered and %d spare", "%d ordered and %d spares", (gulong) spares),
                          (int) (garments - spares), (int) spares);
}
