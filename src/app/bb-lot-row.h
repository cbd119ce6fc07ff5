/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-lot.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbLotRow:
 *
 * One container: how it stands, what is left in it, what can be done with it, and what was done. Its actions are those
 * of the #BbLots around it.
 */
#define BB_TYPE_LOT_ROW (bb_lot_row_get_type ())
G_DECLARE_FINAL_TYPE (BbLotRow, bb_lot_row, BB, LOT_ROW, GtkListBoxRow)

GtkWidget *bb_lot_row_new    (BbSession     *session,
                              const BbStock *lot,
                              const char    *today);
gint64     bb_lot_row_get_id (BbLotRow      *self);

G_END_DECLS
