/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-figures.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbFigure:
 *
 * A number that a person reads from a metre away: title, large numeral, small unit, and where it comes from.
 * To a screen reader it is one sentence.
 */
#define BB_TYPE_FIGURE (bb_figure_get_type ())
G_DECLARE_FINAL_TYPE (BbFigure, bb_figure, BB, FIGURE, AdwBin)

BbFigure  *bb_figure_add       (BbFigures           *box,
                                const char          *title);
void       bb_figure_set_title (BbFigure            *self,
                                const char          *title);
void       bb_figure_set       (BbFigure            *self,
                                const char          *value,
                                const char          *unit,
                                const char          *note);
void       bb_figure_set_field (BbFigure            *self,
                                BbSession           *session,
                                const BbTable       *table,
                                const BbField       *field,
                                gconstpointer        record,
                                const char          *note);
void       bb_figure_mark      (BbFigure            *self,
                                gboolean             marked);

G_END_DECLS
