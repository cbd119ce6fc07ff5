/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-show"

#include "bb-show.h"

#include <glib/gi18n-lib.h>

#include "bb-format.h"

/**
 * bb_show_date:
 * @date: (nullable): a date of a record
 *
 * Returns: (transfer full): the day as people here write it; empty where there is none
 */
char *
bb_show_date (const char *date)
{
  g_autoptr (GDateTime) moment = NULL;
  g_autoptr (GTimeZone) zone = g_time_zone_new_local ();
  g_autoptr (GDateTime) local = NULL;
  g_autofree char *full = NULL;

  if (date == NULL || *date == '\0')
    return g_strdup ("");

  /* A day alone is a day anywhere; a moment is shown as the day it was here. */
  if (strlen (date) == 10)
    {
      full = g_strconcat (date, "T12:00:00", NULL);
      moment = g_date_time_new_from_iso8601 (full, zone);
    }
  else
    moment = g_date_time_new_from_iso8601 (date, NULL);

  if (moment == NULL)
    return g_strdup (date);

  local = g_date_time_to_timezone (moment, zone);

  /* Translators: a day in a list: 3 Feb 2025. See the manual of strftime. */
  return g_date_time_format (local, _("%-d %b %Y"));
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
  g_autoptr (GError) error = NULL;
  const BbField *field = bb_table_find_field (table, "name");
  gpointer record = NULL;
  char *name = NULL;

  if (id == 0)
    return g_strdup ("");
  if (field == NULL)
    field = bb_table_find_field (table, "code");
  g_return_val_if_fail (field != NULL, g_strdup (""));

  record = bb_book_load (bb_session_get_book (session), table, id, &error);
  if (record == NULL)
    return g_strdup (error->message);

  name = g_strdup (bb_field_get_text (field, record));
  bb_record_free (table, record);

  return name;
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
  if (!bb_field_is_set (field, record))
    return g_strdup ("");
  if (field->kind == BB_KIND_DATE)
    return bb_show_date (bb_field_get_text (field, record));
  if (field->kind == BB_KIND_REFERENCE)
    return bb_show_name (session, field->target, bb_field_get_integer (field, record));

  return bb_field_format (table, field, record, bb_session_get_units (session));
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
