/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-field.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/**
 * bb_table_find_field:
 * @self: a table
 * @name: a field's name
 *
 * Returns: (nullable): the field, or %NULL if the table has none of that name
 */
const BbField *
bb_table_find_field (const BbTable *self,
                     const char    *name)
{
  g_return_val_if_fail (self != NULL && name != NULL, NULL);

  for (guint i = 0; i < self->n_fields; i++)
    if (g_str_equal (self->fields[i].name, name))
      return &self->fields[i];

  return NULL;
}

/**
 * bb_table_is_second_part:
 * @self: a table
 * @field: a field of it
 *
 * Returns: %TRUE if @field is entered and shown together with another one, as the `b` of `a : b`
 */
gboolean
bb_table_is_second_part (const BbTable *self,
                         const BbField *field)
{
  for (guint i = 0; i < self->n_fields; i++)
    if (g_strcmp0 (self->fields[i].parts_with, field->name) == 0)
      return TRUE;

  return FALSE;
}

/**
 * bb_table_find_owner:
 * @self: a table
 *
 * Returns: (nullable): the reference to the record that one of this table is a part of, or %NULL if its records stand
 *   for themselves
 */
const BbField *
bb_table_find_owner (const BbTable *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  for (guint i = 0; i < self->n_fields; i++)
    if (self->fields[i].owner)
      return &self->fields[i];

  return NULL;
}

/**
 * bb_record_get_key:
 * @table: a table
 * @record: a record of it
 *
 * Returns: the record's own key, 0 where it has none yet; that of what it belongs to, where such records have none
 */
gint64
bb_record_get_key (const BbTable *table,
                   gconstpointer  record)
{
  const BbField *field = bb_table_find_field (table, "id");

  if (field == NULL)
    field = bb_table_find_owner (table);
  g_return_val_if_fail (field != NULL && record != NULL, 0);

  return bb_field_get_integer (field, record);
}

/**
 * bb_record_is_withdrawn:
 * @table: a table
 * @record: a record of it
 *
 * Returns: %TRUE where the record was taken out of use
 */
gboolean
bb_record_is_withdrawn (const BbTable *table,
                        gconstpointer  record)
{
  const BbField *field = bb_table_find_field (table, "withdrawn_at");

  return field != NULL && bb_field_is_set (field, record);
}

/**
 * bb_part_make_code:
 * @owner: the code of a record
 * @number: the number of a part of it
 *
 * Returns: (transfer full): the code of the part, like that of a recipe's third revision: `R-1.3`
 */
char *
bb_part_make_code (const char *owner,
                   gint64      number)
{
  return g_strdup_printf ("%s.%" G_GINT64_FORMAT, owner, number);
}

/**
 * bb_station_get_title:
 * @station: a station of the chain
 *
 * Returns: (nullable): what a person calls it, translated; %NULL for no station
 */
const char *
bb_station_get_title (BbStation station)
{
  switch (station)
    {
    case BB_STATION_PRETREAT:
      return _("Pretreat");
    case BB_STATION_DRY:
      return _("Dry");
    case BB_STATION_PRINT:
      return _("Print");
    case BB_STATION_CURE:
      return _("Cure");
    case BB_STATION_PROOF:
      return _("Proof");
    case BB_STATION_NONE:
    case BB_N_STATIONS:
    default:
      return NULL;
    }
}

/**
 * bb_record_init:
 * @table: the record's table
 * @record: memory of the size of the table's struct, of any content
 *
 * Makes a record with every default in place, and nothing where there is none.
 */
void
bb_record_init (const BbTable *table,
                gpointer       record)
{
  memset (record, 0, table->size);
  for (guint i = 0; i < table->n_fields; i++)
    bb_field_reset (&table->fields[i], record);
}

/**
 * bb_record_clear:
 * @table: the record's table
 * @record: a record
 *
 * Frees all that the record owns and leaves it empty, without defaults.
 */
void
bb_record_clear (const BbTable *table,
                 gpointer       record)
{
  for (guint i = 0; i < table->n_fields; i++)
    bb_field_clear (&table->fields[i], record);
}

/**
 * bb_record_new:
 * @table: a table
 *
 * Returns: (transfer full): a record with every default in place; free it with bb_record_free()
 */
gpointer
bb_record_new (const BbTable *table)
{
  gpointer record = g_malloc (table->size);

  bb_record_init (table, record);

  return record;
}

/**
 * bb_record_free:
 * @table: the record's table
 * @record: (transfer full) (nullable): a record
 */
void
bb_record_free (const BbTable *table,
                gpointer       record)
{
  if (record == NULL)
    return;

  bb_record_clear (table, record);
  g_free (record);
}

/**
 * bb_record_copy:
 * @table: the record's table
 * @record: a record
 *
 * Returns: (transfer full): a deep copy
 */
gpointer
bb_record_copy (const BbTable *table,
                gconstpointer  record)
{
  gpointer copy = bb_record_new (table);

  for (guint i = 0; i < table->n_fields; i++)
    bb_field_copy (&table->fields[i], record, copy);

  return copy;
}

/**
 * bb_record_equal:
 * @table: the records' table
 * @record_a: a record
 * @record_b: a record
 *
 * Returns: %TRUE if every field of both holds the same
 */
gboolean
bb_record_equal (const BbTable *table,
                 gconstpointer  record_a,
                 gconstpointer  record_b)
{
  for (guint i = 0; i < table->n_fields; i++)
    if (!bb_field_equal (&table->fields[i], record_a, record_b))
      return FALSE;

  return TRUE;
}

static int
compare_integers (gconstpointer a,
                  gconstpointer b,
                  gpointer      data)
{
  const BbField *field = data;
  gint64 first = bb_field_get_integer (field, *(gconstpointer const *) a);
  gint64 second = bb_field_get_integer (field, *(gconstpointer const *) b);

  return (first > second) - (first < second);
}

/**
 * bb_records_sort:
 * @table: the records' table
 * @name: the name of a field that holds an integer
 * @records: records of @table
 *
 * Sorts records by rising values of a field; equal ones stay in the order they have.
 */
void
bb_records_sort (const BbTable *table,
                 const char    *name,
                 GPtrArray     *records)
{
  const BbField *field = bb_table_find_field (table, name);

  g_return_if_fail (field != NULL && records != NULL);

  g_ptr_array_sort_with_data (records, compare_integers, (gpointer) field);
}
