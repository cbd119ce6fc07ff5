/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-root.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_roots.h>

/* Brent's method at worst halves the interval; a double has fewer than 1,100 halvings between any two values. */
#define MOST_STEPS 1200

/* Full precision relative to the root, so that small probabilities keep their digits. */
#define RELATIVE_PRECISION 1e-15

/**
 * bb_root_between:
 * @function: a continuous function
 * @from: where it has one sign
 * @to: above or below @from, where it has the other sign, or is 0
 *
 * Finds where a function is 0, by GSL's form of Brent's method.
 *
 * Returns: the root; NaN if the signs are the same at both ends
 */
double
bb_root_between (gsl_function *function,
                 double        from,
                 double        to)
{
  double at_from = GSL_FN_EVAL (function, from);
  double at_to = GSL_FN_EVAL (function, to);
  double root = GSL_NAN;
  gsl_root_fsolver *solver = NULL;
  int status = GSL_CONTINUE;

  if (at_from == 0.0)
    return from;
  if (at_to == 0.0)
    return to;
  if (!gsl_finite (at_from) || !gsl_finite (at_to) || (at_from > 0.0) == (at_to > 0.0))
    return GSL_NAN;

  solver = gsl_root_fsolver_alloc (gsl_root_fsolver_brent);
  gsl_root_fsolver_set (solver, function, MIN (from, to), MAX (from, to));
  for (int step = 0; step < MOST_STEPS && status == GSL_CONTINUE; step++)
    {
      gsl_root_fsolver_iterate (solver);
      status = gsl_root_test_interval (gsl_root_fsolver_x_lower (solver), gsl_root_fsolver_x_upper (solver), 0.0,
                                       RELATIVE_PRECISION);
    }
  root = gsl_root_fsolver_root (solver);
  gsl_root_fsolver_free (solver);

  return root;
}
