/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"
#include "bb-fibre-data.h"

G_BEGIN_DECLS

/*
 * What it takes to dry a pretreated garment under a press, and what the scale should show afterwards. Masses in
 * g, temperatures in °C, energy in kJ, heat flow in W, time in s.
 *
 *     water_g     = wet_g · (1 − solids_fraction)
 *     energy_kj   = (heated_fabric_g · c · (100 − start_c) + water_g · (c_w · (100 − start_c) + L)) / 1000
 *     minimum_s   = energy_kj · 1000 / heat_flux_w
 *     dry_gain_g  = wet_g · solids_fraction
 *     regain_g    = regain · heated_fabric_g
 *
 * c is the mean heat capacity of the fibres and regain their mean standard moisture regain (bb-fibre-data.h), each
 * weighted by its share as it stands; regain_fraction, where given, takes the place of the latter. c_w and L of
 * water are in bb-steam.h.
 *
 * Assumptions: sea level; the fabric and the water start at one temperature and leave at 100 °C; nothing is lost
 * to platen, sheet or air, and the moisture that the fibres themselves give off is not paid for, so that minimum_s
 * is a floor and not a setting. heat_flux_w is the whole flow of heat into the garment, not a flow per area.
 * heated_fabric_g is taken as dry mass in regain_g.
 *
 * press_c is part of no formula. A press below 100 °C is refused, because the energy is that of fabric and water
 * brought to 100 °C. minimum_s is null without heat_flux_w.
 *
 * Refused: shares that do not make 1, a fibre listed twice.
 * Sources: heat capacities and regains in bb-fibre-data.c, water in bb-steam.h.
 */

#define BB_DRYING_IN_FIELDS(F, T) \
  F (T, NUMBER, wet_g, N_("Wet mass"), .help = N_("Mass of pretreat on the garment, wet."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_BETWEEN (0, 100000), .required = TRUE) \
  F (T, NUMBER, solids_fraction, N_("Solids"), \
     .help = N_("Share of the wet mass that stays when the water is gone."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_BETWEEN (0, 1), .required = TRUE) \
  F (T, NUMBER, heated_fabric_g, N_("Heated fabric"), \
     .help = N_("Mass of the fabric that lies between the platens."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_BETWEEN (0, 100000), .required = TRUE) \
  F (T, LIST, composition, N_("Fibres"), .help = N_("What the fabric is made of, from the garment's label."), \
     .item = &bb_fibre_share_table, .count = BB_BETWEEN (1, BB_N_FIBRES), .required = TRUE) \
  F (T, NUMBER, start_c, N_("Start"), .help = N_("Temperature of the garment before it goes under the press."), \
     .quantity = BB_QUANTITY_TEMPERATURE, .limits = BB_BETWEEN (0, 100), .fallback = BB_DEFAULT (23), \
     .required = TRUE) \
  F (T, NUMBER, press_c, N_("Press"), .help = N_("Temperature of the platen's surface. Water has to boil under it."), \
     .quantity = BB_QUANTITY_TEMPERATURE, .limits = BB_BETWEEN (100, 400), .required = TRUE) \
  F (T, NUMBER, heat_flux_w, N_("Heat flow"), .help = N_("Heat that the press puts into the garment per second."), \
     .quantity = BB_QUANTITY_HEAT_FLOW, .limits = BB_BETWEEN (0.001, 1e6)) \
  F (T, NUMBER, regain_fraction, N_("Moisture regain"), \
     .help = N_("Moisture that the dry fibres hold in the room, where you know it better than a handbook."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_BETWEEN (0, 1))

BB_DECLARE_TABLE (BbDryingIn, bb_drying_in, BB_DRYING_IN_FIELDS);

#define BB_DRYING_OUT_FIELDS(F, T) \
  F (T, NUMBER, water_g, N_("Water"), .help = N_("Water that has to leave."), .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, energy_kj, N_("Energy"), .help = N_("Heat that warms the fabric and boils the water away."), \
     .quantity = BB_QUANTITY_ENERGY) \
  F (T, NUMBER, minimum_s, N_("Shortest time"), \
     .help = N_("Below this the garment can't be dry. It is a floor and not a setting."), \
     .quantity = BB_QUANTITY_TIME) \
  F (T, NUMBER, dry_gain_g, N_("Gain when dry"), \
     .help = N_("How much heavier the garment is than before spraying once all water has left."), \
     .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, regain_g, N_("Fibre moisture"), \
     .help = N_("Moisture of the fibres that a press drives off too: why it can weigh less than its tare."), \
     .quantity = BB_QUANTITY_MASS)

BB_DECLARE_TABLE (BbDryingOut, bb_drying_out, BB_DRYING_OUT_FIELDS);

BB_DECLARE_CALCULATOR (Drying, drying);

G_END_DECLS
