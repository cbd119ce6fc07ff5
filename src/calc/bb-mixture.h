/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-field.h"
#include "bb-recipe.h"
#include "bb-water.h"

G_BEGIN_DECLS

/*
 * What the calculators of pretreat have in common: limits, the fields that describe a dilution,
 * and the share of its mass that is concentrate. Ideal mixing: the volumes of concentrate and
 * water add. A real mixture shrinks or swells a little; weighing does not depend on it.
 *
 * The limits are common sense, no source: wide enough for any garment, container and laydown
 * that a shop can meet, and far from where results overflow.
 */

#define BB_LIMITS_BOX_AREA BB_BETWEEN (1e-6, 100)
#define BB_LIMITS_LAYDOWN BB_BETWEEN (0.001, 10000)
#define BB_LIMITS_OVERSPRAY BB_FROM_BELOW (0, 1)
#define BB_LIMITS_PARTS_CONCENTRATE BB_BETWEEN (1e-6, 1e6)
#define BB_LIMITS_PARTS_WATER BB_BETWEEN (0, 1e6)
#define BB_LIMITS_CONCENTRATE_DENSITY BB_BETWEEN (0.1, 10)
#define BB_LIMITS_MIX_MASS BB_ABOVE_TO (0, 1e9)

#define BB_DILUTION_FIELDS(F, T) \
  F (T, NUMBER, parts_concentrate, N_("Dilution"), \
     .help = N_("Parts of concentrate to parts of water, like 1:3."), \
     .limits = BB_LIMITS_PARTS_CONCENTRATE, .parts_with = "parts_water", .required = TRUE, \
     .group = N_("Pretreat")) \
  F (T, NUMBER, parts_water, N_("Parts of water"), \
     .help = N_("Parts of water; 0 for a ready-to-use liquid."), \
     .limits = BB_LIMITS_PARTS_WATER, .required = TRUE, .group = N_("Pretreat")) \
  BB_DILUTION_LIQUID_FIELDS (F, T)

#define BB_DILUTION_LIQUID_FIELDS(F, T) \
  F (T, CHOICE, basis, N_("Parts"), \
     .help = N_("Whether the parts are measured by volume or by mass."), \
     .choices = &bb_basis_choices, .required = TRUE, .group = N_("Pretreat")) \
  F (T, NUMBER, concentrate_density_g_per_ml, N_("Concentrate's density"), \
     .help = N_("From the supplier's data sheet, or a weighed measuring flask."), \
     .quantity = BB_QUANTITY_DENSITY, .limits = BB_LIMITS_CONCENTRATE_DENSITY, \
     .fallback = BB_DEFAULT (1), .group = N_("Pretreat")) \
  F (T, NUMBER, water_temperature_c, N_("Water's temperature"), \
     .help = N_("Sets the water's density: a litre of warm water weighs less."), \
     .quantity = BB_QUANTITY_TEMPERATURE, \
     .limits = BB_BETWEEN (BB_WATER_COLDEST_C, BB_WATER_WARMEST_C), .fallback = BB_DEFAULT (20), \
     .group = N_("Pretreat")) \
  F (T, NUMBER, concentrate_solids_fraction, N_("Concentrate's solids"), \
     .help = N_("Share of the concentrate's mass that stays when the water is gone; empty " \
                "where not known."), .quantity = BB_QUANTITY_FRACTION, \
     .limits = BB_BETWEEN (0, 1), .group = N_("Pretreat"))

double bb_mixture_concentrate_share (double  parts_concentrate,
                                      double  parts_water,
                                      BbBasis basis,
                                      double  concentrate_g_per_ml,
                                      double  water_g_per_ml,
                                      double *water_share);

G_END_DECLS
