/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-calculators.h"

#include "bb-batch.h"
#include "bb-box.h"
#include "bb-colour-difference.h"
#include "bb-compare.h"
#include "bb-control-chart.h"
#include "bb-cost.h"
#include "bb-cure-profile.h"
#include "bb-drying.h"
#include "bb-fastness-change.h"
#include "bb-fastness-stain.h"
#include "bb-heat-limit.h"
#include "bb-laydown.h"
#include "bb-line-rate.h"
#include "bb-mix.h"
#include "bb-nozzle-balance.h"
#include "bb-pass-rate.h"
#include "bb-nearest.h"
#include "bb-picture-calculators.h"
#include "bb-press-map.h"
#include "bb-print-mode.h"
#include "bb-process-window.h"
#include "bb-solids-match.h"
#include "bb-spray-fit.h"
#include "bb-stretch.h"
#include "bb-trial-plan.h"
#include "bb-tunnel.h"
#include "bb-wash-life.h"
#include "bb-wash-verdict.h"
#include "bb-weigh-in.h"

static const BbCalculator * const calculators[] = {
  &bb_box_calculator,
  &bb_laydown_calculator,
  &bb_batch_calculator,
  &bb_mix_calculator,
  &bb_stretch_calculator,
  &bb_solids_match_calculator,
  &bb_weigh_in_calculator,
  &bb_control_chart_calculator,
  &bb_spray_fit_calculator,
  &bb_nozzle_balance_calculator,
  &bb_drying_calculator,
  &bb_press_map_calculator,
  &bb_tunnel_calculator,
  &bb_cure_profile_calculator,
  &bb_heat_limit_calculator,
  &bb_artwork_calculator,
  &bb_print_mode_calculator,
  &bb_scan_colour_calculator,
  &bb_colour_difference_calculator,
  &bb_fastness_change_calculator,
  &bb_fastness_stain_calculator,
  &bb_wash_verdict_calculator,
  &bb_pass_rate_calculator,
  &bb_compare_calculator,
  &bb_wash_life_calculator,
  &bb_process_window_calculator,
  &bb_trial_plan_calculator,
  &bb_cost_calculator,
  &bb_line_rate_calculator,
  &bb_nearest_calculator,
};

/**
 * bb_calculators:
 * @n_calculators: (out): how many there are
 *
 * Returns: (transfer none) (array length=n_calculators): every calculator, in the order of the chain
 */
const BbCalculator * const *
bb_calculators (guint *n_calculators)
{
  *n_calculators = G_N_ELEMENTS (calculators);

  return calculators;
}

/**
 * bb_calculator_find:
 * @name: a calculator's name
 *
 * Returns: (transfer none) (nullable): the calculator, or %NULL if there is none of that name
 */
const BbCalculator *
bb_calculator_find (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (calculators); i++)
    if (g_str_equal (calculators[i]->name, name))
      return calculators[i];

  return NULL;
}
