/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-generate-private.h"

/* Jobs with their lines, what was run of them, and what that used up. */

static gboolean
add_run (BbGenerator      *self,
         const BbJobLine  *line,
         guint             number,
         const char       *day,
         GError          **error)
{
  g_autoptr (BbRun) run = bb_run_new ();
  g_autoptr (BbLotEntry) entry = bb_lot_entry_new ();

  run->line = line->id;
  run->number = number;
  run->revision = line->revision;
  run->person = 1 + _bb_generator_below (self, BB_GENERATED_PEOPLE);
  run->sprayer = 1;
  run->dryer = 2;
  run->printer = 3;
  run->curer = 2;
  run->started_at = g_strdup (day);
  run->finished_at = g_strdup (day);
  run->good = line->count;
  run->spoiled = _bb_generator_below (self, 3);
  run->spoilt_by = (int) _bb_generator_below (self, bb_spoilt_choices.n_items);
  if (!_bb_generator_add (self, &bb_run_table, run, error))
    return FALSE;

  entry->lot = 1 + self->n_runs * BB_GENERATED_LOTS / self->plan->n_runs;
  entry->number = 1 + self->n_runs;
  entry->at = g_strdup (day);
  entry->deed = BB_LOT_USED;
  entry->run = run->id;
  entry->change_g = -2;
  self->n_runs++;

  return _bb_generator_add (self, &bb_lot_entry_table, entry, error);
}

static gboolean
add_line (BbGenerator  *self,
          const BbJob  *job,
          guint         number,
          const char   *day,
          GError      **error)
{
  g_autoptr (BbJobLine) line = bb_job_line_new ();
  guint n = MIN (1 + _bb_generator_below (self, 2), self->plan->n_runs - self->n_runs);

  line->job = job->id;
  line->number = number;
  line->colourway = self->colourways[_bb_generator_often (self, G_N_ELEMENTS (self->colourways))];
  line->count = 6 + _bb_generator_below (self, 90);
  line->artwork = g_strdup_printf ("%s-%s.png", _bb_generator_word (self), _bb_generator_word (self));
  line->print_width_mm = 280;
  line->print_height_mm = 320;
  line->revision = g_array_index (self->revisions, gint64, _bb_generator_below (self, self->revisions->len));
  if (!_bb_generator_add (self, &bb_job_line_table, line, error))
    return FALSE;
  for (guint i = 1; i <= n; i++)
    if (!add_run (self, line, i, day, error))
      return FALSE;

  return TRUE;
}

static gboolean
add_job (BbGenerator  *self,
         guint         nth,
         GError      **error)
{
  g_autofree char *day = _bb_generator_dup_day ((double) self->n_runs / self->plan->n_runs);
  g_autoptr (BbJob) job = bb_job_new ();
  guint n = 1 + _bb_generator_below (self, 3);

  job->code = g_strdup_printf ("J-%06u", nth + 1);
  job->customer = 1 + _bb_generator_often (self, self->n_customers);
  job->title = g_strdup_printf ("%s fair", _bb_generator_word (self));
  job->ordered_at = g_strdup (day);
  job->state = BB_JOB_DONE;
  if (!_bb_generator_add (self, &bb_job_table, job, error))
    return FALSE;
  for (guint i = 1; i <= n && self->n_runs < self->plan->n_runs; i++)
    if (!add_line (self, job, i, day, error))
      return FALSE;

  return TRUE;
}

/**
 * _bb_generator_add_jobs:
 * @self: a book in the making that has its shop and recipes
 * @error: return location for a #GError
 *
 * Adds as many jobs as make the runs that are planned.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_generator_add_jobs (BbGenerator *self,
                        GError     **error)
{
  for (guint i = 0; self->n_runs < self->plan->n_runs; i++)
    if (!add_job (self, i, error))
      return FALSE;

  return TRUE;
}
