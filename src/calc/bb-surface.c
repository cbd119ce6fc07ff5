/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-surface.h"

#include <gsl/gsl_multifit.h>

/* A combination of terms that moves a prediction less than this, relative to the largest, is not determined. */
#define RANK_TOLERANCE 1e-9

/* What is left of a value after all of its digits cancelled. */
#define NOTHING 1e-12

/**
 * bb_surface_count_terms:
 * @n_factors: how many factors
 * @quadratic: whether there are squares and cross products
 *
 * Returns: how many terms such a surface has
 */
guint
bb_surface_count_terms (guint    n_factors,
                        gboolean quadratic)
{
  return quadratic ? (n_factors + 1) * (n_factors + 2) / 2 : n_factors + 1;
}

/* The terms at coded settings. */
static void
expand (const BbSurface *self,
        const double    *z,
        double          *terms)
{
  guint n = self->n_factors;
  guint next = n + 1;

  terms[0] = 1.0;
  for (guint i = 0; i < n; i++)
    terms[i + 1] = z[i];
  if (!self->quadratic)
    return;

  for (guint i = 0; i < n; i++)
    terms[next++] = z[i] * z[i];
  for (guint i = 0; i < n; i++)
    for (guint j = i + 1; j < n; j++)
      terms[next++] = z[i] * z[j];
}

/**
 * bb_surface_get_terms:
 * @self: a surface
 * @x: a setting of each factor
 * @terms: (out): where to put its terms, coded
 */
void
bb_surface_get_terms (const BbSurface *self,
                      const double    *x,
                      double          *terms)
{
  double z[BB_SURFACE_MOST_FACTORS];

  for (guint i = 0; i < self->n_factors; i++)
    z[i] = (x[i] - self->middle[i]) / self->half[i];
  expand (self, z, terms);
}

/* Coding by the range of the runs keeps squares of a temperature from drowning its differences. */
static gboolean
find_coding (BbSurface    *self,
             const double *x,
             guint         n_runs)
{
  for (guint i = 0; i < self->n_factors; i++)
    {
      double low = x[i];
      double high = x[i];

      for (guint run = 1; run < n_runs; run++)
        {
          low = MIN (low, x[run * self->n_factors + i]);
          high = MAX (high, x[run * self->n_factors + i]);
        }
      self->middle[i] = low + (high - low) / 2.0;
      self->half[i] = (high - low) / 2.0;
      if (self->half[i] <= RANK_TOLERANCE * fmax (1.0, fmax (fabs (low), fabs (high))))
        return FALSE;
    }

  return TRUE;
}

static void
set_quality (BbSurface  *self,
             gsl_vector *y,
             double      residual_ss)
{
  double mean = 0.0;
  double total_ss = 0.0;
  double size = 0.0;

  for (gsize i = 0; i < y->size; i++)
    mean += gsl_vector_get (y, i) / (double) y->size;
  for (gsize i = 0; i < y->size; i++)
    {
      total_ss += gsl_pow_2 (gsl_vector_get (y, i) - mean);
      size += gsl_pow_2 (gsl_vector_get (y, i));
    }
  if (residual_ss <= NOTHING * NOTHING * size)
    residual_ss = 0.0;

  self->degrees_of_freedom = (guint) y->size - self->n_terms;
  self->residual_sd = self->degrees_of_freedom > 0 ? sqrt (residual_ss / self->degrees_of_freedom) : GSL_NAN;
  self->r_squared = total_ss > NOTHING * NOTHING * size ? 1.0 - residual_ss / total_ss : GSL_NAN;
}

static gboolean
solve (BbSurface    *self,
       const double *x,
       const double *y,
       guint         n_runs)
{
  gsl_matrix *design = gsl_matrix_alloc (n_runs, self->n_terms);
  gsl_vector *response = gsl_vector_alloc (n_runs);
  gsl_vector *weights = gsl_vector_alloc (n_runs);
  gsl_multifit_linear_workspace *work = gsl_multifit_linear_alloc (n_runs, self->n_terms);
  double residual_ss = 0.0;
  size_t rank = 0;
  gboolean solved = FALSE;

  for (guint run = 0; run < n_runs; run++)
    {
      bb_surface_get_terms (self, x + run * self->n_factors, gsl_matrix_ptr (design, run, 0));
      gsl_vector_set (response, run, y[run]);
    }
  /* With unit weights, and only with weights, GSL gives the inverse matrix itself and not times the variance. */
  gsl_vector_set_all (weights, 1.0);
  solved = gsl_multifit_wlinear_tsvd (design, weights, response, RANK_TOLERANCE, self->coded, self->inverse,
                                      &residual_ss, &rank, work) == GSL_SUCCESS && rank == self->n_terms;
  if (solved)
    set_quality (self, response, residual_ss);
  gsl_multifit_linear_free (work);
  gsl_vector_free (weights);
  gsl_vector_free (response);
  gsl_matrix_free (design);

  return solved;
}

/**
 * bb_surface_fit:
 * @x: the settings, @n_factors for each run, run after run
 * @y: what came of each run
 * @n_runs: how many runs
 * @n_factors: how many factors, up to %BB_SURFACE_MOST_FACTORS
 * @quadratic: whether to fit squares and cross products
 *
 * Fits a surface by least squares.
 *
 * Returns: (transfer full) (nullable): the surface; %NULL if the runs are fewer than its terms or their settings
 *   don't tell the terms apart
 */
BbSurface *
bb_surface_fit (const double *x,
                const double *y,
                guint         n_runs,
                guint         n_factors,
                gboolean      quadratic)
{
  g_autoptr (BbSurface) self = g_new0 (BbSurface, 1);

  g_return_val_if_fail (n_factors >= 1 && n_factors <= BB_SURFACE_MOST_FACTORS, NULL);

  self->n_factors = n_factors;
  self->quadratic = quadratic;
  self->n_terms = bb_surface_count_terms (n_factors, quadratic);
  self->coded = gsl_vector_alloc (self->n_terms);
  self->inverse = gsl_matrix_alloc (self->n_terms, self->n_terms);
  if (n_runs < self->n_terms || !find_coding (self, x, n_runs) || !solve (self, x, y, n_runs))
    return NULL;

  return g_steal_pointer (&self);
}

/**
 * bb_surface_free:
 * @self: (transfer full): a surface
 */
void
bb_surface_free (BbSurface *self)
{
  gsl_vector_free (self->coded);
  gsl_matrix_free (self->inverse);
  g_free (self);
}

/* A surface has few terms and is asked for at thousands of places: plain loops instead of calls to BLAS. */
static double
multiply (const BbSurface *self,
          const double    *terms)
{
  double sum = 0.0;

  for (guint i = 0; i < self->n_terms; i++)
    sum += terms[i] * gsl_vector_get (self->coded, i);

  return sum;
}

static double
multiply_twice (const BbSurface *self,
                const double    *terms)
{
  double sum = 0.0;

  for (guint i = 0; i < self->n_terms; i++)
    {
      const double *row = gsl_matrix_const_ptr (self->inverse, i, 0);
      double product = terms[i] * row[i];

      for (guint j = 0; j < i; j++)
        product += 2.0 * terms[j] * row[j];
      sum += terms[i] * product;
    }

  return MAX (sum, 0.0);
}

/**
 * bb_surface_predict:
 * @self: a surface
 * @x: a setting of each factor
 *
 * Returns: the height of the surface there
 */
double
bb_surface_predict (const BbSurface *self,
                    const double    *x)
{
  double terms[BB_SURFACE_MOST_TERMS];

  bb_surface_get_terms (self, x, terms);

  return multiply (self, terms);
}

/**
 * bb_surface_get_leverage:
 * @self: a surface
 * @x: a setting of each factor
 *
 * Returns: the variance of the height there, as a part of the variance of one run
 */
double
bb_surface_get_leverage (const BbSurface *self,
                         const double    *x)
{
  double terms[BB_SURFACE_MOST_TERMS];

  bb_surface_get_terms (self, x, terms);

  return multiply_twice (self, terms);
}

/*
 * How much of each coded coefficient goes into a coefficient of x itself. In coded terms of z = (x − m) / h,
 * z² = x² / h² − 2 m x / h² + m² / h², and so on.
 */
static void
get_shares (const BbSurface *self,
            guint            term,
            double          *shares)
{
  guint n = self->n_factors;
  guint next = n + 1;

  for (guint i = 0; i < self->n_terms; i++)
    shares[i] = i == term ? 1.0 : 0.0;
  for (guint i = 0; i < n; i++)
    {
      shares[i + 1] = term == i + 1 ? 1.0 / self->half[i] : 0.0;
      if (term == 0)
        shares[i + 1] = -self->middle[i] / self->half[i];
    }
  if (!self->quadratic)
    return;

  for (guint i = 0; i < n; i++, next++)
    {
      double scale = self->half[i] * self->half[i];

      shares[next] = term == next ? 1.0 / scale : 0.0;
      if (term == 0)
        shares[next] = self->middle[i] * self->middle[i] / scale;
      if (term == i + 1)
        shares[next] = -2.0 * self->middle[i] / scale;
    }
  for (guint i = 0; i < n; i++)
    for (guint j = i + 1; j < n; j++, next++)
      {
        double scale = self->half[i] * self->half[j];

        shares[next] = term == next ? 1.0 / scale : 0.0;
        if (term == 0)
          shares[next] = self->middle[i] * self->middle[j] / scale;
        if (term == i + 1)
          shares[next] = -self->middle[j] / scale;
        if (term == j + 1)
          shares[next] = -self->middle[i] / scale;
      }
}

/**
 * bb_surface_get_coefficient:
 * @self: a surface
 * @term: which term, from 0
 * @value: (out): its coefficient, for settings as they are and not coded
 * @standard_error: (out): its standard error; NaN where nothing is left to judge it by
 */
void
bb_surface_get_coefficient (const BbSurface *self,
                            guint            term,
                            double          *value,
                            double          *standard_error)
{
  double shares[BB_SURFACE_MOST_TERMS];

  get_shares (self, term, shares);
  *value = multiply (self, shares);
  *standard_error = self->residual_sd * sqrt (multiply_twice (self, shares));
}
