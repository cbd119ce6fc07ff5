/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-field.h"

G_BEGIN_DECLS

/*
 * What the calculators of trials have in common: the fields that describe a factor, which is something that is varied
 * between low and high in its own unit, and the rules that hold for each and among them.
 */

#define BB_FACTOR_FIELDS(F, T) \
  F (T, TEXT, key, N_("Factor"), .help = N_("What is varied, like dry_s or pretreat_laydown_g_per_m2."), \
     .limits = BB_BETWEEN (1, 40), .required = TRUE) \
  F (T, NUMBER, low, N_("Low"), .help = N_("The least setting to consider."), .limits = BB_BETWEEN (-1e6, 1e6), \
     .required = TRUE) \
  F (T, NUMBER, high, N_("High"), .help = N_("The greatest setting to consider."), .limits = BB_BETWEEN (-1e6, 1e6), \
     .required = TRUE)

gboolean bb_factor_check_range (double         low,
                                double         high,
                                GError       **error);
gboolean bb_factor_check_keys  (const BbTable *table,
                                const GArray  *factors,
                                GError       **error);

G_END_DECLS
