/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli-show.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-canonical.h"
#include "bb-format.h"
#include "bb-words.h"

#define GAP 2

const BbUnitContext bb_cli_units = { .system = BB_UNITS_METRIC };

static gsize
char_width (gunichar c)
{
  if (g_unichar_iszerowidth (c))
    return 0;

  return g_unichar_iswide (c) ? 2 : 1;
}

static gsize
width_of (const char *text)
{
  gsize width = 0;

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    width += char_width (g_utf8_get_char (p));

  return width;
}

/* A cell is one line of at most @widest columns of the terminal. */
static void
fit_cell (char **cell,
          gsize  widest)
{
  char *p = *cell;
  g_autofree char *cut = NULL;

  g_strdelimit (*cell, "\n\t", ' ');
  if (width_of (*cell) <= widest)
    return;

  for (gsize width = 1; width + char_width (g_utf8_get_char (p)) <= widest; p = g_utf8_next_char (p))
    width += char_width (g_utf8_get_char (p));
  *p = '\0';
  cut = g_strconcat (*cell, "…", NULL);
  g_free (*cell);
  *cell = g_steal_pointer (&cut);
}

static GArray *
fit_rows (GPtrArray *rows,
          gsize      widest)
{
  GArray *widths = g_array_new (FALSE, TRUE, sizeof (gsize));

  for (guint r = 0; r < rows->len; r++)
    {
      GStrv row = rows->pdata[r];

      if (g_strv_length (row) > widths->len)
        g_array_set_size (widths, g_strv_length (row));
      for (guint c = 0; row[c] != NULL; c++)
        {
          fit_cell (&row[c], row[c + 1] != NULL ? widest : G_MAXSIZE);
          g_array_index (widths, gsize, c) = MAX (g_array_index (widths, gsize, c), width_of (row[c]));
        }
    }

  return widths;
}

/**
 * bb_cli_append_columns:
 * @out: where to write
 * @rows: (element-type GStrv): lines of equally many cells, which are cut where they are too long
 * @widest: how wide a column may be; the last one has no limit
 *
 * Appends a table whose columns stand below each other.
 */
void
bb_cli_append_columns (GString   *out,
                       GPtrArray *rows,
                       gsize      widest)
{
  g_autoptr (GArray) widths = fit_rows (rows, widest);

  for (guint r = 0; r < rows->len; r++)
    {
      GStrv row = rows->pdata[r];
      gsize missing = 0;

      for (guint c = 0; row[c] != NULL; c++)
        {
          /* Blanks are owed until something follows them, so that no line ends with one. */
          for (; *row[c] != '\0' && missing > 0; missing--)
            g_string_append_c (out, ' ');
          g_string_append (out, row[c]);
          missing += g_array_index (widths, gsize, c) - width_of (row[c]) + GAP;
        }
      g_string_append_c (out, '\n');
    }
}

/**
 * bb_cli_append_recipe_line:
 * @out: where to write
 * @line: what a list shows of a recipe
 *
 * Appends it as JSON. Keys are of one book and left out; the codes are there to go by.
 */
void
bb_cli_append_recipe_line (GString            *out,
                           const BbRecipeLine *line)
{
  g_autoptr (BbRecipeLine) shown = bb_record_copy (&bb_recipe_line_table, line);
  g_autofree char *json = NULL;

  shown->id = BB_INTEGER_NONE;
  shown->revision = BB_INTEGER_NONE;
  json = bb_record_to_json (&bb_recipe_line_table, shown, BB_SCOPE_ALL);
  g_string_append (out, json);
}

/**
 * bb_cli_show_day:
 * @date: a date of a record
 *
 * Returns: (transfer full): the day, in universal time, as `YYYY-MM-DD`
 */
char *
bb_cli_show_day (const char *date)
{
  return g_strndup (date, strlen ("YYYY-MM-DD"));
}

/**
 * bb_cli_show_field:
 * @book: a book
 * @table: the record's table
 * @field: a field of it
 * @record: a record of @book
 *
 * Returns: (transfer full): the value as a person reads it; of a reference the name of what it points to
 */
char *
bb_cli_show_field (BbBook        *book,
                   const BbTable *table,
                   const BbField *field,
                   gconstpointer  record)
{
  if (field->kind == BB_KIND_REFERENCE && bb_field_is_set (field, record))
    return bb_words_of_name (book, field->target, bb_field_get_integer (field, record));
  if (field->kind == BB_KIND_DATE && bb_field_is_set (field, record))
    return bb_cli_show_day (bb_field_get_text (field, record));

  return bb_field_format (table, field, record, &bb_cli_units);
}

static char *
show_heat (double c,
           double s)
{
  g_autofree char *temperature = isnan (c) ? NULL
                                           : bb_quantity_format_with_unit (BB_QUANTITY_TEMPERATURE, c, &bb_cli_units);
  g_autofree char *dwell = isnan (s) ? NULL : bb_quantity_format_with_unit (BB_QUANTITY_TIME, s, &bb_cli_units);

  return g_strjoin (" ", temperature != NULL ? temperature : dwell, temperature != NULL ? dwell : NULL, NULL);
}

static char *
show_pretreat (BbBook           *book,
               const BbRevision *revision)
{
  g_autofree char *product = NULL;
  g_autofree char *dilution = NULL;
  g_autofree char *laydown = NULL;

  if (revision->pretreat_method == BB_PRETREAT_NONE)
    return g_strdup (bb_choices_get_title (&bb_pretreat_method_choices, revision->pretreat_method));

  product = bb_words_of_name (book, &bb_supply_table, revision->pretreat_product);
  dilution = bb_dilution_describe (revision->pretreat_parts_concentrate, revision->pretreat_parts_water, &bb_cli_units);
  laydown = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, revision->pretreat_laydown_g_per_m2,
                                          &bb_cli_units);

  return g_strjoin (" ", product, dilution, laydown, NULL);
}

static char *
show_print (const BbRevision *revision)
{
  const char *mode = bb_choices_get_title (&bb_print_mode_choices, revision->print_mode);
  g_autofree char *white = NULL;

  if (isnan (revision->print_white_g_per_m2))
    return g_strdup (mode);
  white = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, revision->print_white_g_per_m2, &bb_cli_units);

  return g_strjoin (" ", mode, white, NULL);
}

/**
 * bb_cli_show_settings:
 * @book: a book
 * @revision: a revision of it
 *
 * Returns: (transfer full): what an operator sets, along the chain, in one line
 */
char *
bb_cli_show_settings (BbBook           *book,
                      const BbRevision *revision)
{
  g_autofree char *pretreat = show_pretreat (book, revision);
  g_autofree char *dry_heat = show_heat (revision->dry_c, revision->dry_s);
  g_autofree char *cure_heat = show_heat (revision->cure_c, revision->cure_s);
  g_autofree char *print = show_print (revision);
  /* Translators: what an operator sets: pretreat, heat of drying, print mode, heat of curing. */
  return g_strdup_printf (_("%s · dry %s · %s · cure %s"), pretreat,
                          *dry_heat != '\0' ? dry_heat
                                            : bb_choices_get_title (&bb_heat_method_choices, revision->dry_method),
                          print, cure_heat);
}
