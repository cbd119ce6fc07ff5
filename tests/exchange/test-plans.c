/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "shop.h"

#include <string.h>

#include "reference.h"

/* The built-in wash plans against the collected parameters of published methods: tests/reference/wash-methods.csv. */

/* The reference names methods by their edition: a plan's row is that of its procedure, of the method it begins with. */
static const char * const methods[] = {
  [BB_WASH_ISO_6330] = "ISO 6330", [BB_WASH_ISO_105_C06] = "ISO 105-C06", [BB_WASH_AATCC_61] = "AATCC TM61",
  [BB_WASH_AATCC_LP1] = "AATCC LP1",
};

static guint
find_row (const Reference  *reference,
          const BbWashPlan *plan)
{
  for (guint i = 0; i < reference_get_length (reference); i++)
    {
      g_auto (GStrv) code = g_strsplit (reference_get_text (reference, i, "test_code"), " ", 2);

      if (g_str_has_prefix (reference_get_text (reference, i, "method"), methods[plan->standard]) &&
          g_str_equal (code[0], plan->procedure))
        return i;
    }

  g_error ("%s: there is no procedure %s", plan->code, plan->procedure);
}

static void
assert_number (const Reference *reference,
               guint            row,
               const char      *column,
               double           found)
{
  if (*reference_get_text (reference, row, column) == '\0')
    g_assert_true (isnan (found));
  else
    g_assert_cmpfloat (found, ==, reference_get_number (reference, row, column));
}

static void
check_plan (const Reference  *reference,
            const BbWashPlan *plan)
{
  guint row = find_row (reference, plan);
  const char *equivalence = reference_get_text (reference, row, "equivalence");
  const char *perborate = reference_get_text (reference, row, "sodium_perborate_g_per_L");
  const char *status = reference_get_text (reference, row, "status");
  gboolean is_five = strstr (equivalence, "5 launderings") != NULL;

  g_test_message ("%s", plan->code);
  assert_number (reference, row, "temperature_C", plan->wash_c);
  assert_number (reference, row, "liquor_mL", plan->liquor_ml);
  assert_number (reference, row, "time_min", plan->wash_s / 60);
  assert_number (reference, row, "steel_balls_count",
                 plan->steel_balls == BB_INTEGER_NONE ? (double) NAN : (double) plan->steel_balls);
  g_assert_cmpint (plan->launderings, ==, is_five || strstr (equivalence, "up to 5") != NULL ? 5 : 1);
  g_assert_true (g_str_has_prefix (plan->detergent, reference_get_text (reference, row, "detergent")));
  g_assert_cmpint (strstr (plan->detergent, "1 g/l sodium perborate") != NULL, ==, g_str_equal (perborate, "1"));

  /* What nobody has read is not said to have been, and what was read in part is not said to be checked. */
  g_assert_cmpint (plan->origin, !=, BB_PLAN_ORIGIN_STANDARD);
  g_assert_cmpint (plan->origin, !=, BB_PLAN_ORIGIN_SHOP);
  if (g_str_has_prefix (status, "from memory"))
    g_assert_cmpint (plan->origin, ==, BB_PLAN_ORIGIN_MEMORY);
  g_assert_nonnull (plan->publication);
}

static void
test_published_parameters (Fixture       *self,
                           gconstpointer  data)
{
  g_autoptr (Reference) reference = reference_load ("wash-methods");
  g_autoptr (GPtrArray) plans = NULL;
  g_autoptr (GError) error = NULL;
  BbImported imported = { 0, 0 };
  guint n_published = 0;

  (void) data;
  g_assert_true (bb_exchange_add_plans (self->book, &imported, &error));
  g_assert_no_error (error);
  plans = bb_book_load_all (self->book, &bb_wash_plan_table, TRUE, NULL);
  g_assert_cmpuint (plans->len, ==, imported.n_added);
  for (guint i = 0; i < plans->len; i++)
    if (((const BbWashPlan *) plans->pdata[i])->standard != BB_WASH_SHOP)
      {
        check_plan (reference, plans->pdata[i]);
        n_published++;
      }
  g_assert_cmpuint (n_published, >=, 16);
  g_assert_cmpuint (n_published, <, plans->len);
}

static void
test_what_the_shop_has_stays (Fixture       *self,
                              gconstpointer  data)
{
  g_autoptr (BbWashPlan) plan = NULL;
  g_autoptr (BbWashPlan) after = NULL;
  g_autoptr (GError) error = NULL;
  BbImported imported = { 0, 0 };

  (void) data;
  g_assert_true (bb_exchange_add_plans (self->book, NULL, &error));
  plan = bb_book_load_by_code (self->book, &bb_wash_plan_table, "6330-4N-F", &error);
  plan->cycles_per_week = 30;
  g_assert_true (bb_book_save (self->book, &bb_wash_plan_table, plan, &error));
  g_assert_true (bb_exchange_add_plans (self->book, &imported, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (imported.n_added, ==, 0);
  after = bb_book_load (self->book, &bb_wash_plan_table, plan->id, NULL);
  g_assert_cmpfloat (after->cycles_per_week, ==, 30);
}

/* The demo shop washes by plans of the same codes, so that both can come into one book. */
static void
test_demo_has_the_same_plans (Fixture       *self,
                              gconstpointer  data)
{
  g_autoptr (BbBook) second = make_book (self, "second.book");
  g_autofree char *demo = load_demo ();
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_true (bb_exchange_add_plans (second, NULL, &error));
  import (second, demo);
}

static void
test_new_book (Fixture       *self,
               gconstpointer  data)
{
  g_autofree char *path = g_build_filename (self->folder, "new.book", NULL);
  g_autoptr (BbBook) book = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_true (bb_exchange_make_book (path, &error));
  g_assert_no_error (error);
  book = bb_book_open (path, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (count (book, &bb_wash_plan_table), >, 0);
  g_assert_cmpuint (count (book, &bb_recipe_table), ==, 0);
  g_assert_false (bb_exchange_make_book (path, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_EXISTS);
}

static void
add (const char *demo)
{
  (void) demo;
  ADD ("/plans/published-parameters", test_published_parameters);
  ADD ("/plans/what-the-shop-has-stays", test_what_the_shop_has_stays);
  ADD ("/plans/demo-has-the-same-plans", test_demo_has_the_same_plans);
  ADD ("/plans/new-book", test_new_book);
}

int
main (int   argc,
      char *argv[])
{
  return run_tests (argc, argv, add);
}
