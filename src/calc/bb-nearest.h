/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"
#include "bb-recipe.h"

G_BEGIN_DECLS

/*
 * Which of the recipes at hand lie nearest to a garment that nobody has printed yet, and in what they differ.
 *
 *     distance = (4 fibre + 1.5 mass + 1 knit + 1 finish + 2 colour + 1.5 proof) / 11
 *
 * each part from 0, the same, to 1:
 *     fibre   share of the fabric's mass that is another fibre; where it is another of the same family, cellulose,
 *             protein or synthetic, 0.35 of that share: exactly the least cost of turning one composition into the
 *             other when a share that stays in its family costs 0.35, and one that leaves it 1
 *     mass    |log2 (mass / mass wanted)|, so that twice as heavy and half as heavy are alike; 1 at most
 *     knit    0 the same, 0.5 a near one (jersey, rib, interlock; fleece, terry; pique, mesh), else 1
 *     finish  0 the same, 0.5 where one of the two is not known, else 1
 *     colour  ΔE00 / 50, 1 at most; 0.5 where a colour is not known
 *     proof   0 proven, 0.5 on trial, 0.8 draft, 1 withdrawn; then halfway to 1 / (1 + passed), so that more specimens
 *             that passed stand higher
 * Colours are sRGB (IEC 61966-2-1) read as CIELAB of the white point D50, compared by CIEDE2000 (ISO/CIE 11664-6).
 *
 * Assumes that what makes a pretreat hold is the fibre first, then how the fabric takes up and gives off the liquid,
 * then what is under the ink. The weights and steps are common practice, no source: an order to look at things in, and
 * no promise that a recipe holds. A trial says that.
 *
 * Equals stay in the order in which they were given. Masses in g/m², differences are the recipe's less the wanted.
 * Refused: shares that do not make 1, a fibre listed twice, a colour that is not #rrggbb; no more than 10,000 recipes.
 * Source: CIEDE2000 by Little CMS; the rest as said.
 */

#define BB_NEAREST_GARMENT_FIELDS(F, T) \
  F (T, LIST, composition, N_("Fibres"), .help = N_("What the fabric is made of, from the garment's label."), \
     .item = &bb_fibre_share_table, .count = BB_BETWEEN (1, 8), .required = TRUE) \
  F (T, NUMBER, mass_g_per_m2, N_("Fabric mass"), .help = N_("Mass per area of the fabric."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA, .limits = BB_BETWEEN (40, 1000), .required = TRUE) \
  F (T, CHOICE, knit, N_("Knit"), .help = N_("How the fabric is made."), .choices = &bb_knit_choices, \
     .required = TRUE) \
  F (T, CHOICE, finish, N_("Finish"), .help = N_("What was done to the fabric after knitting and dyeing."), \
     .choices = &bb_finish_choices, .fallback = BB_DEFAULT (BB_FINISH_NONE), .required = TRUE) \
  F (T, TEXT, colour, N_("Colour"), .help = N_("What the colour is called, for the reasons in words."), \
     .limits = BB_BETWEEN (0, 80)) \
  F (T, TEXT, srgb, N_("sRGB"), .help = N_("The garment's colour as #rrggbb; empty where it is not known."), \
     .limits = BB_BETWEEN (7, 7))

#define BB_CANDIDATE_FIELDS(F, T) \
  F (T, TEXT, name, N_("Recipe"), .help = N_("What the recipe is called."), .limits = BB_BETWEEN (1, 120), \
     .required = TRUE) \
  BB_NEAREST_GARMENT_FIELDS (F, T) \
  F (T, CHOICE, state, N_("State"), .help = N_("Where the revision stands."), .choices = &bb_state_choices, \
     .required = TRUE) \
  F (T, INTEGER, passed, N_("Passed"), .help = N_("How many specimens stood their wash plan."), \
     .limits = BB_BETWEEN (0, 1000000), .fallback = BB_DEFAULT (0), .required = TRUE)

BB_DECLARE_TABLE (BbCandidate, bb_candidate, BB_CANDIDATE_FIELDS);

#define BB_NEAREST_IN_FIELDS(F, T) \
  BB_NEAREST_GARMENT_FIELDS (F, T) \
  F (T, LIST, candidates, N_("Recipes"), .help = N_("The recipes to choose from, the newest first."), \
     .item = &bb_candidate_table, .count = BB_BETWEEN (0, 10000), .required = TRUE) \
  F (T, INTEGER, limit, N_("How many"), .help = N_("How many to name at most."), .limits = BB_BETWEEN (1, 10000), \
     .fallback = BB_DEFAULT (5), .required = TRUE)

BB_DECLARE_TABLE (BbNearestIn, bb_nearest_in, BB_NEAREST_IN_FIELDS);

#define BB_NEAR_FIELDS(F, T) \
  F (T, INTEGER, candidate, N_("Place"), .help = N_("Place of the recipe among those given, from 0.")) \
  F (T, TEXT, name, N_("Recipe"), .help = N_("What the recipe is called.")) \
  F (T, NUMBER, distance, N_("Distance"), .help = N_("0 for the same garment with a proven recipe, 1 at most.")) \
  F (T, NUMBER, fibre_distance, N_("Fibres apart"), .help = N_("Of the fibres alone.")) \
  F (T, NUMBER, mass_difference_g_per_m2, N_("Heavier by"), .help = N_("Its fabric less the wanted one."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA) \
  F (T, FLAG, same_fibres, N_("Same fibres"), .help = N_("Whether it is of the same fibres.")) \
  F (T, FLAG, same_knit, N_("Same knit"), .help = N_("Whether it is knitted in the same way.")) \
  F (T, FLAG, same_finish, N_("Same finish"), .help = N_("Whether it was finished in the same way.")) \
  F (T, NUMBER, de_00, N_("ΔE00"), .help = N_("How far the colours lie apart; empty where one is not known."))

BB_DECLARE_TABLE (BbNear, bb_near, BB_NEAR_FIELDS);

#define BB_NEAREST_OUT_FIELDS(F, T) \
  F (T, LIST, nearest, N_("Nearest"), .help = N_("The nearest recipes, the nearest first."), .item = &bb_near_table)

BB_DECLARE_TABLE (BbNearestOut, bb_nearest_out, BB_NEAREST_OUT_FIELDS);

BB_DECLARE_CALCULATOR (Nearest, nearest);

char *bb_near_dup_reasons (const BbNear        *self,
                           const BbNearestIn   *in,
                           const BbUnitContext *context);

G_END_DECLS
