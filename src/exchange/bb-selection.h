/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"

G_BEGIN_DECLS

/**
 * BbSelection:
 *
 * The records of a book that go into a file: all, or some recipes with all that belongs to them.
 */
typedef struct _BbSelection BbSelection;

BbSelection *bb_selection_new         (void);
void         bb_selection_free        (BbSelection   *self);
gboolean     bb_selection_add_all     (BbSelection   *self,
                                       BbBook        *book,
                                       GCancellable  *cancellable,
                                       GError       **error);
gboolean     bb_selection_add_recipes (BbSelection   *self,
                                       BbBook        *book,
                                       const gint64  *recipes,
                                       guint          n_recipes,
                                       GCancellable  *cancellable,
                                       GError       **error);
GPtrArray   *bb_selection_get_records (BbSelection   *self,
                                       const BbTable *table);
guint        bb_selection_count       (BbSelection   *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbSelection, bb_selection_free)

G_END_DECLS
