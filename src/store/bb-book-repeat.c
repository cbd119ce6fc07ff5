/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-trace.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-book-jobs.h"
#include "bb-book-private.h"
#include "bb-text.h"

static int
find_run (BbBook      *self,
          const char  *where,
          gint64       id,
          BbRun      **run,
          GError     **error)
{
  g_autoptr (GPtrArray) runs = _bb_book_load_many (self, &bb_run_table, where, id, error);

  *run = runs != NULL && runs->len > 0 ? bb_record_copy (&bb_run_table, runs->pdata[0]) : NULL;

  return runs == NULL ? -1 : *run != NULL ? 1 : 0;
}

/**
 * bb_book_find_last_run:
 * @self: a book
 * @table: the table of lines of jobs, or that of revisions
 * @id: the key of a line or revision
 * @run: (out) (transfer full) (nullable): its newest run, or %NULL
 * @error: return location for a #GError
 *
 * Returns: 1 if there is a run, 0 if there is none, -1 with an error
 */
int
bb_book_find_last_run (BbBook         *self,
                       const BbTable  *table,
                       gint64          id,
                       BbRun         **run,
                       GError        **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && run != NULL, -1);
  g_return_val_if_fail (table == &bb_job_line_table || table == &bb_revision_table, -1);

  return find_run (self,
                   table == &bb_job_line_table ? "WHERE line = ?1 ORDER BY number DESC LIMIT 1"
                                               : "WHERE revision = ?1 ORDER BY id DESC LIMIT 1",
                   id, run, error);
}

/**
 * bb_book_find_last_print:
 * @self: a book
 * @line: the key of a line of a job
 * @run: (out) (transfer full) (nullable): its newest run that a garment came out well of, or %NULL
 * @error: return location for a #GError
 *
 * Returns: 1 if there is one, 0 if nothing of the line was printed yet, -1 with an error
 */
int
bb_book_find_last_print (BbBook  *self,
                         gint64   line,
                         BbRun  **run,
                         GError **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && run != NULL, -1);

  return find_run (self, "WHERE line = ?1 AND good > 0 ORDER BY number DESC LIMIT 1", line, run, error);
}

/* Of each specimen the first reading that it failed by. */
#define FAILURES \
  "WHERE id IN (SELECT f.reading FROM failed_reading f WHERE f.revision = ?1 " \
  "AND f.cycles = (SELECT MIN (o.cycles) FROM failed_reading o WHERE o.wash_test = f.wash_test)) ORDER BY id"

/**
 * bb_book_load_failures:
 * @self: a book
 * @revision: the key of a revision
 * @since: a day or moment
 * @error: return location for a #GError
 *
 * Loads, of each specimen of a revision that failed, the reading that it failed by, where that was made on the day of
 * @since or later.
 *
 * Returns: (transfer full) (nullable) (element-type BbReading): the readings; the array frees them. %NULL with an error
 */
GPtrArray *
bb_book_load_failures (BbBook      *self,
                       gint64       revision,
                       const char  *since,
                       GError     **error)
{
  g_autoptr (GPtrArray) failures = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && since != NULL, NULL);

  failures = _bb_book_load_many (self, &bb_reading_table, FAILURES, revision, error);
  for (guint i = failures != NULL ? failures->len : 0; i > 0; i--)
    {
      const BbReading *reading = failures->pdata[i - 1];

      if (strncmp (reading->read_at, since, strlen ("YYYY-MM-DD")) < 0)
        g_ptr_array_remove_index (failures, i - 1);
    }

  return g_steal_pointer (&failures);
}

/* What the log has of the record before the run came into the book. */
#define TEXT_AT_RUN \
  "SELECT detail FROM event WHERE subject = ?1 AND subject_id = ?2 AND detail IS NOT NULL AND id < " \
  "(SELECT MIN (e.id) FROM event e WHERE e.subject = 'run' AND e.subject_id = ?3) ORDER BY id DESC LIMIT 1"

/**
 * bb_book_find_text_at_run:
 * @self: a book
 * @table: a table of the book
 * @id: the key of a record
 * @run: the key of a run
 * @json: (out) (transfer full) (nullable): the record as it was written then
 * @error: return location for a #GError
 *
 * Finds how a record was described when a run began, from the book's log.
 *
 * Returns: 1 if that is known, 0 if not, -1 with an error
 */
int
bb_book_find_text_at_run (BbBook         *self,
                          const BbTable  *table,
                          gint64          id,
                          gint64          run,
                          char          **json,
                          GError        **error)
{
  g_autoptr (BbStatement) statement = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && table != NULL && json != NULL, -1);

  *json = NULL;
  statement = bb_db_prepare (self->db, TEXT_AT_RUN, error);
  if (statement == NULL)
    return -1;
  bb_statement_bind_text (statement, 1, table->name);
  bb_statement_bind_integer (statement, 2, id);
  bb_statement_bind_integer (statement, 3, run);
  switch (bb_statement_step (statement, error))
    {
    case BB_STEP_ROW:
      *json = g_strdup (bb_statement_get_text (statement, 0));
      return 1;
    case BB_STEP_DONE:
      return 0;
    case BB_STEP_ERROR:
    default:
      return -1;
    }
}

static const BbRepeatLine *
find_choice (const BbRepeatLine *choices,
             guint               n_choices,
             gint64              line)
{
  for (guint i = 0; i < n_choices; i++)
    if (choices[i].line == line)
      return &choices[i];

  return NULL;
}

/* What the line was really printed by; what it says, where it never was. */
static gboolean
find_revision (BbBook           *self,
               const BbJobLine  *line,
               gint64           *revision,
               GError          **error)
{
  g_autoptr (BbRun) run = NULL;
  int found = bb_book_find_last_print (self, line->id, &run, error);

  *revision = found > 0 ? run->revision : line->revision;

  return found >= 0;
}

static gboolean
repeat_line (BbBook              *self,
             const BbJob         *from,
             const BbJob         *to,
             const BbJobLine     *line,
             const BbRepeatLine  *choice,
             GError             **error)
{
  g_autoptr (BbJobLine) copy = bb_record_copy (&bb_job_line_table, line);
  gint64 before = 0;

  if (choice != NULL && choice->left_out)
    return TRUE;
  if (!find_revision (self, line, &before, error))
    return FALSE;

  copy->id = BB_INTEGER_NONE;
  copy->job = to->id;
  copy->revision = choice != NULL && choice->revision != 0 ? choice->revision : before;
  if (copy->revision == BB_INTEGER_NONE)
    copy->revision = 0;
  g_clear_pointer (&copy->why, g_free);
  if (copy->revision != 0)
    /* Translators: the number of a job. */
    copy->why = g_strdup_printf (copy->revision == before ? _("As in job %s.") : _("Chosen when job %s was repeated."),
                                 from->code);

  return bb_book_save_job_line (self, copy, error);
}

static BbJob *
repeat_head (BbBook       *self,
             const BbJob  *from,
             const char   *day,
             GError      **error)
{
  g_autoptr (BbJob) job = bb_job_new ();

  job->code = bb_book_dup_next_job_code (self, day, error);
  if (job->code == NULL)
    return NULL;
  job->customer = from->customer;
  job->title = g_strdup (from->title);
  job->ordered_at = g_strdup (day);
  job->spoilage_fraction = from->spoilage_fraction;
  job->note = g_strdup (from->note);
  job->repeats = from->id;

  return bb_book_save (self, &bb_job_table, job, error) ? g_steal_pointer (&job) : NULL;
}

static gboolean
repeat_job (BbBook              *self,
            gint64               id,
            const char          *day,
            const BbRepeatLine  *choices,
            guint                n_choices,
            gint64              *repeated,
            GError             **error)
{
  g_autoptr (BbJob) from = bb_book_load (self, &bb_job_table, id, error);
  g_autoptr (BbJob) to = from != NULL ? repeat_head (self, from, day, error) : NULL;
  g_autoptr (GArray) lines = to != NULL ? bb_book_list_job_lines (self, id, error) : NULL;

  for (guint i = 0; lines != NULL && i < lines->len; i++)
    {
      gint64 key = g_array_index (lines, gint64, i);
      g_autoptr (BbJobLine) line = bb_book_load (self, &bb_job_line_table, key, error);

      if (line == NULL || !repeat_line (self, from, to, line, find_choice (choices, n_choices, key), error))
        return FALSE;
    }
  if (lines == NULL)
    return FALSE;
  *repeated = to->id;

  return TRUE;
}

/**
 * bb_book_repeat_job:
 * @self: a book
 * @job: the key of a job
 * @day: the day of the new order, as `YYYY-MM-DD`
 * @choices: (array length=n_choices) (nullable): what a person chose
 * @n_choices: for how many lines; the others are repeated by the revision that they were printed by
 * @repeated: (out): the key of the new job
 * @error: return location for a #GError
 *
 * Opens a job anew: for the same customer, with the same lines, planned, without a due date.
 *
 * Returns: %FALSE with an error; the book is then as it was
 */
gboolean
bb_book_repeat_job (BbBook              *self,
                    gint64               job,
                    const char          *day,
                    const BbRepeatLine  *choices,
                    guint                n_choices,
                    gint64              *repeated,
                    GError             **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && bb_text_is_date (day) && repeated != NULL, FALSE);
  g_return_val_if_fail (choices != NULL || n_choices == 0, FALSE);

  return _bb_book_begin (self, error) &&
         _bb_book_end (self, repeat_job (self, job, day, choices, n_choices, repeated, error), error);
}
