/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

#include "bb-field.h"

G_BEGIN_DECLS

#define BB_TYPE_ITEM (bb_item_get_type ())
G_DECLARE_FINAL_TYPE (BbItem, bb_item, BB, ITEM, GObject)

BbItem        *bb_item_new        (const BbTable *table,
                                   gpointer       record);
const BbTable *bb_item_get_table  (BbItem        *self);
gconstpointer  bb_item_get_record (BbItem        *self);
gint64         bb_item_get_id     (BbItem        *self);

G_END_DECLS
