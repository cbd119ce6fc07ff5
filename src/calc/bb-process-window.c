/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-process-window.h"

#include <gsl/gsl_cdf.h>

#include "bb-window-next.h"
#include "bb-window-search.h"

#define PLACES_OF_ONE 41
#define PLACES_OF_TWO 21
#define NEXT_SPECIMENS 3

static const BbWindowFactor *
get_factor (const BbProcessWindowIn *in,
            guint                    index)
{
  return &g_array_index (in->factors, BbWindowFactor, index);
}

/* The grade of a run as a number, or its hand. */
static double
get_result (const BbWindowRun *run,
            gboolean           hand)
{
  return hand ? run->hand : bb_grade_to_number ((BbGrade) run->grade);
}

static int
compare_runs (gconstpointer a,
              gconstpointer b,
              gpointer      hand)
{
  const BbWindowRun *first = *(const BbWindowRun * const *) a;
  const BbWindowRun *second = *(const BbWindowRun * const *) b;
  double here = get_result (first, GPOINTER_TO_INT (hand));
  double there = get_result (second, GPOINTER_TO_INT (hand));

  for (guint i = first->x->len; here == there && i > 0; i--)
    {
      here = g_array_index (first->x, double, i - 1);
      there = g_array_index (second->x, double, i - 1);
    }

  return (here > there) - (here < there);
}

/* The runs that have the result, borrowed, and sorted, so that their order does not change the last digit of a sum. */
static GPtrArray *
sort_runs (const BbProcessWindowIn *in,
           gboolean                 hand)
{
  GPtrArray *runs = g_ptr_array_new ();

  for (guint i = 0; i < in->runs->len; i++)
    if (!isnan (get_result (&g_array_index (in->runs, BbWindowRun, i), hand)))
      g_ptr_array_add (runs, &g_array_index (in->runs, BbWindowRun, i));
  g_ptr_array_sort_with_data (runs, compare_runs, GINT_TO_POINTER (hand));

  return runs;
}

/* Fits the grades, or the hands of those runs that have one. */
static BbSurface *
fit_runs (const BbProcessWindowIn *in,
          gboolean                 hand,
          guint                   *n_runs)
{
  g_autoptr (GPtrArray) runs = sort_runs (in, hand);
  g_autoptr (GArray) x = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) y = g_array_new (FALSE, FALSE, sizeof (double));

  for (guint i = 0; i < runs->len; i++)
    {
      const BbWindowRun *run = g_ptr_array_index (runs, i);
      double result = get_result (run, hand);

      g_array_append_vals (x, run->x->data, run->x->len);
      g_array_append_val (y, result);
    }

  *n_runs = y->len;
  if (y->len == 0)
    return NULL;

  return bb_surface_fit ((const double *) (gpointer) x->data, (const double *) (gpointer) y->data, y->len,
                         in->factors->len, in->model == BB_WINDOW_QUADRATIC);
}

/* Student's t, from the tail that is small and so keeps its digits. */
static double
quantile_of (double confidence,
             double degrees_of_freedom)
{
  return confidence > 0.5 ? gsl_cdf_tdist_Qinv (1.0 - confidence, degrees_of_freedom)
                          : gsl_cdf_tdist_Pinv (confidence, degrees_of_freedom);
}

static BbWindowDemand
make_demand (const BbProcessWindowIn *in,
             const BbSurface         *surface,
             double                   required)
{
  BbWindowDemand demand = { .surface = surface, .quantile = (double) NAN, .required = required };

  if (surface->degrees_of_freedom > 0)
    demand.quantile = quantile_of (in->confidence, surface->degrees_of_freedom);

  return demand;
}

static char *
name_term (const BbProcessWindowIn *in,
           guint                    term)
{
  guint n = in->factors->len;

  if (term == 0)
    return g_strdup ("intercept");
  if (term <= n)
    return g_strdup (get_factor (in, term - 1)->key);
  if (term <= 2 * n)
    return g_strdup_printf ("%s^2", get_factor (in, term - n - 1)->key);

  return g_strdup_printf ("%s*%s", get_factor (in, 0)->key, get_factor (in, 1)->key);
}

static void
list_coefficients (const BbProcessWindowIn *in,
                   const BbSurface         *surface,
                   BbProcessWindowOut      *out)
{
  const BbField *list = bb_table_find_field (&bb_process_window_out_table, "coefficients");

  for (guint term = 0; term < surface->n_terms; term++)
    {
      BbWindowCoefficient *coefficient = bb_field_append_item (list, out);

      coefficient->term = name_term (in, term);
      bb_surface_get_coefficient (surface, term, &coefficient->value, &coefficient->se);
    }
}

static GArray *
make_setting (const double *x,
              guint         n_factors)
{
  GArray *setting = g_array_sized_new (FALSE, FALSE, sizeof (double), n_factors);

  return g_array_append_vals (setting, x, n_factors);
}

static double
get_place (const BbWindowFactor *factor,
           guint                 index,
           guint                 n)
{
  return index + 1 == n ? factor->high : factor->low + (factor->high - factor->low) * index / (n - 1);
}

/* The places of the grid, those of one place after those of another. */
static GArray *
make_places (const BbProcessWindowIn *in)
{
  GArray *places = g_array_new (FALSE, FALSE, sizeof (double));
  guint n = in->factors->len == 1 ? PLACES_OF_ONE : PLACES_OF_TWO;

  for (guint i = 0; i < n; i++)
    for (guint j = 0; j < (in->factors->len == 1 ? 1 : n); j++)
      {
        double x[] = { get_place (get_factor (in, 0), i, n), 0.0 };

        if (in->factors->len == 2)
          x[1] = get_place (get_factor (in, 1), j, n);
        g_array_append_vals (places, x, in->factors->len);
      }

  return places;
}

/* Lists the grid; returns the place with the highest bound, or where there is none, the highest prediction. */
static guint
list_grid (const BbWindowDemand *demand,
           const double         *places,
           guint                 n_places,
           BbProcessWindowOut   *out)
{
  const BbField *list = bb_table_find_field (&bb_process_window_out_table, "grid");
  guint n_factors = demand->surface->n_factors;
  double highest = -INFINITY;
  guint best = 0;

  for (guint i = 0; i < n_places; i++)
    {
      BbWindowPlace *place = bb_field_append_item (list, out);
      const double *x = places + i * n_factors;
      double height = 0.0;

      place->x = make_setting (x, n_factors);
      place->predicted = bb_surface_predict (demand->surface, x);
      place->lower = bb_window_demand_get_lower (demand, x);
      height = isnan (place->lower) ? place->predicted : place->lower;
      if (height > highest)
        {
          highest = height;
          best = i;
        }
    }

  return best;
}

static gboolean
recommend (const BbProcessWindowIn *in,
           BbWindowSearch          *search,
           BbProcessWindowOut      *out)
{
  BbWindowRecommendation *recommended = NULL;
  double x[BB_WINDOW_MOST_FACTORS];

  search->n_factors = in->factors->len;
  for (guint i = 0; i < in->factors->len; i++)
    {
      search->low[i] = get_factor (in, i)->low;
      search->high[i] = get_factor (in, i)->high;
      search->cost[i] = get_factor (in, i)->cost_per_unit;
    }
  if (!bb_window_search_run (search, x))
    return FALSE;

  recommended = bb_window_recommendation_new ();
  recommended->x = make_setting (x, search->n_factors);
  recommended->predicted = bb_surface_predict (search->demands[0].surface, x);
  recommended->lower = bb_window_demand_get_lower (&search->demands[0], x);
  recommended->cost = bb_window_search_get_cost (search, x);
  out->recommended = recommended;

  return TRUE;
}

static void
list_next (const BbWindowSearch *search,
           const double         *target,
           GArray               *places,
           BbProcessWindowOut   *out)
{
  const BbField *list = bb_table_find_field (&bb_process_window_out_table, "next");
  const BbWindowDemand *closest = &search->demands[0];
  const double *x = (const double *) (gpointer) places->data;
  guint n_factors = closest->surface->n_factors;
  guint chosen[NEXT_SPECIMENS];

  if (search->n_demands == 2 && bb_window_demand_get_margin (&search->demands[1], target) <
                                    bb_window_demand_get_margin (&search->demands[0], target))
    closest = &search->demands[1];

  bb_window_next (closest->surface, target, x, places->len / n_factors, chosen, NEXT_SPECIMENS);
  for (guint i = 0; i < NEXT_SPECIMENS; i++)
    {
      BbWindowSpecimen *specimen = bb_field_append_item (list, out);

      specimen->x = make_setting (x + chosen[i] * n_factors, n_factors);
    }
}

/* Adds the demand on hand where there is one; returns why it can't be judged, or BB_CHOICE_NONE. */
static int
demand_hand (const BbProcessWindowIn *in,
             const BbSurface         *hand,
             BbWindowSearch          *search)
{
  if (isnan (in->required_hand))
    return BB_CHOICE_NONE;
  if (hand == NULL || hand->degrees_of_freedom == 0)
    return BB_WINDOW_NO_HAND;
  search->demands[search->n_demands++] = make_demand (in, hand, in->required_hand);

  return BB_CHOICE_NONE;
}

/**
 * bb_calc_process_window:
 * @in: factors, runs and what is required
 * @out: the surface, the recommended setting and what to run next
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Finds the process window; see the top of bb-process-window.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_process_window (const BbProcessWindowIn *in,
                        BbProcessWindowOut      *out,
                        G_GNUC_UNUSED GError   **error)
{
  guint n_runs = 0;
  guint n_hands = 0;
  g_autoptr (BbSurface) grade = fit_runs (in, FALSE, &n_runs);
  g_autoptr (BbSurface) hand = isnan (in->required_hand) ? NULL : fit_runs (in, TRUE, &n_hands);
  guint n_terms = bb_surface_count_terms (in->factors->len, in->model == BB_WINDOW_QUADRATIC);
  BbWindowSearch search = { .n_demands = 1 };
  g_autoptr (GArray) places = NULL;
  const double *target = NULL;
  guint best = 0;

  if (grade == NULL)
    {
      out->reason = n_runs < n_terms ? BB_WINDOW_TOO_FEW_RUNS : BB_WINDOW_COLLINEAR;
      return TRUE;
    }

  out->residual_sd = grade->residual_sd;
  out->r_squared = grade->r_squared;
  out->degrees_of_freedom = grade->degrees_of_freedom;
  list_coefficients (in, grade, out);
  search.demands[0] = make_demand (in, grade, bb_grade_to_number ((BbGrade) in->required_grade));
  places = make_places (in);
  best = list_grid (&search.demands[0], (const double *) (gpointer) places->data, places->len / in->factors->len, out);
  target = &g_array_index (places, double, best * in->factors->len);

  out->reason = grade->degrees_of_freedom == 0 ? (int) BB_WINDOW_NO_FREEDOM : demand_hand (in, hand, &search);
  if (out->reason == BB_CHOICE_NONE && !recommend (in, &search, out))
    out->reason = BB_WINDOW_NONE_MEETS;
  if (out->recommended != NULL)
    target = (const double *) (gpointer) ((BbWindowRecommendation *) out->recommended)->x->data;
  list_next (&search, target, places, out);

  return TRUE;
}

static gboolean
check_factor (gconstpointer record,
              GError      **error)
{
  const BbWindowFactor *factor = record;

  return bb_factor_check_range (factor->low, factor->high, error);
}

static gboolean
check_in (gconstpointer record,
          GError      **error)
{
  const BbProcessWindowIn *in = record;
  guint n = in->factors->len;

  if (!bb_factor_check_keys (&bb_window_factor_table, in->factors, error))
    return FALSE;

  for (guint i = 0; i < in->runs->len; i++)
    {
      guint given = g_array_index (in->runs, BbWindowRun, i).x->len;

      if (given != n)
        {
          g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "runs[%u].x: %u item%s, the %s is %u, as many as "
                       "factors", i, given, given == 1 ? "" : "s", given < n ? "minimum" : "maximum", n);
          return FALSE;
        }
    }

  return TRUE;
}

BB_DEFINE_CHOICES (bb_window_model, "window_model", BB_WINDOW_MODEL_CHOICES);
BB_DEFINE_CHOICES (bb_window_gap, "window_gap", BB_WINDOW_GAP_CHOICES);
BB_DEFINE_TABLE (BbWindowFactor, bb_window_factor, "window_factor", N_("Factor"), BB_WINDOW_FACTOR_FIELDS,
                 check_factor)
BB_DEFINE_TABLE (BbWindowRun, bb_window_run, "window_run", N_("Run"), BB_WINDOW_RUN_FIELDS, NULL)
BB_DEFINE_TABLE (BbProcessWindowIn, bb_process_window_in, "process_window_in", N_("Process window"),
                 BB_PROCESS_WINDOW_IN_FIELDS, check_in)
BB_DEFINE_TABLE (BbWindowCoefficient, bb_window_coefficient, "window_coefficient", N_("Coefficient"),
                 BB_WINDOW_COEFFICIENT_FIELDS, NULL)
BB_DEFINE_TABLE (BbWindowPlace, bb_window_place, "window_place", N_("Setting"), BB_WINDOW_PLACE_FIELDS, NULL)
BB_DEFINE_TABLE (BbWindowRecommendation, bb_window_recommendation, "window_recommendation", N_("Recommendation"),
                 BB_WINDOW_RECOMMENDATION_FIELDS, NULL)
BB_DEFINE_TABLE (BbWindowSpecimen, bb_window_specimen, "window_specimen", N_("Specimen"),
                 BB_WINDOW_SPECIMEN_FIELDS, NULL)
BB_DEFINE_TABLE (BbProcessWindowOut, bb_process_window_out, "process_window_out", N_("Process window"),
                 BB_PROCESS_WINDOW_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (ProcessWindow, process_window, "process-window", N_("Process window"),
                      .summary = N_("Which settings give the grade that is required, and the cheapest of them."),
                      .assumes = N_("Runs in random order, the same spread everywhere, and a surface of the chosen "
                                    "form between the limits."),
                      .source = N_("Least squares with Student's t for the bounds, by GSL."))
