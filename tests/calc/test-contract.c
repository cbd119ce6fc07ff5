/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <string.h>

#include "bb-calculators.h"
#include "bb-json.h"
#include "bb-problem.h"
#include "vectors.h"

/*
 * The contract of every calculator's input, key by key and at any depth: a key that is unknown, missing, given twice,
 * null without need or of a wrong type is refused by one line that names it, and one left out takes its default. The
 * good input that is spoiled comes from the calculator's vectors. Limits are in test-limits.c.
 */

/* In the place of a value, and taken out of the text again. */
#define MARK "\"@\""

/* Values that a key of that kind does not take. */
static const char * const * const wrong_values[] = {
  [BB_KIND_NUMBER] = (const char * const[]) { "\"12\"", "\"\"", "true", "[]", "[1]", "{}", "NaN", "Infinity",
                                              "-Infinity", "1e309", "-1e400", NULL },
  [BB_KIND_INTEGER] = (const char * const[]) { "\"12\"", "true", "[1]", "{}", "1.5", "1e-300", "9007199254740994",
                                               "NaN", "1e309", NULL },
  [BB_KIND_TEXT] = (const char * const[]) { "12", "true", "[]", "[\"a\"]", "{}", "\"\\u0000\"", NULL },
  [BB_KIND_CHOICE] = (const char * const[]) { "0", "true", "[]", "{}", "\"\"", "\"no such word\"", NULL },
  [BB_KIND_FLAG] = (const char * const[]) { "0", "1", "\"true\"", "[]", "{}", NULL },
  [BB_KIND_LIST] = (const char * const[]) { "1", "true", "\"a\"", "{}", "[1]", "[null]", "[[]]", NULL },
  [BB_KIND_NUMBERS] = (const char * const[]) { "1", "true", "\"a\"", "{}", "[\"1\"]", "[null]", "[true]", "[[1]]",
                                               "[NaN]", "[1e309]", NULL },
};

/* One object of an input: the input itself, or the first item of a list in it. */
typedef struct {
  const BbCalculator *calculator;
  const char *list; /* NULL for the input itself; a list within a list's items is a/b */
  const char *good; /* an input that is answered */
} Place;

/* The first item of a list, or of a list within its first item; NULL if there is none. */
static JsonObject *
find_item (JsonObject *object,
           const char *list)
{
  g_auto (GStrv) names = g_strsplit (list, "/", -1);

  for (guint i = 0; names[i] != NULL; i++)
    {
      JsonNode *node = json_object_get_member (object, names[i]);

      if (node == NULL || !JSON_NODE_HOLDS_ARRAY (node) || json_array_get_length (json_node_get_array (node)) == 0)
        return NULL;
      object = json_array_get_object_element (json_node_get_array (node), 0);
    }

  return object;
}

static JsonObject *
find_object (const Place *self,
             JsonNode    *root)
{
  JsonObject *object = json_node_get_object (root);

  return self->list != NULL ? find_item (object, self->list) : object;
}

/* The good input, with a text in the place of the key's value; NULL leaves the key out. */
static char *
spoil (const Place *self,
       const char  *key,
       const char  *value)
{
  g_autoptr (JsonNode) root = json_from_string (self->good, NULL);
  g_autofree char *marked = NULL;
  g_auto (GStrv) parts = NULL;

  if (value == NULL)
    json_object_remove_member (find_object (self, root), key);
  else
    json_object_set_string_member (find_object (self, root), key, "@");
  marked = json_to_string (root, FALSE);
  parts = g_strsplit (marked, MARK, -1);

  return g_strjoinv (value, parts);
}

static gboolean
take (const Place *self,
      const char  *text,
      gpointer     record,
      GError     **error)
{
  g_autoptr (JsonNode) node = bb_json_parse (text, strlen (text), error);

  return node != NULL && bb_json_read_record (self->calculator->in, node, NULL, record, error) &&
         bb_record_validate (self->calculator->in, record, error);
}

static void
assert_refused (const Place *self,
                const char  *key,
                const char  *value)
{
  g_autofree char *text = spoil (self, key, value);
  gpointer record = bb_record_new (self->calculator->in);
  g_autoptr (GError) error = NULL;

  if (take (self, text, record, &error))
    g_error ("%s takes %s", self->calculator->name, text);
  if (error->domain != BB_MODEL_ERROR || strstr (error->message, key) == NULL || strchr (error->message, '\n') != NULL)
    g_error ("%s says of %s: %s", self->calculator->name, text, error->message);
  bb_record_free (self->calculator->in, record);
}

/* Of the input itself only: an item's defaults come the same way. */
static void
assert_default (const Place   *self,
                const BbField *field)
{
  g_autofree char *text = spoil (self, field->name, NULL);
  gpointer record = bb_record_new (self->calculator->in);
  gpointer fresh = bb_record_new (self->calculator->in);
  g_autoptr (JsonNode) node = bb_json_parse (text, strlen (text), NULL);

  g_assert_true (bb_json_read_record (self->calculator->in, node, NULL, record, NULL));
  g_assert_true (bb_field_equal (field, record, fresh));
  g_assert_true (bb_field_is_set (field, record) == field->fallback.set);
  bb_record_free (self->calculator->in, record);
  bb_record_free (self->calculator->in, fresh);
}

static void
try_field (const Place   *self,
           const BbField *field)
{
  const char * const *wrong = wrong_values[field->kind];
  g_autofree char *twice = g_strdup_printf ("null,\"%s\":null", field->name);

  g_assert_nonnull (wrong);
  for (guint i = 0; wrong[i] != NULL; i++)
    assert_refused (self, field->name, wrong[i]);
  assert_refused (self, field->name, twice);
  if (field->required || field->fallback.set)
    assert_refused (self, field->name, "null");
  if (field->required && !field->fallback.set)
    assert_refused (self, field->name, NULL);
  else if (self->list == NULL)
    assert_default (self, field);
}

/* The first result among the vectors whose input has the list, or any. */
static char *
find_good (JsonArray  *vectors,
           const char *list)
{
  for (guint i = 0; i < json_array_get_length (vectors); i++)
    {
      JsonObject *vector = json_array_get_object_element (vectors, i);
      JsonObject *in = NULL;

      if (!json_object_has_member (vector, "out") ||
          !JSON_NODE_HOLDS_OBJECT (json_object_get_member (vector, "in")))
        continue;
      in = json_object_get_object_member (vector, "in");
      if (list == NULL || find_item (in, list) != NULL)
        return json_to_string (json_object_get_member (vector, "in"), FALSE);
    }
  g_error ("no vector has %s", list);
}

static void
try_table (const BbCalculator *calculator,
           JsonArray          *vectors,
           const BbTable      *table,
           const char         *list)
{
  g_autofree char *good = find_good (vectors, list);
  const Place place = { .calculator = calculator, .list = list, .good = good };

  assert_refused (&place, "surprise", "1");
  for (guint i = 0; i < table->n_fields; i++)
    {
      try_field (&place, &table->fields[i]);
      if (table->fields[i].kind == BB_KIND_LIST)
        {
          g_autofree char *inner = list != NULL ? g_strconcat (list, "/", table->fields[i].name, NULL)
                                                : g_strdup (table->fields[i].name);

          try_table (calculator, vectors, table->fields[i].item, inner);
        }
    }
}

static void
test_contract (gconstpointer data)
{
  const BbCalculator *calculator = data;
  g_autoptr (JsonNode) node = vectors_load (calculator->name);

  try_table (calculator, json_node_get_array (node), calculator->in, NULL);
}

int
main (int   argc,
      char *argv[])
{
  guint n_calculators = 0;
  const BbCalculator * const *calculators = bb_calculators (&n_calculators);

  g_test_init (&argc, &argv, NULL);
  vectors_enter_folder ();

  for (guint i = 0; i < n_calculators; i++)
    {
      g_autofree char *path = g_strdup_printf ("/contract/%s", calculators[i]->name);

      g_test_add_data_func (path, calculators[i], test_contract);
    }

  return g_test_run ();
}
