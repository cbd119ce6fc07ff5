/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * The density of air-free water at 101.325 kPa, between 0 and 40 °C, in g/ml.
 * Source: M. Tanaka, G. Girard, R. Davis, A. Peuto, N. Bignell, "Recommended table for the
 * density of water between 0 °C and 40 °C based on recent experimental reports", Metrologia 38
 * (2001) 301–309. Tap water of a workshop, with its air and minerals, differs from it by less
 * than a part in a thousand (from memory).
 */

#define BB_WATER_COLDEST_C 0.0
#define BB_WATER_WARMEST_C 40.0

double bb_water_density_g_per_ml (double celsius);

G_END_DECLS
