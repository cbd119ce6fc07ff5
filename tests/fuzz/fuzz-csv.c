/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <string.h>

#include "bb-csv.h"
#include "fuzz.h"
#include "records.h"

/* CSV, cell by cell and as the records of each table. What was read comes back the same when it is written. */

/* With a byte order mark, as the first cell may begin with one that belongs to it. */
static char *
write_rows (GPtrArray *rows)
{
  GString *out = g_string_new ("\xef\xbb\xbf");

  for (guint i = 0; i < rows->len; i++)
    {
      GStrv row = rows->pdata[i];

      for (guint j = 0; row[j] != NULL; j++)
        {
          if (j > 0)
            g_string_append_c (out, ',');
          bb_csv_append_cell (out, row[j]);
        }
      g_string_append (out, "\r\n");
    }

  return g_string_free (out, FALSE);
}

static void
check_rows (GPtrArray *rows)
{
  g_autofree char *text = write_rows (rows);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) again = bb_csv_split (text, strlen (text), &error);

  g_assert_no_error (error);
  g_assert_cmpuint (again->len, ==, rows->len);
  for (guint i = 0; i < rows->len; i++)
    g_assert_cmpstrv (again->pdata[i], rows->pdata[i]);
}

static gboolean
add_to (gpointer             record,
        G_GNUC_UNUSED guint  done,
        G_GNUC_UNUSED guint  total,
        gpointer             data,
        G_GNUC_UNUSED GError **error)
{
  g_ptr_array_add (data, record);

  return TRUE;
}

static void
check_records (const BbTable *table,
               GPtrArray     *records)
{
  g_autoptr (GPtrArray) again = g_ptr_array_new_with_free_func (table->free_record);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = bb_csv_write (table, records, name_record, NULL, &error);

  g_assert_no_error (error);
  bb_csv_read (table, text, strlen (text), resolve_record, add_to, again, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (again->len, ==, records->len);
  for (guint i = 0; i < records->len; i++)
    g_assert_true (bb_record_equal (table, again->pdata[i], records->pdata[i]));
}

/* What is written is what keeps to the limits. */
static void
read_table (const BbTable *table,
            const char    *text,
            gsize          length)
{
  g_autoptr (GPtrArray) records = g_ptr_array_new_with_free_func (table->free_record);
  g_autoptr (GError) error = NULL;

  if (!bb_csv_read (table, text, length, resolve_record, add_to, records, &error))
    fuzz_check_message (error);
  for (guint i = records->len; i > 0; i--)
    if (!record_is_valid (table, records->pdata[i - 1]))
      g_ptr_array_remove_index (records, i - 1);
  check_records (table, records);
}

gboolean
fuzz_one (const guint8 *data,
          gsize         length)
{
  const char *text = length > 0 ? (const char *) data : "";
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) rows = bb_csv_split (text, length, &error);
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  if (rows == NULL)
    {
      fuzz_check_message (error);
      return FALSE;
    }

  check_rows (rows);
  for (guint i = 0; i < n_tables; i++)
    read_table (tables[i], text, length);

  return TRUE;
}
