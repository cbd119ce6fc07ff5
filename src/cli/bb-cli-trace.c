/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-canonical.h"
#include "bb-cli-lines.h"
#include "bb-cli-show.h"
#include "bb-csv.h"
#include "bb-moment.h"
#include "bb-trace-report.h"
#include "bb-trace.h"

typedef struct {
  char *csv;
  char *pdf;
  char *paper;
} Files;

static void
files_clear (Files *self)
{
  g_free (self->csv);
  g_free (self->pdf);
  g_free (self->paper);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Files, files_clear)

static const char * const customer_columns[] = {
  "customer", "contact", "jobs", "runs", "good", "first_at", "last_at", NULL,
};
static const char * const run_columns[] = {
  "code", "started_at", "customer", "blank", "colourway", "artwork", "revision", "state", "person", "good", "spoiled",
  "lots", "machines", NULL,
};

static const BbTable *
find_table (const char *name)
{
  const BbTable *table = bb_book_find_table (name);
  g_autoptr (GString) known = NULL;
  guint n_tables = 0;
  const BbTable * const *tables = NULL;

  if (table != NULL && bb_book_is_traced (table))
    return table;

  known = g_string_new (NULL);
  tables = bb_book_tables (&n_tables);
  for (guint i = 0; i < n_tables; i++)
    if (bb_book_is_traced (tables[i]))
      g_string_append_printf (known, "%s%s", known->len > 0 ? ", " : "", tables[i]->name);
  bb_cli_fail (BB_CLI_USAGE, _("'%s' is not one of: %s"), name, known->str);

  return NULL;
}

static char *
trace_to_text (BbBook        *book,
               const BbTrace *trace)
{
  g_autoptr (GPtrArray) customers = bb_cli_borrow_items (trace->customers, &bb_touched_table);
  g_autoptr (GPtrArray) runs = bb_cli_borrow_items (trace->runs, &bb_run_card_table);
  g_autofree char *title = bb_trace_dup_title (trace);
  g_autofree char *sum = bb_trace_describe (trace);
  GString *out = g_string_new (NULL);

  g_string_append_printf (out, "%s\n%s\n", title, sum);
  if (runs->len > 0)
    {
      g_string_append_c (out, '\n');
      bb_cli_append_lines (out, book, &bb_touched_table, customers, customer_columns);
      g_string_append_c (out, '\n');
      bb_cli_append_lines (out, book, &bb_run_card_table, runs, run_columns);
    }

  return g_string_free (out, FALSE);
}

static gboolean
write_csv (const BbTrace  *trace,
           const char     *path,
           GError        **error)
{
  g_autoptr (GPtrArray) runs = bb_cli_borrow_items (trace->runs, &bb_run_card_table);
  g_autofree char *text = bb_csv_write (&bb_run_card_table, runs, NULL, NULL, error);

  return text != NULL && bb_cli_write_new_file (path, text, strlen (text), error);
}

static gboolean
write_pdf (BbBook         *book,
           const BbTable  *table,
           gint64          id,
           const Files    *files,
           GError        **error)
{
  BbPaper paper = g_strcmp0 (files->paper, "letter") == 0 ? BB_PAPER_LETTER : BB_PAPER_A4;
  g_autofree char *today = bb_dup_today ();
  g_autoptr (BbDocument) document = bb_trace_report_new (book, table, id, today, &bb_cli_units, error);
  g_autoptr (GBytes) pdf = document != NULL ? bb_document_to_pdf (document, paper, error) : NULL;

  return pdf != NULL &&
         bb_cli_write_new_file (files->pdf, g_bytes_get_data (pdf, NULL), g_bytes_get_size (pdf), error);
}

static gint64
find_record (BbBook         *book,
             const BbTable  *table,
             const char     *code,
             GError        **error)
{
  gpointer record = bb_book_load_by_code (book, table, code, error);
  gint64 id = record != NULL ? bb_field_get_integer (bb_table_find_field (table, "id"), record) : 0;

  if (record != NULL)
    bb_record_free (table, record);

  return id;
}

static BbCliStatus
make_trace (const BbCliCommon *common,
            BbBook            *book,
            char             **arguments,
            gpointer           data)
{
  const Files *files = data;
  const BbTable *table = find_table (arguments[0]);
  g_autoptr (GError) error = NULL;
  g_autoptr (BbTrace) trace = NULL;
  g_autofree char *text = NULL;
  g_autofree char *answer = NULL;
  gint64 id = 0;

  if (table == NULL)
    return BB_CLI_USAGE;
  if (files->paper != NULL && !g_str_equal (files->paper, "a4") && !g_str_equal (files->paper, "letter"))
    return bb_cli_fail (BB_CLI_USAGE, _("--%s: '%s' is not one of: %s"), "paper", files->paper, "a4, letter");
  id = find_record (book, table, arguments[1], &error);
  trace = id != 0 ? bb_trace_load (book, table, id, &error) : NULL;
  if (trace == NULL || (files->csv != NULL && !write_csv (trace, files->csv, &error)) ||
      (files->pdf != NULL && !write_pdf (book, table, id, files, &error)))
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
  text = common->json ? bb_record_to_json (&bb_trace_table, trace, BB_SCOPE_SEALED) : trace_to_text (book, trace);
  answer = common->json ? g_strconcat (text, "\n", NULL) : g_steal_pointer (&text);

  return bb_cli_write (answer);
}

static BbCliStatus
run_trace (int    argc,
           char **argv)
{
  g_auto (Files) files = { NULL };
  const GOptionEntry entries[] = {
    { "csv", 0, 0, G_OPTION_ARG_FILENAME, &files.csv, N_("Write the runs into a new CSV file, too"), N_("FILE") },
    { "pdf", 0, 0, G_OPTION_ARG_FILENAME, &files.pdf, N_("Write a fault report into a new PDF file, too"),
      N_("FILE") },
    { "paper", 0, 0, G_OPTION_ARG_STRING, &files.paper, N_("The size of its pages; a4 where none is named"),
      "a4|letter" },
    G_OPTION_ENTRY_NULL,
  };
  const BbCliBookCommand on_book = {
    entries, 2, N_("'trace' needs what to start from, like lot, revision, equipment or person, and its code."),
    make_trace, &files,
  };

  return bb_cli_run_on_book (&bb_cli_trace, &on_book, argc, argv);
}

const BbCliCommand bb_cli_trace = {
  .name = "trace",
  .arguments = "TABLE CODE",
  .summary = N_("Find the runs, jobs and customers that a lot, revision, machine or person had a part in"),
  .run = run_trace,
};
