/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-json.h"

#include <string.h>

#include "bb-canonical.h"
#include "bb-error.h"
#include "bb-problem.h"
#include "bb-records.h"

/* A record with a field of every kind. */

#define BOLT_CHOICES(C) \
  C (BOLT_HEX, "hex", "Hexagon") \
  C (BOLT_ROUND, "round", "Round")

BB_DECLARE_CHOICES (Bolt, bolt, BOLT_CHOICES);
BB_DEFINE_CHOICES (bolt, "bolt", BOLT_CHOICES);

#define LINE_FIELDS(F, T) \
  F (T, INTEGER, count, "Count", .help = "How many.", .limits = BB_BETWEEN (1, 99), .required = TRUE) \
  F (T, NUMBER, used_g, "Used", .help = "How much.", .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBERS, x, "Setting", .help = "Where.", .limits = BB_BETWEEN (-1, 1))

BB_DECLARE_TABLE (Line, line, LINE_FIELDS);
BB_DEFINE_TABLE (Line, line, "line", "Line", LINE_FIELDS, NULL)

#define BENCH_FIELDS(F, T) \
  F (T, INTEGER, id, "Key", .help = "Its key.", .derived = TRUE, .unsealed = TRUE) \
  F (T, NUMBER, mass_g, "Mass", .help = "A number.", .limits = BB_ABOVE_TO (0, 100), .required = TRUE) \
  F (T, NUMBER, loss_g, "Loss", .help = "With a default.", .limits = BB_BETWEEN (0, 9), .fallback = BB_DEFAULT (2)) \
  F (T, NUMBER, reach_mm, "Reach", .help = "Without limits.") \
  F (T, INTEGER, passes, "Passes", .help = "A whole number.") \
  F (T, TEXT, name, "Name", .help = "A text.", .limits = BB_BETWEEN (1, 8)) \
  F (T, CHOICE, head, "Head", .help = "A choice.", .choices = &bolt_choices, .fallback = BB_DEFAULT (BOLT_ROUND)) \
  F (T, DATE, made_at, "Made", .help = "A date.") \
  F (T, FLAG, done, "Done", .help = "A flag.") \
  F (T, REFERENCE, blank, "Blank", .help = "A reference.", .target = &bb_blank_table) \
  F (T, LIST, lines, "Lines", .help = "A list.", .item = &line_table, .count = BB_BETWEEN (0, 4)) \
  F (T, NUMBERS, values, "Values", .help = "Numbers.") \
  F (T, TEXTS, words, "Words", .help = "Texts.") \
  F (T, OBJECT, best, "Best", .help = "An object.", .item = &line_table)

BB_DECLARE_TABLE (Bench, bench, BENCH_FIELDS);
BB_DEFINE_TABLE (Bench, bench, "bench", "Bench", BENCH_FIELDS, NULL)

static gboolean
resolve (const BbField *field,
         const char    *code,
         gint64        *id,
         gpointer       data,
         GError       **error)
{
  g_assert_true (field->target == &bb_blank_table);
  g_assert_cmpstr (data, ==, "data");
  if (g_str_equal (code, "TEE-1"))
    {
      *id = 17;
      return TRUE;
    }
  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "there is no blank %s", code);

  return FALSE;
}

static Bench *
read_bench (const char          *text,
            const BbJsonReading *reading,
            GError             **error)
{
  g_autoptr (JsonNode) node = bb_json_parse (text, strlen (text), error);
  g_autoptr (Bench) bench = bench_new ();

  if (node == NULL || !bb_json_read_record (&bench_table, node, reading, bench, error) ||
      !bb_record_validate (&bench_table, bench, error))
    return NULL;

  return g_steal_pointer (&bench);
}

static void
test_every_kind (void)
{
  const BbJsonReading reading = { .resolve = resolve, .data = (gpointer) "data" };
  const char *text = " { \"mass_g\": 1.5, \"passes\": 3.0, \"name\": \"a\\\"\\u00e9\\ud83d\\ude00\\/\","
                     "\"head\": \"hex\","
                     "\"made_at\": \"2025-02-28\", \"done\": false, \"blank\": \"TEE-1\", \"reach_mm\": -1e3,"
                     "\"lines\": [ {\"count\": 1, \"x\": [0.5,-1]}, {\"count\": 2, \"used_g\": null} ],"
                     "\"values\": [1,2.5,-3e-2], \"words\": [\"one\",\"two\"], \"best\": {\"count\": 9} } ";
  g_autoptr (GError) error = NULL;
  g_autoptr (Bench) bench = read_bench (text, &reading, &error);
  g_autofree char *again = NULL;

  g_assert_no_error (error);
  again = bb_record_to_json (&bench_table, bench, BB_SCOPE_ALL);
  g_assert_cmpstr (again, ==,
                   "{\"mass_g\":1.5,\"loss_g\":2,\"reach_mm\":-1000,\"passes\":3,\"name\":\"a\\\"é😀/\","
                   "\"head\":\"hex\","
                   "\"made_at\":\"2025-02-28\",\"done\":false,\"blank\":17,"
                   "\"lines\":[{\"count\":1,\"x\":[0.5,-1]},{\"count\":2}],"
                   "\"values\":[1,2.5,-0.03],\"words\":[\"one\",\"two\"],\"best\":{\"count\":9}}");
}

static void
test_defaults (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Bench) bench = read_bench ("{\"mass_g\":1,\"reach_mm\":null}", NULL, &error);

  g_assert_no_error (error);
  g_assert_cmpfloat (bench->loss_g, ==, 2);
  g_assert_cmpint (bench->head, ==, BOLT_ROUND);
  g_assert_true (isnan (bench->reach_mm));
}

static void
test_null_is_none_where_asked (void)
{
  const BbJsonReading reading = { .null_is_none = TRUE };
  g_autoptr (GError) error = NULL;
  g_autoptr (Bench) bench = read_bench ("{\"mass_g\":1,\"loss_g\":null,\"head\":null}", &reading, &error);

  g_assert_no_error (error);
  g_assert_true (isnan (bench->loss_g));
  g_assert_cmpint (bench->head, ==, BB_CHOICE_NONE);
}

static void
test_keys_of_one_book_are_not_exchanged (void)
{
  const BbJsonReading reading = { .exchanged = TRUE };
  g_autoptr (GError) error = NULL;
  g_autoptr (Bench) bench = read_bench ("{\"id\":1,\"mass_g\":1}", &reading, &error);

  g_assert_null (bench);
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_KEY);
  g_assert_true (g_str_has_prefix (error->message, "id: unknown key"));
  g_assert_null (strstr (error->message, " id,"));
}

/* Each text is refused, and the message is as given, from its start. */
static const struct {
  const char *text;
  const char *message;
} refused_values[] = {
  { "{\"mass_g\":0}", "mass_g: 0 is not allowed, it must be more than 0" },
  { "{\"mass_g\":100.5}", "mass_g: 100.5 is above the maximum 100" },
  { "{\"mass_g\":\"1\"}", "mass_g: \"1\" is not a number" },
  { "{\"mass_g\":true}", "mass_g: true is not a number" },
  { "{\"mass_g\":[1]}", "mass_g: a list is not a number" },
  { "{\"mass_g\":{}}", "mass_g: an object is not a number" },
  { "{\"mass_g\":null}", "mass_g: null is not allowed, the key is required" },
  { "{}", "mass_g: missing" },
  { "{\"mass_g\":1,\"loss_g\":null}", "loss_g: null is not allowed, leave the key out" },
  { "{\"mass_g\":1,\"passes\":2.5}", "passes: 2.5 is not a whole number" },
  { "{\"mass_g\":1,\"passes\":1e300}", "passes: 1e+300 is not a whole number between" },
  { "{\"mass_g\":1,\"passes\":9223372036854775808}", "passes: 9.223372036854776e+18 is not a whole number" },
  { "{\"mass_g\":1,\"passes\":\"2\"}", "passes: \"2\" is not a whole number" },
  { "{\"mass_g\":1,\"name\":7}", "name: 7 is not a text" },
  { "{\"mass_g\":1,\"name\":\"123456789\"}", "name: 9 characters, the maximum is 8" },
  { "{\"mass_g\":1,\"name\":\"a\\u0000b\"}", "name: a text with a zero character is not allowed" },
  { "{\"mass_g\":1,\"name\":\"a\\u202eb\"}", "name: has control characters" },
  { "{\"mass_g\":1,\"name\":\"a\\nb\"}", "name: has control characters" },
  { "{\"mass_g\":1,\"head\":\"square\"}", "head: \"square\" is not one of: hex, round" },
  { "{\"mass_g\":1,\"head\":1}", "head: 1 is not one of: hex, round" },
  { "{\"mass_g\":1,\"made_at\":\"2025-02-29\"}", "made_at: is not a date" },
  { "{\"mass_g\":1,\"made_at\":20250228}", "made_at: 20250228 is not a date" },
  { "{\"mass_g\":1,\"done\":1}", "done: 1 is not true or false" },
  { "{\"mass_g\":1,\"blank\":17}", "blank: 17 is not the code of a record" },
  { "{\"mass_g\":1,\"blank\":\"TEE-1\"}", "blank: \"TEE-1\" is not the code of a record" },
  { "{\"mass_g\":1,\"lines\":{}}", "lines: an object is not a list" },
  { "{\"mass_g\":1,\"lines\":[{\"count\":1},3]}", "lines[1]: 3 is not an object" },
  { "{\"mass_g\":1,\"lines\":[{\"count\":1},{\"count\":1.5}]}", "lines[1].count: 1.5 is not a whole number" },
  { "{\"mass_g\":1,\"lines\":[{\"count\":1},{\"count\":100}]}", "lines[1].count: 100 is above the maximum 99" },
  { "{\"mass_g\":1,\"lines\":[{\"count\":1,\"x\":[0,null]}]}", "lines[0].x[1]: null is not a number" },
  { "{\"mass_g\":1,\"lines\":[{\"count\":1,\"x\":[0,2]}]}", "lines[0].x[1]: 2 is above the maximum 1" },
  { "{\"mass_g\":1,\"lines\":[{},{},{},{},{}]}", "lines: 5 items, the maximum is 4" },
  { "{\"mass_g\":1,\"lines\":[{\"count\":1,\"cuont\":1}]}",
    "lines[0].cuont: unknown key, it is none of: count, used_g, x" },
  { "{\"mass_g\":1,\"values\":[1,\"2\"]}", "values[1]: \"2\" is not a number" },
  { "{\"mass_g\":1,\"words\":[\"a\",2]}", "words[1]: 2 is not a text" },
  { "{\"mass_g\":1,\"words\":[\"a\\u2066\"]}", "words[0]: \"a\\u2066\" is not a text" },
  { "{\"mass_g\":1,\"best\":[]}", "best: a list is not an object" },
  { "{\"mass_g\":1,\"best\":{\"count\":\"a:b\"}}", "best.count: \"a:b\" is not a whole number" },
  { "{\"mass_g\":1,\"best\":{}}", "best.count: missing" },
  { "{\"mass_g\":NaN}", "mass_g: NaN is not a finite number" },
  { "{\"mass_g\":nan}", "mass_g: nan is not a finite number" },
  { "{\"mass_g\":Infinity}", "mass_g: Infinity is not a finite number" },
  { "{\"mass_g\":-Infinity}", "mass_g: -Infinity is not a finite number" },
  { "{\"mass_g\":1e999}", "mass_g: 1e999 is not a finite number, the largest is" },
  { "{\"mass_g\":1,\"lines\":[{},{\"x\":[1,-1e400]}]}", "lines[1].x[1]: -1e400 is not a finite number" },
  { "{\"mass_g\":1,\"loss_g\":1,\"mass_g\":1}", "mass_g: the key is given twice" },
  { "{\"mass_g\":1,\"m\\u0061ss_g\":1}", "mass_g: the key is given twice" },
  { "{\"mass_g\":1,\"lines\":[{\"count\":1,\"count\":1}]}", "lines[0].count: the key is given twice" },
  { "{\"mass_g\":1,\"\":1}", "\"\": unknown key" },
  { "{\"mass_g\":1,\"a\\nb\":1}", "a\\u000ab: unknown key" },
  { "[]", "input: a list is not an object" },
  { "null", "input: null is not an object" },
  { "NaN", "input: NaN is not a finite number" },
};

static void
test_refused_values (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (refused_values); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (Bench) bench = read_bench (refused_values[i].text, NULL, &error);

      g_assert_null (bench);
      g_assert_nonnull (error);
      g_test_message ("%s: %s", refused_values[i].text, error->message);
      g_assert_true (error->domain == BB_MODEL_ERROR);
      g_assert_true (g_str_has_prefix (error->message, refused_values[i].message));
      g_assert_null (strchr (error->message, '\n'));
    }
}

/* None of these is JSON, though many a reader takes them. */
static const char * const no_json[] = {
  "", " ", "{", "}", "{]", "[}", "{\"a\"}", "{\"a\":}", "{\"a\":1,}", "[1,]", "[,1]", "{,}", "{\"a\" 1}", "{a:1}",
  "{'a':1}", "{\"a\":'b'}", "{\"a\":01}", "{\"a\":+1}", "{\"a\":.5}", "{\"a\":1.}", "{\"a\":1e}", "{\"a\":1e+}",
  "{\"a\":0x10}", "{\"a\":-}", "{\"a\":TRUE}", "{\"a\":tru}", "{\"a\":undefined}", "{\"a\":1}{\"b\":2}", "{\"a\":1} x",
  "// comment\n{}", "{} /* comment */", "var a = {}", "{\"a\":\"\\x41\"}", "{\"a\":\"\\u12\"}", "{\"a\":\"\\ud800\"}",
  "{\"a\":\"\\udc00\"}", "{\"a\":\"\\ud800\\u0041\"}", "{\"a\":\"tab\there\"}", "{\"a\":\"line\nhere\"}",
  "{\"a\":\"open",
  "{\"a\":\"\\", "{\"a\":\"\xff\"}", "{\"\xc0\x80\":1}", "\xef\xbb", "{\"a\":NaN", "{\"a\":1e999,}", "{\"a\":1 2}",
  "[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[", "{\"a\":1\x0b}", "{\"a\":12.5.5}", "{\"a\":1-1}",
};

static void
test_no_json (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (no_json); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (JsonNode) node = bb_json_parse (no_json[i], strlen (no_json[i]), &error);

      g_autofree char *shown = bb_message_quote (no_json[i], -1);

      g_test_message ("%s: %s", shown, error != NULL ? error->message : "was read");
      g_assert_null (node);
      g_assert_error (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_UNREADABLE);
    }
}

static void
test_bytes_that_end_early (void)
{
  const char text[] = "{\"mass_g\":1,\"name\":\"a\",\"values\":[1.5e3,true,null]}";

  for (gsize length = 0; length < sizeof text - 1; length++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *exact = g_memdup2 (text, length);
      g_autoptr (JsonNode) node = bb_json_parse (exact != NULL ? exact : "", length, &error);

      g_assert_null (node);
      g_assert_error (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_UNREADABLE);
    }
}

static void
test_a_zero_byte_is_no_end (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = bb_json_parse ("{}\0x", 4, &error);

  g_assert_null (node);
  g_assert_error (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_UNREADABLE);
}

static void
test_place_of_a_mistake (void)
{
  const char *text = "{\n  \"a\": 1\n  \"b\": 2\n}";
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = bb_json_parse (text, strlen (text), &error);

  g_assert_null (node);
  g_assert_nonnull (strstr (error->message, "a missing comma at line 3, byte 3"));
}

static void
test_byte_order_mark (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Bench) bench = read_bench ("\xef\xbb\xbf{\"mass_g\":1}", NULL, &error);

  g_assert_no_error (error);
  g_assert_cmpfloat (bench->mass_g, ==, 1);
}

static void
test_deep_under_a_key (void)
{
  g_autoptr (GString) text = g_string_new ("{\"mass_g\":");
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = NULL;

  for (guint i = 0; i < 1000000; i++)
    g_string_append_c (text, '[');
  node = bb_json_parse (text->str, text->len, &error);
  g_assert_null (node);
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_assert_cmpstr (error->message, ==, "mass_g: nested deeper than the limit of 32 levels");
}

static void
test_many_items (void)
{
  for (guint n = 10000; n <= 10001; n++)
    {
      g_autoptr (GString) text = g_string_new ("{\"mass_g\":1,\"values\":[0");
      g_autoptr (GError) error = NULL;
      g_autoptr (Bench) bench = NULL;

      for (guint i = 1; i < n; i++)
        g_string_append_printf (text, ",%u", i);
      g_string_append (text, "]}");
      bench = read_bench (text->str, NULL, &error);
      if (n == 10000)
        {
          g_assert_no_error (error);
          g_assert_cmpuint (bench->values->len, ==, n);
          g_assert_cmpfloat (g_array_index (bench->values, double, n - 1), ==, n - 1);
        }
      else
        {
          g_assert_null (bench);
          g_assert_cmpstr (error->message, ==, "values: 10001 items, the maximum is 10000");
        }
    }
}

static void
test_numbers_are_read_to_the_last_bit (void)
{
  const char * const texts[] = {
    "0.1", "1e23", "8.41e21", "9007199254740993", "9223372036854775807", "9223372036854775808", "-9223372036854775809",
    "123456789012345678901234567890", "5e-324", "2.2250738585072011e-308", "1.7976931348623157e308", "1e-400", "-0",
    "0.30000000000000004", "179769313486231570000000000000000000000000000000000000000000000000000000000000000000000",
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *text = g_strdup_printf ("{\"mass_g\":1,\"reach_mm\":%s,\"loss_g\":3}", texts[i]);
      g_autoptr (GError) error = NULL;
      g_autoptr (Bench) bench = read_bench (text, NULL, &error);

      g_test_message ("%s", texts[i]);
      g_assert_no_error (error);
      g_assert_cmpfloat (bench->reach_mm, ==, g_ascii_strtod (texts[i], NULL));
      g_assert_cmpfloat (bench->loss_g, ==, 3);
    }
}

static void
test_size_limit (void)
{
  gsize length = BB_EXCHANGE_BYTES + 1;
  g_autofree char *text = g_malloc (length);
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = NULL;

  memset (text, ' ', length);
  node = bb_json_parse (text, length, &error);
  g_assert_null (node);
  g_assert_error (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_TOO_LARGE);
}

static void
test_references (void)
{
  const BbJsonReading reading = { .resolve = resolve, .data = (gpointer) "data" };
  g_autoptr (GError) error = NULL;
  g_autoptr (Bench) bench = read_bench ("{\"mass_g\":1,\"blank\":\"TEE-2\"}", &reading, &error);

  g_assert_null (bench);
  g_assert_cmpstr (error->message, ==, "blank: there is no blank TEE-2");
}

/* Seeded mutations of a good text: whatever comes out, nothing reads past the end and every refusal says why. */
static void
test_mutations (void)
{
  const char text[] = "{\"mass_g\":1.5,\"name\":\"a\\u00e9\",\"lines\":[{\"count\":1,\"x\":[0.5,-1]}],\"done\":true}";
  g_autoptr (GRand) random = g_rand_new_with_seed (20250314);

  for (guint round = 0; round < 20000; round++)
    {
      g_autofree char *mutant = g_memdup2 (text, sizeof text - 1);
      g_autoptr (GError) error = NULL;
      g_autoptr (JsonNode) node = NULL;

      for (int n = g_rand_int_range (random, 1, 4); n > 0; n--)
        mutant[g_rand_int_range (random, 0, sizeof text - 1)] = (char) g_rand_int_range (random, 0, 256);
      node = bb_json_parse (mutant, sizeof text - 1, &error);
      g_assert_true ((node == NULL) == (error != NULL));
      if (error != NULL)
        g_assert_true (g_utf8_validate (error->message, -1, NULL));
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/json/every-kind", test_every_kind);
  g_test_add_func ("/json/defaults", test_defaults);
  g_test_add_func ("/json/null-is-none-where-asked", test_null_is_none_where_asked);
  g_test_add_func ("/json/keys-of-one-book-are-not-exchanged", test_keys_of_one_book_are_not_exchanged);
  g_test_add_func ("/json/refused-values", test_refused_values);
  g_test_add_func ("/json/no-json", test_no_json);
  g_test_add_func ("/json/bytes-that-end-early", test_bytes_that_end_early);
  g_test_add_func ("/json/a-zero-byte-is-no-end", test_a_zero_byte_is_no_end);
  g_test_add_func ("/json/place-of-a-mistake", test_place_of_a_mistake);
  g_test_add_func ("/json/byte-order-mark", test_byte_order_mark);
  g_test_add_func ("/json/deep-under-a-key", test_deep_under_a_key);
  g_test_add_func ("/json/many-items", test_many_items);
  g_test_add_func ("/json/numbers-are-read-to-the-last-bit", test_numbers_are_read_to_the_last_bit);
  g_test_add_func ("/json/size-limit", test_size_limit);
  g_test_add_func ("/json/references", test_references);
  g_test_add_func ("/json/mutations", test_mutations);

  return g_test_run ();
}
