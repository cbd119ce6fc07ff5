/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-words.h"

#include <glib/gi18n-lib.h>

#include "bb-format.h"

#define DAY_LENGTH 10

/**
 * bb_words_of_day:
 * @date: (nullable): a date of a record
 *
 * Returns: (transfer full): the day as people here write it; empty where there is none
 */
char *
bb_words_of_day (const char *date)
{
  g_autoptr (GDateTime) moment = NULL;
  g_autoptr (GTimeZone) zone = g_time_zone_new_local ();
  g_autoptr (GDateTime) local = NULL;

  if (date == NULL || *date == '\0')
    return g_strdup ("");

  /* A day alone is a day anywhere; a moment is shown as the day it was here. */
  if (strlen (date) == DAY_LENGTH)
    {
      g_autofree char *noon = g_strconcat (date, "T12:00:00", NULL);

      moment = g_date_time_new_from_iso8601 (noon, zone);
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
 * bb_words_of_name:
 * @book: a book
 * @table: a table whose records have a name or a code
 * @id: a record's key, 0 for none
 *
 * Returns: (transfer full): what a person calls the record; empty where there is none, and what is wrong where it can't
 *   be read
 */
char *
bb_words_of_name (BbBook        *book,
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

  record = bb_book_load (book, table, id, &error);
  if (record == NULL)
    return g_strdup (error->message);

  name = g_strdup (bb_field_get_text (field, record));
  bb_record_free (table, record);

  return name;
}

/**
 * bb_words_of_field:
 * @book: a book
 * @table: the record's table
 * @field: a field of it
 * @record: a record of @book
 * @units: the units to show
 *
 * Returns: (transfer full): the value with its unit as a person reads it, of a reference the name of what it points to;
 *   empty where there is none
 */
char *
bb_words_of_field (BbBook              *book,
                   const BbTable       *table,
                   const BbField       *field,
                   gconstpointer        record,
                   const BbUnitContext *units)
{
  if (!bb_field_is_set (field, record))
    return g_strdup ("");
  if (field->kind == BB_KIND_DATE)
    return bb_words_of_day (bb_field_get_text (field, record));
  if (field->kind == BB_KIND_REFERENCE)
    return bb_words_of_name (book, field->target, bb_field_get_integer (field, record));

  return bb_field_format (table, field, record, units);
}
