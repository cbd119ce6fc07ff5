/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-line-options.h"

#include <string.h>

#include "bench.h"

static const BbUnitContext metric = { .system = BB_UNITS_METRIC };

static GPtrArray *
load (Bench  *bench,
      gint64  customer)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *options = bb_line_options_load (bench->book, customer, bench->shop->colourway->id, &metric, &error);

  g_assert_no_error (error);

  return options;
}

/* A draft is nothing to recall, but it is there to be chosen. */
static void
test_not_proven (Bench         *bench,
                 gconstpointer  data)
{
  g_autoptr (GPtrArray) options = load (bench, bench->shop->customer->id);
  const BbLineOption *option = NULL;

  (void) data;
  g_assert_cmpuint (options->len, ==, 1);
  option = options->pdata[0];
  g_assert_cmpint (option->revision, ==, bench->shop->revision->id);
  g_assert_false (option->is_recalled);
  g_assert_cmpint (option->state, ==, BB_STATE_DRAFT);
}

/* Once proven it is the one to take: with the customer's own job as its reason, or with another's. */
static void
test_recalled (Bench         *bench,
               gconstpointer  data)
{
  g_autoptr (GPtrArray) own = NULL;
  g_autoptr (GPtrArray) other = NULL;
  const BbLineOption *option = NULL;

  (void) data;
  helper_prove (bench->book, bench->shop->revision->id);
  own = load (bench, bench->shop->customer->id);
  g_assert_cmpuint (own->len, ==, 1);
  option = own->pdata[0];
  g_assert_true (option->is_recalled);
  g_assert_cmpint (option->revision, ==, bench->shop->revision->id);
  g_assert_cmpint (option->state, ==, BB_STATE_PROVEN);
  g_assert_cmpstr (option->name, ==, "Dark tees, revision 1");
  g_assert_true (g_str_has_prefix (option->why, "Proven. Heron Street Choir had this garment printed by it last, on "));
  g_assert_true (g_str_has_suffix (option->why, " in job 2503-01."));

  other = load (bench, 0);
  option = other->pdata[0];
  g_assert_nonnull (strstr (option->why, "printed by it last, for Heron Street Choir on "));
}

static void
test_no_garment (Bench         *bench,
                 gconstpointer  data)
{
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_null (bb_line_options_load (bench->book, 0, 999, &metric, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  BENCH_ADD ("/line-options/not-proven", test_not_proven);
  BENCH_ADD ("/line-options/recalled", test_recalled);
  BENCH_ADD ("/line-options/no-garment", test_no_garment);

  return g_test_run ();
}
