/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-job-report.h"

#include <string.h>

#include "bb-job-papers.h"
#include "paper.h"
#include "store-helpers.h"

/* The sheet of a job on paper says what the page says: the numbers are held against those of its papers. */

static const BbUnitContext metric = { .system = BB_UNITS_METRIC };

static void
expect (const char *text,
        const char *part)
{
  if (strstr (text, part) == NULL)
    g_error ("“%s” is not in: %s", part, text);
}

static char *
print (BbBook *book,
       gint64  job)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbDocument) document = bb_job_report_new (book, job, "2025-05-01", &metric, &error);
  g_autoptr (GBytes) pdf = NULL;

  g_assert_no_error (error);
  pdf = bb_document_to_pdf (document, BB_PAPER_A4, &error);
  g_assert_no_error (error);

  return paper_read_text (pdf);
}

static void
test_sheet (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  const char *const parts[] = {
    "Job sheet", "2503-01", "Heron Street Choir", "2503-01.1", "heron.png", "R-1.1", "Laydown",
    "Dwell", "1 May 2025", "safety data sheet",
  };
  g_autoptr (BbJobPapers) papers = NULL;
  g_autofree char *text = NULL;

  helper_fill_jobs (book, shop);
  text = print (book, shop->job->id);
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    expect (text, parts[i]);

  papers = bb_job_papers_load (book, shop->job->id, "2025-05-01", NULL);
  g_assert_cmpuint (papers->sheet->lines->len, >, 0);
  for (guint i = 0; i < papers->sheet->lines->len; i++)
    {
      const BbLineSheet *line = &g_array_index (papers->sheet->lines, BbLineSheet, i);

      expect (text, line->code);
      if (line->missing != NULL)
        expect (text, "Not everything can be computed yet");
    }
  for (guint i = 0; i < papers->sheet->mixes->len; i++)
    expect (text, g_array_index (papers->sheet->mixes, BbMixSheet, i).product);
  g_clear_pointer (&papers, bb_job_papers_free);
  helper_close (book);
}

static void
test_no_lines (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbJob) job = NULL;
  g_autofree char *text = NULL;

  helper_fill_jobs (book, shop);
  job = helper_make_job ("2503-09", shop->customer->id);
  helper_save (book, &bb_job_table, job);
  text = print (book, job->id);
  expect (text, "2503-09");
  expect (text, "stands here once it has a line");
  helper_close (book);
}

static void
test_no_job (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (GError) error = NULL;

  g_assert_null (bb_job_report_new (book, 99, "2025-05-01", &metric, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
  helper_close (book);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/job-report/sheet", test_sheet);
  g_test_add_func ("/job-report/no-lines", test_no_lines);
  g_test_add_func ("/job-report/no-job", test_no_job);

  return g_test_run ();
}
