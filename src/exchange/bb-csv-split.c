/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-csv.h"

#include <string.h>

typedef struct {
  const char *p;
  const char *end;
  guint line;
} Cursor;

static gboolean
fail (const Cursor *self,
      const char   *what,
      GError      **error)
{
  g_set_error (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_UNREADABLE, "not CSV: %s in line %u", what, self->line);
  return FALSE;
}

static gboolean
at_line_end (const Cursor *self)
{
  return self->p == self->end || *self->p == '\n' || *self->p == '\r';
}

static gboolean
split_quoted (Cursor  *self,
              GString *cell,
              GError **error)
{
  for (self->p++; self->p < self->end; self->p++)
    {
      if (*self->p == '"')
        {
          self->p++;
          if (self->p == self->end || *self->p != '"')
            return at_line_end (self) || *self->p == ',' ||
                   fail (self, "something between a closing quotation mark and the next comma", error);
        }
      if (*self->p == '\n')
        self->line++;
      g_string_append_c (cell, *self->p);
    }

  return fail (self, "a cell without its closing quotation mark", error);
}

static gboolean
split_cell (Cursor  *self,
            GString *cell,
            GError **error)
{
  if (self->p < self->end && *self->p == '"')
    return split_quoted (self, cell, error);

  for (; !at_line_end (self) && *self->p != ','; self->p++)
    {
      if (*self->p == '"')
        return fail (self, "a quotation mark in the middle of a cell", error);
      g_string_append_c (cell, *self->p);
    }

  return TRUE;
}

static GStrv
split_row (Cursor  *self,
           GError **error)
{
  g_autoptr (GStrvBuilder) row = g_strv_builder_new ();

  while (TRUE)
    {
      g_autoptr (GString) cell = g_string_new (NULL);

      if (!split_cell (self, cell, error))
        return NULL;
      g_strv_builder_add (row, cell->str);
      if (self->p == self->end || *self->p != ',')
        break;
      self->p++;
    }

  if (self->p < self->end && *self->p == '\r')
    self->p++;
  if (self->p < self->end && *self->p == '\n')
    self->p++;
  self->line++;

  return g_strv_builder_end (row);
}

/**
 * bb_csv_split:
 * @text: a text
 * @length: its length in bytes
 * @error: return location for a #GError in the domain %BB_EXCHANGE_ERROR
 *
 * Takes CSV apart. Lines may end with CR LF, LF or CR; a byte order mark is passed over, as is an empty line.
 *
 * Returns: (transfer full) (element-type GStrv): the rows, or %NULL where the text is no CSV
 */
GPtrArray *
bb_csv_split (const char *text,
              gsize       length,
              GError    **error)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  Cursor cursor = { .p = text, .end = text + length, .line = 1 };

  if (length > BB_EXCHANGE_BYTES)
    {
      g_set_error (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_TOO_LARGE,
                   "%" G_GSIZE_FORMAT " bytes are more than the limit of %d", length, BB_EXCHANGE_BYTES);
      return NULL;
    }
  if (!g_utf8_validate_len (text, length, NULL))
    {
      g_set_error_literal (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_UNREADABLE, "not UTF-8");
      return NULL;
    }
  if (length >= 3 && memcmp (text, "\xef\xbb\xbf", 3) == 0)
    cursor.p += 3;

  while (cursor.p < cursor.end)
    {
      GStrv row = split_row (&cursor, error);

      if (row == NULL)
        return NULL;
      if (row[0][0] == '\0' && row[1] == NULL)
        g_strfreev (row);
      else
        g_ptr_array_add (rows, row);
    }

  return g_steal_pointer (&rows);
}

/**
 * bb_csv_append_cell:
 * @out: where to write
 * @text: what the cell holds
 *
 * Appends one cell, in quotation marks where it needs them.
 */
void
bb_csv_append_cell (GString    *out,
                    const char *text)
{
  if (strpbrk (text, "\",\r\n") == NULL)
    {
      g_string_append (out, text);
      return;
    }

  g_string_append_c (out, '"');
  for (const char *p = text; *p != '\0'; p++)
    {
      if (*p == '"')
        g_string_append_c (out, '"');
      g_string_append_c (out, *p);
    }
  g_string_append_c (out, '"');
}
