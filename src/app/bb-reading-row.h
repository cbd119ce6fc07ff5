/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-due-load.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbReadingRow:
 * @due: the specimen
 * @reading: what is read of it, as it began
 * @cycles: (nullable): where its count of washes is entered
 * @cells: (element-type BbQuickCell): where everything else is, in the order of the fields
 * @touched: whether a person entered anything
 *
 * One specimen in a #BbReadingGrid.
 */
typedef struct {
  const BbDueLine *due;
  BbReading *reading;
  GtkWidget *cycles;
  GPtrArray *cells;
  gboolean touched;
} BbReadingRow;

BbReadingRow     *bb_reading_row_new        (BbSession           *session,
                                             const BbDueLine     *due);
void              bb_reading_row_free       (BbReadingRow        *self);
const BbWashTest *bb_reading_row_get_test   (const BbReadingRow  *self);
GtkWidget        *bb_reading_row_make_title (const BbReadingRow  *self);
GVariant         *bb_reading_row_save       (const BbReadingRow  *self);
void              bb_reading_row_restore    (BbReadingRow        *self,
                                             const char          *cycles,
                                             GVariant            *cells);
void              bb_reading_row_read       (BbReadingRow        *self,
                                             const BbUnitContext *units,
                                             GtkWidget          **faulty,
                                             char               **text);

G_END_DECLS
