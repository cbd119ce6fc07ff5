/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-narrow.h"

#include <string.h>

#include "bb-error.h"

/* The limits of a blank's mass, where only one end is given. */
#define LEAST_MASS 40.0
#define MOST_MASS 1000.0

/* No book is older, and none is kept longer. */
#define FIRST_YEAR 1990
#define LAST_YEAR 2120

static gboolean
check_narrow (gconstpointer record,
              GError      **error)
{
  const BbNarrow *self = record;

  if (!bb_srgb_check (self->srgb, "srgb", error))
    return FALSE;
  /* A comparison with NaN, where one end is not known, is false. */
  if (self->mass_least_g_per_m2 > self->mass_most_g_per_m2)
    return bb_refuse_value (error, _("mass_most_g_per_m2: the most is less than the least."));
  if (self->since != NULL && self->until != NULL && strncmp (self->since, self->until, strlen ("YYYY-MM-DD")) > 0)
    return bb_refuse_value (error, _("until: the last day lies before the first."));

  return TRUE;
}

/**
 * bb_narrow_is_empty:
 * @self: (nullable): what is narrowed by
 *
 * Returns: %TRUE if it narrows nothing
 */
gboolean
bb_narrow_is_empty (const BbNarrow *self)
{
  for (guint i = 0; self != NULL && i < bb_narrow_table.n_fields; i++)
    if (bb_field_is_set (&bb_narrow_table.fields[i], self))
      return FALSE;

  return TRUE;
}

/* In quotation marks a mark is one word to the search's language. */
static void
append_mark (GString    *match,
             guint      *n,
             const char *mark,
             const char *value)
{
  g_string_append_printf (match, "%s\"%s%s\"", (*n)++ > 0 ? " OR " : "", mark, value);
}

static void
append_choice (GString         *match,
               const char      *mark,
               const BbChoices *choices,
               int              choice)
{
  g_auto (GStrv) parts = NULL;
  g_autofree char *value = NULL;
  guint n = 0;

  if (choice < 0)
    return;
  /* A hyphen would part the mark. */
  parts = g_strsplit (bb_choices_get_key (choices, choice), "-", -1);
  value = g_strjoinv ("", parts);
  g_string_append (match, match->len > 0 ? " AND (" : "(");
  append_mark (match, &n, mark, value);
  g_string_append_c (match, ')');
}

/* A fibre, a mass, or both in one mark. */
static void
append_fabric (GString        *match,
               const BbNarrow *self)
{
  const char *fibre = bb_choices_get_key (&bb_fibre_choices, self->fibre);
  double most = isnan (self->mass_most_g_per_m2) ? MOST_MASS : self->mass_most_g_per_m2;
  double least = isnan (self->mass_least_g_per_m2) ? MIN (LEAST_MASS, most) : self->mass_least_g_per_m2;
  guint n = 0;

  if (isnan (self->mass_least_g_per_m2) && isnan (self->mass_most_g_per_m2))
    {
      append_choice (match, BB_MARK_FIBRE, &bb_fibre_choices, self->fibre);
      return;
    }

  g_string_append (match, match->len > 0 ? " AND (" : "(");
  for (int tens = (int) least / 10; tens <= (int) most / 10; tens++)
    {
      g_autofree char *value = g_strdup_printf ("%s%d", fibre != NULL ? fibre : "", tens);

      append_mark (match, &n, fibre != NULL ? BB_MARK_FABRIC : BB_MARK_MASS, value);
    }
  g_string_append_c (match, ')');
}

/* Whole years by one mark each, the rest by months. */
static void
append_year (GString *match,
             guint   *n,
             int      year,
             int      first_month,
             int      last_month)
{
  if (first_month == 1 && last_month == 12)
    {
      g_autofree char *value = g_strdup_printf ("%04d", year);

      append_mark (match, n, BB_MARK_YEAR, value);
      return;
    }
  for (int month = first_month; month <= last_month; month++)
    {
      g_autofree char *value = g_strdup_printf ("%04d%02d", year, month);

      append_mark (match, n, BB_MARK_MONTH, value);
    }
}

static int
read_part (const char *day,
           gsize       at,
           int         fallback)
{
  return day != NULL ? (int) g_ascii_strtoll (day + at, NULL, 10) : fallback;
}

static void
append_days (GString    *match,
             const char *since,
             const char *until)
{
  const int since_year = read_part (since, 0, FIRST_YEAR);
  const int until_year = read_part (until, 0, LAST_YEAR);
  const int first = CLAMP (since_year, FIRST_YEAR, LAST_YEAR);
  const int last = CLAMP (until_year, FIRST_YEAR, LAST_YEAR);
  /* A day beyond the years that can be asked for says nothing about a month within them. */
  const int first_month = since_year == first ? read_part (since, 5, 1) : 1;
  const int last_month = until_year == last ? read_part (until, 5, 12) : 12;
  guint n = 0;

  if (since == NULL && until == NULL)
    return;
  g_string_append (match, match->len > 0 ? " AND (" : "(");
  for (int year = first; year <= last; year++)
    append_year (match, &n, year, year == first ? first_month : 1, year == last ? last_month : 12);
  g_string_append_c (match, ')');
}

/**
 * bb_narrow_append:
 * @self: what is narrowed by
 * @table: whose records are looked for: recipes or jobs
 * @match: what the search is asked for, to which this is added
 *
 * Asks for the marks that a record has to have. Days and masses are asked for by the month and the ten; who asks has
 * to look at the record itself for the rest.
 */
void
bb_narrow_append (const BbNarrow *self,
                  const BbTable  *table,
                  GString        *match)
{
  append_fabric (match, self);
  if (table == &bb_recipe_table)
    append_choice (match, BB_MARK_STATE, &bb_state_choices, self->state);
  if (table == &bb_job_table)
    append_choice (match, BB_MARK_JOB_STATE, &bb_job_state_choices, self->job_state);
  append_days (match, self->since, self->until);
}

BB_DEFINE_TABLE (BbNarrow, bb_narrow, "narrow", N_("Narrowed by"), BB_NARROW_FIELDS, check_narrow)
