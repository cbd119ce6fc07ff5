/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-due-load.h"

#include <glib/gi18n-lib.h>

#include "bb-error.h"
#include "bb-wash-proof.h"

/**
 * bb_wash_line_judge:
 * @line: a specimen as a list has it
 * @today: the day, as an ISO date
 * @verdict: (out caller-allocates): whether it stood its plan
 * @due: (out caller-allocates) (optional): when it has to be read next
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Returns: %FALSE where its readings contradict each other, or its revision is damaged
 */
gboolean
bb_wash_line_judge (const BbWashLine  *line,
                    const char        *today,
                    BbWashVerdictOut  *verdict,
                    BbWashDue         *due,
                    GError           **error)
{
  g_autoptr (GPtrArray) readings = g_ptr_array_new ();

  g_return_val_if_fail (line != NULL && today != NULL && verdict != NULL, FALSE);

  if (line->revision == NULL)
    return bb_refuse_value (error, _("No verdict: its revision is damaged. Check the book."));
  for (guint i = 0; line->readings != NULL && i < line->readings->len; i++)
    g_ptr_array_add (readings, &g_array_index (line->readings, BbReading, i));

  return bb_wash_proof_judge (line->revision, line->test, readings, verdict, error) &&
         (due == NULL || bb_wash_schedule (line->test, line->plan, readings, (BbVerdict) verdict->verdict, today, due,
                                           error));
}

/**
 * bb_wash_line_find_reading:
 * @line: a specimen as a list has it
 * @cycles: a number of washes
 *
 * Returns: (transfer none) (nullable): what was read after so many washes
 */
const BbReading *
bb_wash_line_find_reading (const BbWashLine *line,
                           gint64            cycles)
{
  g_return_val_if_fail (line != NULL, NULL);

  for (guint i = 0; line->readings != NULL && i < line->readings->len; i++)
    if (g_array_index (line->readings, BbReading, i).cycles == cycles)
      return &g_array_index (line->readings, BbReading, i);

  return NULL;
}

/**
 * bb_wash_line_find_faults:
 * @line: a specimen as a list has it
 * @verdict: its verdict
 *
 * Returns: all that it failed by, as bb_wash_proof_find_faults() gives it; 0 where it did not fail
 */
guint
bb_wash_line_find_faults (const BbWashLine       *line,
                          const BbWashVerdictOut *verdict)
{
  const BbReading *reading = NULL;

  g_return_val_if_fail (line != NULL && verdict != NULL, 0);

  if (verdict->verdict == BB_VERDICT_FAILED)
    reading = bb_wash_line_find_reading (line, verdict->failed_at);

  return reading != NULL ? bb_wash_proof_find_faults (line->revision, reading) : 0;
}

/**
 * bb_wash_line_dup_next_reading:
 * @line: a specimen as a list has it
 * @due: when it has to be read next
 *
 * Makes the reading of the plan's next stop, to be filled in: nothing is observed yet, cracking neither. Where that was
 * read before, without what the verdict needs, that reading is gone on with.
 *
 * Returns: (transfer full): a reading, without a count of washes where none is due
 */
BbReading *
bb_wash_line_dup_next_reading (const BbWashLine *line,
                               const BbWashDue  *due)
{
  const BbReading *before = NULL;
  BbReading *reading = NULL;

  g_return_val_if_fail (line != NULL && due != NULL, NULL);

  before = bb_wash_line_find_reading (line, due->cycles);
  if (before != NULL)
    return bb_record_copy (&bb_reading_table, before);

  reading = bb_reading_new ();
  reading->wash_test = line->id;
  reading->cycles = due->cycles;
  /* What an older book or a file leaves out is taken as not cracked; a person at the bench has to look. */
  reading->crack = BB_CHOICE_NONE;

  return reading;
}

static void
due_line_free (gpointer data)
{
  BbDueLine *self = data;

  bb_wash_line_free (self->line);
  bb_record_clear (&bb_wash_verdict_out_table, &self->verdict);
  bb_record_clear (&bb_wash_due_table, &self->due);
  g_free (self);
}

static int
compare_lines (gconstpointer a,
               gconstpointer b)
{
  const BbDueLine *first = *(const BbDueLine * const *) a;
  const BbDueLine *second = *(const BbDueLine * const *) b;
  const gint64 difference = second->due.days_late - first->due.days_late;

  return difference != 0 ? (difference > 0 ? 1 : -1)
                         : g_strcmp0 (((const BbWashTest *) first->line->test)->code,
                                      ((const BbWashTest *) second->line->test)->code);
}

static gboolean
add_line (GPtrArray   *lines,
          BbWashLine  *wash,
          const char  *today,
          GError     **error)
{
  BbDueLine *line = g_new0 (BbDueLine, 1);
  gboolean judged = FALSE;

  bb_record_init (&bb_wash_verdict_out_table, &line->verdict);
  bb_record_init (&bb_wash_due_table, &line->due);
  line->line = wash;
  judged = bb_wash_line_judge (wash, today, &line->verdict, &line->due, error);
  if (judged && line->due.state != BB_DUE_DONE)
    g_ptr_array_add (lines, line);
  else
    due_line_free (line);

  return judged;
}

/**
 * bb_due_load:
 * @book: a book
 * @today: the day, as an ISO date
 * @error: return location for a #GError
 *
 * Loads the specimens that wait to be read. Left out are those whose revision is damaged, so that nobody can judge
 * them: the list of all wash tests says so of them.
 *
 * Returns: (transfer full) (nullable) (element-type BbDueLine): the specimens, what has waited longest first; the
 *   array frees them. %NULL with an error
 */
GPtrArray *
bb_due_load (BbBook      *book,
             const char  *today,
             GError     **error)
{
  g_autoptr (GPtrArray) due = g_ptr_array_new_with_free_func (due_line_free);
  g_autoptr (GArray) ids = NULL;
  g_autoptr (GPtrArray) lines = NULL;

  g_return_val_if_fail (BB_IS_BOOK (book) && today != NULL, NULL);

  ids = bb_book_find_open_tests (book, error);
  if (ids != NULL)
    lines = bb_book_load_lines (book, &bb_wash_test_table, (const gint64 *) (gpointer) ids->data, ids->len, error);
  if (lines == NULL)
    return NULL;
  for (guint i = 0; i < lines->len; i++)
    if (((const BbWashLine *) lines->pdata[i])->revision != NULL &&
        !add_line (due, g_steal_pointer (&lines->pdata[i]), today, error))
      return NULL;
  g_ptr_array_sort (due, compare_lines);

  return g_steal_pointer (&due);
}
