/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field-row.h"

G_BEGIN_DECLS

/**
 * BbListLine:
 *
 * One struct of a list in a form: an editor for each of its fields, side by side, and below them what there is to say
 * of each. It says when the person changes something in it, or wants it away.
 */
#define BB_TYPE_LIST_LINE (bb_list_line_get_type ())
G_DECLARE_FINAL_TYPE (BbListLine, bb_list_line, BB, LIST_LINE, GtkListBoxRow)

GtkWidget  *bb_list_line_new         (BbSession     *session,
                                      const BbTable *table,
                                      GPtrArray     *columns,
                                      gconstpointer  item);
gboolean    bb_list_line_store       (BbListLine    *self,
                                      gpointer       item,
                                      char         **message);
gboolean    bb_list_line_judge       (BbListLine    *self,
                                      gboolean       even_if_untouched);
char       *bb_list_line_dup_state   (BbListLine    *self);
void        bb_list_line_set_state   (BbListLine    *self,
                                      const char    *state,
                                      BbUnitSystem   system);
void        bb_list_line_refresh     (BbListLine    *self);
BbFieldRow *bb_list_line_find        (BbListLine    *self,
                                      const char    *path);
BbFieldRow *bb_list_line_find_faulty (BbListLine    *self);

G_END_DECLS
