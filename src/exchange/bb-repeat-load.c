/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-exchange"

#include "bb-repeat-load.h"

#include "bb-book-jobs.h"
#include "bb-history.h"
#include "bb-trace.h"

/**
 * bb_repeat_part_free:
 * @self: (transfer full): a line of a job
 */
void
bb_repeat_part_free (BbRepeatPart *self)
{
  g_clear_pointer (&self->line, bb_job_line_free);
  g_clear_pointer (&self->since, g_free);
  g_clear_pointer (&self->run, bb_run_free);
  g_clear_pointer (&self->revision, bb_revision_free);
  g_clear_pointer (&self->standing, bb_standing_free);
  g_clear_pointer (&self->newer, bb_revision_free);
  g_clear_pointer (&self->blank, bb_blank_free);
  g_clear_pointer (&self->colourway, bb_colourway_free);
  g_clear_pointer (&self->findings, g_ptr_array_unref);
  g_free (self);
}

/*
 * What belongs to one line only while it is compared.
 *
 * @blank_then: (nullable): the garment, as it was described then
 * @failures: (element-type BbReading): readings that specimens failed by since
 * @specimens: (element-type utf8): their codes
 * @lots: (element-type BbLot): what was used then
 * @machines: (element-type BbEquipment): what it was made on
 */
typedef struct {
  BbBlank *blank_then;
  GPtrArray *failures;
  GPtrArray *specimens;
  GPtrArray *lots;
  GPtrArray *machines;
} Then;

static void
then_clear (Then *self)
{
  g_clear_pointer (&self->blank_then, bb_blank_free);
  g_clear_pointer (&self->failures, g_ptr_array_unref);
  g_clear_pointer (&self->specimens, g_ptr_array_unref);
  g_clear_pointer (&self->lots, g_ptr_array_unref);
  g_clear_pointer (&self->machines, g_ptr_array_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Then, then_clear)

static gboolean
load_blank_then (Then                *self,
                 BbBook              *book,
                 const BbRepeatPart  *part,
                 GError             **error)
{
  g_autofree char *json = NULL;
  int found = bb_book_find_text_at_run (book, &bb_blank_table, part->blank->id, part->run->id, &json, error);

  if (found > 0)
    self->blank_then = bb_history_dup_record (&bb_blank_table, json);

  return found >= 0;
}

static gboolean
load_failures (Then                *self,
               BbBook              *book,
               const BbRepeatPart  *part,
               GError             **error)
{
  self->failures = bb_book_load_failures (book, part->revision->id, part->since, error);
  for (guint i = 0; self->failures != NULL && i < self->failures->len; i++)
    {
      const BbReading *reading = self->failures->pdata[i];
      g_autoptr (BbWashTest) test = bb_book_load (book, &bb_wash_test_table, reading->wash_test, error);

      if (test == NULL)
        return FALSE;
      g_ptr_array_add (self->specimens, g_strdup (test->code));
    }

  return self->failures != NULL;
}

static gboolean
load_lots (Then                *self,
           BbBook              *book,
           const BbRepeatPart  *part,
           GError             **error)
{
  g_autoptr (GArray) ids = bb_book_list_run_lots (book, part->run->id, error);

  for (guint i = 0; ids != NULL && i < ids->len; i++)
    {
      BbLot *lot = bb_book_load (book, &bb_lot_table, g_array_index (ids, gint64, i), error);

      if (lot == NULL)
        return FALSE;
      g_ptr_array_add (self->lots, lot);
    }

  return ids != NULL;
}

/* One press may have both dried and cured: it is told of once. */
static gboolean
add_machine (Then    *self,
             BbBook  *book,
             gint64   id,
             GError **error)
{
  BbEquipment *machine = NULL;

  for (guint i = 0; i < self->machines->len; i++)
    if (((const BbEquipment *) self->machines->pdata[i])->id == id)
      return TRUE;
  if (id == 0)
    return TRUE;

  machine = bb_book_load (book, &bb_equipment_table, id, error);
  if (machine != NULL)
    g_ptr_array_add (self->machines, machine);

  return machine != NULL;
}

static gboolean
load_then (Then                *self,
           BbBook              *book,
           const BbRepeatPart  *part,
           GError             **error)
{
  const BbRun *run = part->run;

  self->specimens = g_ptr_array_new_with_free_func (g_free);
  self->lots = g_ptr_array_new_with_free_func (bb_lot_table.free_record);
  self->machines = g_ptr_array_new_with_free_func (bb_equipment_table.free_record);
  if (part->revision != NULL && !load_failures (self, book, part, error))
    return FALSE;

  return run == NULL || (load_blank_then (self, book, part, error) && load_lots (self, book, part, error) &&
                         add_machine (self, book, run->sprayer, error) && add_machine (self, book, run->dryer, error) &&
                         add_machine (self, book, run->printer, error) && add_machine (self, book, run->curer, error));
}

static gboolean
load_revision (BbRepeatPart  *self,
               BbBook        *book,
               GError       **error)
{
  gint64 id = self->run != NULL ? self->run->revision : self->line->revision;
  g_autoptr (BbRevision) current = NULL;
  g_autoptr (BbStanding) standing = NULL;

  if (id == 0)
    return TRUE;
  self->revision = bb_book_load (book, &bb_revision_table, id, error);
  if (self->revision == NULL)
    return FALSE;
  self->standing = bb_book_load_standing (book, id, error);
  current = self->standing != NULL ? bb_book_load_current (book, self->revision->recipe, error) : NULL;
  standing = current != NULL ? bb_book_load_standing (book, current->id, error) : NULL;
  if (standing == NULL)
    return FALSE;
  if (standing->state == BB_STATE_PROVEN && current->number > self->revision->number)
    self->newer = g_steal_pointer (&current);

  return TRUE;
}

static BbRepeatPart *
load_part (BbBook       *book,
           const BbJob  *job,
           gint64        id,
           GError      **error)
{
  g_autoptr (BbRepeatPart) self = g_new0 (BbRepeatPart, 1);

  self->findings = g_ptr_array_new_with_free_func (bb_finding_table.free_record);
  self->line = bb_book_load (book, &bb_job_line_table, id, error);
  if (self->line == NULL || bb_book_find_last_print (book, id, &self->run, error) < 0)
    return NULL;
  self->since = g_strdup (self->run != NULL ? self->run->started_at : job->ordered_at);
  self->colourway = bb_book_load (book, &bb_colourway_table, self->line->colourway, error);
  if (self->colourway == NULL)
    return NULL;
  self->blank = bb_book_load (book, &bb_blank_table, self->colourway->blank, error);

  return self->blank != NULL && load_revision (self, book, error) ? g_steal_pointer (&self) : NULL;
}

static gboolean
find_changes (BbRepeatPart         *self,
              BbBook               *book,
              const char           *today,
              const GPtrArray      *stock,
              const BbUnitContext  *units,
              GError              **error)
{
  g_auto (Then) then = { NULL };
  g_autoptr (GArray) failures = g_array_new (FALSE, FALSE, sizeof (BbRepeatFailure));
  BbRepeatCase compared = {
    .line = self->line, .since = self->since, .today = today, .revision = self->revision, .standing = self->standing,
    .newer = self->newer, .blank = self->blank, .colourway = self->colourway, .stock = stock,
  };

  if (!load_then (&then, book, self, error))
    return FALSE;

  for (guint i = 0; i < then.specimens->len; i++)
    {
      const BbReading *reading = then.failures->pdata[i];
      const BbRepeatFailure failure = { then.specimens->pdata[i], reading->cycles, reading->read_at };

      g_array_append_val (failures, failure);
    }
  compared.failures = (const BbRepeatFailure *) (gpointer) failures->data;
  compared.n_failures = failures->len;
  compared.blank_then = then.blank_then;
  compared.lots = then.lots;
  compared.machines = then.machines;
  bb_repeat_find (&compared, units, self->findings);

  return TRUE;
}

/**
 * bb_repeat_load:
 * @book: a book
 * @job: the key of a job
 * @today: the day, as `YYYY-MM-DD`
 * @units: the units that changed values are written in
 * @error: return location for a #GError
 *
 * Finds what has changed since the lines of a job were last printed. Pages and the command line both ask here.
 *
 * Returns: (transfer full) (nullable) (element-type BbRepeatPart): the lines of the job; the array frees them. %NULL
 *   with an error of the book
 */
GPtrArray *
bb_repeat_load (BbBook               *book,
                gint64                job,
                const char           *today,
                const BbUnitContext  *units,
                GError              **error)
{
  g_autoptr (BbJob) known = NULL;
  g_autoptr (GArray) ids = NULL;
  g_autoptr (GPtrArray) stock = NULL;
  g_autoptr (GPtrArray) parts = NULL;

  g_return_val_if_fail (BB_IS_BOOK (book) && today != NULL && units != NULL, NULL);

  parts = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_repeat_part_free);
  known = bb_book_load (book, &bb_job_table, job, error);
  ids = known != NULL ? bb_book_list_job_lines (book, job, error) : NULL;
  stock = ids != NULL ? bb_book_load_stock (book, 0, error) : NULL;
  for (guint i = 0; stock != NULL && i < ids->len; i++)
    {
      BbRepeatPart *part = load_part (book, known, g_array_index (ids, gint64, i), error);

      if (part == NULL)
        return NULL;
      g_ptr_array_add (parts, part);
      if (!find_changes (part, book, today, stock, units, error))
        return NULL;
    }

  return stock != NULL ? g_steal_pointer (&parts) : NULL;
}
