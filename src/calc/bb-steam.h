/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/*
 * What it takes to warm water and to boil it away at sea level. Energies in joules, masses in grams,
 * temperatures in °C.
 *
 * Source: IAPWS-IF97, saturated liquid and vapour (tests/reference/water-properties.csv). The heat capacity is
 * the mean between 20 and 100 °C, (419.099 − 83.920) / 80 = 4.1897, rounded; from any start between 0 and
 * 100 °C the energy to dry one gram differs from the enthalpies of IF97 by less than 0.4 J in 2,300 to 2,700.
 */

#define BB_WATER_BOILING_C 100.0
#define BB_WATER_HEAT_CAPACITY_J_PER_G_K 4.19
#define BB_WATER_LATENT_HEAT_J_PER_G 2256.473
