/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>

#include "bb-cli-show.h"
#include "bb-document-names.h"
#include "bb-evidence-load.h"
#include "bb-moment.h"
#include "bb-wash-charts.h"
#include "bb-wash-report.h"

/* Pixels for each point of a chart, which is printed at 300 to the inch. */
#define CHART_SCALE (300.0 / 72.0)

/* As wide as the text of a page, in points. */
#define CHART_WIDTH 460.0
#define CHART_HEIGHT 300.0

typedef struct {
  char *revision;
  char *test;
  char *with;
  char *output;
  char *paper;
  char *units;
  char *today;
  char *customer;
  char *remark;
} Options;

static void
options_clear (Options *self)
{
  g_free (self->revision);
  g_free (self->test);
  g_free (self->with);
  g_free (self->output);
  g_free (self->paper);
  g_free (self->units);
  g_free (self->today);
  g_free (self->customer);
  g_free (self->remark);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Options, options_clear)

static gboolean
write_bytes (const char  *path,
             GBytes      *bytes,
             GError     **error)
{
  return bb_cli_write_new_file (path, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), error);
}

static gboolean
is_pdf (const Options *options)
{
  return g_str_has_suffix (options->output, ".pdf");
}

/* A document of several pages becomes as many pictures: FILE-1.png, FILE-2.png, … */
static gboolean
write_pages (BbDocument     *document,
             BbPaper         paper,
             const Options  *options,
             GError        **error)
{
  g_autoptr (GPtrArray) pages = bb_document_to_pngs (document, paper, BB_DOCUMENT_PNG_SCALE, error);

  for (guint i = 0; pages != NULL && i < pages->len; i++)
    {
      g_autofree char *path = bb_document_name_page (options->output, i, pages->len);

      if (!write_bytes (path, pages->pdata[i], error))
        return FALSE;
    }

  return pages != NULL;
}

static gboolean
write_document (BbDocument     *document,
                const Options  *options,
                GError        **error)
{
  BbPaper paper = g_strcmp0 (options->paper, "letter") == 0 ? BB_PAPER_LETTER : BB_PAPER_A4;
  g_autoptr (GBytes) pdf = NULL;

  if (!is_pdf (options))
    return write_pages (document, paper, options, error);
  pdf = bb_document_to_pdf (document, paper, error);

  return pdf != NULL && write_bytes (options->output, pdf, error);
}

static gboolean
find_subject (BbBook             *book,
              const Options      *options,
              BbWashReportAbout  *about,
              GError            **error)
{
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (BbWashTest) test = NULL;

  if (options->test != NULL)
    {
      test = bb_book_load_by_code (book, &bb_wash_test_table, options->test, error);
      if (test == NULL)
        return FALSE;
      about->wash_test = test->id;
      about->revision = test->revision;
      return TRUE;
    }
  revision = bb_book_load_by_code (book, &bb_revision_table, options->revision, error);
  if (revision == NULL)
    return FALSE;
  about->revision = revision->id;

  return TRUE;
}

static BbCliStatus
make_report (BbBook        *book,
             const Options *options)
{
  const BbUnitContext us = { .system = BB_UNITS_US };
  g_autofree char *today = options->today != NULL ? g_strdup (options->today) : bb_dup_today ();
  BbWashReportAbout about = {
    .today = today, .customer = options->customer, .remark = options->remark,
    .units = g_strcmp0 (options->units, "us") == 0 ? &us : &bb_cli_units,
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (BbDocument) document = NULL;

  if (find_subject (book, options, &about, &error))
    document = bb_wash_report_new (book, &about, &error);
  if (document == NULL || !write_document (document, options, &error))
    return bb_cli_fail_by_error (error, NULL);

  return BB_CLI_OK;
}

static gboolean
is_one_of (const char         *option,
           const char         *given,
           const char * const *words)
{
  g_autofree char *known = NULL;

  if (given == NULL || g_strv_contains (words, given))
    return TRUE;
  known = g_strjoinv (", ", (GStrv) words);
  bb_cli_fail (BB_CLI_USAGE, _("--%s: '%s' is not one of: %s"), option, given, known);

  return FALSE;
}

static gboolean
check_output (const Options *options)
{
  if (options->output != NULL && (is_pdf (options) || g_str_has_suffix (options->output, ".png")))
    return TRUE;
  bb_cli_fail (BB_CLI_USAGE, _("--output: give the name of a new file that ends in .pdf or .png."));

  return FALSE;
}

static BbCliStatus
run_wash (int    argc,
          char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  g_auto (Options) options = { 0 };
  const GOptionEntry entries[] = {
    { "revision", 0, 0, G_OPTION_ARG_STRING, &options.revision, N_("Report on all specimens of this revision"),
      N_("CODE") },
    { "test", 0, 0, G_OPTION_ARG_STRING, &options.test, N_("Report on this specimen alone"), N_("CODE") },
    { "output", 0, 0, G_OPTION_ARG_FILENAME, &options.output, N_("Where to write it: a new PDF, or PNG for each page"),
      N_("FILE") },
    { "paper", 0, 0, G_OPTION_ARG_STRING, &options.paper, N_("The size of its pages; a4 where none is named"),
      "a4|letter" },
    { "units", 0, 0, G_OPTION_ARG_STRING, &options.units, N_("The units in it; metric where none are named"),
      "metric|us" },
    { "today", 0, 0, G_OPTION_ARG_STRING, &options.today, N_("Take this day for today"), N_("DATE") },
    { "customer", 0, 0, G_OPTION_ARG_STRING, &options.customer, N_("Whom it is made for"), N_("NAME") },
    { "remark", 0, 0, G_OPTION_ARG_STRING, &options.remark, N_("What is said beside the limits of the method"),
      N_("TEXT") },
    G_OPTION_ENTRY_NULL,
  };
  BbCliStatus status = BB_CLI_USAGE;
  BbBook *book = NULL;

  if (!bb_cli_parse_options (&bb_cli_report_wash, entries, &common, &argc, &argv))
    return BB_CLI_USAGE;
  if (argc != 1 || (options.revision == NULL) == (options.test == NULL))
    return bb_cli_fail (BB_CLI_USAGE, _("'report wash' needs either --revision or --test, and --output."));
  if (!check_output (&options) ||
      !is_one_of ("paper", options.paper, (const char * const[]) { "a4", "letter", NULL }) ||
      !is_one_of ("units", options.units, (const char * const[]) { "metric", "us", NULL }))
    return BB_CLI_USAGE;
  book = bb_cli_open_book (&common, &status);

  return book != NULL ? bb_cli_close_book (book, make_report (book, &options)) : status;
}

static BbWashEvidence *
load_evidence (BbBook      *book,
               const char  *code,
               GError     **error)
{
  g_autoptr (BbRevision) revision = bb_book_load_by_code (book, &bb_revision_table, code, error);
  g_autofree char *today = bb_dup_today ();

  return revision != NULL ? bb_evidence_load (book, revision->id, today, error) : NULL;
}

static BbChart *
make_chart (BbBook         *book,
            const char     *kind,
            const Options  *options,
            GError        **error)
{
  g_autoptr (BbWashEvidence) evidence = load_evidence (book, options->revision, error);
  g_autoptr (BbWashEvidence) other = NULL;

  if (evidence == NULL)
    return NULL;
  if (g_str_equal (kind, "grades"))
    return bb_wash_chart_grades (evidence, 0);
  if (options->with == NULL)
    return bb_wash_chart_survival (evidence);
  other = load_evidence (book, options->with, error);
  if (other == NULL)
    return NULL;

  return g_str_equal (kind, "survival") ? bb_wash_chart_lives (evidence, other)
                                        : bb_wash_chart_compare (evidence, other);
}

static BbCliStatus
save_chart (BbBook        *book,
            const char    *kind,
            const Options *options)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbChart) chart = make_chart (book, kind, options, &error);
  g_autoptr (GBytes) bytes = NULL;

  if (chart != NULL)
    bytes = is_pdf (options) ? bb_chart_to_pdf (chart, CHART_WIDTH, CHART_HEIGHT, &error)
                             : bb_chart_to_png (chart, CHART_WIDTH, CHART_HEIGHT, CHART_SCALE, &error);
  if (bytes == NULL || !write_bytes (options->output, bytes, &error))
    return bb_cli_fail_by_error (error, NULL);

  return BB_CLI_OK;
}

static BbCliStatus
run_chart (int    argc,
           char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  g_auto (Options) options = { 0 };
  const GOptionEntry entries[] = {
    { "revision", 0, 0, G_OPTION_ARG_STRING, &options.revision, N_("The revision"), N_("CODE") },
    { "with", 0, 0, G_OPTION_ARG_STRING, &options.with, N_("The revision that it is compared with"), N_("CODE") },
    { "output", 0, 0, G_OPTION_ARG_FILENAME, &options.output, N_("Where to write it: a new PDF or PNG"), N_("FILE") },
    G_OPTION_ENTRY_NULL,
  };
  const char * const kinds[] = { "grades", "survival", "compare", NULL };
  BbCliStatus status = BB_CLI_USAGE;
  BbBook *book = NULL;

  if (!bb_cli_parse_options (&bb_cli_report_chart, entries, &common, &argc, &argv))
    return BB_CLI_USAGE;
  if (argc != 2 || !g_strv_contains (kinds, argv[1]) || options.revision == NULL ||
      (g_str_equal (argv[1], "compare") && options.with == NULL) ||
      (g_str_equal (argv[1], "grades") && options.with != NULL))
    return bb_cli_fail (BB_CLI_USAGE, _("'report chart' needs one of grades, survival and compare, --revision, and "
                                        "--output; compare needs --with, and survival may have it."));
  if (!check_output (&options))
    return BB_CLI_USAGE;
  book = bb_cli_open_book (&common, &status);

  return book != NULL ? bb_cli_close_book (book, save_chart (book, argv[1], &options)) : status;
}

const BbCliCommand bb_cli_report_wash = {
  .name = "report wash",
  .arguments = "",
  .summary = N_("Write a wash report for a customer, as PDF or PNG"),
  .run = run_wash,
};

const BbCliCommand bb_cli_report_chart = {
  .name = "report chart",
  .arguments = "grades|survival|compare",
  .summary = N_("Draw what the wash log has on a revision, as PDF or PNG"),
  .run = run_chart,
};
