/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli-lines.h"

#include <glib/gi18n-lib.h>

#include "bb-cli-show.h"
#include "bb-codes.h"
#include "bb-json-write.h"

/* Names longer than this are cut, so that a line stays a line. */
#define WIDEST 40

/* Of a page of facts; notes and reasons stand in the last column, which has no limit. */
#define WIDEST_FACT 60

/**
 * bb_cli_borrow_items:
 * @list: (nullable): a list of a record
 * @table: what is in it
 *
 * Returns: (transfer container) (element-type gpointer): its items, which stay where they are
 */
GPtrArray *
bb_cli_borrow_items (const GArray  *list,
                     const BbTable *table)
{
  GPtrArray *items = g_ptr_array_new ();

  for (guint i = 0; list != NULL && i < list->len; i++)
    g_ptr_array_add (items, list->data + i * table->size);

  return items;
}

/**
 * bb_cli_load_cards:
 * @book: a book
 * @table: a table
 * @ids: (nullable) (element-type gint64): keys of its records; %NULL where @error is set already
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): their lines, see bb_book_load_lines(); %NULL with an error of the book
 */
GPtrArray *
bb_cli_load_cards (BbBook         *book,
                   const BbTable  *table,
                   const GArray   *ids,
                   GError        **error)
{
  return ids != NULL ? bb_book_load_lines (book, table, (const gint64 *) (gpointer) ids->data, ids->len, error) : NULL;
}

/**
 * bb_cli_add_row:
 * @rows: (element-type GStrv): rows
 * @first: the first cell
 * @second: (nullable): the second; none after the first that is %NULL
 * @third: (nullable): the third
 * @fourth: (nullable): the fourth
 *
 * Adds a row for bb_cli_append_columns().
 */
void
bb_cli_add_row (GPtrArray  *rows,
                const char *first,
                const char *second,
                const char *third,
                const char *fourth)
{
  const char *cells[] = { first, second, third, fourth, NULL };

  g_ptr_array_add (rows, g_strdupv ((GStrv) (gpointer) cells));
}

/* What stands above the facts already. */
static gboolean
is_heading (const BbField *field)
{
  return g_str_equal (field->name, "code") || g_str_equal (field->name, "name");
}

static void
add_fact (GPtrArray     *rows,
          BbBook        *book,
          const BbTable *table,
          const BbField *field,
          gconstpointer  record)
{
  g_autofree char *title = g_strconcat ("  ", _(field->title), NULL);
  g_autofree char *value = bb_cli_show_field (book, table, field, record);

  bb_cli_add_row (rows, title, value, NULL, NULL);
}

/**
 * bb_cli_add_facts:
 * @rows: (element-type GStrv): rows
 * @book: a book
 * @table: the record's table
 * @record: a record
 * @station: a station, or %BB_STATION_NONE
 *
 * Adds the values of a record that a person enters, of one station or of none, in the order of its table.
 */
void
bb_cli_add_facts (GPtrArray     *rows,
                  BbBook        *book,
                  const BbTable *table,
                  gconstpointer  record,
                  BbStation      station)
{
  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];

      if (field->station == station && !field->derived && bb_field_is_set (field, record) &&
          field->kind != BB_KIND_LIST && !bb_table_is_second_part (table, field) && !is_heading (field))
        add_fact (rows, book, table, field, record);
    }
}

/**
 * bb_cli_append_facts:
 * @out: where to write
 * @book: a book
 * @table: the record's table
 * @record: a record
 * @names: (array zero-terminated=1): names of fields
 *
 * Appends those fields that hold something, each on a line of its own.
 */
void
bb_cli_append_facts (GString            *out,
                     BbBook             *book,
                     const BbTable      *table,
                     gconstpointer       record,
                     const char * const *names)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);

  for (guint i = 0; names[i] != NULL; i++)
    {
      const BbField *field = bb_table_find_field (table, names[i]);

      if (bb_field_is_set (field, record) &&
          !(field->kind == BB_KIND_TEXT && *bb_field_get_text (field, record) == '\0'))
        add_fact (rows, book, table, field, record);
    }
  bb_cli_append_columns (out, rows, WIDEST_FACT);
}

/**
 * bb_cli_append_lines:
 * @out: where to write
 * @book: a book
 * @table: the lines' table
 * @lines: (element-type gpointer): records
 * @columns: (array zero-terminated=1): names of the fields to show, from left to right
 *
 * Appends a table with a line for each record below the fields' titles.
 */
void
bb_cli_append_lines (GString            *out,
                     BbBook             *book,
                     const BbTable      *table,
                     const GPtrArray    *lines,
                     const char * const *columns)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);

  for (guint r = 0; r <= lines->len; r++)
    {
      g_autoptr (GStrvBuilder) row = g_strv_builder_new ();

      for (guint c = 0; columns[c] != NULL; c++)
        {
          const BbField *field = bb_table_find_field (table, columns[c]);
          g_autofree char *text = r == 0 ? g_strdup (_(field->title))
                                         : bb_cli_show_field (book, table, field, lines->pdata[r - 1]);

          g_strv_builder_add (row, text);
        }
      g_ptr_array_add (rows, g_strv_builder_end (row));
    }
  bb_cli_append_columns (out, rows, WIDEST);
}

/**
 * bb_cli_lines_to_text:
 * @book: a book
 * @table: the lines' table
 * @lines: (element-type gpointer): records
 * @columns: (array zero-terminated=1): names of the fields to show, from left to right
 * @empty: what to say where there is no line
 *
 * Returns: (transfer full): the table of bb_cli_append_lines()
 */
char *
bb_cli_lines_to_text (BbBook             *book,
                      const BbTable      *table,
                      const GPtrArray    *lines,
                      const char * const *columns,
                      const char         *empty)
{
  GString *out = g_string_new (NULL);

  if (lines->len > 0)
    bb_cli_append_lines (out, book, table, lines, columns);
  else
    g_string_append_printf (out, "%s\n", empty);

  return g_string_free (out, FALSE);
}

/**
 * bb_cli_append_json:
 * @out: where to write
 * @book: a book
 * @table: the lines' table
 * @lines: (element-type gpointer): records
 * @error: return location for a #GError
 *
 * Appends a JSON array of records, as book files hold them.
 *
 * Returns: %TRUE on success
 */
gboolean
bb_cli_append_json (GString          *out,
                    BbBook           *book,
                    const BbTable    *table,
                    const GPtrArray  *lines,
                    GError          **error)
{
  g_autoptr (BbCodes) codes = bb_codes_new (book);

  g_string_append_c (out, '[');
  for (guint i = 0; i < lines->len; i++)
    {
      g_string_append (out, i > 0 ? ",\n" : "\n");
      if (!bb_json_append_exchanged (out, table, lines->pdata[i], bb_codes_name, codes, error))
        return FALSE;
    }
  g_string_append (out, "\n]");

  return TRUE;
}

/**
 * bb_cli_lines_to_json:
 * @book: a book
 * @table: the lines' table
 * @lines: (element-type gpointer): records
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): the array of bb_cli_append_json(), on lines of its own; %NULL with an error
 */
char *
bb_cli_lines_to_json (BbBook           *book,
                      const BbTable    *table,
                      const GPtrArray  *lines,
                      GError          **error)
{
  g_autoptr (GString) out = g_string_new (NULL);

  if (!bb_cli_append_json (out, book, table, lines, error))
    return NULL;
  g_string_append_c (out, '\n');

  return g_string_free (g_steal_pointer (&out), FALSE);
}

/**
 * bb_cli_write_lines:
 * @common: how the answer is wanted
 * @book: a book
 * @table: the lines' table
 * @lines: (element-type gpointer): records
 * @columns: (array zero-terminated=1): names of the fields to show, from left to right
 * @empty: what to say where there is no line
 *
 * Writes records as the answer: as JSON, or as a table.
 *
 * Returns: %BB_CLI_OK, or what bb_cli_fail() was told
 */
BbCliStatus
bb_cli_write_lines (const BbCliCommon  *common,
                    BbBook             *book,
                    const BbTable      *table,
                    const GPtrArray    *lines,
                    const char * const *columns,
                    const char         *empty)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *answer = common->json ? bb_cli_lines_to_json (book, table, lines, &error)
                                         : bb_cli_lines_to_text (book, table, lines, columns, empty);

  return bb_cli_answer (answer, error);
}
