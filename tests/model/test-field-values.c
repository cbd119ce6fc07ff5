/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-grade.h"
#include "bb-problem.h"

#define THING_FIELDS(F, T) \
  F (T, NUMBER, number, "Number", .fallback = BB_DEFAULT (0.1), .limits = BB_BETWEEN (0, 1)) \
  F (T, INTEGER, integer, "Integer", .fallback = BB_DEFAULT (-3)) \
  F (T, TEXT, text, "Text", .help = "Any") \
  F (T, CHOICE, grade, "Grade", .choices = &bb_grade_choices, .fallback = BB_DEFAULT (BB_GRADE_4)) \
  F (T, FLAG, flag, "Flag", .fallback = BB_DEFAULT (1)) \
  F (T, REFERENCE, other, "Other", .help = "Any") \
  F (T, NUMBERS, readings, "Readings", .required = TRUE)

BB_DECLARE_TABLE (TestThing, test_thing, THING_FIELDS);
BB_DEFINE_TABLE (TestThing, test_thing, "thing", "Thing", THING_FIELDS, NULL)

static const BbField *
find (const char *name)
{
  return bb_table_find_field (&test_thing_table, name);
}

static void
test_defaults_and_their_end (void)
{
  g_autoptr (TestThing) thing = test_thing_new ();

  g_assert_cmpfloat (thing->number, ==, 0.1);
  g_assert_cmpint (thing->integer, ==, -3);
  g_assert_cmpint (thing->grade, ==, BB_GRADE_4);
  g_assert_cmpint (thing->flag, ==, 1);

  bb_record_clear (&test_thing_table, thing);
  for (guint i = 0; i < test_thing_table.n_fields; i++)
    g_assert_false (bb_field_is_set (&test_thing_table.fields[i], thing));
  g_assert_true (isnan (bb_field_get_number (find ("number"), thing)));
  g_assert_true (isnan (bb_field_get_number (find ("integer"), thing)));
  g_assert_true (isnan (bb_field_get_number (find ("flag"), thing)));
  g_assert_cmpint (bb_field_get_integer (find ("integer"), thing), ==, BB_INTEGER_NONE);
  g_assert_cmpint (bb_field_get_integer (find ("other"), thing), ==, 0);
  g_assert_null (bb_field_get_text (find ("text"), thing));
  g_assert_null (bb_field_get_text (find ("grade"), thing));
  g_assert_cmpint (bb_field_get_choice (find ("grade"), thing), ==, BB_CHOICE_NONE);
  g_assert_null (bb_field_get_array (find ("readings"), thing));

  bb_field_reset (find ("number"), thing);
  g_assert_cmpfloat (thing->number, ==, 0.1);
}

static void
test_what_is_set_is_got (void)
{
  g_autoptr (TestThing) thing = test_thing_new ();

  bb_field_set_number (find ("number"), thing, 0.25);
  g_assert_cmpfloat (bb_field_get_number (find ("number"), thing), ==, 0.25);
  bb_field_set_integer (find ("integer"), thing, G_MAXINT64);
  g_assert_cmpint (bb_field_get_integer (find ("integer"), thing), ==, G_MAXINT64);
  bb_field_set_integer (find ("integer"), thing, 12);
  g_assert_cmpfloat (bb_field_get_number (find ("integer"), thing), ==, 12);
  bb_field_set_integer (find ("other"), thing, 7);
  g_assert_cmpint (bb_field_get_integer (find ("other"), thing), ==, 7);
  bb_field_set_choice (find ("flag"), thing, 0);
  g_assert_cmpfloat (bb_field_get_number (find ("flag"), thing), ==, 0);

  bb_field_set_text (find ("grade"), thing, "3-4");
  g_assert_cmpint (bb_field_get_choice (find ("grade"), thing), ==, BB_GRADE_3_4);
  g_assert_cmpstr (bb_field_get_text (find ("grade"), thing), ==, "3-4");
  bb_field_set_text (find ("grade"), thing, "6");
  g_assert_cmpint (bb_field_get_choice (find ("grade"), thing), ==, BB_CHOICE_NONE);
  bb_field_set_choice (find ("grade"), thing, BB_GRADE_1);
  bb_field_set_text (find ("grade"), thing, NULL);
  g_assert_cmpint (bb_field_get_choice (find ("grade"), thing), ==, BB_CHOICE_NONE);
}

static void
test_text_may_come_from_itself (void)
{
  g_autoptr (TestThing) thing = test_thing_new ();

  bb_field_set_text (find ("text"), thing, "one two");
  bb_field_set_text (find ("text"), thing, thing->text);
  g_assert_cmpstr (thing->text, ==, "one two");
  bb_field_set_text (find ("text"), thing, thing->text + 4);
  g_assert_cmpstr (thing->text, ==, "two");
  bb_field_set_text (find ("text"), thing, NULL);
  g_assert_null (thing->text);
}

static void
test_required_list_is_missing (void)
{
  g_autoptr (TestThing) thing = test_thing_new ();
  BbProblem problem;

  g_assert_true (bb_field_find_problem (find ("readings"), thing, &problem));
  g_assert_cmpint (problem.kind, ==, BB_PROBLEM_MISSING);
  bb_field_ensure_array (find ("readings"), thing);
  g_assert_false (bb_field_find_problem (find ("readings"), thing, &problem));
}

static void
test_choices (void)
{
  g_assert_cmpint (bb_choices_find (&bb_grade_choices, "4-5"), ==, BB_GRADE_4_5);
  g_assert_cmpint (bb_choices_find (&bb_grade_choices, ""), ==, BB_CHOICE_NONE);
  g_assert_cmpint (bb_choices_find (&bb_grade_choices, NULL), ==, BB_CHOICE_NONE);
  g_assert_cmpstr (bb_choices_get_key (&bb_grade_choices, BB_GRADE_1), ==, "1");
  g_assert_null (bb_choices_get_key (&bb_grade_choices, BB_GRADE_1 + 1));
  g_assert_null (bb_choices_get_key (&bb_grade_choices, BB_CHOICE_NONE));
  g_assert_cmpstr (bb_choices_get_title (&bb_grade_choices, BB_GRADE_1_2), ==, "1-2");
  g_assert_null (bb_choices_get_title (&bb_grade_choices, BB_GRADE_1 + 1));
  g_assert_null (bb_choices_get_title (&bb_grade_choices, BB_CHOICE_NONE));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/field-values/defaults-and-their-end", test_defaults_and_their_end);
  g_test_add_func ("/field-values/what-is-set-is-got", test_what_is_set_is_got);
  g_test_add_func ("/field-values/text-may-come-from-itself", test_text_may_come_from_itself);
  g_test_add_func ("/field-values/required-list-is-missing", test_required_list_is_missing);
  g_test_add_func ("/field-values/choices", test_choices);

  return g_test_run ();
}
