/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-blank.h"

G_BEGIN_DECLS

/*
 * Published properties of the fibres that garments are made of, and their means over a composition.
 *
 * Regain: grams of water that one gram of dry fibre holds in the standard atmosphere, 20 °C and 65 % relative
 * humidity: the fibre's standard moisture regain. The trade's conventional figures for buying and selling
 * (ASTM D1909, Regulation (EU) No 1007/2011 Annex IX) are higher, polyester's 1.5 % against 0.4 %, and are not
 * what leaves a garment under a press. Where a handbook prints a range, its middle.
 *
 * Heat capacity: of dry fibre at room temperature. Where a handbook prints a range, its middle.
 *
 * Heat limit: the hottest sole plate that the care label usual for the fibre allows (ISO 3758 has three: 200,
 * 150 and 110 °C), as the nearest published figure to a platen laid on a garment; for elastane, which labels do
 * not rank by itself, the temperature at which it begins to stick.
 *
 * Each value's source stands beside it in bb-fibre-data.c. *Secondary* means read in a re-teller, not in the
 * source itself; *from memory* means read nowhere.
 */

#define BB_FIBRE_COUNT_ONE(enumerator, key, title) + 1
enum { BB_N_FIBRES = 0 BB_FIBRE_CHOICES (BB_FIBRE_COUNT_ONE) };

/**
 * BbFibreData:
 * @regain_fraction: standard moisture regain, grams per gram of dry fibre
 * @heat_capacity_j_per_g_k: specific heat of dry fibre, J/(g K)
 * @heat_limit_c: hottest surface that the fibre should meet, °C
 * @limit_reason: one sentence that says what the limit is, marked for translation
 *
 * What is published about one fibre.
 */
typedef struct {
  double regain_fraction;
  double heat_capacity_j_per_g_k;
  double heat_limit_c;
  const char *limit_reason;
} BbFibreData;

const BbFibreData *bb_fibre_data_get                (BbFibre       fibre);
double             bb_composition_get_regain        (const GArray *composition);
double             bb_composition_get_heat_capacity (const GArray *composition);
gboolean           bb_composition_has               (const GArray *composition,
                                                     BbFibre       fibre);

G_END_DECLS
