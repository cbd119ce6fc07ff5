/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "test-demo"

#include "bb-json.h"

#include <string.h>

#include "bb-canonical.h"
#include "bb-problem.h"
#include "bb-records.h"

static const char *const languages[] = { "en", "de", "es" };

static JsonNode *
load (const char *name)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", name, NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  gsize length = 0;
  JsonNode *node = NULL;

  g_file_get_contents (path, &text, &length, &error);
  g_assert_no_error (error);
  node = bb_json_parse (text, length, &error);
  g_assert_no_error (error);
  g_assert_true (JSON_NODE_HOLDS_OBJECT (node));

  return node;
}

static JsonArray *
get_records (JsonNode   *shop,
             const char *table)
{
  return json_object_get_array_member (json_node_get_object (shop), table);
}

/* Keys as a book would give them: the place of the record in its table, counted from 1. */
static gboolean
resolve (const BbField *field,
         const char    *code,
         gint64        *id,
         gpointer       data,
         GError       **error)
{
  JsonArray *records = get_records (data, field->target->name);

  for (guint i = 0; i < json_array_get_length (records); i++)
    {
      JsonObject *record = json_array_get_object_element (records, i);

      if (g_str_equal (json_object_get_string_member (record, "code"), code))
        {
          *id = i + 1;
          return TRUE;
        }
    }

  g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT, "there is no %s %s", field->target->name,
               code);
  return FALSE;
}

static gpointer
read_record (JsonNode      *shop,
             const BbTable *table,
             guint          index)
{
  const BbJsonReading reading = { .resolve = resolve, .data = shop, .exchanged = TRUE };
  JsonNode *node = json_array_get_element (get_records (shop, table->name), index);
  gpointer record = bb_record_new (table);
  g_autoptr (GError) error = NULL;

  bb_json_read_record (table, node, &reading, record, &error);
  if (error == NULL && table == &bb_revision_table)
    ((BbRevision *) record)->seal = bb_record_seal (table, record);
  if (error == NULL)
    bb_record_validate (table, record, &error);
  if (error != NULL)
    g_error ("%s[%u]: %s", table->name, index, error->message);

  return record;
}

static GPtrArray *
read_all (JsonNode      *shop,
          const BbTable *table)
{
  GPtrArray *all = g_ptr_array_new ();

  for (guint i = 0; i < json_array_get_length (get_records (shop, table->name)); i++)
    g_ptr_array_add (all, read_record (shop, table, i));

  return all;
}

static void
free_all (GPtrArray     *all,
          const BbTable *table)
{
  for (guint i = 0; i < all->len; i++)
    bb_record_free (table, all->pdata[i]);
  g_ptr_array_unref (all);
}

static void
test_records (void)
{
  static const struct { const BbTable *table; guint least; } wanted[] = {
    { &bb_person_table, 5 }, { &bb_blank_table, 14 }, { &bb_colourway_table, 44 },
    { &bb_supply_table, 8 }, { &bb_recipe_table, 16 }, { &bb_revision_table, 32 },
    { &bb_standing_table, 32 }, { &bb_wash_test_table, 64 }, { &bb_reading_table, 200 },
  };
  g_autoptr (JsonNode) shop = load ("demo-shop.json");
  const char *about = NULL;

  about = json_object_get_string_member (json_node_get_object (shop), "about");
  g_assert_nonnull (strstr (about, "invented"));
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      GPtrArray *all = read_all (shop, wanted[i].table);

      g_assert_cmpuint (all->len, >=, wanted[i].least);
      free_all (all, wanted[i].table);
    }
}

/* Whether a reading is what the revision asks for. */
static gboolean
meets (const BbReading  *reading,
       const BbRevision *revision)
{
  return bb_grade_meets ((BbGrade) reading->change, (BbGrade) revision->proof_change) &&
         bb_grade_meets ((BbGrade) reading->stain, (BbGrade) revision->proof_stain) &&
         reading->crack <= revision->proof_crack;
}

/* Counts the specimens of a revision that stood all their washes, and those that did not. */
static void
count_proof (const BbRevision *revision,
             gint64            key,
             const GPtrArray  *wash_tests,
             const GPtrArray  *readings,
             guint            *passed,
             guint            *failed)
{
  for (guint i = 0; i < wash_tests->len; i++)
    {
      const BbWashTest *specimen = wash_tests->pdata[i];
      gboolean bad = FALSE;
      gboolean ended = FALSE;

      if (specimen->revision != key || specimen->withdrawn_at != NULL)
        continue;
      for (guint j = 0; j < readings->len; j++)
        {
          const BbReading *reading = readings->pdata[j];

          if (reading->wash_test != (gint64) i + 1)
            continue;
          bad = bad || !meets (reading, revision);
          ended = ended || reading->cycles == specimen->plan_cycles;
        }
      *failed += bad ? 1 : 0;
      *passed += ended && !bad ? 1 : 0;
    }
}

static void
test_proof (void)
{
  g_autoptr (JsonNode) shop = load ("demo-shop.json");
  GPtrArray *revisions = read_all (shop, &bb_revision_table);
  GPtrArray *standings = read_all (shop, &bb_standing_table);
  GPtrArray *wash_tests = read_all (shop, &bb_wash_test_table);
  GPtrArray *readings = read_all (shop, &bb_reading_table);
  guint states[BB_STATE_WITHDRAWN + 1] = { 0 };

  g_assert_cmpuint (standings->len, ==, revisions->len);
  for (guint i = 0; i < standings->len; i++)
    {
      const BbStanding *standing = standings->pdata[i];
      guint passed = 0;
      guint failed = 0;

      states[standing->state]++;
      count_proof (revisions->pdata[standing->revision - 1], standing->revision, wash_tests,
                   readings, &passed, &failed);
      if (standing->state == BB_STATE_PROVEN)
        {
          g_assert_cmpuint (passed, >=, 3);
          g_assert_cmpuint (failed, ==, 0);
        }
      if (standing->state == BB_STATE_DRAFT)
        g_assert_cmpuint (passed + failed, ==, 0);
    }
  for (guint i = 0; i < G_N_ELEMENTS (states); i++)
    g_assert_cmpuint (states[i], >, 0);

  free_all (revisions, &bb_revision_table);
  free_all (standings, &bb_standing_table);
  free_all (wash_tests, &bb_wash_test_table);
  free_all (readings, &bb_reading_table);
}

static void
test_statements (void)
{
  g_autoptr (JsonNode) file = load ("ghs-statements.json");
  g_autoptr (JsonNode) shop = load ("demo-shop.json");
  JsonObject *root = json_node_get_object (file);
  JsonObject *statements = json_object_get_object_member (root, "statements");
  g_autoptr (GList) codes = json_object_get_members (statements);
  GPtrArray *supplies = read_all (shop, &bb_supply_table);

  for (const GList *l = codes; l != NULL; l = l->next)
    {
      JsonObject *texts = json_object_get_object_member (statements, l->data);

      g_assert_true (g_regex_match_simple ("^(EUH|H|P)[0-9]{3}(\\+P[0-9]{3})*$", l->data, 0, 0));
      g_assert_cmpuint (json_object_get_size (texts), ==, G_N_ELEMENTS (languages));
      for (guint i = 0; i < G_N_ELEMENTS (languages); i++)
        {
          const char *text = json_object_get_string_member (texts, languages[i]);

          g_assert_nonnull (text);
          g_assert_true (*text != '\0' && bb_text_is_plain (text, FALSE));
        }
    }

  for (guint i = 0; i < supplies->len; i++)
    {
      const BbSupply *supply = supplies->pdata[i];
      g_auto (GStrv) hazards = g_strsplit (supply->hazards != NULL ? supply->hazards : "", " ", -1);

      for (guint j = 0; hazards[j] != NULL; j++)
        if (!json_object_has_member (statements, hazards[j]))
          g_error ("%s: there is no statement %s", supply->code, hazards[j]);
    }
  free_all (supplies, &bb_supply_table);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/exchange/demo/records", test_records);
  g_test_add_func ("/exchange/demo/proof", test_proof);
  g_test_add_func ("/exchange/demo/statements", test_statements);

  return g_test_run ();
}
