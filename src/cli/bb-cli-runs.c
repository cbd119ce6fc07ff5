/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>

#include "bb-cli-lines.h"
#include "bb-cli-show.h"
#include "bb-codes.h"
#include "bb-json-write.h"
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

/* A run with what refers to it. */
typedef struct {
  BbRun *run;
  GPtrArray *entries;
  GPtrArray *remarks;
} Shown;

static void
shown_clear (Shown *self)
{
  g_clear_pointer (&self->run, bb_run_free);
  g_clear_pointer (&self->entries, g_ptr_array_unref);
  g_clear_pointer (&self->remarks, g_ptr_array_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Shown, shown_clear)

static gboolean
load_shown (Shown       *self,
            BbBook      *book,
            const char  *code,
            GError     **error)
{
  self->run = bb_book_load_by_code (book, &bb_run_table, code, error);
  if (self->run != NULL)
    self->entries = bb_book_load_referring (book, &bb_lot_entry_table, &bb_run_table, self->run->id, error);
  if (self->entries != NULL)
    self->remarks = bb_book_load_referring (book, &bb_annotation_table, &bb_run_table, self->run->id, error);

  return self->remarks != NULL;
}

static char *
show_as_text (const Shown *self,
              BbBook      *book)
{
  g_autoptr (GPtrArray) weighed = bb_cli_borrow_items (self->run->weighed, &bb_weighed_table);
  g_autoptr (GPtrArray) departures = bb_cli_borrow_items (self->run->departures, &bb_departure_table);
  GString *out = g_string_new (self->run->code);

  g_string_append_c (out, '\n');
  bb_cli_append_facts (out, book, &bb_run_table, self->run, run_facts);
  bb_cli_append_section (out, book, _("Containers"), &bb_lot_entry_table, self->entries, entry_columns);
  bb_cli_append_section (out, book, _("Weigh-ins"), &bb_weighed_table, weighed, weighed_columns);
  bb_cli_append_section (out, book, _("Set otherwise"), &bb_departure_table, departures, departure_columns);
  bb_cli_append_section (out, book, _("Remarks"), &bb_annotation_table, self->remarks, remark_columns);

  return g_string_free (out, FALSE);
}

static char *
show_as_json (const Shown  *self,
              BbBook       *book,
              GError      **error)
{
  g_autoptr (GString) out = g_string_new ("{\"run\":");
  g_autoptr (BbCodes) codes = bb_codes_new (book);

  if (!bb_json_append_exchanged (out, &bb_run_table, self->run, bb_codes_name, codes, error) ||
      !bb_cli_append_member (out, book, "lot_entries", &bb_lot_entry_table, self->entries, error) ||
      !bb_cli_append_member (out, book, "annotations", &bb_annotation_table, self->remarks, error))
    return NULL;
  g_string_append (out, "}\n");

  return g_string_free (g_steal_pointer (&out), FALSE);
}

static BbCliStatus
show_run (const BbCliCommon *common,
          BbBook            *book,
          char             **arguments,
          gpointer           data)
{
  g_auto (Shown) shown = { NULL };
  g_autoptr (GError) error = NULL;
  g_autofree char *answer = NULL;

  (void) data;
  if (load_shown (&shown, book, arguments[0], &error))
    answer = common->json ? show_as_json (&shown, book, &error) : show_as_text (&shown, book);

  return bb_cli_answer (answer, error);
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
