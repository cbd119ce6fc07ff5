/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-moment.h"

/**
 * bb_dup_now:
 *
 * Returns: (transfer full): the moment in universal time, as every moment in a book is written
 */
char *
bb_dup_now (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();

  return g_date_time_format (now, "%Y-%m-%dT%H:%M:%SZ");
}

/**
 * bb_dup_today:
 *
 * Returns: (transfer full): this day where the person is, as an ISO date
 */
char *
bb_dup_today (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  return g_date_time_format (now, "%Y-%m-%d");
}
