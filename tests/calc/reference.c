/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

#include "reference.h"

#include <math.h>

struct _Reference {
  GStrv columns;
  GPtrArray *rows;
};

/* Within double quotes a comma is text; doubled quotes are left out. */
static GStrv
split_cells (const char *line)
{
  g_autoptr (GStrvBuilder) cells = g_strv_builder_new ();
  g_autoptr (GString) cell = g_string_new (NULL);
  gboolean quoted = FALSE;

  for (const char *p = line; *p != '\0'; p++)
    if (*p == '"')
      quoted = !quoted;
    else if (*p == ',' && !quoted)
      {
        g_strv_builder_add (cells, cell->str);
        g_string_truncate (cell, 0);
      }
    else
      g_string_append_c (cell, *p);
  g_strv_builder_add (cells, cell->str);

  return g_strv_builder_end (cells);
}

/**
 * reference_load:
 * @name: the name of a file in tests/reference, without `.csv`
 *
 * Reads published or computed values; ends the test if the file can't be read.
 *
 * Returns: (transfer full): the table
 */
Reference *
reference_load (const char *name)
{
  g_autofree char *base = g_strconcat (name, ".csv", NULL);
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "reference", base, NULL);
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  g_autoptr (GError) error = NULL;
  Reference *self = g_new0 (Reference, 1);

  if (!g_file_get_contents (path, &text, NULL, &error))
    g_error ("%s", error->message);

  self->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      GStrv cells = NULL;

      if (*lines[i] == '\0' || *lines[i] == '#')
        continue;
      cells = split_cells (lines[i]);
      if (self->columns == NULL)
        self->columns = cells;
      else if (g_strv_length (cells) == g_strv_length (self->columns))
        g_ptr_array_add (self->rows, cells);
      else
        g_error ("%s: line %u has another number of cells than the head", path, i + 1);
    }
  g_assert_cmpuint (self->rows->len, >, 0);

  return self;
}

/**
 * reference_free:
 * @self: (transfer full): a table
 */
void
reference_free (Reference *self)
{
  g_strfreev (self->columns);
  g_ptr_array_unref (self->rows);
  g_free (self);
}

/**
 * reference_get_length:
 * @self: a table
 *
 * Returns: how many rows it has
 */
guint
reference_get_length (const Reference *self)
{
  return self->rows->len;
}

/**
 * reference_get_text:
 * @self: a table
 * @row: a row, from 0
 * @column: a column's name
 *
 * Returns: (transfer none): what stands there
 */
const char *
reference_get_text (const Reference *self,
                    guint            row,
                    const char      *column)
{
  g_assert_cmpuint (row, <, self->rows->len);
  for (guint i = 0; self->columns[i] != NULL; i++)
    if (g_str_equal (self->columns[i], column))
      return ((GStrv) g_ptr_array_index (self->rows, row))[i];

  g_error ("There is no column %s", column);
}

/**
 * reference_get_number:
 * @self: a table
 * @row: a row, from 0
 * @column: a column's name
 *
 * Returns: the number that stands there; NaN in an empty cell
 */
double
reference_get_number (const Reference *self,
                      guint            row,
                      const char      *column)
{
  const char *text = reference_get_text (self, row, column);
  char *end = NULL;
  double number = g_ascii_strtod (text, &end);

  if (*text == '\0')
    return (double) NAN;
  if (*end != '\0')
    g_error ("%s: %s is not a number", column, text);

  return number;
}
