/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <string.h>

#include "bb-batch.h"
#include "bb-box.h"
#include "bb-canonical.h"
#include "bb-control-chart.h"
#include "bb-cost.h"
#include "bb-cure-profile.h"
#include "bb-laydown.h"
#include "bb-line-rate.h"
#include "bb-mix.h"
#include "bb-nozzle-balance.h"
#include "bb-problem.h"
#include "bb-solids-match.h"
#include "bb-spray-fit.h"
#include "bb-stretch.h"
#include "bb-tunnel.h"
#include "bb-weigh-in.h"

/*
 * The limits of the keys, from the field tables themselves: input anywhere within them gives finite results, and a
 * value beyond one is refused by a message that names the key.
 */

#define N_TRIALS 4000
#define SEED 20250316

static const BbCalculator * const tried[] = {
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
  &bb_tunnel_calculator,
  &bb_cure_profile_calculator,
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
    case BB_KIND_NUMBERS:
    case BB_KIND_LIST:
      bb_field_clear (field, record);
      n = g_rand_int_range (rand, (int) field->count.minimum, (int) field->count.minimum + 12);
      for (int i = 0; i < n; i++)
        if (field->kind == BB_KIND_NUMBERS)
          {
            value = random_value (rand, &field->limits);
            g_array_append_val (bb_field_ensure_array (field, record), value);
          }
        else
          fill_record (rand, field->item, bb_field_append_item (field, record));
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

static void
assert_refused (const BbTable *table,
                gconstpointer  record,
                const char    *name)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (bb_record_validate (table, record, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  if (!g_str_has_prefix (error->message, name))
    g_error ("%s is refused as \"%s\"", name, error->message);
}

static void
try_beyond (GRand         *rand,
            const BbTable *table,
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

      fill_record (rand, table, record);
      if (field->kind == BB_KIND_NUMBER)
        bb_field_set_number (field, record, values[i]);
      else if (field->kind == BB_KIND_INTEGER)
        bb_field_set_integer (field, record, (gint64) whole[i % 2]);
      else
        g_array_index (bb_field_ensure_array (field, record), double, 0) = values[i];
      assert_refused (table, record, field->name);
      bb_record_free (table, record);
    }
}

static void
try_table (GRand         *rand,
           const BbTable *table)
{
  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];

      if (field->kind == BB_KIND_LIST)
        try_table (rand, field->item);
      if (field->kind == BB_KIND_NUMBER || field->kind == BB_KIND_INTEGER || field->kind == BB_KIND_NUMBERS)
        try_beyond (rand, table, field);
      if (field->required)
        {
          gpointer record = bb_record_new (table);

          fill_record (rand, table, record);
          bb_field_clear (field, record);
          assert_refused (table, record, field->name);
          bb_record_free (table, record);
        }
    }
}

static void
test_beyond (gconstpointer data)
{
  const BbCalculator *calculator = data;
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 1);

  try_table (rand, calculator->in);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (tried); i++)
    {
      g_autofree char *within = g_strdup_printf ("/limits/%s/within", tried[i]->name);
      g_autofree char *beyond = g_strdup_printf ("/limits/%s/beyond", tried[i]->name);

      g_test_add_data_func (within, tried[i], test_within);
      g_test_add_data_func (beyond, tried[i], test_beyond);
    }

  return g_test_run ();
}
