/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "store-helpers.h"

#include "bb-wash-proof.h"

/* The database's verdict on a specimen, by which it guards a proof, against the calculator's, for random specimens. */

#define N_SPECIMENS 400

static int
random_choice (const BbChoices *choices,
               gboolean         may_be_none)
{
  return g_test_rand_int_range (may_be_none ? -1 : 0, (int) choices->n_items);
}

static BbRevision *
add_revision (BbBook     *book,
              const Shop *shop)
{
  BbRevision *revision = helper_make_revision (shop->recipe->id, shop->pretreat->id);
  g_autoptr (GError) error = NULL;

  revision->reason = g_strdup ("Another.");
  revision->proof_cycles = g_test_rand_int_range (1, 8);
  revision->proof_change = random_choice (&bb_grade_choices, FALSE);
  revision->proof_stain = random_choice (&bb_grade_choices, TRUE);
  revision->proof_crack = random_choice (&bb_crack_choices, FALSE);
  g_assert_true (bb_book_save_revision (book, revision, &error));
  g_assert_no_error (error);

  return revision;
}

static BbWashTest *
add_test (BbBook *book,
          gint64  revision,
          guint   n)
{
  g_autofree char *code = g_strdup_printf ("V-%u", n);
  BbWashTest *test = helper_make_wash_test (code, revision);

  test->plan_cycles = g_test_rand_int_range (1, 8);
  helper_save (book, &bb_wash_test_table, test);

  return test;
}

static gboolean
is_dice (void)
{
  return g_test_rand_int_range (0, 6) == 0;
}

/* Mostly good, so that some pass. */
static GPtrArray *
add_readings (BbBook           *book,
              const BbRevision *revision,
              const BbWashTest *test)
{
  GPtrArray *readings = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_reading_free);

  for (gint64 cycles = 0, end = g_test_rand_int_range (3, 11); cycles < end; cycles += g_test_rand_int_range (1, 6))
    {
      BbReading *reading = helper_make_reading (test->id, cycles);

      reading->change = is_dice () ? random_choice (&bb_grade_choices, FALSE) : revision->proof_change;
      reading->stain = is_dice () ? random_choice (&bb_grade_choices, TRUE) : revision->proof_stain;
      reading->crack = is_dice () ? random_choice (&bb_crack_choices, FALSE) : BB_CRACK_NONE;
      helper_save (book, &bb_reading_table, reading);
      g_ptr_array_add (readings, reading);
    }

  return readings;
}

static int
find_verdict (sqlite3 *plain,
              gint64   test)
{
  g_autofree char *failed = g_strdup_printf ("SELECT COUNT(*) FROM failed_reading WHERE wash_test = %" G_GINT64_FORMAT,
                                             test);
  g_autofree char *passed = g_strdup_printf ("SELECT COUNT(*) FROM passed_test WHERE wash_test = %" G_GINT64_FORMAT,
                                             test);

  if (helper_count_plain (plain, failed) > 0)
    return BB_VERDICT_FAILED;

  return helper_count_plain (plain, passed) > 0 ? BB_VERDICT_PASSED : BB_VERDICT_OPEN;
}

typedef struct {
  const Shop *shop;
  gint64 tests[N_SPECIMENS];
  int verdicts[N_SPECIMENS];
} Log;

static gboolean
fill_log (BbBook   *book,
          gpointer  data,
          GError  **error)
{
  Log *self = data;

  for (guint i = 0; i < N_SPECIMENS; i++)
    {
      g_autoptr (BbRevision) revision = add_revision (book, self->shop);
      g_autoptr (BbWashTest) test = add_test (book, revision->id, i);
      g_autoptr (GPtrArray) readings = add_readings (book, revision, test);
      g_autoptr (BbWashVerdictOut) verdict = bb_wash_verdict_out_new ();

      if (!bb_wash_proof_judge (revision, test, readings, verdict, error))
        return FALSE;
      self->tests[i] = test->id;
      self->verdicts[i] = verdict->verdict;
    }

  return TRUE;
}

static void
test_database_agrees_with_calculator (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  sqlite3 *plain = helper_open_plain (path);
  Log log = { .shop = shop };
  g_autoptr (GError) error = NULL;
  guint n[3] = { 0 };

  bb_book_in_transaction (book, fill_log, &log, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < N_SPECIMENS; i++)
    {
      g_assert_cmpint (find_verdict (plain, log.tests[i]), ==, log.verdicts[i]);
      n[log.verdicts[i]]++;
    }
  g_test_message ("%u passed, %u failed, %u open", n[0], n[1], n[2]);
  for (guint i = 0; i < G_N_ELEMENTS (n); i++)
    g_assert_cmpuint (n[i], >, N_SPECIMENS / 20);

  sqlite3_close (plain);
  helper_close (book);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/verdict/database-agrees-with-calculator", test_database_agrees_with_calculator);

  return g_test_run ();
}
