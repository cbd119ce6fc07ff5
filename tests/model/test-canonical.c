/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-canonical.h"
#include "bb-recipe.h"

#include <math.h>

#define ITEM_FIELDS(F, T) \
  F (T, INTEGER, id, "Key", .derived = TRUE, .unsealed = TRUE) \
  F (T, NUMBER, share, "Share", .help = "Any") \
  F (T, TEXT, word, "Word", .help = "Any")

BB_DECLARE_TABLE (TestItem, test_item, ITEM_FIELDS);

#define THING_FIELDS(F, T) \
  F (T, INTEGER, id, "Key", .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, zebra, "Zebra", .help = "Any") \
  F (T, NUMBER, apple, "Apple", .help = "Any") \
  F (T, CHOICE, grade, "Grade", .choices = &bb_grade_choices) \
  F (T, FLAG, flag, "Flag", .help = "Any") \
  F (T, DATE, at, "At", .help = "Any") \
  F (T, REFERENCE, blank, "Blank", .target = &bb_blank_table) \
  F (T, LIST, items, "Items", .item = &test_item_table) \
  F (T, NUMBERS, readings, "Readings", .help = "Any") \
  F (T, TEXTS, words, "Words", .help = "Any") \
  F (T, OBJECT, object, "Object", .item = &test_item_table)

BB_DECLARE_TABLE (TestThing, test_thing, THING_FIELDS);
BB_DEFINE_TABLE (TestItem, test_item, "item", "Item", ITEM_FIELDS, NULL)
BB_DEFINE_TABLE (TestThing, test_thing, "thing", "Thing", THING_FIELDS, NULL)

static TestThing *
make_thing (void)
{
  const double readings[] = { 0.1, -0.0, 1e21 };
  const char * const words[] = { "a", "", NULL };
  TestThing *thing = test_thing_new ();
  TestItem *item = NULL;

  thing->id = 7;
  thing->zebra = g_strdup ("z");
  thing->apple = 355.6;
  thing->grade = BB_GRADE_4_5;
  thing->flag = 0;
  thing->at = g_strdup ("2025-03-14");
  thing->blank = 3;
  item = bb_field_append_item (bb_table_find_field (&test_thing_table, "items"), thing);
  item->id = 1;
  item->share = 0.6;
  bb_field_append_item (bb_table_find_field (&test_thing_table, "items"), thing);
  bb_field_ensure_array (bb_table_find_field (&test_thing_table, "readings"), thing);
  g_array_append_vals (thing->readings, readings, G_N_ELEMENTS (readings));
  thing->words = g_strdupv ((char **) words);
  thing->object = test_item_new ();
  ((TestItem *) thing->object)->word = g_strdup ("w");

  return thing;
}

static void
assert_json (const TestThing *thing,
             BbTextScope      scope,
             const char      *expected)
{
  g_autofree char *text = bb_record_to_json (&test_thing_table, thing, scope);

  g_assert_cmpstr (text, ==, expected);
}

static void
test_scopes_and_order (void)
{
  g_autoptr (TestThing) thing = make_thing ();

  assert_json (thing, BB_SCOPE_ALL,
               "{\"id\":7,\"zebra\":\"z\",\"apple\":355.6,\"grade\":\"4-5\",\"flag\":false,"
               "\"at\":\"2025-03-14\",\"blank\":3,\"items\":[{\"id\":1,\"share\":0.6},{}],"
               "\"readings\":[0.1,0,1e+21],\"words\":[\"a\",\"\"],\"object\":{\"word\":\"w\"}}");
  assert_json (thing, BB_SCOPE_SEALED,
               "{\"zebra\":\"z\",\"apple\":355.6,\"grade\":\"4-5\",\"flag\":false,\"at\":\"2025-03-14\","
               "\"blank\":3,\"items\":[{\"share\":0.6},{}],\"readings\":[0.1,0,1e+21],"
               "\"words\":[\"a\",\"\"],\"object\":{\"word\":\"w\"}}");
  assert_json (thing, BB_SCOPE_OUTPUT,
               "{\"id\":7,\"zebra\":\"z\",\"apple\":355.6,\"grade\":\"4-5\",\"flag\":false,"
               "\"at\":\"2025-03-14\",\"blank\":3,"
               "\"items\":[{\"id\":1,\"share\":0.6,\"word\":null},"
               "{\"id\":null,\"share\":null,\"word\":null}],\"readings\":[0.1,0,1e+21],"
               "\"words\":[\"a\",\"\"],\"object\":{\"id\":null,\"share\":null,\"word\":\"w\"}}");
}

static void
test_nothing (void)
{
  g_autoptr (TestThing) thing = test_thing_new ();

  assert_json (thing, BB_SCOPE_ALL, "{}");
  assert_json (thing, BB_SCOPE_SEALED, "{}");
  assert_json (thing, BB_SCOPE_OUTPUT,
               "{\"id\":null,\"zebra\":null,\"apple\":null,\"grade\":null,\"flag\":null,\"at\":null,"
               "\"blank\":null,\"items\":[],\"readings\":[],\"words\":[],\"object\":null}");
}

/* A choice beyond its set is refused by validation; until then it has no word. */
static void
test_choice_without_a_word (void)
{
  g_autoptr (TestThing) thing = test_thing_new ();

  thing->grade = 99;
  assert_json (thing, BB_SCOPE_ALL, "{\"grade\":null}");
}

static void
test_escapes (void)
{
  const struct {
    const char *text;
    const char *json;
  } rows[] = {
    { "", "\"\"" },
    { "a\"b\\c/d", "\"a\\\"b\\\\c/d\"" },
    { "\n\t\r", "\"\\n\\t\\r\"" },
    { "\b\f\001\037\177", "\"\\u0008\\u000c\\u0001\\u001f\\u007f\"" },
    { "½ × 🙂", "\"½ × 🙂\"" },
    { "</script>", "\"</script>\"" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GString) out = g_string_new ("");

      bb_json_append_string (out, rows[i].text);
      g_assert_cmpstr (out->str, ==, rows[i].json);
    }
}

static void
test_numbers (void)
{
  const struct {
    double value;
    const char *text;
  } rows[] = {
    { 0, "0" }, { -0.0, "0" }, { 1, "1" }, { -1.5, "-1.5" }, { 0.1, "0.1" }, { 355.6, "355.6" },
    { 1e15, "1e+15" }, { 123456789012345, "123456789012345" }, { 0.30000000000000004, "0.30000000000000004" },
    { 1e-7, "1e-07" }, { 1e308, "1e+308" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = bb_number_to_text (rows[i].value);

      g_assert_cmpstr (text, ==, rows[i].text);
      g_assert_cmpfloat (g_ascii_strtod (text, NULL), ==, rows[i].value);
    }
}

static void
test_random_numbers_read_back (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20250314);

  for (guint i = 0; i < 20000; i++)
    {
      double value = ldexp (g_rand_double_range (rand, -1, 1), g_rand_int_range (rand, -1070, 1024));
      g_autofree char *text = bb_number_to_text (value);

      g_assert_cmpfloat (g_ascii_strtod (text, NULL), ==, value);
    }
}

/* Records that count as equal have one text, whatever way they came to hold nothing. */
static void
test_equal_records_have_equal_seals (void)
{
  g_autoptr (TestThing) one = test_thing_new ();
  g_autoptr (TestThing) other = test_thing_new ();
  g_autofree char *seal = NULL;
  g_autofree char *other_seal = NULL;

  one->apple = 0.0;
  other->apple = -0.0;
  other->zebra = g_strdup ("");
  bb_field_ensure_array (bb_table_find_field (&test_thing_table, "items"), other);
  bb_field_ensure_array (bb_table_find_field (&test_thing_table, "readings"), other);
  other->words = g_new0 (char *, 1);

  g_assert_true (bb_record_equal (&test_thing_table, one, other));
  seal = bb_record_seal (&test_thing_table, one);
  other_seal = bb_record_seal (&test_thing_table, other);
  g_assert_cmpstr (seal, ==, other_seal);
  /* printf '{"apple":0}' | sha256sum, GNU coreutils 9.1 */
  g_assert_cmpstr (seal, ==, "8a7f68ac7b0e453625978c719b2b260486ed92abfa697c937b8dc273cce157ce");
}

static void
test_copies_are_equal (void)
{
  g_autoptr (TestThing) thing = make_thing ();
  g_autoptr (TestThing) copy = NULL;
  g_autofree char *text = NULL;
  g_autofree char *copied_text = NULL;

  g_array_index (thing->readings, double, 0) = (double) NAN;
  copy = bb_record_copy (&test_thing_table, thing);
  g_assert_true (bb_record_equal (&test_thing_table, thing, copy));
  g_array_index (copy->readings, double, 0) = 0.1;
  g_assert_false (bb_record_equal (&test_thing_table, thing, copy));
  g_array_index (thing->readings, double, 0) = 0.1;
  g_assert_true (bb_record_equal (&test_thing_table, thing, copy));

  text = bb_record_to_json (&test_thing_table, thing, BB_SCOPE_ALL);
  copied_text = bb_record_to_json (&test_thing_table, copy, BB_SCOPE_ALL);
  g_assert_cmpstr (text, ==, copied_text);
  ((TestItem *) copy->object)->share = 1;
  g_assert_false (bb_record_equal (&test_thing_table, thing, copy));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/canonical/scopes-and-order", test_scopes_and_order);
  g_test_add_func ("/canonical/nothing", test_nothing);
  g_test_add_func ("/canonical/choice-without-a-word", test_choice_without_a_word);
  g_test_add_func ("/canonical/escapes", test_escapes);
  g_test_add_func ("/canonical/numbers", test_numbers);
  g_test_add_func ("/canonical/random-numbers-read-back", test_random_numbers_read_back);
  g_test_add_func ("/canonical/equal-records-have-equal-seals", test_equal_records_have_equal_seals);
  g_test_add_func ("/canonical/copies-are-equal", test_copies_are_equal);

  return g_test_run ();
}
