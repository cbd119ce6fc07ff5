/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-lot.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbLots:
 *
 * The containers of one supply, in the order in which they are to be used up, and whether it is time to order.
 */
#define BB_TYPE_LOTS (bb_lots_get_type ())
G_DECLARE_FINAL_TYPE (BbLots, bb_lots, BB, LOTS, GtkBox)

GtkWidget *bb_lots_new  (void);
void       bb_lots_show (BbLots         *self,
                         BbSession      *session,
                         const BbSupply *supply);
void       bb_lots_mark (BbLots         *self,
                         gint64          lot);

G_END_DECLS
