/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <gsl/gsl_matrix.h>

G_BEGIN_DECLS

#define BB_SURFACE_MOST_FACTORS 8
/* Of a quadratic in that many factors. */
#define BB_SURFACE_MOST_TERMS 45

/**
 * BbSurface:
 * @n_factors: how many factors
 * @quadratic: whether it has squares and cross products
 * @n_terms: how many terms: the constant, each factor, then each square, then each pair's product
 * @middle: of each factor, the middle of the settings that were run
 * @half: of each factor, half of their range
 * @coded: the coefficients in (x − middle) / half
 * @inverse: the inverse of the normal equations' matrix, in the same coding
 * @residual_sd: standard deviation of what the surface leaves unexplained; NaN where nothing is left to judge it by
 * @r_squared: the share of the variance that it explains; NaN where there is no variance
 * @degrees_of_freedom: runs beyond terms
 *
 * A least squares surface of first or second degree over settings.
 */
typedef struct {
  guint n_factors;
  gboolean quadratic;
  guint n_terms;
  double middle[BB_SURFACE_MOST_FACTORS];
  double half[BB_SURFACE_MOST_FACTORS];
  gsl_vector *coded;
  gsl_matrix *inverse;
  double residual_sd;
  double r_squared;
  guint degrees_of_freedom;
} BbSurface;

guint      bb_surface_count_terms     (guint            n_factors,
                                       gboolean         quadratic);
BbSurface *bb_surface_fit             (const double    *x,
                                       const double    *y,
                                       guint            n_runs,
                                       guint            n_factors,
                                       gboolean         quadratic);
void       bb_surface_free            (BbSurface       *self);
void       bb_surface_get_terms       (const BbSurface *self,
                                       const double    *x,
                                       double          *terms);
double     bb_surface_predict         (const BbSurface *self,
                                       const double    *x);
double     bb_surface_get_leverage    (const BbSurface *self,
                                       const double    *x);
void       bb_surface_get_coefficient (const BbSurface *self,
                                       guint            term,
                                       double          *value,
                                       double          *standard_error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbSurface, bb_surface_free)

G_END_DECLS
