/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "bb-cure-profile.h"
#include "bb-drying.h"
#include "bb-fibre-data.h"
#include "bb-steam.h"
#include "reference.h"

/* Holds the heat calculators against the published values in tests/reference; each file says where they are from. */

#define S_PER_MIN 60.0

static void
add_sample (BbCureProfileIn *in,
            double           t_min,
            double           c)
{
  BbProbeSample sample = { .t_s = t_min * S_PER_MIN, .c = c };

  if (in->samples == NULL)
    in->samples = g_array_new (FALSE, FALSE, sizeof (BbProbeSample));
  g_array_append_val (in->samples, sample);
}

static double
equivalent_min (BbCureProfileIn *in)
{
  g_autoptr (BbCureProfileOut) out = bb_cure_profile_out_new ();
  g_autoptr (GError) error = NULL;

  in->required_s = S_PER_MIN;
  g_assert_true (bb_calculator_run (&bb_cure_profile_calculator, in, out, &error));
  g_assert_no_error (error);

  return out->equivalent_s / S_PER_MIN;
}

/* Half a unit of the last printed digit. */
static double
printed_half (const char *printed)
{
  const char *point = strchr (printed, '.');

  return 0.5 * pow (10.0, point == NULL ? 0 : -(double) strlen (point + 1));
}

/* A hold: "T=110 C, Tref=121.11 C, z=10 C" for one minute, or "10 min at 101.1 C, Tref=121.1 C, z=10 C". */
static gboolean
read_hold (const char      *text,
           BbCureProfileIn *in)
{
  double minutes = 1;
  double c = 0;

  if (sscanf (text, "T=%lf C, Tref=%lf C, z=%lf C", &c, &in->reference_c, &in->z_c) != 3 &&
      sscanf (text, "%lf min at %lf C, Tref=%lf C, z=%lf C", &minutes, &c, &in->reference_c, &in->z_c) != 4)
    return FALSE;
  add_sample (in, 0, c);
  add_sample (in, minutes, c);

  return TRUE;
}

static void
test_lethal_rates (void)
{
  g_autoptr (Reference) table = reference_load ("process-lethality");
  guint n_rows = 0;
  guint n_published = 0;
  double largest = 0;

  for (guint i = 0; i < reference_get_length (table); i++)
    {
      const char *which = reference_get_text (table, i, "case");
      const char *published = reference_get_text (table, i, "published_value");
      g_autoptr (BbCureProfileIn) in = bb_cure_profile_in_new ();
      double computed = reference_get_number (table, i, "computed_value");
      double actual = 0;

      if (!read_hold (which, in))
        continue;
      actual = equivalent_min (in);
      /* The computed column has twelve decimals. */
      g_assert_cmpfloat_with_epsilon (actual, computed, 1e-12 * fmax (1, computed) + 6e-13);
      largest = fmax (largest, fabs (actual - computed) / computed);
      n_rows++;
      if (*published != '\0')
        {
          g_assert_cmpfloat_with_epsilon (actual, g_ascii_strtod (published, NULL), printed_half (published));
          n_published++;
        }
    }

  g_test_message ("%u rates, %u of them published; largest relative deviation %.2g", n_rows, n_published, largest);
  g_assert_cmpuint (n_rows, >=, 40);
  g_assert_cmpuint (n_published, >=, 5);
}

/* "0 min 25 C; 1 min 160 C; …; Tref=160 C, z=20 C" with straight lines between, sampled each step. */
static void
read_profile (const char      *text,
              double           step_min,
              BbCureProfileIn *in)
{
  g_auto (GStrv) parts = g_strsplit (text, "; ", -1);
  double last_min = 0;
  double last_c = 0;

  for (guint i = 0; parts[i] != NULL; i++)
    {
      double t_min = 0;
      double c = 0;

      if (sscanf (parts[i], "Tref=%lf C, z=%lf C", &in->reference_c, &in->z_c) == 2)
        return;
      g_assert_cmpint (sscanf (parts[i], "%lf min %lf C", &t_min, &c), ==, 2);
      if (i > 0)
        {
          guint n = (guint) lround ((t_min - last_min) / step_min);

          for (guint k = 1; k < n; k++)
            add_sample (in, last_min + (t_min - last_min) * k / n, last_c + (c - last_c) * k / n);
        }
      add_sample (in, t_min, c);
      last_min = t_min;
      last_c = c;
    }
  g_assert_not_reached ();
}

static void
test_profiles (void)
{
  g_autoptr (Reference) table = reference_load ("process-lethality");
  guint n_profiles = 0;
  double exact = 0;

  for (guint i = 0; i < reference_get_length (table); i++)
    {
      const char *quantity = reference_get_text (table, i, "quantity");
      const char *which = reference_get_text (table, i, "case");
      g_autoptr (BbCureProfileIn) in = bb_cure_profile_in_new ();
      double computed = reference_get_number (table, i, "computed_value");
      double step_min = 0;
      double actual = 0;

      if (g_str_equal (quantity, "equivalent_min_exact_piecewise_linear"))
        exact = computed;
      if (sscanf (quantity, "equivalent_min_trapezoid_step_%lf_min", &step_min) != 1)
        continue;

      read_profile (which, step_min, in);
      actual = equivalent_min (in);
      g_test_message ("%s: %.12g, trapezoid %.12g, closed form %.12g", which, actual, computed, exact);
      g_assert_cmpfloat_with_epsilon (actual, computed, 1e-11);
      /* The rate is convex along a straight line: the trapezoid lies above, by x² / 12 with x = ln 10 · step / z. */
      g_assert_cmpfloat (actual, >=, exact - 1e-11);
      g_assert_cmpfloat (actual, <=, exact * 1.0013);
      n_profiles++;
    }

  g_assert_cmpuint (n_profiles, ==, 6);
}

/* The closed form of a straight rise, dt · z / ln 10 · (rate₂ − rate₁) / (c₂ − c₁), and the share the header states. */
static void
test_one_rise (void)
{
  const struct {
    double rise_in_z;
    double excess;
  } cases[] = { { 1, 0.41 }, { 0.25, 0.03 }, { 0.1, 0.004 } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BbCureProfileIn) in = bb_cure_profile_in_new ();
      double exact = (1 - pow (10, -cases[i].rise_in_z)) / (log (10) * cases[i].rise_in_z);

      in->reference_c = 160;
      in->z_c = 20;
      add_sample (in, 0, 160 - 20 * cases[i].rise_in_z);
      add_sample (in, 1, 160);
      g_assert_cmpfloat_with_epsilon (equivalent_min (in) / exact - 1, cases[i].excess, 0.005 * (i < 2 ? 1 : 0.1));
    }
}

static double
lookup_at (const Reference *table,
           const char      *quantity,
           const char      *temperature_c)
{
  for (guint i = 0; i < reference_get_length (table); i++)
    if (g_str_equal (reference_get_text (table, i, "quantity"), quantity) &&
        g_str_equal (reference_get_text (table, i, "temperature_C"), temperature_c))
      return reference_get_number (table, i, "value");

  g_assert_not_reached ();
}

/* Energy in kJ to dry a kilogram of water and nothing else. */
static double
energy_to_dry (double start_c)
{
  g_autoptr (BbDryingIn) in = bb_drying_in_new ();
  g_autoptr (BbDryingOut) out = bb_drying_out_new ();
  g_autoptr (GError) error = NULL;
  BbFibreShare cotton = { .fibre = BB_FIBRE_COTTON, .fraction = 1 };

  in->wet_g = 1000;
  in->solids_fraction = 0;
  in->heated_fabric_g = 0;
  in->composition = g_array_new (FALSE, FALSE, sizeof (BbFibreShare));
  g_array_append_val (in->composition, cotton);
  in->start_c = start_c;
  in->press_c = 160;
  g_assert_true (bb_calculator_run (&bb_drying_calculator, in, out, &error));
  g_assert_no_error (error);

  return out->energy_kj;
}

static void
test_water (void)
{
  g_autoptr (Reference) table = reference_load ("water-properties");
  double vapour = lookup_at (table, "sat_vapour_enthalpy", "100");
  double largest = 0;
  guint n_starts = 0;

  g_assert_cmpfloat (lookup_at (table, "latent_heat", "100"), ==, BB_WATER_LATENT_HEAT_J_PER_G);

  for (guint i = 0; i < reference_get_length (table); i++)
    {
      double start_c = reference_get_number (table, i, "temperature_C");
      double deviation = 0;

      if (!g_str_equal (reference_get_text (table, i, "quantity"), "sat_liquid_enthalpy") ||
          start_c > BB_WATER_BOILING_C)
        continue;
      deviation = energy_to_dry (start_c) - (vapour - reference_get_number (table, i, "value"));
      g_assert_cmpfloat (fabs (deviation), <, 0.4);
      largest = fmax (largest, fabs (deviation));
      n_starts++;
    }

  g_test_message ("%u starts, largest deviation %.3g kJ of about 2,500", n_starts, largest);
  g_assert_cmpuint (n_starts, >=, 17);
}

/* From what rows of textile-properties.csv a value is; a value between the lowest and the highest is theirs. */
typedef struct {
  BbFibre fibre;
  const char *property;
  const char *rows[3];
} Backing;

static const Backing backings[] = {
  { BB_FIBRE_COTTON, "equilibrium regain", { "cotton" } },
  { BB_FIBRE_POLYESTER, "equilibrium regain", { "polyester" } },
  { BB_FIBRE_VISCOSE, "equilibrium regain", { "viscose" } },
  { BB_FIBRE_LINEN, "equilibrium regain", { "flax/linen" } },
  { BB_FIBRE_HEMP, "equilibrium regain", { "hemp" } },
  { BB_FIBRE_WOOL, "equilibrium regain", { "wool" } },
  { BB_FIBRE_SILK, "equilibrium regain", { "silk" } },
  { BB_FIBRE_POLYAMIDE, "equilibrium regain", { "nylon" } },
  { BB_FIBRE_ACRYLIC, "equilibrium regain", { "acrylic" } },
  { BB_FIBRE_POLYPROPYLENE, "equilibrium regain", { "polypropylene" } },
  { BB_FIBRE_ELASTANE, "equilibrium regain", { "elastane" } },
  { BB_FIBRE_COTTON, "specific heat capacity", { "cotton" } },
  { BB_FIBRE_POLYESTER, "specific heat capacity", { "polyester (PET)" } },
  { BB_FIBRE_VISCOSE, "specific heat capacity", { "viscose rayon" } },
  { BB_FIBRE_WOOL, "specific heat capacity", { "wool" } },
  { BB_FIBRE_SILK, "specific heat capacity", { "silk" } },
  { BB_FIBRE_POLYAMIDE, "specific heat capacity", { "nylon 6", "nylon 6.6" } },
  { BB_FIBRE_POLYPROPYLENE, "specific heat capacity", { "polypropylene" } },
  { BB_FIBRE_COTTON, "hottest iron", { "cotton" } },
  { BB_FIBRE_LINEN, "hottest iron", { "flax/linen" } },
  { BB_FIBRE_WOOL, "hottest iron", { "wool" } },
  { BB_FIBRE_SILK, "hottest iron", { "silk" } },
  { BB_FIBRE_POLYESTER, "hottest iron", { "polyester" } },
  { BB_FIBRE_VISCOSE, "hottest iron", { "viscose" } },
  { BB_FIBRE_POLYAMIDE, "hottest iron", { "nylon" } },
  { BB_FIBRE_ACRYLIC, "hottest iron", { "acrylic" } },
  { BB_FIBRE_ELASTANE, "sticking/softening", { "elastane (spandex)" } },
};

static double
value_of (const Backing *backing)
{
  const BbFibreData *data = bb_fibre_data_get (backing->fibre);

  if (g_str_equal (backing->property, "equilibrium regain"))
    return data->regain_fraction * 100;
  if (g_str_equal (backing->property, "specific heat capacity"))
    return data->heat_capacity_j_per_g_k;

  return data->heat_limit_c;
}

static gboolean
backs (const Backing   *backing,
       const Reference *table,
       guint            row)
{
  const char *condition = reference_get_text (table, row, "condition");

  if (!g_str_equal (reference_get_text (table, row, "property"), backing->property) ||
      strstr (reference_get_text (table, row, "status"), "from memory") != NULL)
    return FALSE;
  /* Regain is also listed for damper air than the standard atmosphere's. */
  if (g_str_has_prefix (condition, "95") || g_str_has_prefix (condition, "100"))
    return FALSE;

  for (guint i = 0; i < G_N_ELEMENTS (backing->rows) && backing->rows[i] != NULL; i++)
    if (g_str_equal (reference_get_text (table, row, "fibre"), backing->rows[i]))
      return TRUE;

  return FALSE;
}

static void
test_fibres (void)
{
  g_autoptr (Reference) table = reference_load ("textile-properties");

  for (guint i = 0; i < G_N_ELEMENTS (backings); i++)
    {
      double low = (double) INFINITY;
      double high = (double) -INFINITY;
      double value = value_of (&backings[i]);

      for (guint r = 0; r < reference_get_length (table); r++)
        if (backs (&backings[i], table, r))
          {
            low = fmin (low, reference_get_number (table, r, "low"));
            high = fmax (high, reference_get_number (table, r, "high"));
          }
      g_test_message ("%s %s: %g, published %g to %g", bb_fibre_choices.items[backings[i].fibre].key,
                      backings[i].property, value, low, high);
      g_assert_cmpfloat (value, >=, low - 1e-9);
      g_assert_cmpfloat (value, <=, high + 1e-9);
    }
}

static void
test_every_fibre_is_described (void)
{
  for (guint f = 0; f < BB_N_FIBRES; f++)
    {
      const BbFibreData *data = bb_fibre_data_get ((BbFibre) f);

      g_assert_nonnull (data->limit_reason);
      g_assert_cmpfloat (data->heat_capacity_j_per_g_k, >, 0.5);
      g_assert_cmpfloat (data->heat_limit_c, >=, 100);
      g_assert_cmpfloat (data->regain_fraction, >=, 0);
    }
  g_assert_cmpuint (BB_N_FIBRES, ==, bb_fibre_choices.n_items);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/heat-reference/lethal-rates", test_lethal_rates);
  g_test_add_func ("/heat-reference/profiles", test_profiles);
  g_test_add_func ("/heat-reference/one-rise", test_one_rise);
  g_test_add_func ("/heat-reference/water", test_water);
  g_test_add_func ("/heat-reference/fibres", test_fibres);
  g_test_add_func ("/heat-reference/every-fibre-is-described", test_every_fibre_is_described);

  return g_test_run ();
}
