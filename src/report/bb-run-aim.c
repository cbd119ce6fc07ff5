/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-run-aim.h"

#include "bb-job-sheet.h"

/* What is not named has nothing to load, which is no error. */
static gboolean
load (BbBook         *book,
      const BbTable  *table,
      gint64          id,
      gpointer       *record,
      GError        **error)
{
  *record = id != 0 ? bb_book_load (book, table, id, error) : NULL;

  return id == 0 || *record != NULL;
}

static void
set_otherwise (BbRevision  *revision,
               const BbRun *run)
{
  for (guint i = 0; run->departures != NULL && i < run->departures->len; i++)
    bb_departure_apply (&g_array_index (run->departures, BbDeparture, i), revision);
}

/**
 * bb_run_aim_load:
 * @book: a book
 * @run: a run with its line and revision
 * @aim: (out): where to put what its garments are weighed for
 * @error: return location for a #GError
 *
 * Finds what a garment of a run shall weigh more after pretreat: by the line's print, the run's revision, what the run
 * says was set otherwise, and the reach of the machines it names.
 *
 * Returns: %FALSE with an error of the book
 */
gboolean
bb_run_aim_load (BbBook       *book,
                 const BbRun  *run,
                 BbRunAim     *aim,
                 GError      **error)
{
  g_autoptr (BbJobLine) line = NULL;
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (BbEquipment) sprayer = NULL;
  g_autoptr (BbEquipment) dryer = NULL;
  g_autoptr (BbBoxOut) box = bb_box_out_new ();
  BbSheetLine sheet_line = { 0 };

  g_return_val_if_fail (BB_IS_BOOK (book) && run != NULL && aim != NULL, FALSE);

  *aim = (BbRunAim) { (double) NAN, (double) NAN };
  line = bb_book_load (book, &bb_job_line_table, run->line, error);
  revision = line != NULL ? bb_book_load (book, &bb_revision_table, run->revision, error) : NULL;
  if (revision == NULL || !load (book, &bb_equipment_table, run->sprayer, (gpointer *) &sprayer, error) ||
      !load (book, &bb_equipment_table, run->dryer, (gpointer *) &dryer, error))
    return FALSE;

  set_otherwise (revision, run);
  aim->laydown_g_per_m2 = revision->pretreat_laydown_g_per_m2;
  sheet_line = (BbSheetLine) { .line = line, .revision = revision, .sprayer = sprayer, .dryer = dryer };
  if (bb_sheet_line_find_box (&sheet_line, box, NULL))
    aim->box_area_m2 = box->box_area_m2;

  return TRUE;
}

/**
 * bb_run_aim_judge:
 * @self: what a run aims at
 * @weighed: a garment of it that was weighed
 * @out: gets the verdict
 *
 * Holds a garment against the run's laydown, by the calculator weigh-in with its own tolerance.
 *
 * Returns: %FALSE where there is nothing to hold it against
 */
gboolean
bb_run_aim_judge (const BbRunAim   *self,
                  const BbWeighed  *weighed,
                  BbWeighInOut     *out)
{
  g_autoptr (BbWeighInIn) in = bb_weigh_in_in_new ();

  g_return_val_if_fail (self != NULL && weighed != NULL && out != NULL, FALSE);

  in->tare_g = weighed->tare_g;
  in->wet_g = weighed->wet_g;
  in->box_area_m2 = weighed->box_area_m2;
  in->target_g_per_m2 = self->laydown_g_per_m2;

  return bb_calculator_run (&bb_weigh_in_calculator, in, out, NULL);
}
