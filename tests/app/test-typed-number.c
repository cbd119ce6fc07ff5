/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <glib.h>
#include <locale.h>

#include "bb-recipe.h"
#include "bb-typed-number.h"
#include "bb-worksheet.h"

/* An inch is 25.4 mm, exactly: NIST Special Publication 811 (2008), appendix B. */
#define INCH_MM 25.4

static const BbUnitContext metric = { .system = BB_UNITS_METRIC };
static const BbUnitContext us = { .system = BB_UNITS_US };

static BbTypedNumber *
new_width (void)
{
  return bb_typed_number_new (bb_table_find_field (&bb_worksheet_in_table, "print_width_mm"));
}

static double
read_number (BbTypedNumber       *typed,
             const char          *text,
             const BbUnitContext *units)
{
  double number = 0.0;
  double second = 0.0;
  g_autofree char *message = NULL;

  g_assert_true (bb_typed_number_read (typed, text, units, &number, &second, &message));
  g_assert_null (message);

  return number;
}

/* Of what a record holds fewer digits are shown than there are: none of them is lost where nobody types. */
static void
test_exact (void)
{
  g_autoptr (BbTypedNumber) typed = new_width ();
  const double exact = 100.0 / 3.0;
  g_autofree char *shown = g_strdup (bb_typed_number_load (typed, exact, (double) NAN, &metric));

  const char *inches = NULL;

  g_assert_cmpfloat (read_number (typed, shown, &metric), ==, exact);
  inches = bb_typed_number_refresh (typed, shown, &us);
  g_assert_cmpstr (inches, ==, "1.31");
  g_assert_cmpfloat (read_number (typed, inches, &us), ==, exact);
}

static void
test_empty (void)
{
  g_autoptr (BbTypedNumber) typed = new_width ();

  g_assert_cmpstr (bb_typed_number_load (typed, (double) NAN, (double) NAN, &metric), ==, "");
  g_assert_true (isnan (read_number (typed, "", &metric)));
  g_assert_cmpfloat (read_number (typed, "20", &metric), ==, 20.0);
  g_assert_true (isnan (read_number (typed, "", &metric)));
}

/* What was typed without a unit keeps its value when other units are chosen. */
static void
test_other_units (void)
{
  g_autoptr (BbTypedNumber) typed = new_width ();

  bb_typed_number_load (typed, (double) NAN, (double) NAN, &us);
  g_assert_cmpfloat_with_epsilon (read_number (typed, "14", &us), 14.0 * INCH_MM, 1e-9);
  g_assert_cmpfloat_with_epsilon (read_number (typed, "14", &metric), 14.0 * INCH_MM, 1e-9);
  g_assert_cmpstr (bb_typed_number_refresh (typed, "14", &metric), ==, "355.6");
  g_assert_cmpfloat_with_epsilon (read_number (typed, "355.6", &metric), 14.0 * INCH_MM, 1e-9);
}

static void
test_not_understood (void)
{
  g_autoptr (BbTypedNumber) typed = new_width ();
  g_autofree char *message = NULL;
  double number = 0.0;
  double second = 0.0;

  bb_typed_number_load (typed, 20.0, (double) NAN, &metric);
  g_assert_false (bb_typed_number_read (typed, "wide", &metric, &number, &second, &message));
  g_assert_nonnull (message);
  g_assert_true (isnan (number) && isnan (second));
  g_assert_null (bb_typed_number_refresh (typed, "wide", &us));
}

/* What was half typed yesterday in other units. */
static void
test_resume (void)
{
  g_autoptr (BbTypedNumber) typed = new_width ();

  bb_typed_number_load (typed, 20.0, (double) NAN, &metric);
  g_assert_null (bb_typed_number_resume (typed, "30", BB_UNITS_METRIC, &metric));
  g_assert_null (bb_typed_number_resume (typed, "", BB_UNITS_US, &metric));
  g_assert_null (bb_typed_number_resume (typed, "wide", BB_UNITS_US, &metric));
  g_assert_cmpstr (bb_typed_number_resume (typed, "14", BB_UNITS_US, &metric), ==, "355.6");
}

static void
test_integer (void)
{
  g_autoptr (BbTypedNumber) typed = bb_typed_number_new (bb_table_find_field (&bb_revision_table, "proof_cycles"));
  g_autofree char *message = NULL;
  double number = 0.0;
  double second = 0.0;

  g_assert_cmpstr (bb_typed_number_load (typed, 25.0, (double) NAN, &metric), ==, "25");
  g_assert_cmpfloat (read_number (typed, "30", &metric), ==, 30.0);
  g_assert_false (bb_typed_number_read (typed, "2.5", &metric, &number, &second, &message));
  g_assert_cmpstr (message, ==, "This has to be a whole number.");
}

static void
test_parts (void)
{
  const BbField *field = bb_table_find_field (&bb_revision_table, "pretreat_parts_concentrate");
  g_autoptr (BbTypedNumber) typed = bb_typed_number_new (field);
  g_autofree char *message = NULL;
  double number = 0.0;
  double second = 0.0;

  g_assert_cmpstr (bb_typed_number_load (typed, 1.0, 3.0, &metric), ==, "1:3");
  g_assert_true (bb_typed_number_read (typed, "1 : 3", &us, &number, &second, &message));
  g_assert_cmpfloat (number, ==, 1.0);
  g_assert_cmpfloat (second, ==, 3.0);
  g_assert_cmpstr (bb_typed_number_load (typed, 1.0, (double) NAN, &metric), ==, "");
}

int
main (int   argc,
      char *argv[])
{
  setlocale (LC_ALL, "C.UTF-8");
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/typed-number/exact", test_exact);
  g_test_add_func ("/typed-number/empty", test_empty);
  g_test_add_func ("/typed-number/other-units", test_other_units);
  g_test_add_func ("/typed-number/not-understood", test_not_understood);
  g_test_add_func ("/typed-number/resume", test_resume);
  g_test_add_func ("/typed-number/integer", test_integer);
  g_test_add_func ("/typed-number/parts", test_parts);

  return g_test_run ();
}
