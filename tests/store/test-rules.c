/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "store-helpers.h"

#include <string.h>

/* What the database refuses by itself, whoever asks: all through plain SQL, on a connection without our settings. */

typedef struct {
  BbBook *book;
  Shop *shop;
  sqlite3 *plain;
  gint64 tried;
  gint64 proven;
  gint64 unused;
} Rules;

static gint64
add_revision (Rules *rules)
{
  g_autoptr (BbRevision) revision = helper_make_revision (rules->shop->recipe->id, rules->shop->pretreat->id);
  g_autoptr (GError) error = NULL;

  revision->reason = g_strdup ("Warmer.");
  g_assert_true (bb_book_save_revision (rules->book, revision, &error));
  g_assert_no_error (error);

  return revision->id;
}

/* One revision is in use by a wash test, one by its state, one is not. */
static void
set_up (Rules         *rules,
        gconstpointer  data)
{
  g_autofree char *path = helper_new_path ();

  (void) data;
  rules->book = helper_create (path);
  rules->shop = helper_fill (rules->book);
  rules->tried = rules->shop->revision->id;
  rules->proven = add_revision (rules);
  rules->unused = add_revision (rules);
  helper_prove (rules->book, rules->proven);
  rules->plain = helper_open_plain (path);
}

static void
tear_down (Rules         *rules,
           gconstpointer  data)
{
  (void) data;
  sqlite3_close (rules->plain);
  helper_shop_free (rules->shop);
  helper_close (rules->book);
}

G_GNUC_PRINTF (3, 4) static void
expect (Rules      *rules,
        int         wanted,
        const char *format,
        ...)
{
  g_autofree char *sql = NULL;
  va_list args;
  int found = 0;

  va_start (args, format);
  sql = g_strdup_vprintf (format, args);
  va_end (args);

  found = helper_run_plain (rules->plain, sql);
  if (found != wanted)
    g_error ("%s: %d, expected %d (%s)", sql, found, wanted, sqlite3_errmsg (rules->plain));
}

static char *
dump_revision (Rules  *rules,
               gint64  id)
{
  g_autoptr (GString) sql = g_string_new ("SELECT ''");

  for (guint i = 0; i < bb_revision_table.n_fields; i++)
    g_string_append_printf (sql, " || '|' || quote (%s)", bb_revision_table.fields[i].name);
  g_string_append_printf (sql, " FROM revision WHERE id = %" G_GINT64_FORMAT, id);

  return helper_query_plain (rules->plain, sql->str);
}

static void
check_fixed (Rules  *rules,
             gint64  id)
{
  g_autofree char *before = dump_revision (rules, id);
  g_autofree char *after = NULL;

  for (guint i = 0; i < bb_revision_table.n_fields; i++)
    {
      const BbField *field = &bb_revision_table.fields[i];
      gboolean is_text = field->kind == BB_KIND_TEXT || field->kind == BB_KIND_DATE || field->kind == BB_KIND_CHOICE;

      expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE revision SET %s = %s WHERE id = %" G_GINT64_FORMAT,
              field->name, field->name, id);
      expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE OR REPLACE revision SET %s = %s WHERE id = %" G_GINT64_FORMAT,
              field->name, is_text ? "'x'" : "7", id);
    }
  g_assert_cmpstr (sqlite3_errmsg (rules->plain), ==,
                   "A revision in use cannot be changed: save the change as the next revision.");

  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "DELETE FROM revision WHERE id = %" G_GINT64_FORMAT, id);
  g_assert_cmpstr (sqlite3_errmsg (rules->plain), ==, "A revision in use cannot be deleted: withdraw it.");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "DELETE FROM revision");

  after = dump_revision (rules, id);
  g_assert_cmpstr (after, ==, before);
}

static void
test_revision_in_use_is_fixed (Rules         *rules,
                               gconstpointer  data)
{
  (void) data;
  check_fixed (rules, rules->tried);
  check_fixed (rules, rules->proven);

  /* And one that is not in use is not: the same statements, so that they are known to be able to work. */
  expect (rules, SQLITE_OK, "UPDATE revision SET cure_c = 170 WHERE id = %" G_GINT64_FORMAT, rules->unused);
  expect (rules, SQLITE_OK, "DELETE FROM standing WHERE revision = %" G_GINT64_FORMAT, rules->unused);
  expect (rules, SQLITE_OK, "DELETE FROM revision WHERE id = %" G_GINT64_FORMAT, rules->unused);
}

/* Columns of revision with one of them replaced, to write a row over another. */
static char *
columns_with (const char *name,
              const char *value)
{
  GString *sql = g_string_new (NULL);

  for (guint i = 0; i < bb_revision_table.n_fields; i++)
    {
      const char *column = bb_revision_table.fields[i].name;

      g_string_append_printf (sql, "%s%s", i > 0 ? ", " : "", g_str_equal (column, name) ? value : column);
    }

  return g_string_free (sql, FALSE);
}

/* REPLACE deletes what is in its way without asking the triggers of a deletion. */
static void
test_revision_in_use_is_not_replaced (Rules         *rules,
                                      gconstpointer  data)
{
  const gint64 in_use[] = { rules->tried, rules->proven };

  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (in_use); i++)
    {
      g_autofree char *before = dump_revision (rules, in_use[i]);
      g_autofree char *after = NULL;
      g_autofree char *same_key = columns_with ("cure_c", "171");
      g_autofree char *other_key = columns_with ("id", "777");

      expect (rules, SQLITE_CONSTRAINT_TRIGGER,
              "INSERT OR REPLACE INTO revision SELECT %s FROM revision WHERE id = %" G_GINT64_FORMAT, same_key,
              in_use[i]);
      expect (rules, SQLITE_CONSTRAINT_TRIGGER,
              "INSERT OR REPLACE INTO revision SELECT %s FROM revision WHERE id = %" G_GINT64_FORMAT, other_key,
              in_use[i]);
      expect (rules, SQLITE_CONSTRAINT_TRIGGER,
              "UPDATE OR REPLACE revision SET code = (SELECT code FROM revision WHERE id = %" G_GINT64_FORMAT
              ") WHERE id = %" G_GINT64_FORMAT, in_use[i], rules->unused);
      expect (rules, SQLITE_CONSTRAINT_TRIGGER,
              "UPDATE OR REPLACE revision SET number = (SELECT number FROM revision WHERE id = %" G_GINT64_FORMAT
              ") WHERE id = %" G_GINT64_FORMAT, in_use[i], rules->unused);
      expect (rules, SQLITE_CONSTRAINT_TRIGGER,
              "UPDATE OR REPLACE revision SET id = %" G_GINT64_FORMAT " WHERE id = %" G_GINT64_FORMAT, in_use[i],
              rules->unused);
      after = dump_revision (rules, in_use[i]);
      g_assert_cmpstr (after, ==, before);
    }

  expect (rules, SQLITE_OK, "UPDATE OR REPLACE revision SET code = 'FREE' WHERE id = %" G_GINT64_FORMAT, rules->unused);
}

static void
test_steps_of_states (Rules         *rules,
                      gconstpointer  data)
{
  (void) data;
  /* That a proof has to be signed and borne out is held against elsewhere. */
  expect (rules, SQLITE_OK, "DROP TRIGGER standing_insert_signed");
  expect (rules, SQLITE_OK, "DROP TRIGGER standing_update_signed");
  for (guint from = 0; from < bb_state_choices.n_items; from++)
    for (guint to = 0; to < bb_state_choices.n_items; to++)
      {
        gboolean allowed = from == to || bb_state_may_become ((BbState) from, (BbState) to);

        expect (rules, SQLITE_OK, "BEGIN");
        /* A state is put in place as a whole book is brought in: by adding it. */
        expect (rules, SQLITE_OK, "DELETE FROM standing WHERE revision = %" G_GINT64_FORMAT, rules->unused);
        expect (rules, SQLITE_OK, "INSERT INTO standing (id, revision, state, since) VALUES (99, %" G_GINT64_FORMAT
                ", '%s', '2025-03-14')", rules->unused, bb_state_choices.items[from].key);
        expect (rules, allowed ? SQLITE_OK : SQLITE_CONSTRAINT_TRIGGER,
                "UPDATE standing SET state = '%s' WHERE id = 99", bb_state_choices.items[to].key);
        expect (rules, SQLITE_OK, "ROLLBACK");
      }
}

static void
test_standing_stays (Rules         *rules,
                     gconstpointer  data)
{
  (void) data;
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE standing SET revision = %" G_GINT64_FORMAT
          " WHERE revision = %" G_GINT64_FORMAT, rules->unused, rules->proven);
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE standing SET id = 99 WHERE revision = %" G_GINT64_FORMAT,
          rules->proven);
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "DELETE FROM standing WHERE revision = %" G_GINT64_FORMAT, rules->proven);
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "INSERT OR REPLACE INTO standing (revision, state, since) "
          "VALUES (%" G_GINT64_FORMAT ", 'draft', '2025-03-14')", rules->proven);
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "INSERT OR REPLACE INTO standing (id, revision, state, since) SELECT id, %"
          G_GINT64_FORMAT ", 'draft', since FROM standing WHERE revision = %" G_GINT64_FORMAT, rules->unused,
          rules->proven);
  expect (rules, SQLITE_CONSTRAINT_UNIQUE, "INSERT INTO standing (revision, state, since) "
          "VALUES (%" G_GINT64_FORMAT ", 'draft', '2025-03-14')", rules->unused);
}

static void
test_events_are_kept (Rules         *rules,
                      gconstpointer  data)
{
  g_autofree char *before = helper_query_plain (rules->plain, "SELECT group_concat (quote (detail)) FROM event");
  g_autofree char *after = NULL;

  (void) data;
  for (guint i = 0; i < bb_event_table.n_fields; i++)
    expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE event SET %s = %s", bb_event_table.fields[i].name,
            bb_event_table.fields[i].name);
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "DELETE FROM event");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "DELETE FROM event WHERE id = 1");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "INSERT OR REPLACE INTO event (id, at, deed, subject, subject_id) "
          "VALUES (1, '2025-03-14', 'added', 'blank', 1)");
  expect (rules, SQLITE_OK, "INSERT INTO event (at, deed, subject, subject_id) "
          "VALUES ('2025-03-14', 'added', 'blank', 1)");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "DELETE FROM event WHERE id = (SELECT MAX (id) FROM event)");

  after = helper_query_plain (rules->plain, "SELECT group_concat (quote (detail)) FROM event WHERE detail IS NOT NULL");
  g_assert_cmpstr (after, ==, before);
}

static void
test_recipe_code_in_use_is_fixed (Rules         *rules,
                                  gconstpointer  data)
{
  (void) data;
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE recipe SET code = 'OTHER'");
  expect (rules, SQLITE_OK, "UPDATE recipe SET code = code, name = 'Other'");
}

static void
test_plan_in_use_is_fixed (Rules         *rules,
                           gconstpointer  data)
{
  g_autoptr (BbWashTest) test = bb_wash_test_new ();
  g_autoptr (BbWashTest) wrong = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  test->code = g_strdup ("W-2");
  test->revision = rules->tried;
  test->plan = rules->shop->plan->id;
  test->made_at = g_strdup ("2025-03-14");
  helper_save (rules->book, &bb_wash_test_table, test);
  g_assert_cmpint (test->method, ==, BB_WASH_SHOP);
  g_assert_cmpint (test->plan_cycles, ==, 25);
  g_assert_cmpfloat (test->wash_c, ==, 40);

  wrong = bb_record_copy (&bb_wash_test_table, test);
  wrong->plan_cycles = 24;
  g_assert_false (bb_book_save (rules->book, &bb_wash_test_table, wrong, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  g_clear_error (&error);
  wrong->plan = 999;
  g_assert_false (bb_book_save (rules->book, &bb_wash_test_table, wrong, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);

  rules->shop->plan->wash_c = 60;
  g_assert_false (bb_book_save (rules->book, &bb_wash_plan_table, rules->shop->plan, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  rules->shop->plan->wash_c = 40;
  /* What changes nothing about how specimens are washed can be put right. */
  rules->shop->plan->note = g_strdup ("No softener.");
  helper_save (rules->book, &bb_wash_plan_table, rules->shop->plan);

  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE wash_plan SET standard = 'iso-6330'");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE wash_plan_grade_at SET cycles = cycles + 1");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "DELETE FROM wash_plan_grade_at");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "INSERT INTO wash_plan_grade_at (wash_plan, position, cycles) "
          "VALUES (1, 7, 90)");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "INSERT OR REPLACE INTO wash_plan SELECT * FROM wash_plan");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE wash_test SET plan_cycles = 5 WHERE plan IS NOT NULL");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "INSERT INTO wash_test (code, revision, plan, method, plan_cycles, wash_c, "
          "made_at) VALUES ('W-3', 1, 1, 'shop', 25, 60, '2025-03-14')");
  expect (rules, SQLITE_OK, "PRAGMA foreign_keys = ON");
  expect (rules, SQLITE_CONSTRAINT_FOREIGNKEY, "DELETE FROM wash_plan");
}

/* Each field that the table calls settled is one that the book does not let go of, and no other is. */
static void
expect_settled (Rules      *rules,
                BbSettled   least,
                gint64      plan)
{
  for (guint i = 0; i < bb_wash_plan_table.n_fields; i++)
    {
      const BbField *field = &bb_wash_plan_table.fields[i];
      const char *value = field->kind == BB_KIND_TEXT || field->kind == BB_KIND_DATE ? "'2025-03-14'"
                          : !field->choices                                          ? "6"
                          : field->choices == &bb_wash_method_choices                ? "'aatcc-lp1'"
                          : field->choices == &bb_drying_choices                     ? "'flat'"
                                                                                     : "'part'";

      if (field->kind == BB_KIND_LIST || g_str_equal (field->name, "id"))
        continue;
      g_test_message ("%s", field->name);
      expect (rules, SQLITE_OK, "BEGIN");
      expect (rules, field->settled >= least ? SQLITE_CONSTRAINT_TRIGGER : SQLITE_OK,
              "UPDATE wash_plan SET %s = %s WHERE id = %" G_GINT64_FORMAT, field->name, value, plan);
      expect (rules, SQLITE_OK, "ROLLBACK");
    }
}

static void
test_published_plan_is_what_is_published (Rules         *rules,
                                          gconstpointer  data)
{
  g_autoptr (BbWashPlan) plan = helper_make_wash_plan ("6330-4N-F");
  g_autoptr (GError) error = NULL;

  (void) data;
  plan->standard = BB_WASH_ISO_6330;
  plan->publication = g_strdup ("ISO 6330:2021");
  plan->procedure = g_strdup ("4N");
  plan->origin = BB_PLAN_ORIGIN_MEMORY;
  helper_save (rules->book, &bb_wash_plan_table, plan);
  expect_settled (rules, BB_SETTLED_BY_METHOD, plan->id);

  plan->wash_c = 60;
  g_assert_false (bb_book_save (rules->book, &bb_wash_plan_table, plan, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  /* Whoever has it in hand can put it right, once, and says so; the shop's habits are not in it. */
  plan->origin = BB_PLAN_ORIGIN_STANDARD;
  helper_save (rules->book, &bb_wash_plan_table, plan);
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE wash_plan SET standard = 'shop' WHERE code = '6330-4N-F'");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE wash_plan SET origin = 'shop' WHERE code = '6330-4N-F'");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "INSERT OR REPLACE INTO wash_plan SELECT * FROM wash_plan "
          "WHERE code = '6330-4N-F'");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE OR REPLACE wash_plan SET code = '6330-4N-F' "
          "WHERE standard = 'shop'");

  /* Once a specimen is washed to it, that holds for all that its result rests on. */
  expect (rules, SQLITE_OK, "INSERT INTO wash_test (code, revision, plan, method, plan_cycles, wash_c, made_at) "
          "VALUES ('W-9', %" G_GINT64_FORMAT ", %" G_GINT64_FORMAT ", 'iso-6330', 25, 60, '2025-03-14')", rules->tried,
          plan->id);
  expect_settled (rules, BB_SETTLED_BY_USE, plan->id);
  g_assert_cmpint (bb_book_count_referring (rules->book, &bb_wash_test_table, &bb_wash_plan_table, plan->id, NULL), ==,
                   1);
}

/* The program's own writes are refused in the same way, with the words translated and a code to act on. */
static void
test_program_is_refused_too (Rules         *rules,
                             gconstpointer  data)
{
  g_autoptr (GError) error = NULL;

  (void) data;
  rules->shop->revision->cure_c = 171;
  g_assert_false (bb_book_save (rules->book, &bb_revision_table, rules->shop->revision, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "next revision"));
  g_clear_error (&error);

  g_free (rules->shop->recipe->code);
  rules->shop->recipe->code = g_strdup ("OTHER");
  g_assert_false (bb_book_save (rules->book, &bb_recipe_table, rules->shop->recipe, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
}

static void
refuse_kind (Rules         *rules,
             const BbTable *table,
             gpointer       record,
             const char    *prefix)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (bb_book_save (rules->book, table, record, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_test_message ("%s", error->message);
  g_assert_true (g_str_has_prefix (error->message, prefix));
}

/* A recipe names a pretreat where it wants one, and nothing else; so does every way of writing it. */
static void
test_references_are_of_their_kind (Rules         *rules,
                                   gconstpointer  data)
{
  const Shop *shop = rules->shop;
  g_autoptr (BbSupply) ink = helper_make_supply ("INK-1", BB_SUPPLY_INK);
  g_autoptr (BbRevision) revision = bb_book_load (rules->book, &bb_revision_table, rules->unused, NULL);
  g_autoptr (BbRevision) next = helper_make_revision (shop->recipe->id, 0);
  g_autoptr (GError) error = NULL;

  (void) data;
  helper_save (rules->book, &bb_supply_table, ink);
  revision->pretreat_product = ink->id;
  refuse_kind (rules, &bb_revision_table, revision, "pretreat_product: The record is of the kind 'Ink', and has to be "
                                                    "'Pretreat'.");
  revision->pretreat_product = shop->pretreat->id;
  revision->cure_sheet = shop->pretreat->id;
  refuse_kind (rules, &bb_revision_table, revision, "cure_sheet: ");
  revision->cure_sheet = shop->sheet->id;
  helper_save (rules->book, &bb_revision_table, revision);

  next->reason = g_strdup ("Warmer.");
  next->pretreat_product = ink->id;
  g_assert_false (bb_book_save_revision (rules->book, next, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);

  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE revision SET dry_sheet = %" G_GINT64_FORMAT " WHERE id = %"
          G_GINT64_FORMAT, ink->id, rules->unused);
  expect (rules, SQLITE_OK, "UPDATE revision SET dry_sheet = NULL WHERE id = %" G_GINT64_FORMAT, rules->unused);
}

/* And what it names stays what it is. */
static void
test_kind_in_use_is_fixed (Rules         *rules,
                           gconstpointer  data)
{
  BbSupply *pretreat = rules->shop->pretreat;
  g_autoptr (GError) error = NULL;

  (void) data;
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE supply SET kind = 'ink' WHERE id = %" G_GINT64_FORMAT,
          pretreat->id);
  expect (rules, SQLITE_OK, "UPDATE supply SET kind = 'pretreat', name = 'X' WHERE id = %" G_GINT64_FORMAT,
          pretreat->id);
  expect (rules, SQLITE_OK, "UPDATE supply SET kind = 'ink' WHERE id = %" G_GINT64_FORMAT, rules->shop->sheet->id);

  pretreat->kind = BB_SUPPLY_CLEANER;
  g_assert_false (bb_book_save (rules->book, &bb_supply_table, pretreat, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "kind"));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

#define ADD(path, func) g_test_add (path, Rules, NULL, set_up, func, tear_down)
  ADD ("/rules/revision-in-use-is-fixed", test_revision_in_use_is_fixed);
  ADD ("/rules/revision-in-use-is-not-replaced", test_revision_in_use_is_not_replaced);
  ADD ("/rules/steps-of-states", test_steps_of_states);
  ADD ("/rules/standing-stays", test_standing_stays);
  ADD ("/rules/events-are-kept", test_events_are_kept);
  ADD ("/rules/recipe-code-in-use-is-fixed", test_recipe_code_in_use_is_fixed);
  ADD ("/rules/plan-in-use-is-fixed", test_plan_in_use_is_fixed);
  ADD ("/rules/published-plan-is-what-is-published", test_published_plan_is_what_is_published);
  ADD ("/rules/program-is-refused-too", test_program_is_refused_too);
  ADD ("/rules/references-are-of-their-kind", test_references_are_of_their_kind);
  ADD ("/rules/kind-in-use-is-fixed", test_kind_in_use_is_fixed);
#undef ADD

  return g_test_run ();
}
