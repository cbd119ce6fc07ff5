/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-day.h"

/**
 * bb_day_after:
 * @date: a date of a record: a day as `YYYY-MM-DD`, with or without a time behind it
 * @days: how many days later, from 0
 *
 * Returns: (transfer full): that day, as `YYYY-MM-DD`
 */
char *
bb_day_after (const char *date,
              gint64      days)
{
  GDate day;

  g_return_val_if_fail (date != NULL && days >= 0, NULL);

  g_date_clear (&day, 1);
  g_date_set_dmy (&day, (GDateDay) g_ascii_strtoull (date + 8, NULL, 10),
                  (GDateMonth) g_ascii_strtoull (date + 5, NULL, 10), (GDateYear) g_ascii_strtoull (date, NULL, 10));
  g_date_add_days (&day, (guint) days);

  return g_strdup_printf ("%04u-%02u-%02u", g_date_get_year (&day), (guint) g_date_get_month (&day),
                          g_date_get_day (&day));
}
