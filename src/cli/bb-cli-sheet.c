/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>

#include "bb-canonical.h"
#include "bb-cli-lines.h"
#include "bb-cli-show.h"
#include "bb-job-papers.h"
#include "bb-moment.h"
#include "bb-text.h"

static const char * const line_facts[] = {
  "missing", "garments", "spares", "box_width_mm", "box_height_mm", "clipped", "wet_g", "used_g", "needed_g", "sheets",
  "cost_per_garment", "cost", "bottleneck", "time_s", NULL,
};
static const char * const mix_facts[] = {
  "parts_concentrate", "basis", "garments", "total_g", "concentrate_g", "concentrate_ml", "water_g", "water_ml",
  "short_g", "past", "low", NULL,
};
static const char * const sheet_facts[] = {
  "garments", "spares", "sheets", "cost_per_garment", "cost", "bottleneck", "time_s", "whole", NULL,
};
static const char * const take_columns[] = { "code", "last_day", "amount_g", "left_g", NULL };

static void
append_mix (GString          *out,
            BbBook           *book,
            const BbMixSheet *mix)
{
  g_autoptr (GPtrArray) takes = bb_cli_borrow_items (mix->takes, &bb_take_table);

  /* Translators: a pretreat that is mixed. */
  g_string_append_printf (out, _("\nMix of %s\n"), mix->product);
  bb_cli_append_facts (out, book, &bb_mix_sheet_table, mix, mix_facts);
  if (takes->len > 0)
    bb_cli_append_lines (out, book, &bb_take_table, takes, take_columns);
}

static char *
sheet_to_text (BbBook            *book,
               const BbJobPapers *papers)
{
  const BbJobSheet *sheet = papers->sheet;
  GString *out = g_string_new (papers->job->code);

  g_string_append_c (out, '\n');
  bb_cli_append_facts (out, book, &bb_job_sheet_table, sheet, sheet_facts);
  for (guint i = 0; i < sheet->lines->len; i++)
    {
      const BbLineSheet *line = &g_array_index (sheet->lines, BbLineSheet, i);

      /* Translators: the code of a line of a job. */
      g_string_append_printf (out, _("\nLine %s\n"), line->code);
      bb_cli_append_facts (out, book, &bb_line_sheet_table, line, line_facts);
    }
  for (guint i = 0; i < sheet->mixes->len; i++)
    append_mix (out, book, &g_array_index (sheet->mixes, BbMixSheet, i));

  return g_string_free (out, FALSE);
}

static BbCliStatus
show_sheet (const BbCliCommon *common,
            BbBook            *book,
            char             **arguments,
            gpointer           data)
{
  char **given = data;
  g_autofree char *today = *given != NULL ? g_strdup (*given) : bb_dup_today ();
  g_autoptr (GError) error = NULL;
  g_autoptr (BbJob) job = NULL;
  g_autoptr (BbJobPapers) papers = NULL;
  g_autofree char *text = NULL;
  g_autofree char *answer = NULL;

  if (!bb_text_is_date (today))
    return bb_cli_fail (BB_CLI_USAGE, _("--today: give a day like 2026-11-04."));
  job = bb_book_load_by_code (book, &bb_job_table, arguments[0], &error);
  papers = job != NULL ? bb_job_papers_load (book, job->id, today, &error) : NULL;
  if (papers == NULL)
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
  if (!common->json)
    {
      answer = sheet_to_text (book, papers);
      return bb_cli_write (answer);
    }
  text = bb_record_to_json (&bb_job_sheet_table, papers->sheet, BB_SCOPE_SEALED);
  answer = g_strconcat (text, "\n", NULL);

  return bb_cli_write (answer);
}

static BbCliStatus
run_sheet (int    argc,
           char **argv)
{
  g_autofree char *today = NULL;
  const GOptionEntry entries[] = {
    { "today", 0, 0, G_OPTION_ARG_STRING, &today, N_("Take this day for today"), N_("DATE") },
    G_OPTION_ENTRY_NULL,
  };
  const BbCliBookCommand on_book = { entries, 1, N_("'job sheet' needs the number of one job."), show_sheet, &today };

  return bb_cli_run_on_book (&bb_cli_job_sheet, &on_book, argc, argv);
}

const BbCliCommand bb_cli_job_sheet = {
  .name = "job sheet",
  .arguments = "NUMBER",
  .summary = N_("Compute what a job takes: boxes, mixes, containers, sheets, cost, time"),
  .run = run_sheet,
};
