/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbReadingGrid:
 *
 * The specimens that have to be graded now, a row each, and a cell for each thing that is read of them: keys fill them
 * in, and Enter leads from cell to cell. Signal `changed`: something was entered.
 */
#define BB_TYPE_READING_GRID (bb_reading_grid_get_type ())
G_DECLARE_FINAL_TYPE (BbReadingGrid, bb_reading_grid, BB, READING_GRID, AdwBin)

guint      bb_reading_grid_fill       (BbReadingGrid *self,
                                       BbSession     *session,
                                       GPtrArray     *lines);
guint      bb_reading_grid_get_n_rows (BbReadingGrid *self);
void       bb_reading_grid_focus      (BbReadingGrid *self);
char      *bb_reading_grid_save       (BbReadingGrid *self);
void       bb_reading_grid_restore    (BbReadingGrid *self,
                                       const char    *saved);
GPtrArray *bb_reading_grid_collect    (BbReadingGrid *self,
                                       char         **problem);

G_END_DECLS
