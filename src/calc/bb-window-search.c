/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-window-search.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_min.h>

#include "bb-root.h"

/*
 * The cheapest setting whose lower bounds meet what is required. Along one factor the bound is scanned from the
 * cheap end, and where it first meets the requirement GSL's Brent iteration finds the exact place. Over a second
 * factor, the best of these is looked for on a grid that is drawn tighter around it again and again: the cost of
 * the best has kinks and gaps there, which a minimiser that wants a smooth function can't take.
 */

#define SCAN_STEPS 200
#define FIRST_GRID 100
#define NEXT_GRID 20
#define GRIDS 13
#define PEAK_STEPS 100
#define PEAK_PRECISION 1e-10

/* Bounds this close to what is required meet it, and costs this close are equal: the difference is rounding. */
#define SLACK 2e-14
#define EQUAL_COST 1e-15

/* A walk along one factor, the other held. */
typedef struct {
  const BbWindowSearch *search;
  guint axis;
  double x[BB_WINDOW_MOST_FACTORS];
} Walk;

/* How good a setting is. */
typedef struct {
  double x[BB_WINDOW_MOST_FACTORS];
  double cost;
  double margin;
} Candidate;

/**
 * bb_window_demand_get_lower:
 * @self: a demand
 * @x: a setting
 *
 * Returns: the one-sided lower confidence bound of the mean there; NaN where nothing is left to judge it by
 */
double
bb_window_demand_get_lower (const BbWindowDemand *self,
                            const double         *x)
{
  return bb_surface_predict (self->surface, x) -
         self->quantile * self->surface->residual_sd * sqrt (bb_surface_get_leverage (self->surface, x));
}

/**
 * bb_window_demand_get_margin:
 * @self: a demand
 * @x: a setting
 *
 * Returns: by how much the lower bound there is above what is required
 */
double
bb_window_demand_get_margin (const BbWindowDemand *self,
                             const double         *x)
{
  return bb_window_demand_get_lower (self, x) - self->required;
}

/**
 * bb_window_search_get_margin:
 * @self: a search
 * @x: a setting
 *
 * Returns: the least margin of all demands there
 */
double
bb_window_search_get_margin (const BbWindowSearch *self,
                             const double         *x)
{
  double margin = bb_window_demand_get_margin (&self->demands[0], x);

  for (guint i = 1; i < self->n_demands; i++)
    margin = MIN (margin, bb_window_demand_get_margin (&self->demands[i], x));

  return margin;
}

/**
 * bb_window_search_get_cost:
 * @self: a search
 * @x: a setting
 *
 * Returns: what the setting costs
 */
double
bb_window_search_get_cost (const BbWindowSearch *self,
                           const double         *x)
{
  double cost = 0.0;

  for (guint i = 0; i < self->n_factors; i++)
    cost += self->cost[i] * x[i];

  return cost;
}

static double
margin_along (double at,
              void  *data)
{
  Walk *walk = data;

  walk->x[walk->axis] = at;

  return bb_window_search_get_margin (walk->search, walk->x);
}

static double
minus_margin_along (double at,
                    void  *data)
{
  return -margin_along (at, data);
}

/* The top of a hump between three places, of which the middle one is the highest. */
static double
find_peak (Walk  *walk,
           double from,
           double middle,
           double to)
{
  gsl_function function = { .function = minus_margin_along, .params = walk };
  gsl_min_fminimizer *minimizer = gsl_min_fminimizer_alloc (gsl_min_fminimizer_brent);
  double peak = middle;

  if (gsl_min_fminimizer_set (minimizer, &function, middle, MIN (from, to), MAX (from, to)) == GSL_SUCCESS)
    {
      for (int i = 0; i < PEAK_STEPS && gsl_min_fminimizer_iterate (minimizer) == GSL_SUCCESS; i++)
        if (gsl_min_test_interval (gsl_min_fminimizer_x_lower (minimizer), gsl_min_fminimizer_x_upper (minimizer),
                                   0.0, PEAK_PRECISION) == GSL_SUCCESS)
          break;
      peak = gsl_min_fminimizer_x_minimum (minimizer);
    }
  gsl_min_fminimizer_free (minimizer);

  return peak;
}

/* Where the bound meets the requirement, between a place where it does not and one where it does; on that side. */
static double
find_edge (Walk  *walk,
           double outside,
           double inside)
{
  gsl_function function = { .function = margin_along, .params = walk };
  double edge = bb_root_between (&function, outside, inside);
  double step = (inside - outside) * 1e-15;

  if (isnan (edge))
    return inside;
  for (int i = 0; i < 40 && margin_along (edge, walk) < 0.0; i++, step *= 2.0)
    edge += step;

  return edge;
}

/* The last three places of a scan. */
typedef struct {
  double place[3];
  double margin[3];
} Scan;

static void
advance (Scan  *scan,
         double place,
         double margin)
{
  for (guint i = 0; i < 2; i++)
    {
      scan->place[i] = scan->place[i + 1];
      scan->margin[i] = scan->margin[i + 1];
    }
  scan->place[2] = place;
  scan->margin[2] = margin;
}

/* Puts the best setting along one factor into @walk->x. */
static void
walk_along (Walk *walk)
{
  double cost = walk->search->cost[walk->axis];
  double low = walk->search->low[walk->axis];
  double high = walk->search->high[walk->axis];
  double start = cost < 0.0 ? high : low;
  double end = cost < 0.0 ? low : high;
  double best = start;
  double best_margin = -INFINITY;
  Scan scan = { .margin = { -INFINITY, -INFINITY, -INFINITY } };

  for (int i = 0; i <= SCAN_STEPS; i++)
    {
      double place = i == SCAN_STEPS ? end : start + (end - start) * i / SCAN_STEPS;

      advance (&scan, place, margin_along (place, walk));
      /* A hump between places, which may reach what none of them does. */
      if (i >= 2 && scan.margin[1] >= scan.margin[0] && scan.margin[1] >= scan.margin[2])
        {
          double peak = find_peak (walk, scan.place[0], scan.place[1], scan.place[2]);
          double height = margin_along (peak, walk);

          if (height > best_margin)
            {
              best = peak;
              best_margin = height;
            }
        }
      if (scan.margin[2] > best_margin)
        {
          best = place;
          best_margin = scan.margin[2];
        }
      if (best_margin >= -SLACK && cost != 0.0)
        {
          if (i > 0)
            best = find_edge (walk, scan.place[best == place ? 1 : 0], best);
          break;
        }
    }
  walk->x[walk->axis] = best;
}

static gboolean
is_better (const Candidate *a,
           const Candidate *b)
{
  gboolean a_meets = a->margin >= -SLACK;
  gboolean b_meets = b->margin >= -SLACK;

  if (a_meets != b_meets)
    return a_meets;
  if (a_meets && fabs (a->cost - b->cost) > EQUAL_COST * fmax (fabs (a->cost), fabs (b->cost)))
    return a->cost < b->cost;

  return a->margin > b->margin;
}

static Candidate
try_walk (const BbWindowSearch *self,
          guint                 axis,
          double                other)
{
  Walk walk = { .search = self, .axis = axis, .x = { other, other } };
  Candidate candidate;

  walk_along (&walk);
  candidate.x[0] = walk.x[0];
  candidate.x[1] = walk.x[1];
  candidate.cost = bb_window_search_get_cost (self, walk.x);
  candidate.margin = bb_window_search_get_margin (self, walk.x);

  return candidate;
}

static Candidate
search_two (const BbWindowSearch *self)
{
  guint inner = self->cost[1] != 0.0 ? 1 : 0;
  guint outer = 1 - inner;
  double from = self->low[outer];
  double to = self->high[outer];
  Candidate best = try_walk (self, inner, from);

  for (int grid = 0; grid < GRIDS; grid++)
    {
      int steps = grid == 0 ? FIRST_GRID : NEXT_GRID;
      double step = (to - from) / steps;

      for (int i = 0; i <= steps; i++)
        {
          Candidate candidate = try_walk (self, inner, i == steps ? to : from + step * i);

          if (is_better (&candidate, &best))
            best = candidate;
        }
      from = fmax (best.x[outer] - step, self->low[outer]);
      to = fmin (best.x[outer] + step, self->high[outer]);
    }

  return best;
}

/**
 * bb_window_search_run:
 * @self: where to look, and what is required
 * @x: (out): the cheapest setting that meets it, and of equally cheap ones the one that does by most; or where
 *   none does, the one that comes nearest
 *
 * Returns: %TRUE if the setting meets what is required
 */
gboolean
bb_window_search_run (const BbWindowSearch *self,
                      double               *x)
{
  Candidate best = self->n_factors == 1 ? try_walk (self, 0, 0.0) : search_two (self);

  for (guint i = 0; i < self->n_factors; i++)
    x[i] = best.x[i];

  return best.margin >= -SLACK;
}
