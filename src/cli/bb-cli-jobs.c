/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>

#include "bb-book-jobs.h"
#include "bb-canonical.h"
#include "bb-cli-lines.h"
#include "bb-cli-sections.h"
#include "bb-cli-show.h"
#include "bb-json-write.h"
#include "bb-moment.h"
#include "bb-repeat-load.h"
#include "bb-text.h"
#include "bb-trace.h"

static const char * const job_columns[] = {
  "code", "customer", "title", "state", "due_at", "garments", "good", "blank", "colourway", "revision", NULL,
};
static const char * const job_facts[] = {
  "customer", "title", "ordered_at", "due_at", "spoilage_fraction", "note", "repeats", "state", "since", NULL,
};
static const char * const line_columns[] = {
  "code", "blank", "colourway", "size", "count", "artwork", "placement", "revision", "state", "good", "spoiled", NULL,
};
static const char * const run_columns[] = {
  "code", "started_at", "finished_at", "revision", "person", "good", "spoiled", "lots", "machines", NULL,
};

/* Every job, those to do first. */
static GPtrArray *
load_jobs (BbBook      *book,
           const char  *state,
           GError     **error)
{
  g_autoptr (GPtrArray) all = g_ptr_array_new_with_free_func (bb_job_card_table.free_record);
  const BbJobState order[] = { BB_JOB_RUNNING, BB_JOB_PLANNED, BB_JOB_DONE, BB_JOB_CANCELLED };

  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    {
      g_autoptr (GArray) ids = NULL;
      g_autoptr (GPtrArray) cards = NULL;

      if (state != NULL && !g_str_equal (state, bb_choices_get_key (&bb_job_state_choices, (int) order[i])))
        continue;
      ids = bb_book_list_jobs (book, order[i], 0, error);
      cards = bb_cli_load_cards (book, &bb_job_table, ids, error);
      if (cards == NULL)
        return NULL;
      g_ptr_array_extend_and_steal (all, g_steal_pointer (&cards));
    }

  return g_steal_pointer (&all);
}

/* Returns: (transfer full): the states that a job can be in, by their keys */
static char *
dup_states (const char *separator)
{
  g_autoptr (GString) states = g_string_new (NULL);

  for (guint i = 0; i < bb_job_state_choices.n_items; i++)
    g_string_append_printf (states, "%s%s", i > 0 ? separator : "", bb_job_state_choices.items[i].key);

  return g_string_free (g_steal_pointer (&states), FALSE);
}

static BbCliStatus
list_jobs (const BbCliCommon *common,
           BbBook            *book,
           char             **arguments,
           gpointer           data)
{
  char **state = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) jobs = NULL;

  (void) arguments;
  if (*state != NULL && bb_choices_find (&bb_job_state_choices, *state) == BB_CHOICE_NONE)
    {
      g_autofree char *known = dup_states (", ");

      return bb_cli_fail (BB_CLI_USAGE, _("--%s: '%s' is not one of: %s"), "state", *state, known);
    }
  jobs = load_jobs (book, *state, &error);
  if (jobs == NULL)
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);

  return bb_cli_write_lines (common, book, &bb_job_card_table, jobs, job_columns,
                             _("There is no such job in this book."));
}

static BbCliStatus
run_list (int    argc,
          char **argv)
{
  g_autofree char *state = NULL;
  g_autofree char *states = dup_states ("|");
  const GOptionEntry entries[] = {
    { "state", 0, 0, G_OPTION_ARG_STRING, &state, N_("Only jobs in this state"), states },
    G_OPTION_ENTRY_NULL,
  };
  const BbCliBookCommand on_book = { entries, 0, N_("'job list' takes no arguments."), list_jobs, &state };

  return bb_cli_run_on_book (&bb_cli_job_list, &on_book, argc, argv);
}

static GPtrArray *
load_lines (BbBook       *book,
            const BbJob  *job,
            GError      **error)
{
  g_autoptr (GArray) ids = bb_book_list_job_lines (book, job->id, error);

  return bb_cli_load_cards (book, &bb_job_line_table, ids, error);
}

static GPtrArray *
load_runs (BbBook       *book,
           const BbJob  *job,
           GError      **error)
{
  g_autoptr (GArray) ids = bb_book_trace_runs (book, &bb_job_table, job->id, error);

  return bb_cli_load_cards (book, &bb_run_table, ids, error);
}

static BbCliStatus
show_job (const BbCliCommon *common,
          BbBook            *book,
          char             **arguments,
          gpointer           data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbJob) job = bb_book_load_by_code (book, &bb_job_table, arguments[0], &error);
  g_autoptr (GPtrArray) lines = job != NULL ? load_lines (book, job, &error) : NULL;
  g_autoptr (GPtrArray) runs = lines != NULL ? load_runs (book, job, &error) : NULL;
  const BbCliSection sections[] = {
    { N_("Lines"), "lines", &bb_line_card_table, lines, line_columns },
    { N_("Runs"), "runs", &bb_run_card_table, runs, run_columns },
  };

  (void) data;
  if (runs == NULL)
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);

  return bb_cli_write_record (common, book, &bb_job_table, job, job_facts, sections, G_N_ELEMENTS (sections));
}

static BbCliStatus
run_show (int    argc,
          char **argv)
{
  const BbCliBookCommand on_book = { NULL, 1, N_("'job show' needs the number of one job."), show_job, NULL };

  return bb_cli_run_on_book (&bb_cli_job_show, &on_book, argc, argv);
}

/* What was asked for: only to look, or to open the job anew. */
typedef struct {
  gboolean open;
  gboolean newest;
  char *today;
} Repeat;

static void
append_changes (GString         *out,
                const GPtrArray *parts)
{
  for (guint i = 0; i < parts->len; i++)
    {
      const BbRepeatPart *part = parts->pdata[i];
      g_autofree char *day = bb_cli_show_day (part->since);

      g_string_append_printf (out, "%s  %s, %s  %s  %s\n", part->line->code, part->blank->name, part->colourway->name,
                              part->revision != NULL ? part->revision->code : _("No recipe"), day);
      for (guint f = 0; f < part->findings->len; f++)
        {
          g_autofree char *sentence = bb_finding_describe (part->findings->pdata[f], NULL);

          g_string_append_printf (out, "  %s\n", sentence);
        }
      if (part->findings->len == 0)
        g_string_append_printf (out, "  %s\n", _("Nothing has changed since."));
    }
}

static void
append_changes_json (GString         *out,
                     const GPtrArray *parts)
{
  for (guint i = 0; i < parts->len; i++)
    {
      const BbRepeatPart *part = parts->pdata[i];

      g_string_append (out, i > 0 ? ",\n{\"line\":" : "\n{\"line\":");
      bb_json_append_string (out, part->line->code);
      g_string_append (out, ",\"since\":");
      bb_json_append_string (out, part->since);
      g_string_append (out, ",\"revision\":");
      if (part->revision != NULL)
        bb_json_append_string (out, part->revision->code);
      else
        g_string_append (out, "null");
      g_string_append (out, ",\"findings\":[");
      for (guint f = 0; f < part->findings->len; f++)
        {
          g_autofree char *json = bb_record_to_json (&bb_finding_table, part->findings->pdata[f], BB_SCOPE_ALL);

          g_string_append_printf (out, "%s%s", f > 0 ? "," : "", json);
        }
      g_string_append (out, "]}");
    }
}

/* The codes of the new job where one is opened; nothing else changes in the book. */
static gboolean
open_anew (const Repeat     *self,
           BbBook           *book,
           gint64            job,
           const char       *today,
           const GPtrArray  *parts,
           BbJob           **opened,
           GError          **error)
{
  g_autoptr (GArray) choices = g_array_new (FALSE, FALSE, sizeof (BbRepeatLine));
  gint64 id = 0;

  for (guint i = 0; self->newest && i < parts->len; i++)
    {
      const BbRepeatPart *part = parts->pdata[i];
      const BbRepeatLine choice = { part->line->id, part->newer != NULL ? part->newer->id : 0, FALSE };

      g_array_append_val (choices, choice);
    }
  if (!bb_book_repeat_job (book, job, today, (const BbRepeatLine *) (gpointer) choices->data, choices->len, &id,
                           error))
    return FALSE;
  *opened = bb_book_load (book, &bb_job_table, id, error);

  return *opened != NULL;
}

static char *
tell_repeat (const BbCliCommon *common,
             const GPtrArray   *parts,
             const BbJob       *opened)
{
  GString *out = g_string_new (common->json ? "{\"lines\":[" : NULL);

  if (!common->json)
    {
      append_changes (out, parts);
      if (opened != NULL)
        g_string_append_printf (out, _("Opened the job %s.\n"), opened->code);
      return g_string_free (out, FALSE);
    }

  append_changes_json (out, parts);
  g_string_append (out, "\n],\"opened\":");
  if (opened != NULL)
    bb_json_append_string (out, opened->code);
  else
    g_string_append (out, "null");
  g_string_append (out, "}\n");

  return g_string_free (out, FALSE);
}

static BbCliStatus
repeat_job (const BbCliCommon *common,
            BbBook            *book,
            char             **arguments,
            gpointer           data)
{
  const Repeat *self = data;
  g_autofree char *today = self->today != NULL ? g_strdup (self->today) : bb_dup_today ();
  g_autoptr (GError) error = NULL;
  g_autoptr (BbJob) job = NULL;
  g_autoptr (BbJob) opened = NULL;
  g_autoptr (GPtrArray) parts = NULL;
  g_autofree char *answer = NULL;

  if (!bb_text_is_date (today))
    return bb_cli_fail (BB_CLI_USAGE, _("--today: give a day like 2026-11-04."));
  if (self->newest && !self->open)
    return bb_cli_fail (BB_CLI_USAGE, _("--newest says by what a new job is printed: give --open, too."));
  job = bb_book_load_by_code (book, &bb_job_table, arguments[0], &error);
  parts = job != NULL ? bb_repeat_load (book, job->id, today, &bb_cli_units, &error) : NULL;
  if (parts == NULL || (self->open && !open_anew (self, book, job->id, today, parts, &opened, &error)))
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
  answer = tell_repeat (common, parts, opened);

  return bb_cli_write (answer);
}

static BbCliStatus
run_repeat (int    argc,
            char **argv)
{
  Repeat repeat = { FALSE, FALSE, NULL };
  const GOptionEntry entries[] = {
    { "open", 0, 0, G_OPTION_ARG_NONE, &repeat.open, N_("Open it as a new job, on the revisions it was printed by"),
      NULL },
    { "newest", 0, 0, G_OPTION_ARG_NONE, &repeat.newest, N_("With --open: take the revision that is proven now"),
      NULL },
    { "today", 0, 0, G_OPTION_ARG_STRING, &repeat.today, N_("Take this day for today"), N_("DATE") },
    G_OPTION_ENTRY_NULL,
  };
  const BbCliBookCommand on_book = { entries, 1, N_("'job repeat' needs the number of one job."), repeat_job, &repeat };
  BbCliStatus status = bb_cli_run_on_book (&bb_cli_job_repeat, &on_book, argc, argv);

  g_free (repeat.today);

  return status;
}

const BbCliCommand bb_cli_job_list = {
  .name = "job list",
  .arguments = "",
  .summary = N_("List all jobs, those to do first"),
  .run = run_list,
};

const BbCliCommand bb_cli_job_show = {
  .name = "job show",
  .arguments = "NUMBER",
  .summary = N_("Show a job with its lines and runs"),
  .run = run_show,
};

const BbCliCommand bb_cli_job_repeat = {
  .name = "job repeat",
  .arguments = "NUMBER",
  .summary = N_("Tell what has changed since a job was printed, and open it anew"),
  .run = run_repeat,
};
