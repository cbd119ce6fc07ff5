/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-field.h"

G_BEGIN_DECLS

/**
 * BbQuickCell:
 *
 * One value of a quick field in a table: a key chooses it, Delete lets go of it, a click offers all.
 */
#define BB_TYPE_QUICK_CELL (bb_quick_cell_get_type ())
G_DECLARE_FINAL_TYPE (BbQuickCell, bb_quick_cell, BB, QUICK_CELL, GtkButton)

GtkWidget     *bb_quick_cell_new        (const BbField *field,
                                         const char    *row);
const BbField *bb_quick_cell_get_field  (BbQuickCell   *self);
int            bb_quick_cell_get_chosen (BbQuickCell   *self);
void           bb_quick_cell_set_chosen (BbQuickCell   *self,
                                         int            index);
void           bb_quick_cell_set_fault  (GtkWidget     *cell,
                                         const char    *message);

G_END_DECLS
