/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-line-factory.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbLinesView:
 *
 * A list of what was found. One line is chosen wherever there is one; it stays chosen while the list is made anew.
 */
#define BB_TYPE_LINES_VIEW (bb_lines_view_get_type ())
G_DECLARE_FINAL_TYPE (BbLinesView, bb_lines_view, BB, LINES_VIEW, AdwBin)

void   bb_lines_view_start            (BbLinesView   *self,
                                       BbSession     *session,
                                       const BbTable *table,
                                       BbLineFill     fill,
                                       const char    *title);
void   bb_lines_view_set_opens        (BbLinesView   *self,
                                       gboolean       opens);
void   bb_lines_view_search           (BbLinesView   *self,
                                       const BbQuery *query,
                                       gboolean       keep);
void   bb_lines_view_take             (BbLinesView   *self,
                                       GArray        *ids,
                                       gboolean       keep);
void   bb_lines_view_keep             (BbLinesView   *self,
                                       gint64         id);
gint64 bb_lines_view_get_chosen       (BbLinesView   *self);
guint  bb_lines_view_get_n_found      (BbLinesView   *self);
void   bb_lines_view_bring_into_sight (BbLinesView   *self);
void   bb_lines_view_focus            (BbLinesView   *self);

G_END_DECLS
