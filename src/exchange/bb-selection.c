/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-exchange"

#include "bb-selection.h"

typedef struct {
  GPtrArray *records;
  GHashTable *ids;
} Chosen;

struct _BbSelection {
  BbBook *book;
  const BbTable * const *tables;
  guint n_tables;
  Chosen *chosen;
};

/**
 * bb_selection_new:
 *
 * Returns: (transfer full): a selection of nothing
 */
BbSelection *
bb_selection_new (void)
{
  BbSelection *self = g_new0 (BbSelection, 1);

  self->tables = bb_book_tables (&self->n_tables);
  self->chosen = g_new0 (Chosen, self->n_tables);
  for (guint t = 0; t < self->n_tables; t++)
    {
      self->chosen[t].records = g_ptr_array_new_with_free_func (self->tables[t]->free_record);
      self->chosen[t].ids = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
    }

  return self;
}

/**
 * bb_selection_free:
 * @self: (transfer full): a selection
 */
void
bb_selection_free (BbSelection *self)
{
  for (guint t = 0; t < self->n_tables; t++)
    {
      g_ptr_array_unref (self->chosen[t].records);
      g_hash_table_unref (self->chosen[t].ids);
    }
  g_free (self->chosen);
  g_free (self);
}

static guint
index_of (const BbSelection *self,
          const BbTable     *table)
{
  for (guint t = 0; t < self->n_tables; t++)
    if (self->tables[t] == table)
      return t;

  g_return_val_if_reached (0);
}

static gint64
key_of (const BbTable *table,
        gconstpointer  record)
{
  return bb_field_get_integer (bb_table_find_field (table, "id"), record);
}

static void
take (BbSelection *self,
      guint        t,
      gpointer     record)
{
  gint64 id = key_of (self->tables[t], record);

  if (g_hash_table_add (self->chosen[t].ids, g_memdup2 (&id, sizeof id)))
    g_ptr_array_add (self->chosen[t].records, record);
  else
    bb_record_free (self->tables[t], record);
}

static gboolean
take_by_key (BbSelection   *self,
             const BbTable *table,
             gint64         id,
             GError       **error)
{
  guint t = index_of (self, table);
  gpointer record = NULL;

  if (g_hash_table_contains (self->chosen[t].ids, &id))
    return TRUE;
  record = bb_book_load (self->book, table, id, error);
  if (record == NULL)
    return FALSE;
  take (self, t, record);

  return TRUE;
}

static void
take_many (BbSelection *self,
           guint        t,
           GPtrArray   *records)
{
  g_autofree gpointer *stolen = NULL;
  gsize n = 0;

  stolen = g_ptr_array_steal (records, &n);
  for (gsize i = 0; i < n; i++)
    take (self, t, stolen[i]);
}

/* What can't be without a chosen record: a recipe's revisions, their signatures, states and wash tests, the readings of
 * these. */
static gboolean
take_parts (BbSelection   *self,
            guint          t,
            const BbField *owner,
            GError       **error)
{
  const GPtrArray *owners = self->chosen[index_of (self, owner->target)].records;

  for (guint i = 0; i < owners->len; i++)
    {
      g_autoptr (GPtrArray) parts = bb_book_load_referring (self->book, self->tables[t], owner->target,
                                                            key_of (owner->target, owners->pdata[i]), error);

      if (parts == NULL)
        return FALSE;
      take_many (self, t, parts);
    }

  return TRUE;
}

static gboolean
take_referred (BbSelection *self,
               guint        t,
               GError     **error)
{
  const BbTable *table = self->tables[t];
  const GPtrArray *records = self->chosen[t].records;

  for (guint i = 0; i < records->len; i++)
    for (guint f = 0; f < table->n_fields; f++)
      if (table->fields[f].kind == BB_KIND_REFERENCE && bb_field_is_set (&table->fields[f], records->pdata[i]) &&
          !take_by_key (self, table->fields[f].target, bb_field_get_integer (&table->fields[f], records->pdata[i]),
                        error))
        return FALSE;

  return TRUE;
}

static gboolean
take_parts_of_recipes (BbSelection  *self,
                       GCancellable *cancellable,
                       GError      **error)
{
  for (guint t = index_of (self, &bb_recipe_table) + 1; t < self->n_tables; t++)
    for (guint f = 0; f < self->tables[t]->n_fields; f++)
      {
        const BbField *field = &self->tables[t]->fields[f];

        if (g_cancellable_set_error_if_cancelled (cancellable, error))
          return FALSE;
        if (field->owner && !take_parts (self, t, field, error))
          return FALSE;
      }

  return TRUE;
}

/**
 * bb_selection_add_all:
 * @self: a selection of nothing
 * @book: a book
 * @cancellable: (nullable): stops the work
 * @error: return location for a #GError
 *
 * Selects every record of the book but its log, withdrawn ones too, with every seal held against its revision.
 *
 * Returns: %FALSE with an error of the book, or %G_IO_ERROR_CANCELLED
 */
gboolean
bb_selection_add_all (BbSelection  *self,
                      BbBook       *book,
                      GCancellable *cancellable,
                      GError      **error)
{
  for (guint t = 0; t < self->n_tables; t++)
    {
      g_autoptr (GPtrArray) records = NULL;

      if (!bb_book_table_is_exchanged (self->tables[t]))
        continue;
      if (g_cancellable_set_error_if_cancelled (cancellable, error))
        return FALSE;
      records = bb_book_load_all (book, self->tables[t], TRUE, error);
      if (records == NULL)
        return FALSE;
      take_many (self, t, records);
    }

  return TRUE;
}

/**
 * bb_selection_add_recipes:
 * @self: a selection
 * @book: a book
 * @recipes: (array length=n_recipes): keys of recipes
 * @n_recipes: how many
 * @cancellable: (nullable): stops the work
 * @error: return location for a #GError
 *
 * Selects recipes, what is part of them (revisions, signatures, states, wash tests, readings) and all that these refer
 * to.
 *
 * Returns: %FALSE with an error of the book, or %G_IO_ERROR_CANCELLED
 */
gboolean
bb_selection_add_recipes (BbSelection  *self,
                          BbBook       *book,
                          const gint64 *recipes,
                          guint         n_recipes,
                          GCancellable *cancellable,
                          GError      **error)
{
  self->book = book;
  for (guint i = 0; i < n_recipes; i++)
    if (!take_by_key (self, &bb_recipe_table, recipes[i], error))
      return FALSE;

  /* Tables stand after those they refer to: one way down finds all parts, one way up all that these refer to. */
  if (!take_parts_of_recipes (self, cancellable, error))
    return FALSE;
  for (guint t = self->n_tables; t-- > 0;)
    if (!take_referred (self, t, error))
      return FALSE;

  return TRUE;
}

static int
compare_keys (gconstpointer a,
              gconstpointer b,
              gpointer      table)
{
  gint64 key_a = key_of (table, *(const gconstpointer *) a);
  gint64 key_b = key_of (table, *(const gconstpointer *) b);

  return (key_a > key_b) - (key_a < key_b);
}

/**
 * bb_selection_get_records:
 * @self: a selection
 * @table: a table of the book
 *
 * Returns: (transfer none) (element-type gpointer): the selected records of @table, in the order in which they came
 *   into the book
 */
GPtrArray *
bb_selection_get_records (BbSelection   *self,
                          const BbTable *table)
{
  GPtrArray *records = self->chosen[index_of (self, table)].records;

  g_ptr_array_sort_with_data (records, compare_keys, (gpointer) table);

  return records;
}

/**
 * bb_selection_count:
 * @self: a selection
 *
 * Returns: how many records are selected
 */
guint
bb_selection_count (BbSelection *self)
{
  guint n = 0;

  for (guint t = 0; t < self->n_tables; t++)
    n += self->chosen[t].records->len;

  return n;
}
