/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-wash-schedule.h"

#include "bb-error.h"

#define DAYS_PER_WEEK 7.0

/* The day of an ISO date or moment. */
static gboolean
read_day (const char  *text,
          const char  *name,
          GDate       *day,
          GError     **error)
{
  g_autofree char *moment = text != NULL ? g_strdup_printf ("%.10sT00:00:00Z", text) : NULL;
  g_autoptr (GDateTime) parsed = moment != NULL ? g_date_time_new_from_iso8601 (moment, NULL) : NULL;
  int year = 0;
  int month = 0;
  int number = 0;

  if (parsed == NULL)
    {
      g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, _("%s: give a date like 2025-03-14."), name);
      return FALSE;
    }
  g_date_time_get_ymd (parsed, &year, &month, &number);
  g_date_clear (day, 1);
  g_date_set_dmy (day, (GDateDay) number, (GDateMonth) month, (GDateYear) year);

  return TRUE;
}

static char *
write_day (const GDate *day)
{
  return g_strdup_printf ("%04d-%02d-%02d", g_date_get_year (day), g_date_get_month (day), g_date_get_day (day));
}

static const BbReading *
find_last (GPtrArray *readings)
{
  const BbReading *last = NULL;

  for (guint i = 0; i < readings->len; i++)
    {
      const BbReading *reading = readings->pdata[i];

      if (last == NULL || reading->cycles > last->cycles)
        last = reading;
    }

  return last;
}

/* The first stop beyond what was read; the last one again where all were. */
static gint64
find_next (const BbWashTest *test,
           const BbWashPlan *plan,
           gint64            read)
{
  for (guint i = 0; plan != NULL && plan->grade_at != NULL && i < plan->grade_at->len; i++)
    {
      gint64 stop = g_array_index (plan->grade_at, BbPlanStop, i).cycles;

      if (stop > read)
        return stop;
    }

  return test->plan_cycles;
}

/**
 * bb_wash_schedule:
 * @test: a specimen
 * @plan: (nullable): the plan that it is washed to
 * @readings: (element-type BbReading): its readings, in any order
 * @verdict: what bb_wash_proof_judge() says of it
 * @today: the day, as an ISO date
 * @out: (out caller-allocates): when it has to be read next
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Tells when a specimen has to be read next; see the top of bb-wash-schedule.h.
 *
 * Returns: %FALSE where a date is none
 */
gboolean
bb_wash_schedule (const BbWashTest  *test,
                  const BbWashPlan  *plan,
                  GPtrArray         *readings,
                  BbVerdict          verdict,
                  const char        *today,
                  BbWashDue         *out,
                  GError           **error)
{
  g_autoptr (BbWashPlan) usual = NULL;
  const BbWashPlan *pace = plan;
  const BbReading *last = NULL;
  GDate due;
  GDate now;
  double weeks = 0.0;

  g_return_val_if_fail (test != NULL && readings != NULL && out != NULL, FALSE);

  bb_record_clear (&bb_wash_due_table, out);
  out->state = BB_DUE_DONE;
  if (verdict != BB_VERDICT_OPEN || test->withdrawn_at != NULL)
    return TRUE;

  if (pace == NULL)
    pace = usual = bb_wash_plan_new ();
  last = find_last (readings);
  if (!read_day (today, "today", &now, error) ||
      !read_day (last != NULL ? last->read_at : test->made_at, last != NULL ? "read_at" : "made_at", &due, error))
    return FALSE;

  out->cycles = find_next (test, plan, last != NULL ? last->cycles : 0);
  weeks = (double) (out->cycles - (last != NULL ? last->cycles : 0)) / pace->cycles_per_week;
  g_date_add_days (&due, (guint) MAX (ceil (weeks * DAYS_PER_WEEK), 0.0) +
                           (last == NULL ? (guint) pace->rest_days : 0));
  out->due_on = write_day (&due);
  out->days_late = g_date_days_between (&due, &now);
  out->state = out->days_late < 0                    ? BB_DUE_RUNNING
               : out->days_late <= pace->grace_days ? BB_DUE_TODAY
                                                     : BB_DUE_OVERDUE;

  return TRUE;
}

/**
 * bb_wash_due_describe:
 * @self: when a specimen has to be read next
 *
 * Returns: (transfer full) (nullable): in few words which reading is wanted, and since when or when; %NULL where the
 *   specimen is done
 */
char *
bb_wash_due_describe (const BbWashDue *self)
{
  const int cycles = (int) self->cycles;
  const int days = self->days_late < 0 ? (int) -MAX (self->days_late, -G_MAXINT) : (int) self->days_late;

  if (self->state == BB_DUE_DONE)
    return NULL;
  if (self->state == BB_DUE_OVERDUE)
    /* Translators: after how many washes a reading is wanted: "Wash 10: 3 days overdue". */
    return g_strdup_printf (ngettext ("Wash %d: %d day overdue", "Wash %d: %d days overdue", (gulong) days), cycles,
                            days);
  if (self->days_late < 0)
    return g_strdup_printf (ngettext ("Wash %d: due in %d day", "Wash %d: due in %d days", (gulong) days), cycles,
                            days);
  if (days == 0)
    return g_strdup_printf (_("Wash %d: due today"), cycles);

  return g_strdup_printf (ngettext ("Wash %d: due for %d day", "Wash %d: due for %d days", (gulong) days), cycles,
                          days);
}

BB_DEFINE_CHOICES (bb_due, "due", BB_DUE_CHOICES);
BB_DEFINE_TABLE (BbWashDue, bb_wash_due, "wash_due", N_("Reading"), BB_WASH_DUE_FIELDS, NULL)
