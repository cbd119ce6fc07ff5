/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-line-list.h"
#include "bb-row.h"

G_BEGIN_DECLS

/**
 * BbLineFill:
 * @row: the row, which may have shown another record before
 * @session: the session
 * @record: what to show, of a table as bb_book_get_line_table() gives it
 *
 * Shows a line of a #BbLineList in a row.
 */
typedef void (*BbLineFill) (BbRow         *row,
                            BbSession     *session,
                            gconstpointer  record);

/**
 * BbFilling:
 * @lines: (owned): the list
 * @fill: shows a line of it
 * @row_height: how high the last row became that was filled: what the others are taken to be
 *
 * What the places of one list share.
 */
typedef struct {
  BbLineList *lines;
  BbLineFill fill;
  int row_height;
} BbFilling;

/**
 * BbPlace:
 *
 * A place in a list: empty until it comes into sight, then with a row. A #GtkListView makes and measures some 200
 * widgets around what is seen, and to fill and lay out as many rows at each letter of a search would take too long.
 */
#define BB_TYPE_PLACE (bb_place_get_type ())
G_DECLARE_FINAL_TYPE (BbPlace, bb_place, BB, PLACE, GtkWidget)

GtkWidget *bb_place_new    (BbFilling *filling);
void       bb_place_show   (BbPlace   *self,
                            guint      position);
void       bb_place_reload (BbPlace   *self);
void       bb_place_clear  (BbPlace   *self);

G_END_DECLS
