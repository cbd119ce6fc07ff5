/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-job-sheet-private.h"

#include "bb-rounding.h"

/* How long all garments of the job keep a stage, by its name. */
typedef struct {
  const char *name;
  double busy_s;
} Busy;

static void
add_busy (GArray            *stages,
          const BbStageTime *stage,
          gint64             garments)
{
  double busy_s = stage->seconds_s / (double) stage->stations * (double) garments;
  Busy busy = { stage->name, busy_s };

  for (guint i = 0; i < stages->len; i++)
    if (g_strcmp0 (g_array_index (stages, Busy, i).name, stage->name) == 0)
      {
        g_array_index (stages, Busy, i).busy_s += busy_s;
        return;
      }
  g_array_append_val (stages, busy);
}

static char *
find_bottleneck (const BbJobSheet *self)
{
  g_autoptr (GArray) stages = g_array_new (FALSE, FALSE, sizeof (Busy));
  const Busy *most = NULL;

  for (guint i = 0; i < self->lines->len; i++)
    {
      const BbLineSheet *line = &g_array_index (self->lines, BbLineSheet, i);

      for (guint s = 0; line->missing == NULL && line->stages != NULL && s < line->stages->len; s++)
        add_busy (stages, &g_array_index (line->stages, BbStageTime, s), line->garments);
    }
  for (guint i = 0; i < stages->len; i++)
    if (most == NULL || g_array_index (stages, Busy, i).busy_s > most->busy_s)
      most = &g_array_index (stages, Busy, i);

  return most != NULL ? g_strdup (most->name) : NULL;
}

static void
add_up (BbJobSheet        *self,
        const BbSheetLine *lines)
{
  double sheets = 0;
  double delivered = 0;

  self->garments = self->spares = 0;
  self->cost = self->time_s = 0;
  self->whole = 1;
  for (guint i = 0; i < self->lines->len; i++)
    {
      const BbLineSheet *line = &g_array_index (self->lines, BbLineSheet, i);

      if (lines[i].line->same_garments != 1)
        {
          self->garments += line->garments;
          self->spares += line->spares;
          delivered += (double) lines[i].line->count;
        }
      if (line->missing != NULL)
        {
          self->whole = 0;
          continue;
        }
      sheets += line->sheets;
      self->cost += line->cost;
      self->time_s += line->time_s;
    }
  self->sheets = (gint64) bb_ceil_steady (sheets);
  if (delivered > 0)
    self->cost_per_garment = self->cost / delivered;
}

/**
 * bb_job_sheet_compute:
 * @self: what the job takes, with nothing in it yet
 * @job: the job
 * @lines: (array length=n_lines): its lines
 * @n_lines: how many
 * @shop: what holds for the whole shop
 * @stock: (element-type BbStock): the lots in the shop, in the order in which they are to be used up
 * @day: the day of the mix, as `YYYY-MM-DD`
 *
 * Computes what a job takes; see the top of bb-job-sheet.h. A line that can't be computed says what is missing, and has
 * no part in the sums. Where it is not known how long one of the others takes, it is not known of the job either.
 */
void
bb_job_sheet_compute (BbJobSheet        *self,
                      const BbJob       *job,
                      const BbSheetLine *lines,
                      guint              n_lines,
                      const BbShop      *shop,
                      const GPtrArray   *stock,
                      const char        *day)
{
  const BbField *list = bb_table_find_field (&bb_job_sheet_table, "lines");

  g_return_if_fail (self != NULL && job != NULL && shop != NULL && stock != NULL && day != NULL);
  g_return_if_fail (lines != NULL || n_lines == 0);

  bb_field_ensure_array (list, self);
  bb_field_ensure_array (bb_table_find_field (&bb_job_sheet_table, "mixes"), self);
  for (guint i = 0; i < n_lines; i++)
    _bb_line_sheet_compute (bb_field_append_item (list, self), &lines[i], job, shop);
  _bb_job_sheet_add_mixes (self, job, lines, n_lines, shop, stock, day);
  add_up (self, lines);
  self->bottleneck = isnan (self->time_s) ? NULL : find_bottleneck (self);
}

/**
 * bb_job_sheet_dup_finish:
 * @self: what a job takes
 * @start: when it begins, as `YYYY-MM-DDThh:mm:ssZ`
 *
 * Returns: (transfer full) (nullable): when the last garment is done, in the same form; %NULL if @start is not a
 *   moment, or it is not known how long the job takes
 */
char *
bb_job_sheet_dup_finish (const BbJobSheet *self,
                         const char       *start)
{
  g_autoptr (GDateTime) begin = g_date_time_new_from_iso8601 (start, NULL);
  g_autoptr (GDateTime) end = NULL;

  if (begin == NULL || isnan (self->time_s))
    return NULL;
  end = g_date_time_add_seconds (begin, ceil (self->time_s));

  return g_date_time_format (end, "%Y-%m-%dT%H:%M:%SZ");
}

BB_DEFINE_TABLE (BbStageTime, bb_stage_time, "stage_time", N_("Stage"), BB_STAGE_TIME_FIELDS, NULL)
BB_DEFINE_TABLE (BbLineSheet, bb_line_sheet, "line_sheet", N_("Line of a job"), BB_LINE_SHEET_FIELDS, NULL)
BB_DEFINE_TABLE (BbTake, bb_take, "take", N_("Container"), BB_TAKE_FIELDS, NULL)
BB_DEFINE_TABLE (BbMixSheet, bb_mix_sheet, "mix_sheet", N_("Mix"), BB_MIX_SHEET_FIELDS, NULL)
BB_DEFINE_TABLE (BbJobSheet, bb_job_sheet, "job_sheet", N_("Job"), BB_JOB_SHEET_FIELDS, NULL)
