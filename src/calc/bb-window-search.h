/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-surface.h"

G_BEGIN_DECLS

#define BB_WINDOW_MOST_FACTORS 2

/**
 * BbWindowDemand:
 * @surface: what was fitted
 * @quantile: Student's t at the confidence wanted
 * @required: the least value of the lower bound
 *
 * One thing that a setting has to meet, with its lower confidence bound.
 */
typedef struct {
  const BbSurface *surface;
  double quantile;
  double required;
} BbWindowDemand;

/**
 * BbWindowSearch:
 * @n_factors: one or two
 * @low: the least setting of each factor
 * @high: the greatest
 * @cost: what one unit of each costs
 * @n_demands: one or two
 * @demands: what has to be met
 *
 * Where to look for a setting, and what it has to meet.
 */
typedef struct {
  guint n_factors;
  double low[BB_WINDOW_MOST_FACTORS];
  double high[BB_WINDOW_MOST_FACTORS];
  double cost[BB_WINDOW_MOST_FACTORS];
  guint n_demands;
  BbWindowDemand demands[2];
} BbWindowSearch;

double   bb_window_demand_get_lower  (const BbWindowDemand *self,
                                      const double         *x);
double   bb_window_demand_get_margin (const BbWindowDemand *self,
                                      const double         *x);
double   bb_window_search_get_margin (const BbWindowSearch *self,
                                      const double         *x);
double   bb_window_search_get_cost   (const BbWindowSearch *self,
                                      const double         *x);
gboolean bb_window_search_run        (const BbWindowSearch *self,
                                      double               *x);

G_END_DECLS
