/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-axis.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "bb-grade.h"

/* Of a step, so that a tick is not lost to rounding. */
#define SLACK 1e-6

/* Of an axis, past its last mark, so that what stands there is seen whole. */
#define ROOM 0.04

/* More decimals than a person reads off a chart. */
#define MOST_DECIMALS 6

static void
clear_tick (gpointer data)
{
  g_free (((BbTick *) data)->label);
}

static BbAxis *
axis_new (BbScale     scale,
          const char *title,
          double      low,
          double      high)
{
  BbAxis *self = g_new0 (BbAxis, 1);

  self->scale = scale;
  self->title = g_strdup (title);
  self->low = low;
  self->high = high;
  self->ticks = g_array_new (FALSE, TRUE, sizeof (BbTick));
  g_array_set_clear_func (self->ticks, clear_tick);

  return self;
}

static void
add_tick (BbAxis *self,
          double  value,
          char   *label)
{
  BbTick tick = { value, label };

  g_array_append_val (self->ticks, tick);
}

/**
 * bb_nice_step:
 * @range: how much an axis spans, above 0
 * @n_ticks: how many marks it may have, at least 2
 *
 * Returns: the smallest of 1, 2 and 5 times a power of ten by which @range has at most @n_ticks marks
 *
 * Source: the numbers that people count by; P. Heckbert, "Nice numbers for graph labels", Graphics Gems, 1990.
 */
double
bb_nice_step (double range,
              guint  n_ticks)
{
  const double factors[] = { 1, 2, 5, 10 };
  double wanted = range / (MAX (n_ticks, 2) - 1);
  double power = pow (10.0, floor (log10 (wanted)));

  for (guint i = 0; i < G_N_ELEMENTS (factors); i++)
    if (factors[i] * power >= wanted * (1.0 - SLACK))
      return factors[i] * power;

  return 10.0 * power;
}

static int
decimals_of (double step)
{
  int decimals = (int) ceil (-log10 (step) - SLACK);

  return CLAMP (decimals, 0, MOST_DECIMALS);
}

static void
add_nice_ticks (BbAxis *self,
                double  step)
{
  int decimals = decimals_of (step);

  for (double k = ceil (self->low / step - SLACK); k * step <= self->high + step * SLACK; k += 1.0)
    add_tick (self, k * step, g_strdup_printf ("%.*f", decimals, k * step + 0.0));
}

/**
 * bb_axis_new_numbers:
 * @title: what it measures
 * @unit: (nullable): the unit
 * @low: the least value that is shown
 * @high: the greatest
 * @n_ticks: how many marks there is room for, at least 2
 *
 * The axis reaches from a mark at or below @low to one at or above @high. Where both are the same it is widened.
 *
 * Returns: (transfer full): an axis
 */
BbAxis *
bb_axis_new_numbers (const char *title,
                     const char *unit,
                     double      low,
                     double      high,
                     guint       n_ticks)
{
  BbAxis *self = NULL;
  double step = 0.0;

  g_return_val_if_fail (isfinite (low) && isfinite (high) && low <= high, NULL);

  if (high - low <= fabs (high) * SLACK)
    {
      double half = high != 0.0 ? fabs (high) / 2.0 : 1.0;

      low -= half;
      high += half;
    }
  step = bb_nice_step (high - low, n_ticks);
  self = axis_new (BB_SCALE_NUMBER, title, floor (low / step + SLACK) * step, ceil (high / step - SLACK) * step);
  self->unit = g_strdup (unit);
  add_nice_ticks (self, step);

  return self;
}

/**
 * bb_axis_new_cycles:
 * @last: the greatest count of washes that is shown
 *
 * Returns: (transfer full): an axis of washes from 0, whole ones only
 */
BbAxis *
bb_axis_new_cycles (double last)
{
  double high = MAX (ceil (last), 1.0);
  double step = MAX (bb_nice_step (high, 9), 1.0);
  BbAxis *self = axis_new (BB_SCALE_CYCLES, _("Wash cycles"), 0.0, high * (1.0 + ROOM));

  add_nice_ticks (self, step);

  return self;
}

/**
 * bb_axis_new_grades:
 * @title: which grade
 *
 * Returns: (transfer full): an axis from grade 1 to grade 5, in half steps, with words at the whole ones
 */
BbAxis *
bb_axis_new_grades (const char *title)
{
  BbAxis *self = axis_new (BB_SCALE_GRADE, title, 1.0 - 4.0 * ROOM, 5.0 + 4.0 * ROOM);

  for (int grade = BB_GRADE_1; grade >= BB_GRADE_5; grade--)
    add_tick (self, bb_grade_to_number ((BbGrade) grade), g_strdup (bb_choices_get_title (&bb_grade_choices, grade)));

  return self;
}

/**
 * bb_axis_new_shares:
 * @title: the share of what
 *
 * Returns: (transfer full): an axis from 0 to 100 %
 */
BbAxis *
bb_axis_new_shares (const char *title)
{
  BbAxis *self = axis_new (BB_SCALE_SHARE, title, 0.0, 1.0 + ROOM);

  for (int percent = 0; percent <= 100; percent += 20)
    add_tick (self, percent / 100.0, g_strdup_printf ("%d", percent));

  return self;
}

/**
 * bb_axis_new_names:
 * @title: what is named
 * @names: (array zero-terminated=1): the names
 *
 * Returns: (transfer full): an axis with the names at 1, 2, …
 */
BbAxis *
bb_axis_new_names (const char         *title,
                   const char * const *names)
{
  guint n = g_strv_length ((GStrv) names);
  BbAxis *self = axis_new (BB_SCALE_NAMES, title, 0.5, MAX (n, 1) + 0.5);

  for (guint i = 0; i < n; i++)
    add_tick (self, i + 1.0, g_strdup (names[i]));

  return self;
}

/**
 * bb_axis_free:
 * @self: (transfer full): an axis
 */
void
bb_axis_free (BbAxis *self)
{
  g_free (self->title);
  g_free (self->unit);
  g_array_unref (self->ticks);
  g_free (self);
}

/**
 * bb_axis_map:
 * @self: an axis
 * @value: a value
 *
 * Returns: where it stands: 0 at the axis's low end, 1 at its high end, and beyond that outside of it
 */
double
bb_axis_map (const BbAxis *self,
             double        value)
{
  return (value - self->low) / (self->high - self->low);
}

/**
 * bb_axis_unmap:
 * @self: an axis
 * @place: a place as bb_axis_map() gives it
 *
 * Returns: the value that stands there
 */
double
bb_axis_unmap (const BbAxis *self,
               double        place)
{
  return self->low + place * (self->high - self->low);
}

/**
 * bb_axis_dup_heading:
 * @self: an axis
 *
 * Returns: (transfer full): the title with the unit
 */
char *
bb_axis_dup_heading (const BbAxis *self)
{
  if (self->scale == BB_SCALE_SHARE)
    return g_strdup_printf ("%s (%%)", self->title);

  return self->unit != NULL ? g_strdup_printf ("%s (%s)", self->title, self->unit) : g_strdup (self->title);
}

static char *
format_number (const BbAxis *self,
               double        value)
{
  /* A tenth of the distance between two marks is what can be read off. */
  double step = self->ticks->len > 1
                  ? g_array_index (self->ticks, BbTick, 1).value - g_array_index (self->ticks, BbTick, 0).value
                  : self->high - self->low;
  g_autofree char *number = g_strdup_printf ("%.*f", decimals_of (step / 10.0), value);

  return self->unit != NULL ? g_strdup_printf ("%s %s", number, self->unit) : g_steal_pointer (&number);
}

static char *
format_name (const BbAxis *self,
             double        value)
{
  gint64 place = lround (value);

  return g_strdup (place >= 1 && place <= (gint64) self->ticks->len
                     ? g_array_index (self->ticks, BbTick, place - 1).label
                     : "");
}

/**
 * bb_axis_format:
 * @self: an axis
 * @value: a value on it
 *
 * Returns: (transfer full): the value as a person reads it, with its unit
 */
char *
bb_axis_format (const BbAxis *self,
                double        value)
{
  switch (self->scale)
    {
    case BB_SCALE_CYCLES:
      return g_strdup_printf (ngettext ("%d cycle", "%d cycles", (gulong) lround (value)), (int) lround (value));
    case BB_SCALE_GRADE:
      /* Translators: a grade of the grey scale, like 4-5. */
      return g_strdup_printf (_("grade %s"), bb_choices_get_title (&bb_grade_choices, bb_grade_from_number (value)));
    case BB_SCALE_SHARE:
      return g_strdup_printf ("%.1f %%", value * 100.0);
    case BB_SCALE_NAMES:
      return format_name (self, value);
    case BB_SCALE_NUMBER:
    default:
      return format_number (self, value);
    }
}
