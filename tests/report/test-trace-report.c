/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-trace-report.h"

#include <string.h>

#include "paper.h"
#include "store-helpers.h"

typedef struct {
  BbBook *book;
  Shop *shop;
} Bench;

static const BbUnitContext metric = { .system = BB_UNITS_METRIC };

static void
start_run (Bench      *self,
           gint64      line,
           const char *day)
{
  g_autoptr (BbRun) run = bb_run_new ();
  g_autoptr (GError) error = NULL;

  run->line = line;
  run->good = 7;
  run->spoiled = 2;
  run->started_at = g_strdup (day);
  g_assert_true (bb_book_start_run (self->book, run, &error));
  g_assert_true (bb_book_use_lot (self->book, self->shop->lot->id, run->id, 20, &error));
  g_assert_no_error (error);
}

/* The lot went into two jobs of one customer, and into one of another. */
static void
set_up (Bench         *self,
        gconstpointer  data)
{
  g_autofree char *path = helper_new_path ();
  g_autoptr (BbCustomer) customer = helper_make_customer ("TERN", "Tern Rowing Club");
  g_autoptr (BbJob) second = NULL;
  g_autoptr (BbJob) third = NULL;
  g_autoptr (BbJobLine) second_line = NULL;
  g_autoptr (BbJobLine) third_line = NULL;

  (void) data;
  self->book = helper_create (path);
  self->shop = helper_fill (self->book);
  helper_fill_jobs (self->book, self->shop);
  customer->contact = g_strdup ("ask at the boathouse");
  helper_save (self->book, &bb_customer_table, customer);
  second = helper_make_job ("2503-02", self->shop->customer->id);
  third = helper_make_job ("2503-03", customer->id);
  helper_save (self->book, &bb_job_table, second);
  helper_save (self->book, &bb_job_table, third);
  second_line = helper_make_line (second->id, self->shop->colourway->id, self->shop->revision->id);
  third_line = helper_make_line (third->id, self->shop->colourway->id, self->shop->revision->id);
  g_assert_true (bb_book_save_job_line (self->book, second_line, NULL));
  g_assert_true (bb_book_save_job_line (self->book, third_line, NULL));
  start_run (self, second_line->id, "2025-03-20T09:00:00Z");
  start_run (self, third_line->id, "2025-03-22T09:00:00Z");
}

static void
tear_down (Bench         *self,
           gconstpointer  data)
{
  (void) data;
  helper_shop_free (self->shop);
  helper_close (self->book);
}

static void
test_trace (Bench         *self,
            gconstpointer  data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbTrace) trace = bb_trace_load (self->book, &bb_lot_table, self->shop->lot->id, &error);
  g_autofree char *sum = NULL;
  const BbTouched *touched = NULL;

  (void) data;
  g_assert_no_error (error);
  sum = bb_trace_describe (trace);
  g_assert_cmpstr (sum, ==, "It had a part in 3 runs. 3 jobs were touched. 2 customers were touched. 24 garments came "
                            "out well. 5 garments were spoiled. 3 runs have not ended yet.");
  g_assert_cmpuint (trace->customers->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      touched = &g_array_index (trace->customers, BbTouched, i);
      if (g_str_equal (touched->customer, "Heron Street Choir"))
        {
          g_assert_cmpint (touched->runs, ==, 2);
          g_assert_cmpint (touched->good, ==, 17);
          g_assert_cmpstr (touched->first_at, ==, "2025-03-20T09:00:00Z");
        }
      else
        {
          g_assert_cmpstr (touched->contact, ==, "ask at the boathouse");
          g_assert_cmpstr (touched->jobs, ==, "2503-03");
          g_assert_cmpint (touched->good, ==, 7);
        }
    }
}

/* Two customers may have one name and one contact: they stay two. */
static void
test_namesakes (Bench         *self,
                gconstpointer  data)
{
  g_autoptr (BbCustomer) namesake = helper_make_customer ("TERN-2", "Tern Rowing Club");
  g_autoptr (BbJob) job = NULL;
  g_autoptr (BbJobLine) line = NULL;
  g_autoptr (BbTrace) trace = NULL;
  guint n_found = 0;

  (void) data;
  namesake->contact = g_strdup ("ask at the boathouse");
  helper_save (self->book, &bb_customer_table, namesake);
  job = helper_make_job ("2503-04", namesake->id);
  helper_save (self->book, &bb_job_table, job);
  line = helper_make_line (job->id, self->shop->colourway->id, self->shop->revision->id);
  g_assert_true (bb_book_save_job_line (self->book, line, NULL));
  start_run (self, line->id, "2025-03-24T09:00:00Z");

  trace = bb_trace_load (self->book, &bb_lot_table, self->shop->lot->id, NULL);
  g_assert_cmpuint (trace->customers->len, ==, 3);
  for (guint i = 0; i < trace->customers->len; i++)
    {
      const BbTouched *touched = &g_array_index (trace->customers, BbTouched, i);

      if (!g_str_equal (touched->customer, "Tern Rowing Club"))
        continue;
      n_found++;
      g_assert_cmpstr (touched->jobs, ==, g_str_equal (touched->code, "TERN") ? "2503-03" : "2503-04");
      g_assert_cmpint (touched->runs, ==, 1);
    }
  g_assert_cmpuint (n_found, ==, 2);
}

static void
test_titles (Bench         *self,
             gconstpointer  data)
{
  const Shop *shop = self->shop;
  const struct {
    const BbTable *table;
    gint64 id;
    const char *begins;
  } cases[] = {
    { &bb_lot_table, shop->lot->id, "Lot L-1, " },
    { &bb_revision_table, shop->revision->id, "Revision R-1.1, " },
    { &bb_equipment_table, shop->press->id, "Machine PRESS-1, " },
    { &bb_job_table, shop->job->id, "Job 2503-01, Heron Street Choir" },
    { &bb_run_table, shop->run->id, "Run 2503-01.1.1" },
  };

  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BbTrace) trace = bb_trace_load (self->book, cases[i].table, cases[i].id, NULL);
      g_autofree char *title = bb_trace_dup_title (trace);

      if (!g_str_has_prefix (title, cases[i].begins))
        g_error ("“%s” does not begin with “%s”", title, cases[i].begins);
    }
}

static char *
report (Bench         *self,
        const BbTable *table,
        gint64         id)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbDocument) document = bb_trace_report_new (self->book, table, id, "2025-05-01", &metric, &error);
  g_autoptr (GBytes) pdf = NULL;

  g_assert_no_error (error);
  pdf = bb_document_to_pdf (document, BB_PAPER_A4, &error);
  g_assert_no_error (error);

  return paper_read_text (pdf);
}

static void
test_report (Bench         *self,
             gconstpointer  data)
{
  g_autofree char *text = report (self, &bb_lot_table, self->shop->lot->id);
  const char * const parts[] = {
    "Fault report", "L-1", "3 jobs were touched", "Tern Rowing Club", "ask at the boathouse", "Heron Street Choir",
    "2503-02", "2503-03.1.1", "R-1.1", "PRESS-1", "heron.png", "1 May 2025", "What this does not say",
  };

  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    if (strstr (text, parts[i]) == NULL)
      g_error ("“%s” is not in: %s", parts[i], text);
}

static void
test_nothing_touched (Bench         *self,
                      gconstpointer  data)
{
  g_autofree char *text = NULL;
  g_autoptr (BbLot) lot = helper_make_lot ("L-9", self->shop->pretreat->id);

  (void) data;
  helper_save (self->book, &bb_lot_table, lot);
  text = report (self, &bb_lot_table, lot->id);
  g_assert_nonnull (strstr (text, "It had a part in no run of this book."));
  g_assert_null (strstr (text, "Customers"));
}

static void
test_missing (Bench         *self,
              gconstpointer  data)
{
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_null (bb_trace_report_new (self->book, &bb_lot_table, 99, "2025-05-01", &metric, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

#define ADD(path, func) g_test_add (path, Bench, NULL, set_up, func, tear_down)
  ADD ("/trace-report/trace", test_trace);
  ADD ("/trace-report/namesakes", test_namesakes);
  ADD ("/trace-report/titles", test_titles);
  ADD ("/trace-report/report", test_report);
  ADD ("/trace-report/nothing-touched", test_nothing_touched);
  ADD ("/trace-report/missing", test_missing);
#undef ADD

  return g_test_run ();
}
