/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "test-vectors"

#include <math.h>
#include <string.h>

#include "bb-calculators.h"
#include "bb-canonical.h"
#include "bb-json.h"
#include "vectors.h"

/* Runs every vector of tests/vectors; README.md there tells the format and the rule of comparison. */

typedef struct {
  const BbCalculator *calculator;
  JsonObject *vector;
} Case;

static void
case_free (gpointer data)
{
  Case *self = data;

  json_object_unref (self->vector);
  g_free (self);
}

static gboolean
is_number (JsonNode *node)
{
  return JSON_NODE_HOLDS_VALUE (node) && (json_node_get_value_type (node) == G_TYPE_INT64 ||
                                          json_node_get_value_type (node) == G_TYPE_DOUBLE);
}

static void compare (const char *path,
                     JsonNode   *actual,
                     JsonNode   *expected,
                     double      tolerance);

static void
compare_numbers (const char *path,
                 double      actual,
                 double      expected,
                 double      tolerance)
{
  double allowed = tolerance * fmax (1.0, fabs (expected));

  if (tolerance > 0 ? fabs (actual - expected) <= allowed : actual == expected)
    return;
  g_test_message ("%s: is %.17g, has to be %.17g within %g", path, actual, expected, allowed);
  g_test_fail ();
}

static void
compare_lists (const char *path,
               JsonArray  *actual,
               JsonArray  *expected,
               double      tolerance)
{
  if (json_array_get_length (actual) != json_array_get_length (expected))
    {
      g_test_message ("%s: has %u items, not %u", path, json_array_get_length (actual),
                      json_array_get_length (expected));
      g_test_fail ();
      return;
    }
  for (guint i = 0; i < json_array_get_length (expected); i++)
    {
      g_autofree char *place = g_strdup_printf ("%s[%u]", path, i);

      compare (place, json_array_get_element (actual, i), json_array_get_element (expected, i), tolerance);
    }
}

static void
compare_objects (const char *path,
                 JsonObject *actual,
                 JsonObject *expected,
                 double      tolerance)
{
  g_autoptr (GList) keys = json_object_get_members (expected);

  g_assert_nonnull (keys);
  for (GList *l = keys; l != NULL; l = l->next)
    {
      g_autofree char *place = g_strdup_printf ("%s.%s", path, (const char *) l->data);

      if (json_object_has_member (actual, l->data))
        compare (place, json_object_get_member (actual, l->data), json_object_get_member (expected, l->data),
                 tolerance);
      else
        {
          g_test_message ("%s: there is no such key in the result", place);
          g_test_fail ();
        }
    }
}

static void
compare (const char *path,
         JsonNode   *actual,
         JsonNode   *expected,
         double      tolerance)
{
  if (is_number (actual) && is_number (expected))
    compare_numbers (path, json_node_get_double (actual), json_node_get_double (expected), tolerance);
  else if (JSON_NODE_HOLDS_ARRAY (actual) && JSON_NODE_HOLDS_ARRAY (expected))
    compare_lists (path, json_node_get_array (actual), json_node_get_array (expected), tolerance);
  else if (JSON_NODE_HOLDS_OBJECT (actual) && JSON_NODE_HOLDS_OBJECT (expected))
    compare_objects (path, json_node_get_object (actual), json_node_get_object (expected), tolerance);
  else if (!json_node_equal (actual, expected))
    {
      g_autofree char *is = json_to_string (actual, FALSE);
      g_autofree char *should = json_to_string (expected, FALSE);

      g_test_message ("%s: is %s, has to be %s", path, is, should);
      g_test_fail ();
    }
}

static double
tolerance_of (const Case *self,
              const char *key)
{
  JsonNode *tolerance = json_object_get_member (self->vector, "tolerance");

  if (tolerance != NULL && JSON_NODE_HOLDS_OBJECT (tolerance))
    tolerance = json_object_get_member (json_node_get_object (tolerance), key);
  if (tolerance == NULL)
    return 0;
  g_assert_true (is_number (tolerance));
  g_assert_cmpfloat (json_node_get_double (tolerance), >=, 0);

  return json_node_get_double (tolerance);
}

/* What the command line does: text in, text out. An input that JSON can't hold is given as a text. */
static JsonNode *
run_calculator (const Case *self,
                GError    **error)
{
  JsonNode *in_node = json_object_get_member (self->vector, "in");
  g_autoptr (JsonNode) parsed = NULL;
  JsonNode *result = NULL;
  gpointer in = bb_record_new (self->calculator->in);
  gpointer out = bb_record_new (self->calculator->out);

  if (JSON_NODE_HOLDS_VALUE (in_node) && json_node_get_value_type (in_node) == G_TYPE_STRING)
    parsed = bb_json_parse (json_node_get_string (in_node), strlen (json_node_get_string (in_node)), error);
  else
    parsed = json_node_ref (in_node);

  if (parsed != NULL && bb_json_read_record (self->calculator->in, parsed, NULL, in, error) &&
      bb_calculator_run (self->calculator, in, out, error))
    {
      g_autofree char *text = bb_record_to_json (self->calculator->out, out, BB_SCOPE_OUTPUT);
      g_autoptr (GError) unreadable = NULL;

      result = bb_json_parse (text, strlen (text), &unreadable);
      g_assert_no_error (unreadable);
    }
  bb_record_free (self->calculator->in, in);
  bb_record_free (self->calculator->out, out);

  return result;
}

static void
test_refusal (const Case *self)
{
  const char *key = json_object_get_string_member (self->vector, "refused");
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) result = run_calculator (self, &error);

  g_assert_null (result);
  g_assert_nonnull (error);
  g_test_message ("refused: %s", error->message);
  g_assert_true (*key != '\0');
  g_assert_nonnull (strstr (error->message, key));
  g_assert_null (strchr (error->message, '\n'));
}

static void
test_result (const Case *self)
{
  JsonObject *expected = json_object_get_object_member (self->vector, "out");
  g_autoptr (GList) keys = json_object_get_members (expected);
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) result = run_calculator (self, &error);
  JsonObject *actual = NULL;

  g_assert_no_error (error);
  g_assert_nonnull (keys);
  actual = json_node_get_object (result);
  for (GList *l = keys; l != NULL; l = l->next)
    {
      g_assert_nonnull (bb_table_find_field (self->calculator->out, l->data));
      compare (l->data, json_object_get_member (actual, l->data), json_object_get_member (expected, l->data),
               tolerance_of (self, l->data));
    }
}

static void
test_vector (gconstpointer data)
{
  const Case *self = data;

  g_test_message ("%s", json_object_get_string_member (self->vector, "why"));
  g_assert_true (*json_object_get_string_member_with_default (self->vector, "why", "") != '\0');
  g_assert_true (*json_object_get_string_member_with_default (self->vector, "source", "") != '\0');
  g_assert_true (json_object_has_member (self->vector, "in"));
  g_assert_true (json_object_has_member (self->vector, "out") != json_object_has_member (self->vector, "refused"));

  if (json_object_has_member (self->vector, "refused"))
    test_refusal (self);
  else
    test_result (self);
}

static void
test_coverage (gconstpointer data)
{
  const BbCalculator *calculator = data;
  g_autoptr (JsonNode) node = vectors_load (calculator->name);
  JsonArray *vectors = json_node_get_array (node);
  guint n_results = 0;
  guint n_refusals = 0;

  for (guint i = 0; i < json_array_get_length (vectors); i++)
    if (json_object_has_member (json_array_get_object_element (vectors, i), "refused"))
      n_refusals++;
    else
      n_results++;
  g_assert_cmpuint (n_results, >=, 1);
  g_assert_cmpuint (n_refusals, >=, 1);
}

static void
test_no_stray_file (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "vectors", NULL);
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  const char *base = NULL;

  g_assert_nonnull (dir);
  while ((base = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (base, ".json"))
      {
        g_autofree char *name = g_strndup (base, strlen (base) - strlen (".json"));

        g_test_message ("%s", base);
        g_assert_nonnull (bb_calculator_find (name));
      }
}

static void
add_vectors (const BbCalculator *calculator)
{
  g_autoptr (JsonNode) node = vectors_load (calculator->name);
  JsonArray *vectors = json_node_get_array (node);
  g_autofree char *coverage = g_strdup_printf ("/vectors/%s/coverage", calculator->name);

  g_test_add_data_func (coverage, calculator, test_coverage);
  for (guint i = 0; i < json_array_get_length (vectors); i++)
    {
      Case *self = g_new0 (Case, 1);
      g_autofree char *path = g_strdup_printf ("/vectors/%s/%u", calculator->name, i);

      self->calculator = calculator;
      self->vector = json_object_ref (json_array_get_object_element (vectors, i));
      g_test_add_data_func_full (path, self, test_vector, case_free);
    }
}

int
main (int   argc,
      char *argv[])
{
  guint n_calculators = 0;
  const BbCalculator * const *calculators = bb_calculators (&n_calculators);

  g_test_init (&argc, &argv, NULL);
  vectors_enter_folder ();

  g_test_add_func ("/vectors/no-stray-file", test_no_stray_file);
  for (guint i = 0; i < n_calculators; i++)
    add_vectors (calculators[i]);

  return g_test_run ();
}
