/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-job-words.h"

#include <math.h>
#include <string.h>

#include "bb-job.h"
#include "bb-words.h"

#define TODAY "2026-02-27"

static const BbUnitContext metric = { .system = BB_UNITS_METRIC };
static const BbUnitContext us = { .system = BB_UNITS_US };

/* By the calendar: 2026 is no leap year. */
static void
test_due (void)
{
  static const struct {
    const char *day;
    const char *words;
  } cases[] = {
    { TODAY, "Due today" },
    { "2026-02-28", "Due tomorrow" },
    { "2026-03-01", "Due in 2 days" },
    { "2026-03-13", "Due in 14 days" },
    { "2026-03-14", "Due 14 Mar 2026" },
    { "2026-02-26", "Due yesterday" },
    { "2026-02-25", "2 days overdue" },
    { "2025-02-27", "365 days overdue" },
    { NULL, "No due date" },
    { "2026-02-30", "No due date" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *words = bb_words_of_due (cases[i].day, TODAY);

      g_assert_cmpstr (words, ==, cases[i].words);
    }
}

static void
test_overdue (void)
{
  g_assert_true (bb_job_is_overdue (BB_JOB_PLANNED, "2026-02-26", TODAY));
  g_assert_true (bb_job_is_overdue (BB_JOB_RUNNING, "2026-02-26", TODAY));
  g_assert_false (bb_job_is_overdue (BB_JOB_RUNNING, TODAY, TODAY));
  g_assert_false (bb_job_is_overdue (BB_JOB_DONE, "2026-02-26", TODAY));
  g_assert_false (bb_job_is_overdue (BB_JOB_CANCELLED, "2026-02-26", TODAY));
  g_assert_false (bb_job_is_overdue (BB_JOB_PLANNED, NULL, TODAY));
}

static void
test_time (void)
{
  static const struct {
    double seconds;
    const char *words;
  } cases[] = {
    { 0, "0 s" },     { 59.2, "1 min" },     { 60, "1 min" },       { 61, "2 min" },
    { 3600, "1 h" },  { 3601, "1 h 1 min" }, { 90061, "25 h 2 min" }, { NAN, "" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *words = bb_words_of_time (cases[i].seconds);

      g_assert_cmpstr (words, ==, cases[i].words);
    }
}

/* Of 1000 g made up 876.5 g are sprayed: 123.5 g more. */
static void
test_surplus (void)
{
  g_autoptr (BbMixSheet) mix = bb_mix_sheet_new ();
  g_autofree char *text = NULL;
  g_autofree char *none = NULL;

  none = bb_words_of_surplus (mix, &metric);
  g_assert_null (none);
  mix->needed_g = 876.5;
  mix->total_g = 1000;
  text = bb_words_of_surplus (mix, &metric);
  g_assert_nonnull (strstr (text, "876.5 g of it are sprayed. The other 123.5 g"));
}

/* Who hangs a garment in the air does not stand at a hot platen then. */
static void
test_step_cautions (void)
{
  g_autoptr (BbRevision) revision = bb_revision_new ();
  g_autoptr (GPtrArray) all = NULL;
  g_autoptr (GPtrArray) few = NULL;

  revision->pretreat_method = BB_PRETREAT_MACHINE;
  revision->dry_method = BB_HEAT_PRESS;
  all = bb_words_of_step_cautions (revision);
  revision->pretreat_method = BB_PRETREAT_NONE;
  revision->dry_method = BB_HEAT_AIR;
  few = bb_words_of_step_cautions (revision);
  g_assert_cmpuint (all->len, ==, 5);
  g_assert_true (g_str_has_prefix (all->pdata[0], "Pretreat: "));
  g_assert_cmpuint (few->len, ==, 2);
  g_assert_true (g_str_has_prefix (few->pdata[1], "Cure: "));
}

static void
test_file (void)
{
  g_autofree char *whole = bb_words_of_file ("/art/heron (2).png");
  g_autofree char *name = bb_words_of_file ("Choir/heron");
  g_autofree char *none = bb_words_of_file (NULL);

  g_assert_cmpstr (whole, ==, "heron (2).png");
  g_assert_cmpstr (name, ==, "Choir/heron");
  g_assert_cmpstr (none, ==, "");
}

static void
test_mix (void)
{
  g_autoptr (BbMixSheet) mix = bb_mix_sheet_new ();
  g_autofree char *diluted = NULL;
  g_autofree char *undiluted = NULL;

  mix->product = g_strdup ("Bittern");
  mix->parts_concentrate = 1;
  mix->parts_water = 2;
  mix->basis = BB_BASIS_VOLUME;
  mix->garments = 3;
  diluted = bb_words_of_mix (mix, NULL);
  g_assert_cmpstr (diluted, ==, "Bittern, 1:2 by volume, for 3 garments");
  mix->parts_water = 0;
  undiluted = bb_words_of_mix (mix, NULL);
  g_assert_cmpstr (undiluted, ==, "Bittern, undiluted, for 3 garments");
}

/* Benches weigh in grams in both unit systems. */
static void
test_take (void)
{
  char code[] = "L-1";
  char day[] = "2026-05-01";
  BbTake take = { .code = code, .last_day = day, .amount_g = 283.5, .left_g = 100 };
  g_autofree char *grams = bb_words_of_take (&take, &metric);
  g_autofree char *american = bb_words_of_take (&take, &us);
  g_autofree char *emptied = NULL;
  g_autofree char *uncounted = NULL;

  g_assert_cmpstr (grams, ==, "Take 283.5 g from L-1, to be used by 1 May 2026. 100 g is left then.");
  g_assert_nonnull (strstr (american, "Take 283.5 g from L-1"));
  take.left_g = 0;
  emptied = bb_words_of_take (&take, &metric);
  g_assert_true (g_str_has_suffix (emptied, "It is empty then."));
  take.left_g = (double) NAN;
  uncounted = bb_words_of_take (&take, &metric);
  g_assert_true (g_str_has_suffix (uncounted, "1 May 2026."));
}

static void
test_warnings (void)
{
  char lot[] = "OLD-1";
  char *past[] = { lot, NULL };
  BbMixSheet mix = { .short_g = 12.3, .low = 1, .past = past };
  g_autoptr (GPtrArray) all = bb_words_of_mix_warnings (&mix, &metric);
  g_autoptr (GPtrArray) low = NULL;
  g_autoptr (GPtrArray) none = NULL;

  g_assert_cmpuint (all->len, ==, 2);
  g_assert_cmpstr (all->pdata[0], ==, "12.3 g of concentrate is missing: no container in the shop has it.");
  g_assert_cmpstr (all->pdata[1], ==, "OLD-1 is past its day and is not used.");
  mix = (BbMixSheet) { .low = 1 };
  low = bb_words_of_mix_warnings (&mix, &metric);
  g_assert_cmpuint (low->len, ==, 1);
  mix.low = 0;
  none = bb_words_of_mix_warnings (&mix, &metric);
  g_assert_cmpuint (none->len, ==, 0);
}

static void
test_spares (void)
{
  g_autofree char *some = bb_words_of_spares (25, 1);

  g_assert_cmpstr (some, ==, "24 ordered and 1 spare");
  g_assert_null (bb_words_of_spares (24, 0));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job-words/due", test_due);
  g_test_add_func ("/job-words/overdue", test_overdue);
  g_test_add_func ("/job-words/time", test_time);
  g_test_add_func ("/job-words/surplus", test_surplus);
  g_test_add_func ("/job-words/step-cautions", test_step_cautions);
  g_test_add_func ("/job-words/file", test_file);
  g_test_add_func ("/job-words/mix", test_mix);
  g_test_add_func ("/job-words/take", test_take);
  g_test_add_func ("/job-words/warnings", test_warnings);
  g_test_add_func ("/job-words/spares", test_spares);

  return g_test_run ();
}
