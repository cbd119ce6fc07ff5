/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-weibull.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_multimin.h>
#include <gsl/gsl_multiroots.h>

/*
 * S (t) = exp (−(t / scale)^shape). With z = α y − β, y the standardised logarithm of t, survival is
 * exp (−e^z), and the log-likelihood of readings between limits is a concave function of (α, β), because the
 * distribution of log t has a log-concave density. So there is one maximum or none, and which of the two can
 * be told beforehand: see find_gap().
 *
 * GSL's simplex, in (log α, β / α), comes near it from anywhere; GSL's Newton iteration on the gradient in
 * (α, β) gives it all its digits.
 */

#define SIMPLEX_STEPS 2000
#define SIMPLEX_SIZE 1e-5
#define NEWTON_STEPS 100
#define GRADIENT_LEFT 1e-12
/* In place of infinity, which the simplex does not take. */
#define IMPOSSIBLE 1e300
/* e^700 is near the largest double. */
#define LARGEST_EXPONENT 700.0
#define EQUAL_LOGS 1e-12

/* One specimen on the standardised log scale. */
typedef struct {
  double y_good;   /* −infinity where it was never read as good */
  double y_bad;    /* infinity where it never failed */
  double y_width;  /* y_bad − y_good, without the digits that the subtraction loses */
} Life;

typedef struct {
  Life *lives;
  guint n_lives;
  double centre;
  double spread;
} Problem;

/* The log-likelihood with its derivatives by α and β. */
typedef struct {
  double value;
  double a;
  double b;
  double aa;
  double ab;
  double bb;
} Likelihood;

static double
bounded_exp (double exponent)
{
  return exp (MIN (exponent, LARGEST_EXPONENT));
}

/* What being good at y adds: −e^z. */
static void
add_good (Likelihood *self,
          double      y,
          double      z)
{
  double loss = bounded_exp (z);

  self->value -= loss;
  self->a -= loss * y;
  self->b += loss;
  self->aa -= loss * y * y;
  self->ab += loss * y;
  self->bb -= loss;
}

/*
 * What failing within a window adds: log (1 − e^−w), where w is the growth of e^z over the window. @slope and
 * @bend are ∂w/∂α and ∂²w/∂α² as parts of w itself, which makes all of this finite for the smallest w.
 */
static void
add_failed (Likelihood *self,
            double      log_w,
            double      slope,
            double      bend)
{
  double w = bounded_exp (log_w);
  double p = w > 0.0 ? w / expm1 (w) : 1.0;
  double pp = p * (w + p);

  self->value += w < 1e-8 ? log_w - w / 2.0 : log (-expm1 (-w));
  self->a += p * slope;
  self->b -= p;
  self->aa += p * bend - pp * slope * slope;
  self->ab += pp * slope - p * slope;
  self->bb += p - pp;
}

static void
add_life (Likelihood *self,
          const Life *life,
          double      alpha,
          double      beta)
{
  double z_width = alpha * life->y_width;
  double share = 0.0;

  if (isfinite (life->y_good))
    add_good (self, life->y_good, alpha * life->y_good - beta);
  if (!isfinite (life->y_bad))
    return;
  if (!isfinite (life->y_good))
    {
      add_failed (self, alpha * life->y_bad - beta, life->y_bad, life->y_bad * life->y_bad);
      return;
    }

  share = life->y_width / -expm1 (-z_width);
  add_failed (self, alpha * life->y_good - beta + z_width + log (-expm1 (-z_width)), life->y_good + share,
              life->y_good * life->y_good + share * (2.0 * life->y_good + life->y_width));
}

static Likelihood
likelihood_at (const Problem *self,
               double         alpha,
               double         beta)
{
  Likelihood sum = { 0 };

  for (guint i = 0; i < self->n_lives; i++)
    add_life (&sum, &self->lives[i], alpha, beta);

  return sum;
}

static double
minus_likelihood (const gsl_vector *at,
                  void             *data)
{
  double alpha = bounded_exp (gsl_vector_get (at, 0));
  double value = likelihood_at (data, alpha, alpha * gsl_vector_get (at, 1)).value;

  return isfinite (value) ? -value : IMPOSSIBLE;
}

static int
gradient_and_curvature (const gsl_vector *at,
                        void             *data,
                        gsl_vector       *gradient,
                        gsl_matrix       *curvature)
{
  const Problem *self = data;
  Likelihood sum = likelihood_at (self, gsl_vector_get (at, 0), gsl_vector_get (at, 1));
  double n = self->n_lives;

  gsl_vector_set (gradient, 0, sum.a / n);
  gsl_vector_set (gradient, 1, sum.b / n);
  gsl_matrix_set (curvature, 0, 0, sum.aa / n);
  gsl_matrix_set (curvature, 0, 1, sum.ab / n);
  gsl_matrix_set (curvature, 1, 0, sum.ab / n);
  gsl_matrix_set (curvature, 1, 1, sum.bb / n);

  return isfinite (sum.aa) && isfinite (sum.bb) && gsl_vector_get (at, 0) > 0.0 ? GSL_SUCCESS : GSL_EBADFUNC;
}

static int
gradient_only (const gsl_vector *at,
               void             *data,
               gsl_vector       *gradient)
{
  double unused[4];
  gsl_matrix_view curvature = gsl_matrix_view_array (unused, 2, 2);

  return gradient_and_curvature (at, data, gradient, &curvature.matrix);
}

static int
curvature_only (const gsl_vector *at,
                void             *data,
                gsl_matrix       *curvature)
{
  double unused[2];
  gsl_vector_view gradient = gsl_vector_view_array (unused, 2);

  return gradient_and_curvature (at, data, &gradient.vector, curvature);
}

/* Near the maximum: @at becomes α and β. */
static gboolean
approach (Problem *self,
          double   at[2])
{
  gsl_vector_view start = gsl_vector_view_array ((double[]) { log (3.0), 0.5 }, 2);
  gsl_vector_view step = gsl_vector_view_array ((double[]) { 1.0, 0.25 }, 2);
  gsl_multimin_function function = { .f = minus_likelihood, .n = 2, .params = self };
  gsl_multimin_fminimizer *simplex = gsl_multimin_fminimizer_alloc (gsl_multimin_fminimizer_nmsimplex2, 2);
  int status = gsl_multimin_fminimizer_set (simplex, &function, &start.vector, &step.vector);

  for (int i = 0; i < SIMPLEX_STEPS && status == GSL_SUCCESS; i++)
    {
      status = gsl_multimin_fminimizer_iterate (simplex);
      if (gsl_multimin_test_size (gsl_multimin_fminimizer_size (simplex), SIMPLEX_SIZE) == GSL_SUCCESS)
        break;
    }
  at[0] = bounded_exp (gsl_vector_get (simplex->x, 0));
  at[1] = at[0] * gsl_vector_get (simplex->x, 1);
  gsl_multimin_fminimizer_free (simplex);

  return isfinite (at[0]) && isfinite (at[1]) && at[0] > 0.0;
}

/* From near the maximum onto it. */
static gboolean
settle (Problem *self,
        double   at[2])
{
  gsl_vector_view start = gsl_vector_view_array (at, 2);
  gsl_multiroot_function_fdf function = { .f = gradient_only, .df = curvature_only, .fdf = gradient_and_curvature,
                                          .n = 2, .params = self };
  gsl_multiroot_fdfsolver *newton = gsl_multiroot_fdfsolver_alloc (gsl_multiroot_fdfsolver_gnewton, 2);
  double before = likelihood_at (self, at[0], at[1]).value;
  int status = gsl_multiroot_fdfsolver_set (newton, &function, &start.vector);
  double alpha = 0.0;
  double beta = 0.0;

  for (int i = 0; i < NEWTON_STEPS && status == GSL_SUCCESS; i++)
    {
      status = gsl_multiroot_fdfsolver_iterate (newton);
      if (gsl_multiroot_test_residual (newton->f, GRADIENT_LEFT) == GSL_SUCCESS)
        break;
    }
  alpha = gsl_vector_get (newton->x, 0);
  beta = gsl_vector_get (newton->x, 1);
  gsl_multiroot_fdfsolver_free (newton);

  if (!(alpha > 0.0) || !(likelihood_at (self, alpha, beta).value >= before - 1e-9 * fabs (before)))
    return FALSE;
  at[0] = alpha;
  at[1] = beta;

  return TRUE;
}

/*
 * Why there is no maximum, or BB_CHOICE_NONE. Along a direction that never makes the likelihood fall, dz must not
 * rise where a specimen was good nor fall where one was bad. With dα = 0 that takes readings of one kind only.
 * With dα > 0 it takes a number of cycles no smaller than every good reading and no larger than every bad one.
 * And where no specimen was read both good and bad, the likelihood stays finite at α = 0, where all readings are as
 * likely at any cycle; its slope there says whether the maximum lies inside.
 */
static int
find_gap (const BbLife *lives,
          guint         n_lives)
{
  double last_good = 0.0;
  double first_bad = INFINITY;
  gboolean both_read = FALSE;
  double good_logs = 0.0;
  double bad_logs = 0.0;
  guint n_good = 0;
  guint n_bad = 0;

  for (guint i = 0; i < n_lives; i++)
    {
      last_good = MAX (last_good, lives[i].last_good);
      first_bad = MIN (first_bad, lives[i].first_bad);
      both_read |= lives[i].last_good > 0.0 && isfinite (lives[i].first_bad);
      if (isfinite (lives[i].first_bad))
        {
          bad_logs += log (lives[i].first_bad);
          n_bad++;
        }
      else if (lives[i].last_good > 0.0)
        {
          good_logs += log (lives[i].last_good);
          n_good++;
        }
    }

  if (n_bad == 0)
    return BB_WEIBULL_NO_FAILURE;
  if (last_good <= 0.0)
    return BB_WEIBULL_NEVER_GOOD;
  if (last_good <= first_bad)
    return BB_WEIBULL_NO_SPREAD;
  if (!both_read && bad_logs / n_bad - good_logs / n_good <= EQUAL_LOGS)
    return BB_WEIBULL_NO_TREND;

  return BB_CHOICE_NONE;
}

static void
standardise (Problem      *self,
             const BbLife *lives,
             guint         n_lives)
{
  double least = INFINITY;
  double most = -INFINITY;

  for (guint i = 0; i < n_lives; i++)
    {
      if (lives[i].last_good > 0.0)
        {
          least = MIN (least, log (lives[i].last_good));
          most = MAX (most, log (lives[i].last_good));
        }
      if (isfinite (lives[i].first_bad))
        {
          least = MIN (least, log (lives[i].first_bad));
          most = MAX (most, log (lives[i].first_bad));
        }
    }
  self->centre = least;
  self->spread = most - least;
  self->n_lives = n_lives;
  self->lives = g_new0 (Life, n_lives);
  for (guint i = 0; i < n_lives; i++)
    {
      self->lives[i].y_good = (log (lives[i].last_good) - self->centre) / self->spread;
      self->lives[i].y_bad = (log (lives[i].first_bad) - self->centre) / self->spread;
      self->lives[i].y_width = log1p ((lives[i].first_bad - lives[i].last_good) / lives[i].last_good) / self->spread;
    }
}

/**
 * bb_weibull_fit:
 * @lives: specimens, in any order
 * @n_lives: how many
 * @shape: (out): the shape, where there is a fit
 * @scale: (out): the scale in cycles, where there is a fit
 *
 * Fits a Weibull distribution to lives that are known between limits, by maximum likelihood.
 *
 * Returns: a #BbWeibullGap that says why there is no fit; %BB_CHOICE_NONE where there is one
 */
int
bb_weibull_fit (const BbLife *lives,
                guint         n_lives,
                double       *shape,
                double       *scale)
{
  Problem problem = { 0 };
  double at[2] = { 0.0, 0.0 };
  int gap = find_gap (lives, n_lives);
  gboolean found = FALSE;

  if (gap != BB_CHOICE_NONE)
    return gap;

  standardise (&problem, lives, n_lives);
  found = approach (&problem, at) && settle (&problem, at);
  g_free (problem.lives);
  if (!found)
    return BB_WEIBULL_NO_FIT;

  *shape = at[0] / problem.spread;
  *scale = exp (problem.centre + problem.spread * at[1] / at[0]);

  return isfinite (*shape) && isfinite (*scale) && *scale > 0.0 ? BB_CHOICE_NONE : BB_WEIBULL_NO_FIT;
}

/**
 * bb_weibull_survival:
 * @shape: the shape
 * @scale: the scale in cycles
 * @cycles: a number of cycles, 0 or more
 *
 * Returns: the share that survives @cycles
 */
double
bb_weibull_survival (double shape,
                     double scale,
                     double cycles)
{
  return exp (-pow (cycles / scale, shape));
}

/**
 * bb_weibull_median:
 * @shape: the shape
 * @scale: the scale in cycles
 *
 * Returns: the number of cycles that half survive
 */
double
bb_weibull_median (double shape,
                   double scale)
{
  return scale * pow (G_LN2, 1.0 / shape);
}

BB_DEFINE_CHOICES (bb_weibull_gap, "weibull_gap", BB_WEIBULL_GAP_CHOICES);
