/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "bb-format.h"

#define DAY_LENGTH 10

#define SECONDS_OF_MINUTE 60
#define MINUTES_OF_HOUR 60

/* Days that a person counts; beyond them a date says more. */
#define SOON_DAYS 14

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
 * bb_words_of_moment:
 * @moment: (nullable): a moment, as `YYYY-MM-DDThh:mm:ssZ`
 *
 * Returns: (transfer full): the hour here, with the day where that is not today; empty where there is none
 */
char *
bb_words_of_moment (const char *moment)
{
  g_autoptr (GDateTime) utc = moment != NULL ? g_date_time_new_from_iso8601 (moment, NULL) : NULL;
  g_autoptr (GDateTime) local = utc != NULL ? g_date_time_to_local (utc) : NULL;
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  if (local == NULL)
    return g_strdup ("");
  if (g_date_time_get_year (local) == g_date_time_get_year (now) &&
      g_date_time_get_day_of_year (local) == g_date_time_get_day_of_year (now))
    return g_date_time_format (local, "%H:%M");

  /* Translators: an hour of another day: 3 Feb, 14:05. See the manual of strftime. */
  return g_date_time_format (local, _("%-d %b, %H:%M"));
}

static gboolean
parse_day (const char *text,
           GDate      *day)
{
  guint year = 0;
  guint month = 0;
  guint number = 0;

  g_date_clear (day, 1);
  if (text == NULL || sscanf (text, "%4u-%2u-%2u", &year, &month, &number) != 3 ||
      !g_date_valid_dmy ((GDateDay) number, (GDateMonth) month, (GDateYear) year))
    return FALSE;
  g_date_set_dmy (day, (GDateDay) number, (GDateMonth) month, (GDateYear) year);

  return TRUE;
}

/**
 * bb_words_of_due:
 * @due_at: (nullable): the day on which something has to be ready
 * @today: this day, as an ISO date
 *
 * Returns: (transfer full): how long that is from now, in words; that no day was agreed where there is none
 */
char *
bb_words_of_due (const char *due_at,
                 const char *today)
{
  g_autofree char *day = bb_words_of_day (due_at);
  GDate due;
  GDate now;
  int days = 0;

  if (!parse_day (due_at, &due) || !parse_day (today, &now))
    return g_strdup (_("No due date"));

  days = g_date_days_between (&now, &due);
  if (days == 0)
    return g_strdup (_("Due today"));
  if (days == 1)
    return g_strdup (_("Due tomorrow"));
  if (days == -1)
    return g_strdup (_("Due yesterday"));
  if (days < 0)
    return g_strdup_printf (ngettext ("%d day overdue", "%d days overdue", (gulong) -days), -days);
  if (days <= SOON_DAYS)
    return g_strdup_printf (ngettext ("Due in %d day", "Due in %d days", (gulong) days), days);

  /* Translators: a day, like 3 Feb 2025. */
  return g_strdup_printf (_("Due %s"), day);
}

/**
 * bb_words_of_time:
 * @seconds: how long something takes, in s
 *
 * Returns: (transfer full): the time in hours and minutes, rounded up to whole minutes; in seconds below a minute;
 *   empty where it is not known
 */
char *
bb_words_of_time (double seconds)
{
  int minutes = 0;

  if (!isfinite (seconds) || seconds < 0)
    return g_strdup ("");
  if (ceil (seconds) < SECONDS_OF_MINUTE)
    return g_strdup_printf (_("%d s"), (int) ceil (seconds));

  minutes = (int) ceil (seconds / SECONDS_OF_MINUTE);
  if (minutes < MINUTES_OF_HOUR)
    return g_strdup_printf (_("%d min"), minutes);
  if (minutes % MINUTES_OF_HOUR == 0)
    return g_strdup_printf (_("%d h"), minutes / MINUTES_OF_HOUR);

  /* Translators: hours and minutes. */
  return g_strdup_printf (_("%d h %d min"), minutes / MINUTES_OF_HOUR, minutes % MINUTES_OF_HOUR);
}

/**
 * bb_words_of_file:
 * @file: (nullable): the name of something, or of the file that it is in
 *
 * Returns: (transfer full): the name without the folders before it; empty where there is none
 */
char *
bb_words_of_file (const char *file)
{
  if (file == NULL || *file == '\0')
    return g_strdup ("");

  return g_path_is_absolute (file) ? g_path_get_basename (file) : g_strdup (file);
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
