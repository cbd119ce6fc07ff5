/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"

G_BEGIN_DECLS

/*
 * Belt, heated length and dwell of a tunnel dryer: heated_length_mm = belt_mm_per_s · dwell_s. Give exactly two,
 * the output holds all three. Lengths in mm, speed in mm/s, time in s.
 *
 * garments_per_hour = 3600 · belt_mm_per_s / pitch_mm, for one lane; pitch_mm is from the front edge of one garment
 * to the front edge of the next. It is null without pitch_mm.
 *
 * Assumption: the belt runs at one speed. What the garment's surface reaches is cure-profile's question.
 * Refused: fewer or more than two of the three.
 * Source: plain kinematics.
 */

#define BB_TUNNEL_IN_FIELDS(F, T) \
  F (T, NUMBER, heated_length_mm, N_("Heated length"), .help = N_("Length of the belt that lies under heat."), \
     .quantity = BB_QUANTITY_LENGTH, .limits = BB_BETWEEN (0.001, 1e6)) \
  F (T, NUMBER, belt_mm_per_s, N_("Belt speed"), .help = N_("How fast the belt moves."), \
     .quantity = BB_QUANTITY_SPEED, .limits = BB_BETWEEN (0.001, 1e5)) \
  F (T, NUMBER, dwell_s, N_("Dwell"), .help = N_("How long a garment is under heat."), \
     .quantity = BB_QUANTITY_TIME, .limits = BB_BETWEEN (0.001, 1e6)) \
  F (T, NUMBER, pitch_mm, N_("Pitch"), .help = N_("From the front edge of one garment to that of the next."), \
     .quantity = BB_QUANTITY_LENGTH, .limits = BB_BETWEEN (0.001, 1e6))

BB_DECLARE_TABLE (BbTunnelIn, bb_tunnel_in, BB_TUNNEL_IN_FIELDS);

#define BB_TUNNEL_OUT_FIELDS(F, T) \
  F (T, NUMBER, heated_length_mm, N_("Heated length"), .help = N_("Length of the belt that lies under heat."), \
     .quantity = BB_QUANTITY_LENGTH) \
  F (T, NUMBER, belt_mm_per_s, N_("Belt speed"), .help = N_("How fast the belt has to move."), \
     .quantity = BB_QUANTITY_SPEED) \
  F (T, NUMBER, dwell_s, N_("Dwell"), .help = N_("How long a garment is under heat."), .quantity = BB_QUANTITY_TIME) \
  F (T, NUMBER, garments_per_hour, N_("Garments per hour"), .help = N_("How many garments one lane delivers."))

BB_DECLARE_TABLE (BbTunnelOut, bb_tunnel_out, BB_TUNNEL_OUT_FIELDS);

BB_DECLARE_CALCULATOR (Tunnel, tunnel);

G_END_DECLS
