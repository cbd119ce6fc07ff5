/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-calculator.h"

#include <gsl/gsl_errno.h>

#include "bb-problem.h"

/**
 * bb_calculator_run:
 * @self: a calculator
 * @in: its input
 * @out: (out caller-allocates): its output, initialised by bb_record_init() or `_new`
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR, or one of the calculator's own
 *
 * Validates the input by its table, computes, and sees to it that no result is infinite: where one is, the
 * inputs are refused.
 *
 * Returns: %TRUE if @out holds the result
 */
gboolean
bb_calculator_run (const BbCalculator *self,
                   gconstpointer       in,
                   gpointer            out,
                   GError            **error)
{
  /* GSL ends the program on trouble unless told otherwise; every calculator looks at what it gets back instead. */
  gsl_set_error_handler_off ();

  if (!bb_record_validate (self->in, in, error))
    return FALSE;
  if (!self->calculate (in, out, error))
    return FALSE;

  return bb_record_validate (self->out, out, error);
}
