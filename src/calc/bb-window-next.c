/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-window-next.h"

#include <gsl/gsl_blas.h>

/* A place has to be better by more than rounding to be taken before an earlier one. */
#define BETTER 1e-9

/* By how much a run at @terms would lower the leverage of the target. */
static double
gain_of (const gsl_matrix *inverse,
         const gsl_vector *target,
         const gsl_vector *terms,
         gsl_vector       *product)
{
  double across = 0.0;
  double own = 0.0;

  gsl_blas_dsymv (CblasLower, 1.0, inverse, terms, 0.0, product);
  gsl_blas_ddot (target, product, &across);
  gsl_blas_ddot (terms, product, &own);

  return across * across / (1.0 + own);
}

/* What the inverse becomes once a run at @terms is added (Sherman and Morrison 1950). */
static void
add_run (gsl_matrix       *inverse,
         const gsl_vector *terms,
         gsl_vector       *product)
{
  double own = 0.0;

  gsl_blas_dsymv (CblasLower, 1.0, inverse, terms, 0.0, product);
  gsl_blas_ddot (terms, product, &own);
  gsl_blas_dsyr (CblasLower, -1.0 / (1.0 + own), product, inverse);
}

/**
 * bb_window_next:
 * @surface: a fitted surface
 * @target: the setting whose confidence bound is to be narrowed
 * @places: settings that can be run, those of one place after those of another
 * @n_places: how many
 * @chosen: (out): where to put the indices of the places chosen
 * @n_chosen: how many to choose
 *
 * Chooses the runs that would lower the variance at @target most: the best one, then the best after that one, and
 * so on. One place may be chosen more than once.
 */
void
bb_window_next (const BbSurface *surface,
                const double    *target,
                const double    *places,
                guint            n_places,
                guint           *chosen,
                guint            n_chosen)
{
  gsl_matrix *inverse = gsl_matrix_alloc (surface->n_terms, surface->n_terms);
  gsl_vector *product = gsl_vector_alloc (surface->n_terms);
  double target_terms[BB_SURFACE_MOST_TERMS];
  double terms[BB_SURFACE_MOST_TERMS];
  gsl_vector_view target_view = gsl_vector_view_array (target_terms, surface->n_terms);
  gsl_vector_view view = gsl_vector_view_array (terms, surface->n_terms);

  gsl_matrix_memcpy (inverse, surface->inverse);
  bb_surface_get_terms (surface, target, target_terms);
  for (guint n = 0; n < n_chosen; n++)
    {
      double best = -1.0;

      for (guint i = 0; i < n_places; i++)
        {
          double gain = 0.0;

          bb_surface_get_terms (surface, places + i * surface->n_factors, terms);
          gain = gain_of (inverse, &target_view.vector, &view.vector, product);
          if (gain > best * (1.0 + BETTER) || best < 0.0)
            {
              best = gain;
              chosen[n] = i;
            }
        }
      bb_surface_get_terms (surface, places + chosen[n] * surface->n_factors, terms);
      add_run (inverse, &view.vector, product);
    }
  gsl_vector_free (product);
  gsl_matrix_free (inverse);
}
