/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-item"

#include "bb-item.h"

/**
 * BbItem:
 *
 * One record as an object, so that list models can hold it. It owns its record, which never changes: a changed
 * record is a new item.
 */
struct _BbItem
{
  GObject parent_instance;

  const BbTable *table;
  gpointer record;
};

G_DEFINE_FINAL_TYPE (BbItem, bb_item, G_TYPE_OBJECT)

static void
bb_item_finalize (GObject *object)
{
  BbItem *self = BB_ITEM (object);

  bb_record_free (self->table, self->record);

  G_OBJECT_CLASS (bb_item_parent_class)->finalize (object);
}

static void
bb_item_class_init (BbItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bb_item_finalize;
}

static void
bb_item_init (BbItem *self)
{
  (void) self;
}

/**
 * bb_item_new:
 * @table: the record's table
 * @record: (transfer full): a record
 *
 * Returns: (transfer full): an item that owns @record
 */
BbItem *
bb_item_new (const BbTable *table,
             gpointer       record)
{
  BbItem *self = NULL;

  g_return_val_if_fail (table != NULL && record != NULL, NULL);

  self = g_object_new (BB_TYPE_ITEM, NULL);
  self->table = table;
  self->record = record;

  return self;
}

/**
 * bb_item_get_table:
 * @self: an item
 *
 * Returns: the table of the item's record
 */
const BbTable *
bb_item_get_table (BbItem *self)
{
  g_return_val_if_fail (BB_IS_ITEM (self), NULL);

  return self->table;
}

/**
 * bb_item_get_record:
 * @self: an item
 *
 * Returns: (transfer none): the item's record
 */
gconstpointer
bb_item_get_record (BbItem *self)
{
  g_return_val_if_fail (BB_IS_ITEM (self), NULL);

  return self->record;
}

/**
 * bb_item_get_id:
 * @self: an item
 *
 * Returns: the key of the item's record in the book, 0 where it has none
 */
gint64
bb_item_get_id (BbItem *self)
{
  const BbField *field = NULL;

  g_return_val_if_fail (BB_IS_ITEM (self), 0);

  field = bb_table_find_field (self->table, "id");
  if (field == NULL || !bb_field_is_set (field, self->record))
    return 0;

  return bb_field_get_integer (field, self->record);
}
