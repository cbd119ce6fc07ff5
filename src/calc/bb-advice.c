/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-advice.h"

#include "bb-heat-limit.h"

/* Far less than any scale or cup shows, and more than what is lost when 1:4 is written as 0.3:1.2. */
#define SAME 1e-9

typedef struct {
  const BbRevision *revision;
  const BbUnitContext *units;
  GPtrArray *advice;
} Bench;

/**
 * bb_advice_free:
 * @self: (transfer full): advice
 */
void
bb_advice_free (BbAdvice *self)
{
  g_free (self->text);
  g_free (self);
}

static void
add (Bench      *self,
     const char *field,
     char       *text)
{
  BbAdvice *advice = g_new0 (BbAdvice, 1);

  advice->field = bb_table_find_field (&bb_revision_table, field);
  advice->text = text;
  g_ptr_array_add (self->advice, advice);
}

/* A comparison with NaN, where an end or the value itself is not known, is false. */
static gboolean
is_outside (double value,
            double least,
            double most)
{
  return value < least * (1 - SAME) || value > most * (1 + SAME);
}

static char *
describe_water (const char *least,
                const char *most,
                const char *parts)
{
  if (*most == '\0')
    /* Translators: two numbers of parts. */
    return g_strdup_printf (_("The supplier allows no less than %s parts of water to 1 part; this is %s."), least,
                            parts);
  if (*least == '\0')
    /* Translators: two numbers of parts. */
    return g_strdup_printf (_("The supplier allows no more than %s parts of water to 1 part; this is %s."), most,
                            parts);
  if (g_str_equal (least, most))
    /* Translators: two numbers of parts. */
    return g_strdup_printf (_("The supplier gives %s parts of water to 1 part; this is %s."), least, parts);

  /* Translators: three numbers of parts. */
  return g_strdup_printf (_("The supplier allows %s to %s parts of water to 1 part; this is %s."), least, most, parts);
}

static void
judge_water (Bench          *self,
             const BbSupply *pretreat)
{
  const double parts = self->revision->pretreat_parts_water / self->revision->pretreat_parts_concentrate;
  g_autofree char *least = NULL;
  g_autofree char *most = NULL;
  g_autofree char *text = NULL;

  if (!is_outside (parts, pretreat->water_parts_least, pretreat->water_parts_most))
    return;
  text = bb_quantity_format (BB_QUANTITY_NONE, parts, self->units);
  if (pretreat->water_parts_most <= 0)
    {
      add (self, "pretreat_parts_concentrate",
           /* Translators: a number of parts. */
           g_strdup_printf (_("The supplier allows no water: it is ready to use. This is %s parts of water to 1 part."),
                            text));
      return;
    }
  least = bb_quantity_format (BB_QUANTITY_NONE, pretreat->water_parts_least, self->units);
  most = bb_quantity_format (BB_QUANTITY_NONE, pretreat->water_parts_most, self->units);
  add (self, "pretreat_parts_concentrate", describe_water (least, most, text));
}

static char *
describe_laydown (const char *least,
                  const char *most,
                  const char *laydown)
{
  if (*most == '\0')
    /* Translators: two laydowns with their units. */
    return g_strdup_printf (_("The supplier advises no less than %s; this is %s."), least, laydown);
  if (*least == '\0')
    /* Translators: two laydowns with their units. */
    return g_strdup_printf (_("The supplier advises no more than %s; this is %s."), most, laydown);

  /* Translators: three laydowns with their units. */
  return g_strdup_printf (_("The supplier advises %s to %s; this is %s."), least, most, laydown);
}

static void
judge_laydown (Bench          *self,
               const BbSupply *pretreat)
{
  const double laydown = self->revision->pretreat_laydown_g_per_m2;
  g_autofree char *least = NULL;
  g_autofree char *most = NULL;
  g_autofree char *text = NULL;

  if (!is_outside (laydown, pretreat->laydown_least_g_per_m2, pretreat->laydown_most_g_per_m2))
    return;
  least = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, pretreat->laydown_least_g_per_m2, self->units);
  most = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, pretreat->laydown_most_g_per_m2, self->units);
  text = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, laydown, self->units);
  add (self, "pretreat_laydown_g_per_m2", describe_laydown (least, most, text));
}

static void
judge_heat (Bench                *self,
            const char           *field,
            double                set_c,
            const BbHeatLimitOut *heat)
{
  g_autofree char *limit = NULL;
  g_autofree char *text = NULL;

  if (!is_outside (set_c, (double) NAN, heat->limit_c))
    return;
  limit = bb_quantity_format_with_unit (BB_QUANTITY_TEMPERATURE, heat->limit_c, self->units);
  text = bb_quantity_format_with_unit (BB_QUANTITY_TEMPERATURE, set_c, self->units);
  /* Translators: two temperatures, and why the first is the limit, one or more sentences. */
  add (self, field, g_strdup_printf (_("This garment should meet nothing hotter than %s; this is %s. %s"), limit, text,
                                     heat->reason));
}

static gboolean
is_dried (const BbRevision *revision)
{
  return revision->pretreat_method != BB_PRETREAT_NONE && revision->dry_method != BB_HEAT_AIR;
}

static void
judge_garment (Bench         *self,
               const BbBlank *blank)
{
  g_autoptr (BbHeatLimitOut) heat = bb_heat_limit_out_new ();

  if (!bb_heat_limit_of_blank (blank, heat, NULL))
    return;
  if (is_dried (self->revision))
    judge_heat (self, "dry_c", self->revision->dry_c, heat);
  judge_heat (self, "cure_c", self->revision->cure_c, heat);
}

static void
judge_white (Bench      *self,
             const char *field)
{
  const double white = bb_field_get_number (bb_table_find_field (&bb_revision_table, field), self->revision);
  g_autofree char *text = NULL;

  if (self->revision->print_mode != BB_PRINT_COLOUR_ONLY || !(white > 0))
    return;
  text = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, white, self->units);
  /* Translators: a print mode, like "Colour only", and a laydown of white ink. */
  add (self, field, g_strdup_printf (_("“%s” prints no white: the %s here are not printed."),
                                     bb_choices_get_title (&bb_print_mode_choices, BB_PRINT_COLOUR_ONLY), text));
}

static void
judge_pressure (Bench      *self,
                const char *field,
                int         method)
{
  const double kpa = bb_field_get_number (bb_table_find_field (&bb_revision_table, field), self->revision);

  if (!(kpa > 0) || method == BB_CHOICE_NONE || method == BB_HEAT_PRESS)
    return;
  /* Translators: a method, like "Tunnel dryer". */
  add (self, field, g_strdup_printf (_("“%s” does not press: this pressure can't be set."),
                                     bb_choices_get_title (&bb_heat_method_choices, method)));
}

static void
judge_itself (Bench *self)
{
  const BbRevision *revision = self->revision;

  judge_white (self, "print_white_g_per_m2");
  judge_white (self, "print_highlight_g_per_m2");
  if (is_dried (revision))
    judge_pressure (self, "dry_kpa", revision->dry_method);
  judge_pressure (self, "cure_kpa", revision->cure_method);
  if (revision->cure_belt_mm_per_s > 0 && revision->cure_method != BB_HEAT_TUNNEL &&
      revision->cure_method != BB_CHOICE_NONE)
    /* Translators: a method, like "Heat press". */
    add (self, "cure_belt_mm_per_s",
         g_strdup_printf (_("“%s” has no belt: this speed can't be set."),
                          bb_choices_get_title (&bb_heat_method_choices, revision->cure_method)));
}

/**
 * bb_advise:
 * @revision: a revision, which may be half typed
 * @pretreat: (nullable): its pretreat, where that is known
 * @blank: (nullable): the garment that is printed, where that is known
 * @units: (nullable): the units to write in
 *
 * Compares settings with what the supplier gives, with what the garment bears and with each other; see the top of
 * bb-advice.h.
 *
 * Returns: (transfer full) (element-type BbAdvice): what a person should know, along the chain; empty for nothing
 */
GPtrArray *
bb_advise (const BbRevision    *revision,
           const BbSupply      *pretreat,
           const BbBlank       *blank,
           const BbUnitContext *units)
{
  Bench self = { .revision = revision, .units = units };

  g_return_val_if_fail (revision != NULL, NULL);

  self.advice = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_advice_free);
  if (pretreat != NULL && revision->pretreat_method != BB_PRETREAT_NONE)
    {
      judge_water (&self, pretreat);
      judge_laydown (&self, pretreat);
    }
  if (blank != NULL)
    judge_garment (&self, blank);
  judge_itself (&self);

  return self.advice;
}

/**
 * bb_advice_find:
 * @advice: (element-type BbAdvice): what bb_advise() said
 * @field: a field of a revision
 *
 * Returns: (transfer none) (nullable): what it said of that setting; %NULL for nothing
 */
const char *
bb_advice_find (const GPtrArray *advice,
                const BbField   *field)
{
  for (guint i = 0; i < advice->len; i++)
    {
      const BbAdvice *one = advice->pdata[i];

      if (one->field == field)
        return one->text;
    }

  return NULL;
}

/**
 * bb_advice_join:
 * @advice: (element-type BbAdvice): what bb_advise() said
 * @station: the step that is asked about; %BB_STATION_NONE for all
 * @separator: what stands between two pieces of advice
 *
 * Returns: (transfer full) (nullable): all that was said of that step; %NULL for nothing
 */
char *
bb_advice_join (const GPtrArray *advice,
                BbStation        station,
                const char      *separator)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < advice->len; i++)
    {
      const BbAdvice *one = advice->pdata[i];

      if (station == BB_STATION_NONE || one->field->station == station)
        g_string_append_printf (text, "%s%s", text->len > 0 ? separator : "", one->text);
    }

  return text->len > 0 ? g_strdup (text->str) : NULL;
}
