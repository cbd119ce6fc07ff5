/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-error.h"
#include "bb-problem.h"
#include "bb-run.h"
#include "bb-recipe.h"

#include <string.h>

/* A record that has a field of every kind, so that each kind of problem can be had. */

#define ITEM_FIELDS(F, T) \
  F (T, NUMBER, share, "Share", .limits = BB_ABOVE_TO (0, 1), .required = TRUE)

BB_DECLARE_TABLE (TestItem, test_item, ITEM_FIELDS);

#define THING_FIELDS(F, T) \
  F (T, NUMBER, width_mm, "Width", .quantity = BB_QUANTITY_LENGTH, .limits = BB_BETWEEN (254, 508), \
     .required = TRUE) \
  F (T, NUMBER, inside, "Inside", .limits = BB_INSIDE (0, 1)) \
  F (T, NUMBER, free, "Free", .help = "Any") \
  F (T, NUMBER, laydown, "Laydown", .quantity = BB_QUANTITY_MASS_PER_AREA, .limits = BB_BETWEEN (230, 600)) \
  F (T, INTEGER, passes, "Passes", .limits = BB_BETWEEN (1, 20)) \
  F (T, TEXT, code, "Code", .limits = BB_BETWEEN (2, 5)) \
  F (T, TEXT, line, "Line", .help = "Any") \
  F (T, TEXT, memo, "Memo", .multiline = TRUE) \
  F (T, CHOICE, grade, "Grade", .choices = &bb_grade_choices) \
  F (T, DATE, at, "At", .help = "Any") \
  F (T, FLAG, flag, "Flag", .help = "Any") \
  F (T, REFERENCE, blank, "Blank", .target = &bb_blank_table) \
  F (T, LIST, items, "Items", .item = &test_item_table, .count = BB_BETWEEN (1, 2)) \
  F (T, NUMBERS, readings, "Readings", .limits = BB_BETWEEN (0, 1), .count = BB_BETWEEN (2, 3)) \
  F (T, TEXTS, words, "Words", .limits = BB_BETWEEN (2, 5), .count = BB_BETWEEN (1, 2)) \
  F (T, OBJECT, object, "Object", .item = &test_item_table)

BB_DECLARE_TABLE (TestThing, test_thing, THING_FIELDS);
BB_DEFINE_TABLE (TestItem, test_item, "item", "Item", ITEM_FIELDS, NULL)
BB_DEFINE_TABLE (TestThing, test_thing, "thing", "Thing", THING_FIELDS, NULL)

static const BbUnitContext us = { BB_UNITS_US, 0, NULL, NULL };

static void
assert_problem (const TestThing *thing,
                const char      *name,
                BbProblemKind    kind,
                const char      *key_text,
                const char      *text)
{
  const BbField *field = bb_table_find_field (&test_thing_table, name);
  BbProblem problem;
  g_autofree char *seen_key_text = NULL;
  g_autofree char *seen_text = NULL;

  g_assert_true (bb_field_find_problem (field, thing, &problem) == (kind != BB_PROBLEM_NONE));
  g_assert_cmpint (problem.kind, ==, kind);
  g_assert_true (problem.field == field);

  seen_key_text = bb_problem_to_key_text (&problem);
  seen_text = bb_problem_to_text (&problem, &us);
  g_assert_cmpstr (seen_key_text, ==, key_text);
  g_assert_cmpstr (seen_text, ==, text);
}

static void
assert_fine (const TestThing *thing,
             const char      *name)
{
  assert_problem (thing, name, BB_PROBLEM_NONE, "", "");
}

static void
test_missing (void)
{
  g_autoptr (TestThing) thing = test_thing_new ();

  assert_problem (thing, "width_mm", BB_PROBLEM_MISSING, "width_mm: missing, and it has no default",
                  "This has to be filled in.");
  assert_fine (thing, "inside");
  assert_fine (thing, "code");
  assert_fine (thing, "items");
  assert_fine (thing, "readings");
  assert_fine (thing, "words");
  assert_fine (thing, "object");
}

static void
test_numbers (void)
{
  g_autoptr (TestThing) thing = test_thing_new ();

  thing->width_mm = 254;
  assert_fine (thing, "width_mm");
  thing->width_mm = 508;
  assert_fine (thing, "width_mm");
  thing->width_mm = 253.5;
  assert_problem (thing, "width_mm", BB_PROBLEM_BELOW, "width_mm: 253.5 is below the minimum 254",
                  "This has to be at least 10 in.");
  thing->width_mm = 600;
  assert_problem (thing, "width_mm", BB_PROBLEM_ABOVE, "width_mm: 600 is above the maximum 508",
                  "This can be at most 20 in.");
  thing->width_mm = (double) INFINITY;
  assert_problem (thing, "width_mm", BB_PROBLEM_NOT_FINITE, "width_mm: infinity is not a finite number",
                  "This is not a number.");
  thing->free = -(double) INFINITY;
  assert_problem (thing, "free", BB_PROBLEM_NOT_FINITE, "free: -infinity is not a finite number",
                  "This is not a number.");
  thing->free = -1e300;
  assert_fine (thing, "free");
  thing->passes = 0;
  assert_problem (thing, "passes", BB_PROBLEM_BELOW, "passes: 0 is below the minimum 1",
                  "This has to be at least 1.");
  thing->passes = 21;
  assert_problem (thing, "passes", BB_PROBLEM_ABOVE, "passes: 21 is above the maximum 20",
                  "This can be at most 20.");
}

static void
test_open_limits (void)
{
  g_autoptr (TestThing) thing = test_thing_new ();

  thing->inside = 0.5;
  assert_fine (thing, "inside");
  thing->inside = -0.0;
  assert_problem (thing, "inside", BB_PROBLEM_BELOW, "inside: 0 is not allowed, it must be more than 0",
                  "This has to be more than 0.");
  thing->inside = 1;
  assert_problem (thing, "inside", BB_PROBLEM_ABOVE, "inside: 1 is not allowed, it must be less than 1",
                  "This has to be less than 1.");
}

/* A limit that has to be rounded is rounded inwards: what the message names is allowed. */
static void
test_named_limit_is_allowed (void)
{
  const BbField *field = bb_table_find_field (&test_thing_table, "laydown");
  g_autoptr (TestThing) thing = test_thing_new ();

  /* 230 g/m² is 6.7835 oz/yd², 600 g/m² is 17.6961 oz/yd². */
  thing->laydown = 1;
  assert_problem (thing, "laydown", BB_PROBLEM_BELOW, "laydown: 1 is below the minimum 230",
                  "This has to be at least 6.79 oz/yd².");
  thing->laydown = 1000;
  assert_problem (thing, "laydown", BB_PROBLEM_ABOVE, "laydown: 1000 is above the maximum 600",
                  "This can be at most 17.69 oz/yd².");

  g_assert_true (bb_quantity_parse (field->quantity, "6.79 oz/yd²", &us, &thing->laydown, NULL));
  assert_fine (thing, "laydown");
  g_assert_true (bb_quantity_parse (field->quantity, "17.69 oz/yd²", &us, &thing->laydown, NULL));
  assert_fine (thing, "laydown");
}

static void
set_text (TestThing  *thing,
          const char *name,
          const char *text)
{
  bb_field_set_text (bb_table_find_field (&test_thing_table, name), thing, text);
}

static void
test_texts (void)
{
  g_autoptr (TestThing) thing = test_thing_new ();
  g_autofree char *line = g_strnfill (201, 'a');
  g_autofree char *memo = g_strnfill (20001, 'a');

  set_text (thing, "code", "ab");
  assert_fine (thing, "code");
  /* Characters are counted, not bytes. */
  set_text (thing, "code", "ÄÖÜßé");
  assert_fine (thing, "code");
  set_text (thing, "code", "a");
  assert_problem (thing, "code", BB_PROBLEM_TOO_SHORT, "code: 1 character, the minimum is 2",
                  "This needs at least 2 characters.");
  set_text (thing, "code", "abcdef");
  assert_problem (thing, "code", BB_PROBLEM_TOO_LONG, "code: 6 characters, the maximum is 5",
                  "This can have at most 5 characters.");

  set_text (thing, "line", line);
  assert_problem (thing, "line", BB_PROBLEM_TOO_LONG, "line: 201 characters, the maximum is 200",
                  "This can have at most 200 characters.");
  set_text (thing, "line", line + 1);
  assert_fine (thing, "line");
  set_text (thing, "memo", memo);
  assert_problem (thing, "memo", BB_PROBLEM_TOO_LONG, "memo: 20001 characters, the maximum is 20000",
                  "This can have at most 20000 characters.");
  set_text (thing, "memo", "one\ntwo\tthree");
  assert_fine (thing, "memo");
}

static void
test_texts_that_mislead (void)
{
  const char * const anywhere[] = {
    "a\001b", "a\rb", "a\177b", "a\xc2\x85" "b", "\xff\xfe", "a\xc3", "\u202egnp", "a\u061cb",
    "a\u200eb", "a\u200fb", "a\u202ab", "a\u2066b", "a\u2069b", "a\u2028b", "a\u2029b",
  };
  const char * const in_a_line[] = { "a\nb", "a\tb" };
  g_autoptr (TestThing) thing = test_thing_new ();

  for (guint i = 0; i < G_N_ELEMENTS (anywhere); i++)
    {
      g_test_message ("%u", i);
      set_text (thing, "line", anywhere[i]);
      assert_problem (thing, "line", BB_PROBLEM_BAD_TEXT,
                      "line: has control characters or is not valid UTF-8",
                      "This has characters that can't be shown.");
      g_assert_false (bb_text_is_plain (anywhere[i], TRUE));
    }
  for (guint i = 0; i < G_N_ELEMENTS (in_a_line); i++)
    {
      g_assert_false (bb_text_is_plain (in_a_line[i], FALSE));
      g_assert_true (bb_text_is_plain (in_a_line[i], TRUE));
    }

  g_assert_true (bb_text_is_plain ("Zwölf T-Shirts, שלום, 日本 · ½ × 🙂", FALSE));
  g_assert_true (bb_text_is_plain ("", FALSE));
}

static void
test_dates (void)
{
  const char * const good[] = {
    "2025-03-14", "2024-02-29", "1900-01-01", "2200-12-31", "2025-03-14T00:00:00Z", "2025-03-14T23:59:59Z",
  };
  const char * const bad[] = {
    "2025-1-01", "2025-1-001", "2025-13-01", "2025-00-10", "2025-02-29", "2025-04-31", "2025-03-00",
    "1899-12-31", "2201-01-01", "20250314", "2025/03/14", "14-03-2025", " 2025-3-14", "+2025-03-1", "2025-03-14 ",
    "2025-03-14T",
    "2025-03-14T25:00:00Z", "2025-03-14T24:00:00Z", "2025-03-14T23:60:00Z", "2025-03-14T23:59:60Z",
    "2025-03-14T23:59:59", "2025-03-14T23:59:59z", "2025-03-14 23:59:59Z", "2025-03-14t23:59:59Z",
    "2025-03-14T235959.0Z", "2025-03-14T23:59:9 Z", "2025-03-14T+1:00:00Z", "2025-03-14T23-59-59Z",
    "2025-03-14T23:59:59Z ", "2025-03-14T23:59+01", "２０２５-03-14", "0000-00-00", "today",
  };
  g_autoptr (TestThing) thing = test_thing_new ();

  for (guint i = 0; i < G_N_ELEMENTS (good); i++)
    {
      set_text (thing, "at", good[i]);
      assert_fine (thing, "at");
    }
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_test_message ("%s", bad[i]);
      set_text (thing, "at", bad[i]);
      assert_problem (thing, "at", BB_PROBLEM_BAD_DATE,
                      "at: is not a date YYYY-MM-DD or YYYY-MM-DDThh:mm:ssZ",
                      "This is not a date. Write it as year-month-day, like 2025-03-14.");
    }
}

static void
test_choices_and_flags (void)
{
  g_autoptr (TestThing) thing = test_thing_new ();

  thing->grade = BB_GRADE_1;
  assert_fine (thing, "grade");
  thing->grade = BB_GRADE_1 + 1;
  assert_problem (thing, "grade", BB_PROBLEM_BAD_CHOICE, "grade: is not one of the choices",
                  "Choose one of the list.");
  thing->flag = 1;
  assert_fine (thing, "flag");
  thing->flag = 2;
  assert_problem (thing, "flag", BB_PROBLEM_BAD_CHOICE, "flag: is not one of the choices",
                  "Choose one of the list.");
}

static void
test_lists (void)
{
  const BbField *items = bb_table_find_field (&test_thing_table, "items");
  const BbField *readings = bb_table_find_field (&test_thing_table, "readings");
  const double numbers[] = { 0.5, 1.5, (double) NAN, 0 };
  g_autoptr (TestThing) thing = test_thing_new ();

  bb_field_ensure_array (items, thing);
  assert_problem (thing, "items", BB_PROBLEM_TOO_FEW, "items: 0 items, the minimum is 1",
                  "There have to be at least 1.");
  for (guint i = 0; i < 3; i++)
    bb_field_append_item (items, thing);
  assert_problem (thing, "items", BB_PROBLEM_TOO_MANY, "items: 3 items, the maximum is 2",
                  "There can be at most 2.");

  bb_field_ensure_array (readings, thing);
  g_array_append_vals (thing->readings, numbers, 1);
  assert_problem (thing, "readings", BB_PROBLEM_TOO_FEW, "readings: 1 item, the minimum is 2",
                  "There have to be at least 2.");
  g_array_append_vals (thing->readings, numbers + 1, 1);
  assert_problem (thing, "readings", BB_PROBLEM_ABOVE, "readings[1]: 1.5 is above the maximum 1",
                  "This can be at most 1.");
  g_array_index (thing->readings, double, 1) = numbers[2];
  assert_problem (thing, "readings", BB_PROBLEM_NOT_FINITE, "readings[1]: NaN is not a finite number",
                  "This is not a number.");
  g_array_append_vals (thing->readings, numbers, 2);
  assert_problem (thing, "readings", BB_PROBLEM_TOO_MANY, "readings: 4 items, the maximum is 3",
                  "There can be at most 3.");
}

static void
set_words (TestThing         *thing,
           const char * const words[])
{
  g_strfreev (thing->words);
  thing->words = g_strdupv ((char **) words);
}

static void
test_lists_of_texts (void)
{
  g_autoptr (TestThing) thing = test_thing_new ();

  set_words (thing, (const char * const[]) { "ab", "abcde", NULL });
  assert_fine (thing, "words");
  set_words (thing, (const char * const[]) { NULL });
  assert_problem (thing, "words", BB_PROBLEM_TOO_FEW, "words: 0 items, the minimum is 1",
                  "There have to be at least 1.");
  set_words (thing, (const char * const[]) { "ab", "ab", "ab", NULL });
  assert_problem (thing, "words", BB_PROBLEM_TOO_MANY, "words: 3 items, the maximum is 2",
                  "There can be at most 2.");
  set_words (thing, (const char * const[]) { "ab", "abcdef", NULL });
  assert_problem (thing, "words", BB_PROBLEM_TOO_LONG, "words[1]: 6 characters, the maximum is 5",
                  "This can have at most 5 characters.");
  set_words (thing, (const char * const[]) { "", NULL });
  assert_problem (thing, "words", BB_PROBLEM_TOO_SHORT, "words[0]: 0 characters, the minimum is 2",
                  "This needs at least 2 characters.");
  set_words (thing, (const char * const[]) { "a\u202eb", NULL });
  assert_problem (thing, "words", BB_PROBLEM_BAD_TEXT,
                  "words[0]: has control characters or is not valid UTF-8",
                  "This has characters that can't be shown.");
}

static void
test_nested_records_are_named_by_path (void)
{
  g_autoptr (TestThing) thing = test_thing_new ();
  g_autoptr (GError) error = NULL;
  TestItem *item = NULL;

  thing->width_mm = 300;
  item = bb_field_append_item (bb_table_find_field (&test_thing_table, "items"), thing);
  item->share = 1;
  item = bb_field_append_item (bb_table_find_field (&test_thing_table, "items"), thing);
  item->share = 2;
  g_assert_false (bb_record_validate (&test_thing_table, thing, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_assert_cmpstr (error->message, ==, "items[1].share: 2 is above the maximum 1");
  g_clear_error (&error);

  item->share = 0.5;
  thing->object = test_item_new ();
  g_assert_false (bb_record_validate (&test_thing_table, thing, &error));
  g_assert_cmpstr (error->message, ==, "object.share: missing, and it has no default");
  g_clear_error (&error);

  ((TestItem *) thing->object)->share = 0.5;
  g_assert_true (bb_record_validate (&test_thing_table, thing, &error));
  g_assert_no_error (error);
}

/* By hand: only the first character changes, and a digraph becomes its title form (Unicode 15, U+01C6 to U+01C5). */
static void
test_sentence (void)
{
  const char * const rows[][2] = {
    { "a share has no fibre.", "A share has no fibre." },
    { "A share", "A share" },
    { "élan is listed twice.", "Élan is listed twice." },
    { "ǆ", "ǅ" },
    { "12 is too much.", "12 is too much." },
    { "“x” is nothing.", "“x” is nothing." },
    { "", "" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *sentence = bb_text_to_sentence (rows[i][0]);

      g_assert_cmpstr (sentence, ==, rows[i][1]);
    }
}

/* Nobody but a programmer reads a path. */
static void
test_path_in_words (void)
{
  const char * const rows[][2] = {
    { "weighed[0].box_area_m2: missing", "Weigh-in 1, Box area: Missing" },
    { "weighed[11].wet_g: the garment can't be lighter.", "Weigh-in 12, Wet mass: The garment can't be lighter." },
    { "departures[1].setting: a revision has no such setting.",
      "Set otherwise 2, Setting: A revision has no such setting." },
    { "good: say how many.", "Good: Say how many." },
    /* What the table does not have, and what is no path, stays as it is. */
    { "weighed[0].colour: unknown", "weighed[0].colour: unknown" },
    { "weight: unknown", "weight: unknown" },
    { "weighed[: unknown", "Weigh-in 1: Unknown" },
    { "Job 12: it is done.", "Job 12: it is done." },
    { "The disk is full.", "The disk is full." },
    { ": nothing", ": nothing" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = bb_fault_to_text (&bb_run_table, rows[i][0]);

      g_assert_cmpstr (text, ==, rows[i][1]);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/problem/missing", test_missing);
  g_test_add_func ("/problem/numbers", test_numbers);
  g_test_add_func ("/problem/open-limits", test_open_limits);
  g_test_add_func ("/problem/named-limit-is-allowed", test_named_limit_is_allowed);
  g_test_add_func ("/problem/texts", test_texts);
  g_test_add_func ("/problem/texts-that-mislead", test_texts_that_mislead);
  g_test_add_func ("/problem/dates", test_dates);
  g_test_add_func ("/problem/choices-and-flags", test_choices_and_flags);
  g_test_add_func ("/problem/lists", test_lists);
  g_test_add_func ("/problem/lists-of-texts", test_lists_of_texts);
  g_test_add_func ("/problem/nested-records-are-named-by-path", test_nested_records_are_named_by_path);
  g_test_add_func ("/problem/sentence", test_sentence);
  g_test_add_func ("/problem/path-in-words", test_path_in_words);

  return g_test_run ();
}
