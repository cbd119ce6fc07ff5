/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-statements.h"

static gboolean
is_one_value (const BbField *self)
{
  switch (self->kind)
    {
    case BB_KIND_NUMBER:
    case BB_KIND_INTEGER:
    case BB_KIND_TEXT:
    case BB_KIND_CHOICE:
    case BB_KIND_DATE:
    case BB_KIND_FLAG:
    case BB_KIND_REFERENCE:
      return TRUE;
    case BB_KIND_LIST:
    case BB_KIND_NUMBERS:
    case BB_KIND_TEXTS:
    case BB_KIND_OBJECT:
    default:
      return FALSE;
    }
}

/**
 * bb_field_is_column:
 * @self: a field of a table of the book
 * @scope: which columns
 *
 * Returns: %TRUE if the field is a column of its table, and in @scope; a list has a table of its own
 */
gboolean
bb_field_is_column (const BbField *self,
                    BbColumns      scope)
{
  if (scope == BB_COLUMNS_SAVED && (self->stepwise || g_str_equal (self->name, "id")))
    return FALSE;
  if (scope == BB_COLUMNS_STEPS && !self->stepwise)
    return FALSE;

  return is_one_value (self);
}

/* The columns of a table, separated by commas; parameters from ?1 in their place where @as_parameters. */
static void
append_columns (GString       *sql,
                const BbTable *table,
                gboolean       as_parameters)
{
  guint n = 0;

  for (guint i = 0; i < table->n_fields; i++)
    if (bb_field_is_column (&table->fields[i], BB_COLUMNS_ALL))
      {
        n++;
        if (n > 1)
          g_string_append (sql, ", ");
        if (as_parameters)
          g_string_append_printf (sql, "?%u", n);
        else
          g_string_append (sql, table->fields[i].name);
      }
}

/**
 * bb_sql_columns:
 * @table: a table
 *
 * Returns: (transfer full): the table's columns in the order in which bb_record_read() reads them
 */
char *
bb_sql_columns (const BbTable *table)
{
  GString *sql = g_string_new (NULL);

  append_columns (sql, table, FALSE);

  return g_string_free (sql, FALSE);
}

/**
 * bb_sql_select:
 * @table: a table
 * @rest: what follows the table's name
 *
 * Returns: (transfer full): a statement that reads whole records
 */
char *
bb_sql_select (const BbTable *table,
               const char    *rest)
{
  g_autofree char *columns = bb_sql_columns (table);

  return g_strdup_printf ("SELECT %s FROM %s %s", columns, table->name, rest);
}

/**
 * bb_sql_insert:
 * @table: a table
 *
 * Returns: (transfer full): a statement that adds a record, gives its key, and takes the columns as parameters
 *   from ?1; the key chooses itself where it is nothing
 */
char *
bb_sql_insert (const BbTable *table)
{
  GString *sql = g_string_new ("INSERT INTO ");

  g_string_append_printf (sql, "%s (", table->name);
  append_columns (sql, table, FALSE);
  g_string_append (sql, ") VALUES (");
  append_columns (sql, table, TRUE);
  g_string_append (sql, ") RETURNING id");

  return g_string_free (sql, FALSE);
}

/**
 * bb_sql_update:
 * @table: a table
 * @scope: which columns are changed
 *
 * Returns: (transfer full): a statement that changes a record and gives its key; it takes the columns of @scope as
 *   parameters from ?1, then the key
 */
char *
bb_sql_update (const BbTable *table,
               BbColumns      scope)
{
  GString *sql = g_string_new ("UPDATE ");
  guint n = 0;

  g_string_append_printf (sql, "%s SET ", table->name);
  for (guint i = 0; i < table->n_fields; i++)
    if (bb_field_is_column (&table->fields[i], scope))
      {
        n++;
        g_string_append_printf (sql, "%s%s = ?%u", n > 1 ? ", " : "", table->fields[i].name, n);
      }
  g_string_append_printf (sql, " WHERE id = ?%u RETURNING id", n + 1);

  return g_string_free (sql, FALSE);
}

/**
 * bb_sql_list_select:
 * @table: a table
 * @list: a field of it that holds a list
 *
 * Returns: (transfer full): a statement that reads the items of the record ?1 in order
 */
char *
bb_sql_list_select (const BbTable *table,
                    const BbField *list)
{
  g_autofree char *columns = bb_sql_columns (list->item);

  return g_strdup_printf ("SELECT %s FROM %s_%s WHERE %s = ?1 ORDER BY position", columns, table->name, list->name,
                          table->name);
}

/**
 * bb_sql_list_insert:
 * @table: a table
 * @list: a field of it that holds a list
 *
 * Returns: (transfer full): a statement that adds an item and takes its columns as parameters from ?1, then
 *   the record's key and the position
 */
char *
bb_sql_list_insert (const BbTable *table,
                    const BbField *list)
{
  g_autofree char *columns = bb_sql_columns (list->item);
  GString *sql = g_string_new ("INSERT INTO ");
  guint n = 0;

  for (guint i = 0; i < list->item->n_fields; i++)
    n += bb_field_is_column (&list->item->fields[i], BB_COLUMNS_ALL) ? 1 : 0;

  g_string_append_printf (sql, "%s_%s (%s, %s, position) VALUES (", table->name, list->name, columns, table->name);
  append_columns (sql, list->item, TRUE);
  g_string_append_printf (sql, ", ?%u, ?%u)", n + 1, n + 2);

  return g_string_free (sql, FALSE);
}

/**
 * bb_sql_list_delete:
 * @table: a table
 * @list: a field of it that holds a list
 *
 * Returns: (transfer full): a statement that drops the items of the record ?1
 */
char *
bb_sql_list_delete (const BbTable *table,
                    const BbField *list)
{
  return g_strdup_printf ("DELETE FROM %s_%s WHERE %s = ?1", table->name, list->name, table->name);
}
