/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <string.h>

#include "bb-batch.h"
#include "bb-box.h"
#include "bb-calculators.h"
#include "bb-canonical.h"
#include "bb-colour-difference.h"
#include "bb-control-chart.h"
#include "bb-cost.h"
#include "bb-cure-profile.h"
#include "bb-drying.h"
#include "bb-fastness-change.h"
#include "bb-fastness-stain.h"
#include "bb-heat-limit.h"
#include "bb-laydown.h"
#include "bb-line-rate.h"
#include "bb-mix.h"
#include "bb-nozzle-balance.h"
#include "bb-pass-rate.h"
#include "bb-press-map.h"
#include "bb-problem.h"
#include "bb-solids-match.h"
#include "bb-spray-fit.h"
#include "bb-stretch.h"
#include "bb-tunnel.h"
#include "bb-wash-verdict.h"
#include "bb-weigh-in.h"

/*
 * The limits of the keys, from the field tables themselves: input anywhere within them gives finite results, and a
 * value or a number of items beyond one is refused by a message that names the key.
 */

#define N_TRIALS 4000
#define SEED 20250316

/*
 * Those that answer most of what is drawn key by key. wash-life and process-window have a test of extremes beside their
 * others; compare takes too long at its upper limits; trial-plan refuses most of what is drawn.
 */
static const BbCalculator * const answering[] = {
  &bb_box_calculator,
  &bb_laydown_calculator,
  &bb_batch_calculator,
  &bb_mix_calculator,
  &bb_stretch_calculator,
  &bb_solids_match_calculator,
  &bb_weigh_in_calculator,
  &bb_control_chart_calculator,
  &bb_spray_fit_calculator,
  &bb_nozzle_balance_calculator,
  &bb_drying_calculator,
  &bb_press_map_calculator,
  &bb_tunnel_calculator,
  &bb_cure_profile_calculator,
  &bb_heat_limit_calculator,
  &bb_colour_difference_calculator,
  &bb_fastness_change_calculator,
  &bb_fastness_stain_calculator,
  &bb_wash_verdict_calculator,
  &bb_pass_rate_calculator,
  &bb_cost_calculator,
  &bb_line_rate_calculator,
};

/* What is refused although each key is within its limits. */
static const char * const rules_between_keys[] = {
  "print_width_mm: ",
  "print_height_mm: ",
  "wet_g: ",
  "baseline_count: ",
  "concentrate_ml_available: ",
  "points: all are at one setting",
  "points: every set_c is the same",
  "points: surface_c changes by",
  "readings: cycles",
  "passed: ",
  "heated_length_mm: missing. Give exactly 2",
  "belt_mm_per_s: missing. Give exactly 2",
  "dwell_s: ",
  "samples: ",
  "z_c: ",
};

static double
random_value (GRand          *rand,
              const BbLimits *limits)
{
  double low = limits->open_minimum ? nextafter (limits->minimum, (double) INFINITY) : limits->minimum;
  double high = limits->open_maximum ? nextafter (limits->maximum, (double) -INFINITY) : limits->maximum;

  switch (g_rand_int_range (rand, 0, 4))
    {
    case 0:
      return low;
    case 1:
      return high;
    case 2:
      /* Near the lower end, over many powers of ten. */
      return fmin (high, low + (high - low) * pow (10.0, g_rand_double_range (rand, -18, 0)));
    default:
      return g_rand_double_range (rand, low, high);
    }
}

static void fill_record (GRand         *rand,
                         const BbTable *table,
                         gpointer       record);

/* A few fibres whose shares make the whole. */
static void
fill_composition (GRand         *rand,
                  const BbField *field,
                  gpointer       record)
{
  int n = g_rand_int_range (rand, 1, 4);

  for (int i = 0; i < n; i++)
    {
      BbFibreShare *share = bb_field_append_item (field, record);

      share->fibre = 4 * i + g_rand_int_range (rand, 0, 4);
      share->fraction = 1.0 / n;
    }
}

/* As many readings as rows and columns ask for. */
static void
fill_map (GRand        *rand,
          BbPressMapIn *in)
{
  const BbField *readings = bb_table_find_field (&bb_press_map_in_table, "readings_c");

  in->rows = g_rand_int_range (rand, 1, 5);
  in->columns = g_rand_int_range (rand, 1, 5);
  g_array_set_size (in->readings_c, (guint) (in->rows * in->columns));
  for (guint i = 0; i < in->readings_c->len; i++)
    g_array_index (in->readings_c, double, i) = random_value (rand, &readings->limits);
}

static void
fill_field (GRand         *rand,
            const BbField *field,
            gpointer       record)
{
  double value = 0.0;
  int n = 0;

  switch ((int) field->kind)
    {
    case BB_KIND_NUMBER:
      bb_field_set_number (field, record, random_value (rand, &field->limits));
      break;
    case BB_KIND_INTEGER:
      bb_field_set_integer (field, record, (gint64) random_value (rand, &field->limits));
      break;
    case BB_KIND_TEXT:
      bb_field_set_text (field, record, "Any");
      break;
    case BB_KIND_CHOICE:
      bb_field_set_choice (field, record, g_rand_int_range (rand, 0, (int) field->choices->n_items));
      break;
    case BB_KIND_FLAG:
      bb_field_set_choice (field, record, g_rand_boolean (rand));
      break;
    case BB_KIND_NUMBERS:
    case BB_KIND_LIST:
      bb_field_clear (field, record);
      bb_field_ensure_array (field, record);
      if (field->item == &bb_fibre_share_table)
        {
          fill_composition (rand, field, record);
          break;
        }
      n = g_rand_int_range (rand, (int) field->count.minimum,
                            1 + (int) fmin (field->count.maximum, field->count.minimum + 11));
      for (int i = 0; i < n; i++)
        if (field->kind == BB_KIND_NUMBERS)
          {
            value = random_value (rand, &field->limits);
            g_array_append_val (bb_field_ensure_array (field, record), value);
          }
        else
          fill_record (rand, field->item, bb_field_append_item (field, record));
      /* L* of a colour has limits of its own. */
      if (g_str_has_prefix (field->name, "lab_"))
        g_array_index (bb_field_get_array (field, record), double, 0) = g_rand_int_range (rand, 0, 151);
      break;
    default:
      g_assert_not_reached ();
    }
}

static void
fill_record (GRand         *rand,
             const BbTable *table,
             gpointer       record)
{
  for (guint i = 0; i < table->n_fields; i++)
    if (table->fields[i].required || g_rand_boolean (rand))
      fill_field (rand, &table->fields[i], record);
  if (table == &bb_press_map_in_table)
    fill_map (rand, record);
}

static void
assert_rule_between_keys (const GError *error)
{
  for (guint i = 0; i < G_N_ELEMENTS (rules_between_keys); i++)
    if (g_str_has_prefix (error->message, rules_between_keys[i]) && strstr (error->message, "finite") == NULL)
      return;

  g_test_message ("%s", error->message);
  g_test_fail ();
}

static void
test_within (gconstpointer data)
{
  const BbCalculator *calculator = data;
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  guint n_results = 0;

  for (guint i = 0; i < N_TRIALS; i++)
    {
      gpointer in = bb_record_new (calculator->in);
      gpointer out = bb_record_new (calculator->out);
      g_autoptr (GError) error = NULL;

      fill_record (rand, calculator->in, in);
      if (bb_calculator_run (calculator, in, out, &error))
        n_results++;
      else
        assert_rule_between_keys (error);
      bb_record_free (calculator->in, in);
      bb_record_free (calculator->out, out);
    }
  g_assert_cmpuint (n_results, >, N_TRIALS / 10);
}

/* By a message that begins with the key. */
static void
assert_refused (const BbField *field,
                gconstpointer  record)
{
  BbProblem problem;
  g_autofree char *message = NULL;

  g_assert_true (bb_field_find_problem (field, record, &problem));
  message = bb_problem_to_key_text (&problem);
  if (!g_str_has_prefix (message, field->name))
    g_error ("%s is refused as \"%s\"", field->name, message);
}

static void
try_beyond (const BbTable *table,
            const BbField *field)
{
  const double values[] = { nextafter (field->limits.minimum, (double) -INFINITY),
                            nextafter (field->limits.maximum, (double) INFINITY), 1e308, -1e308,
                            (double) INFINITY, (double) -INFINITY };
  const double whole[] = { field->limits.minimum - 1.0, field->limits.maximum + 1.0 };

  g_assert_true (field->limits.set);
  g_assert_true (isfinite (field->limits.minimum) && isfinite (field->limits.maximum));
  for (guint i = 0; i < G_N_ELEMENTS (values); i++)
    {
      gpointer record = bb_record_new (table);

      if (field->kind == BB_KIND_NUMBER)
        bb_field_set_number (field, record, values[i]);
      else if (field->kind == BB_KIND_INTEGER)
        bb_field_set_integer (field, record, (gint64) whole[i % 2]);
      else
        for (guint n = 0; n < (guint) field->count.minimum; n++)
          g_array_append_val (bb_field_ensure_array (field, record), values[i]);
      assert_refused (field, record);
      bb_record_free (table, record);
    }
}

static void
set_count (const BbField *field,
           gpointer       record,
           guint          n)
{
  double value = field->limits.minimum;

  bb_field_clear (field, record);
  bb_field_ensure_array (field, record);
  for (guint i = 0; i < n; i++)
    if (field->kind == BB_KIND_LIST)
      bb_field_append_item (field, record);
    else
      g_array_append_val (bb_field_get_array (field, record), value);
}

/* One item too few, the fewest, the most, one too many. */
static void
try_counts (const BbTable *table,
            const BbField *field)
{
  const double fewest = field->count.minimum;
  const double most = field->count.maximum;
  gpointer record = bb_record_new (table);
  BbProblem problem;

  g_assert_true (field->count.set);
  g_assert_cmpfloat (most, <=, 10000);
  if (fewest > 0)
    {
      set_count (field, record, (guint) fewest - 1);
      g_assert_true (bb_field_find_problem (field, record, &problem));
      g_assert_cmpint (problem.kind, ==, BB_PROBLEM_TOO_FEW);
    }
  set_count (field, record, (guint) fewest);
  g_assert_false (bb_field_find_problem (field, record, &problem));
  set_count (field, record, (guint) most);
  g_assert_false (bb_field_find_problem (field, record, &problem));
  set_count (field, record, (guint) most + 1);
  g_assert_true (bb_field_find_problem (field, record, &problem));
  g_assert_cmpint (problem.kind, ==, BB_PROBLEM_TOO_MANY);
  bb_record_free (table, record);
}

static void
try_table (const BbTable *table)
{
  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];

      if (field->kind == BB_KIND_LIST)
        try_table (field->item);
      if (field->kind == BB_KIND_LIST || field->kind == BB_KIND_NUMBERS)
        try_counts (table, field);
      if (field->kind == BB_KIND_NUMBER || field->kind == BB_KIND_INTEGER || field->kind == BB_KIND_NUMBERS)
        try_beyond (table, field);
      if (field->required)
        {
          gpointer record = bb_record_new (table);

          bb_field_clear (field, record);
          assert_refused (field, record);
          bb_record_free (table, record);
        }
    }
}

static void
test_beyond (gconstpointer data)
{
  const BbCalculator *calculator = data;

  try_table (calculator->in);
}

int
main (int   argc,
      char *argv[])
{
  guint n_calculators = 0;
  const BbCalculator * const *calculators = bb_calculators (&n_calculators);

  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (answering); i++)
    {
      g_autofree char *path = g_strdup_printf ("/limits/%s/within", answering[i]->name);

      g_test_add_data_func (path, answering[i], test_within);
    }
  for (guint i = 0; i < n_calculators; i++)
    {
      g_autofree char *path = g_strdup_printf ("/limits/%s/beyond", calculators[i]->name);

      g_test_add_data_func (path, calculators[i], test_beyond);
    }

  return g_test_run ();
}
