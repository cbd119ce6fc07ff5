/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-recipe.h"
#include "bb-word-badge.h"

G_BEGIN_DECLS

/**
 * BbRow:
 *
 * A line of a list: a colour if it has one, a name, a quiet second line, a badge if it has one with what else must not
 * be missed, and a short code at the end.
 */
#define BB_TYPE_ROW (bb_row_get_type ())
G_DECLARE_FINAL_TYPE (BbRow, bb_row, BB, ROW, AdwBin)

GtkWidget  *bb_row_new         (void);
void        bb_row_set         (BbRow      *self,
                                const char *title,
                                const char *code,
                                const char *subtitle);
const char *bb_row_get_title   (BbRow      *self);
void        bb_row_set_garment (BbRow      *self,
                                const char *srgb,
                                BbShade     shade);
void        bb_row_set_badge   (BbRow      *self,
                                GtkWidget  *badge);
GtkWidget  *bb_row_get_badge   (BbRow      *self);
void        bb_row_set_mark    (BbRow      *self,
                                BbTone      tone,
                                const char *text);
void        bb_row_set_withdrawn (BbRow    *self,
                                gboolean    withdrawn);

G_END_DECLS
