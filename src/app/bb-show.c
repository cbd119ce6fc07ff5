/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-show"

#include "bb-show.h"

#include <glib/gi18n-lib.h>

#include "bb-words.h"

/**
 * bb_show_date:
 * @date: (nullable): a date of a record
 *
 * Returns: (transfer full): the day as people here write it; empty where there is none
 */
char *
bb_show_date (const char *date)
{
  return bb_words_of_day (date);
}

/**
 * bb_show_name:
 * @session: the session
 * @table: a table whose records have a name or a code
 * @id: a record's key, 0 for none
 *
 * Returns: (transfer full): what a person calls the record; empty where there is none
 */
char *
bb_show_name (BbSession     *session,
              const BbTable *table,
              gint64         id)
{
  return bb_words_of_name (bb_session_get_book (session), table, id);
}

/**
 * bb_show_field:
 * @session: the session
 * @table: the record's table
 * @field: a field
 * @record: a record of the field's table
 *
 * Returns: (transfer full): the value with its unit as a person reads it; empty where there is none
 */
char *
bb_show_field (BbSession     *session,
               const BbTable *table,
               const BbField *field,
               gconstpointer  record)
{
  return bb_words_of_field (bb_session_get_book (session), table, field, record, bb_session_get_units (session));
}

/**
 * bb_show_limits:
 * @session: the session
 * @field: a field
 *
 * Returns: (transfer full) (nullable): what a number there may be, in the shown units; %NULL where nothing
 *   needs to be said
 */
char *
bb_show_limits (BbSession     *session,
                const BbField *field)
{
  const BbUnitContext *units = bb_session_get_units (session);
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;

  if (!field->limits.set || (field->kind != BB_KIND_NUMBER && field->kind != BB_KIND_INTEGER))
    return NULL;

  low = bb_quantity_format_with_unit (field->quantity, field->limits.minimum, units);
  high = bb_quantity_format_with_unit (field->quantity, field->limits.maximum, units);

  if (field->limits.open_minimum)
    return g_strdup_printf (_("More than %s, up to %s."), low, high);

  return g_strdup_printf (_("From %s to %s."), low, high);
}

/**
 * bb_show_size:
 * @units: how numbers are shown
 * @width_mm: a width
 * @height_mm: a height
 *
 * Returns: (transfer full): the two, as `300 × 400 mm`
 */
char *
bb_show_size (const BbUnitContext *units,
              double               width_mm,
              double               height_mm)
{
  g_autofree char *width = bb_quantity_format (BB_QUANTITY_LENGTH, width_mm, units);
  g_autofree char *height = bb_quantity_format (BB_QUANTITY_LENGTH, height_mm, units);

  return g_strdup_printf ("%s × %s %s", width, height, bb_quantity_get_unit (BB_QUANTITY_LENGTH, units));
}
