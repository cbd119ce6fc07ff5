/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>

#include "bb-cli-lines.h"
#include "bb-cli-sections.h"
#include "bb-trace.h"

/* As many as a person reads through; --limit asks for more. */
#define LIST_LIMIT 50

static const char * const run_columns[] = {
  "code", "started_at", "finished_at", "customer", "blank", "colourway", "revision", "person", "good", "spoiled", NULL,
};
static const char * const run_facts[] = {
  "line", "revision", "person", "sprayer", "dryer", "printer", "curer", "started_at", "finished_at", "good", "spoiled",
  "spoilt_by", "note", NULL,
};
static const char * const weighed_columns[] = { "tare_g", "wet_g", "box_area_m2", NULL };
static const char * const departure_columns[] = { "setting", "done", "why", NULL };
static const char * const entry_columns[] = { "lot", "at", "change_g", NULL };
static const char * const remark_columns[] = { "at", "person", "text", NULL };

static BbCliStatus
list_runs (const BbCliCommon *common,
           BbBook            *book,
           char             **arguments,
           gpointer           data)
{
  const int *limit = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) ids = NULL;
  g_autoptr (GPtrArray) runs = NULL;

  (void) arguments;
  if (*limit < 1)
    return bb_cli_fail (BB_CLI_USAGE, _("--limit: %d is below the minimum 1"), *limit);
  ids = bb_book_list_runs (book, (guint) *limit, &error);
  runs = bb_cli_load_cards (book, &bb_run_table, ids, &error);
  if (runs == NULL)
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);

  return bb_cli_write_lines (common, book, &bb_run_card_table, runs, run_columns,
                             _("There is no run in this book yet."));
}

static BbCliStatus
run_list (int    argc,
          char **argv)
{
  int limit = LIST_LIMIT;
  const GOptionEntry entries[] = {
    { "limit", 0, 0, G_OPTION_ARG_INT, &limit, N_("Tell at most N runs, the newest first; 50 if not given"), "N" },
    G_OPTION_ENTRY_NULL,
  };
  const BbCliBookCommand on_book = { entries, 0, N_("'run list' takes no arguments."), list_runs, &limit };

  return bb_cli_run_on_book (&bb_cli_run_list, &on_book, argc, argv);
}

static BbCliStatus
write_run (const BbCliCommon *common,
           BbBook            *book,
           const BbRun       *run,
           const GPtrArray   *entries,
           const GPtrArray   *remarks)
{
  g_autoptr (GPtrArray) weighed = bb_cli_borrow_items (run->weighed, &bb_weighed_table);
  g_autoptr (GPtrArray) departures = bb_cli_borrow_items (run->departures, &bb_departure_table);
  const BbCliSection sections[] = {
    { N_("Containers"), "lot_entries", &bb_lot_entry_table, entries, entry_columns },
    { N_("Weigh-ins"), NULL, &bb_weighed_table, weighed, weighed_columns },
    { N_("Set otherwise"), NULL, &bb_departure_table, departures, departure_columns },
    { N_("Remarks"), "annotations", &bb_annotation_table, remarks, remark_columns },
  };

  return bb_cli_write_record (common, book, &bb_run_table, run, run_facts, sections, G_N_ELEMENTS (sections));
}

static BbCliStatus
show_run (const BbCliCommon *common,
          BbBook            *book,
          char             **arguments,
          gpointer           data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbRun) run = bb_book_load_by_code (book, &bb_run_table, arguments[0], &error);
  g_autoptr (GPtrArray) entries = NULL;
  g_autoptr (GPtrArray) remarks = NULL;

  (void) data;
  if (run != NULL)
    entries = bb_book_load_referring (book, &bb_lot_entry_table, &bb_run_table, run->id, &error);
  if (entries != NULL)
    remarks = bb_book_load_referring (book, &bb_annotation_table, &bb_run_table, run->id, &error);
  if (remarks == NULL)
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);

  return write_run (common, book, run, entries, remarks);
}

static BbCliStatus
run_show (int    argc,
          char **argv)
{
  const BbCliBookCommand on_book = { NULL, 1, N_("'run show' needs the code of one run."), show_run, NULL };

  return bb_cli_run_on_book (&bb_cli_run_show, &on_book, argc, argv);
}

const BbCliCommand bb_cli_run_list = {
  .name = "run list",
  .arguments = "",
  .summary = N_("List runs, the newest first"),
  .run = run_list,
};

const BbCliCommand bb_cli_run_show = {
  .name = "run show",
  .arguments = "CODE",
  .summary = N_("Show a run: by what, from which containers, how it went, and remarks"),
  .run = run_show,
};
