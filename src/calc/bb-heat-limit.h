/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"
#include "bb-fibre-data.h"

G_BEGIN_DECLS

/*
 * The hottest surface that a garment should meet, in °C: the lowest heat limit among its fibres, however small their
 * share (bb-fibre-data.h says what the limit of a fibre is). Of several fibres with one limit the first in the list
 * of fibres is named, whatever order the label has.
 *
 * Finish: garment-dyed, heavily softened and water-repellent garments are kept 10 °C below that, because dyes,
 * softeners and repellents yellow or shift before the fibre does. That it is ten degrees is common practice, no
 * source. The other finishes change nothing.
 *
 * reason is one to three sentences: what the limit is, what the finish does, and where any polyester is, that its
 * dyes can migrate into the print well below the limit (trade pages have it from about 280 °F, 138 °C: secondary).
 *
 * Assumption: a press or iron in contact for seconds to a few minutes. The garment's own care label and a test on a
 * spare garment come first.
 * Refused: shares that do not make 1, a fibre listed twice.
 * Sources: of each fibre in bb-fibre-data.c; of finishes none, as said above.
 */

#define BB_HEAT_LIMIT_IN_FIELDS(F, T) \
  F (T, LIST, composition, N_("Fibres"), .help = N_("What the fabric is made of, from the garment's label."), \
     .item = &bb_fibre_share_table, .count = BB_BETWEEN (1, BB_N_FIBRES), .required = TRUE) \
  F (T, CHOICE, finish, N_("Finish"), .help = N_("What was done to the fabric after knitting and dyeing."), \
     .choices = &bb_finish_choices, .fallback = BB_DEFAULT (BB_FINISH_NONE), .required = TRUE)

BB_DECLARE_TABLE (BbHeatLimitIn, bb_heat_limit_in, BB_HEAT_LIMIT_IN_FIELDS);

#define BB_HEAT_LIMIT_OUT_FIELDS(F, T) \
  F (T, NUMBER, limit_c, N_("Limit"), .help = N_("The hottest surface that the garment should meet."), \
     .quantity = BB_QUANTITY_TEMPERATURE) \
  F (T, CHOICE, limiting_fibre, N_("Limiting fibre"), .help = N_("The fibre that bears the least."), \
     .choices = &bb_fibre_choices) \
  F (T, TEXT, reason, N_("Reason"), .help = N_("What the limit is, and what else to mind."), .multiline = TRUE)

BB_DECLARE_TABLE (BbHeatLimitOut, bb_heat_limit_out, BB_HEAT_LIMIT_OUT_FIELDS);

BB_DECLARE_CALCULATOR (HeatLimit, heat_limit);

gboolean bb_heat_limit_of_blank (const BbBlank   *blank,
                                 BbHeatLimitOut  *out,
                                 GError         **error);

G_END_DECLS
