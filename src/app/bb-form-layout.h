/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field-row.h"

G_BEGIN_DECLS

/**
 * BbFormLayout:
 * @form: the box of a form, empty so far
 * @rows: (element-type BbFieldRow): its rows, in the order of its fields
 *
 * Puts the rows of a form in their places.
 */
typedef void (*BbFormLayout) (GtkBox    *form,
                              GPtrArray *rows);

void bb_form_layout_column (GtkBox    *form,
                            GPtrArray *rows);
void bb_form_layout_strip  (GtkBox    *form,
                            GPtrArray *rows);

G_END_DECLS
