/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-wash-charts.h"

#include <glib/gi18n-lib.h>

#include "bb-wash-proof.h"

/* Points that lie on each other are drawn this many lines' widths beside each other, but no further than this in all:
 * never up or down, so that each is seen at its grade, and never to the left, so that none is seen short of its washes.
 */
#define SHIFT 4.0
#define MOST_SHIFT 12.0

static double
last_cycle (const BbWashEvidence *evidence)
{
  gint64 last = evidence->revision->proof_cycles;

  for (guint s = 0; s < evidence->specimens->len; s++)
    {
      const BbSpecimen *specimen = evidence->specimens->pdata[s];

      last = MAX (last, specimen->test->plan_cycles);
      for (guint r = 0; r < specimen->readings->len; r++)
        last = MAX (last, ((const BbReading *) specimen->readings->pdata[r])->cycles);
    }

  return (double) last;
}

static char *
describe_reading (const BbReading *reading,
                  gboolean         fails)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);

  if (fails)
    g_ptr_array_add (lines, g_strdup (_("Fails")));
  if (reading->stain != BB_CHOICE_NONE)
    g_ptr_array_add (lines, g_strdup_printf (_("Staining %s"),
                                             bb_choices_get_title (&bb_grade_choices, reading->stain)));
  if (reading->crack != BB_CRACK_NONE)
    g_ptr_array_add (lines, g_strdup_printf (_("Cracking: %s"),
                                             bb_choices_get_title (&bb_crack_choices, reading->crack)));
  if (reading->change_measured != BB_CHOICE_NONE)
    g_ptr_array_add (lines, g_strdup_printf (_("Measured %s"),
                                             bb_choices_get_title (&bb_grade_choices, reading->change_measured)));
  if (lines->len == 0)
    return NULL;
  g_ptr_array_add (lines, NULL);

  return g_strjoinv ("\n", (GStrv) lines->pdata);
}

static BbSeries *
make_grades (const BbWashEvidence *evidence,
             const BbSpecimen     *specimen,
             guint                 index)
{
  BbSeries *series = bb_series_new (specimen->test->code, bb_marker_of_series (index),
                                    specimen->counts ? BB_STROKE_SOLID : BB_STROKE_DOTTED, index);

  for (guint r = 0; r < specimen->readings->len; r++)
    {
      const BbReading *reading = specimen->readings->pdata[r];
      gboolean fails = bb_wash_proof_find_faults (evidence->revision, reading) != 0;
      BbPoint *point = bb_series_add (series, (double) reading->cycles, bb_grade_to_number ((BbGrade) reading->change));

      point->marker = fails ? BB_MARKER_CROSS : BB_MARKER_NONE;
      point->note = describe_reading (reading, fails);
    }

  return series;
}

static void
add_cycles_asked_for (BbChart              *chart,
                      const BbWashEvidence *evidence)
{
  int cycles = (int) evidence->revision->proof_cycles;
  g_autofree char *label = g_strdup_printf (ngettext ("%d cycle asked for", "%d cycles asked for", (gulong) cycles),
                                            cycles);

  bb_chart_take_layer (chart, bb_limit_layer_new (cycles, TRUE, label));
}

static gboolean
any_fails (const BbWashEvidence *evidence)
{
  for (guint s = 0; s < evidence->specimens->len; s++)
    {
      const BbSpecimen *specimen = evidence->specimens->pdata[s];

      for (guint r = 0; r < specimen->readings->len; r++)
        if (bb_wash_proof_find_faults (evidence->revision, specimen->readings->pdata[r]) != 0)
          return TRUE;
    }

  return FALSE;
}

/**
 * bb_wash_chart_grades:
 * @evidence: what the wash log has on a revision
 * @wash_test: key of the specimen that stands out; 0 for none
 *
 * Each specimen's grade of change by cycles, with the least grade that passes and the cycles that it has to stand. A
 * cross is a reading that fails, by its change, staining or cracking; a dotted line a specimen that does not count.
 *
 * Returns: (transfer full): a chart
 */
BbChart *
bb_wash_chart_grades (const BbWashEvidence *evidence,
                      gint64                wash_test)
{
  BbChart *chart = bb_chart_new (_("Grade by cycle, specimen by specimen"), bb_axis_new_cycles (last_cycle (evidence)),
                                 bb_axis_new_grades (_("Grade of change in colour")));
  g_autofree char *least = g_strdup_printf (_("least grade %s"),
                                            bb_choices_get_title (&bb_grade_choices, evidence->revision->proof_change));
  double spread = MIN (SHIFT * MAX ((double) evidence->specimens->len - 1.0, 0.0), MOST_SHIFT);

  g_free (chart->empty);
  chart->empty = g_strdup (_("No specimen has been read yet."));
  bb_chart_take_layer (chart, bb_limit_layer_new (bb_grade_to_number ((BbGrade) evidence->revision->proof_change),
                                                  FALSE, least));
  add_cycles_asked_for (chart, evidence);
  for (guint s = 0; s < evidence->specimens->len; s++)
    {
      const BbSpecimen *specimen = evidence->specimens->pdata[s];
      BbLayer *layer = bb_chart_take_layer (chart, bb_line_layer_new (make_grades (evidence, specimen, s)));

      layer->stands_out = wash_test != 0 && specimen->test->id == wash_test;
      if (evidence->specimens->len > 1)
        layer->shift = spread * (double) s / ((double) evidence->specimens->len - 1.0);
    }
  if (any_fails (evidence))
    bb_chart_take_layer (chart, bb_line_layer_new (bb_series_new (_("a reading that fails"), BB_MARKER_CROSS,
                                                                  BB_STROKE_NONE, BB_INK_TEXT)));

  return chart;
}

/* Where a specimen left the log while it was good, the curve at that number of cycles. */
static double
survival_at (const GArray *steps,
             double        cycles)
{
  double survival = 1.0;

  for (guint i = 0; i < steps->len; i++)
    {
      const BbSurvivalStep *step = &g_array_index (steps, BbSurvivalStep, i);

      if (step->cycles > cycles)
        break;
      survival = step->survival;
    }

  return survival;
}

static int
compare_points (gconstpointer a,
                gconstpointer b)
{
  const BbPoint *first = a;
  const BbPoint *second = b;

  return (first->x > second->x) - (first->x < second->x);
}

/* The last reading of each specimen that counts and never failed; and the last of all, in @end. */
static BbSeries *
make_leavings (const BbWashEvidence *evidence,
               const char           *name,
               BbMarker              marker,
               guint                 ink,
               double               *end)
{
  BbSeries *series = bb_series_new (name, marker, BB_STROKE_NONE, ink);

  *end = 0.0;
  for (guint s = 0; s < evidence->specimens->len; s++)
    {
      const BbSpecimen *specimen = evidence->specimens->pdata[s];
      gboolean failed = FALSE;
      double last = 0.0;

      if (!specimen->counts || specimen->readings->len == 0)
        continue;
      for (guint r = 0; r < specimen->readings->len; r++)
        {
          const BbReading *reading = specimen->readings->pdata[r];

          failed = failed || bb_wash_proof_find_faults (evidence->revision, reading) != 0;
          last = (double) reading->cycles;
        }
      *end = MAX (*end, last);
      if (!failed)
        bb_series_add (series, last, survival_at (evidence->life->steps, last))->note = g_strdup (specimen->test->code);
    }
  g_array_sort (series->points, compare_points);

  return series;
}

static BbSeries *
make_survival (const BbWashEvidence *evidence,
               const char           *name,
               BbStroke              stroke,
               guint                 ink,
               double                end)
{
  const GArray *steps = evidence->life->steps;
  BbSeries *series = bb_series_new (name, BB_MARKER_NONE, stroke, ink);
  const BbSurvivalStep *last = steps->len > 0 ? &g_array_index (steps, BbSurvivalStep, steps->len - 1) : NULL;

  bb_series_add (series, 0.0, 1.0);
  for (guint i = 0; i < steps->len; i++)
    {
      const BbSurvivalStep *step = &g_array_index (steps, BbSurvivalStep, i);
      BbPoint *point = bb_series_add (series, step->cycles, step->survival);

      point->low = step->low;
      point->high = step->high;
      point->note = g_strdup_printf (ngettext ("%d of %d failed here", "%d of %d failed here", (gulong) step->at_risk),
                                     (int) step->events, (int) step->at_risk);
    }
  if (last == NULL || end > last->cycles)
    {
      BbPoint *point = bb_series_add (series, end, last != NULL ? last->survival : 1.0);

      point->low = last != NULL ? last->low : (double) NAN;
      point->high = last != NULL ? last->high : (double) NAN;
    }

  return series;
}

/**
 * bb_wash_chart_survival:
 * @evidence: what the wash log has on a revision
 *
 * The share of specimens that are still good by cycles: Kaplan and Meier's estimate with its 95 % band, as the
 * calculator `wash-life` gives them, and where specimens left the log while they were good.
 *
 * Returns: (transfer full): a chart
 */
BbChart *
bb_wash_chart_survival (const BbWashEvidence *evidence)
{
  BbChart *chart = bb_chart_new (_("How long prints last"), bb_axis_new_cycles (last_cycle (evidence)),
                                 bb_axis_new_shares (_("Still good")));
  BbSeries *leavings = NULL;
  double end = 0.0;

  g_free (chart->empty);
  chart->empty = g_strdup (_("No specimen that counts has been read yet."));
  add_cycles_asked_for (chart, evidence);
  if (evidence->life == NULL)
    return chart;

  leavings = make_leavings (evidence, _("still good when last read"), BB_MARKER_PLUS, 0, &end);
  bb_chart_take_layer (chart, bb_step_layer_new (make_survival (evidence, _("still good, with its 95 % band"),
                                                                BB_STROKE_SOLID, 0, end)));
  bb_chart_take_layer (chart, bb_line_layer_new (leavings))->in_legend = leavings->points->len > 0;

  return chart;
}

static void
add_life (BbChart              *chart,
          const BbWashEvidence *evidence,
          guint                 index)
{
  /* Translators: a revision's code. */
  g_autofree char *name = g_strdup_printf (_("%s, with its 95 %% band"), evidence->revision->code);
  g_autofree char *left = g_strdup_printf (_("%s, still good when last read"), evidence->revision->code);
  BbSeries *leavings = NULL;
  double end = 0.0;

  if (evidence->life == NULL)
    return;

  leavings = make_leavings (evidence, left, index == 0 ? BB_MARKER_PLUS : BB_MARKER_RING, index, &end);
  bb_chart_take_layer (chart, bb_step_layer_new (make_survival (evidence, name,
                                                                index == 0 ? BB_STROKE_SOLID : BB_STROKE_DASHED,
                                                                index, end)));
  bb_chart_take_layer (chart, bb_line_layer_new (leavings))->in_legend = leavings->points->len > 0;
}

/**
 * bb_wash_chart_lives:
 * @first: what the wash log has on a revision
 * @second: what it has on another
 *
 * How long the prints of two revisions last, the first drawn through, the second in dashes; each as
 * bb_wash_chart_survival() has it.
 *
 * Returns: (transfer full): a chart
 */
BbChart *
bb_wash_chart_lives (const BbWashEvidence *first,
                     const BbWashEvidence *second)
{
  BbChart *chart = bb_chart_new (_("How long prints last, of two revisions"),
                                 bb_axis_new_cycles (MAX (last_cycle (first), last_cycle (second))),
                                 bb_axis_new_shares (_("Still good")));

  g_free (chart->empty);
  chart->empty = g_strdup (_("No specimen that counts has been read yet."));
  add_life (chart, first, 0);
  add_life (chart, second, 1);

  return chart;
}

static void
add_rate (BbSeries             *series,
          double                place,
          const BbWashEvidence *evidence)
{
  guint tested = evidence->n_passed + evidence->n_failed;
  BbPoint *point = NULL;

  if (tested == 0)
    return;
  point = bb_series_add (series, place, evidence->rate.rate);
  point->low = evidence->rate.lower;
  point->high = evidence->rate.upper;
  /* Translators: how many of how many specimens passed. */
  point->note = g_strdup_printf (_("%u of %u passed"), evidence->n_passed, tested);
}

/**
 * bb_wash_chart_compare:
 * @first: what the wash log has on a revision
 * @second: what it has on another
 *
 * Two revisions side by side: the share of specimens that passed, with its two-sided bounds at the shop's confidence,
 * and below what Fisher's exact test says of the difference.
 *
 * Returns: (transfer full): a chart
 */
BbChart *
bb_wash_chart_compare (const BbWashEvidence *first,
                       const BbWashEvidence *second)
{
  const char * const names[] = { first->revision->code, second->revision->code, NULL };
  BbChart *chart = bb_chart_new (_("Share of specimens that passed"), bb_axis_new_names (_("Revision"), names),
                                 bb_axis_new_shares (_("Passed")));
  g_autofree char *name = g_strdup_printf (_("passed, with the bounds at %d %% confidence"),
                                           (int) (first->shop->proof_confidence_fraction * 100.0 + 1e-9));
  BbSeries *series = bb_series_new (name, BB_MARKER_CIRCLE, BB_STROKE_NONE, 0);
  g_autoptr (BbCompareOut) compared = bb_compare_out_new ();
  g_autoptr (GError) error = NULL;

  add_rate (series, 1.0, first);
  add_rate (series, 2.0, second);
  bb_chart_take_layer (chart, bb_line_layer_new (series));
  chart->caption = bb_wash_evidence_compare (first, second, compared, &error);
  if (chart->caption == NULL)
    chart->caption = g_strdup (error->message);

  return chart;
}
