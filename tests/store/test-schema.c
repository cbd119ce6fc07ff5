/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "store-helpers.h"

#include <math.h>
#include <string.h>

#include "bb-canonical.h"
#include "bb-migrate.h"
#include "bb-store-error.h"
#include "bb-statements.h"

/* The tables of the database against the field tables, in both directions, and every limit through plain SQL. */

/* A second job, in a state from which every step is allowed, that nothing was run of; a second lot and run. */
static void
fill_unused (BbBook *book,
             Shop   *shop)
{
  g_autoptr (BbLot) lot = helper_make_lot ("L-2", shop->pretreat->id);
  g_autoptr (BbJob) job = helper_make_job ("2503-02", shop->customer->id);
  g_autoptr (BbJobLine) line = NULL;
  g_autoptr (BbRun) run = bb_run_new ();
  g_autoptr (GError) error = NULL;

  run->line = shop->line->id;
  g_assert_true (bb_book_start_run (book, run, &error));
  helper_save (book, &bb_lot_table, lot);
  job->state = BB_JOB_CANCELLED;
  helper_save (book, &bb_job_table, job);
  line = helper_make_line (job->id, shop->colourway->id, shop->revision->id);
  g_assert_true (bb_book_save_job_line (book, line, &error));
  g_assert_no_error (error);
}

static void
add_proof (BbBook     *book,
           const Shop *shop)
{
  g_autoptr (BbShop) rule = bb_shop_new ();
  g_autoptr (BbSignature) signature = bb_signature_new ();
  g_autoptr (BbNotice) notice = bb_notice_new ();

  rule->name = g_strdup ("Quellenhof Prints");
  helper_save (book, &bb_shop_table, rule);
  signature->revision = shop->revision->id;
  signature->signed_at = g_strdup ("2024-03-14");
  signature->person = shop->person->id;
  signature->reason = g_strdup ("Years of shirts.");
  signature->passed = 0;
  signature->failed = 0;
  signature->needed = 3;
  helper_save (book, &bb_signature_table, signature);
  notice->at = g_strdup ("2025-03-14");
  notice->news = BB_NEWS_FAILED;
  notice->revision = shop->revision->id;
  helper_save (book, &bb_notice_table, notice);
}

static sqlite3 *
open_filled (BbBook **book)
{
  g_autofree char *path = helper_new_path ();
  g_autoptr (Shop) shop = NULL;
  g_autoptr (BbRevision) unused = NULL;
  g_autoptr (BbRecipe) recipe = NULL;
  g_autoptr (GError) error = NULL;
  sqlite3 *plain = NULL;

  *book = helper_create (path);
  shop = helper_fill (*book);
  helper_fill_jobs (*book, shop);
  recipe = helper_make_recipe ("R-2", "Not yet in use", shop->blank->id);
  helper_save (*book, &bb_recipe_table, recipe);
  fill_unused (*book, shop);
  unused = helper_make_revision (recipe->id, shop->pretreat->id);
  g_assert_true (bb_book_save_revision (*book, unused, &error));
  g_assert_no_error (error);

  add_proof (*book, shop);

  plain = helper_open_plain (path);
  g_assert_cmpint (helper_run_plain (plain, "DROP TRIGGER standing_update_signed"), ==, SQLITE_OK);
  g_assert_cmpint (helper_run_plain (plain, "DROP TRIGGER picture_update"), ==, SQLITE_OK);
  /* From here every step of a state is allowed, and every fibre: only the limits refuse. */
  g_assert_cmpint (helper_run_plain (plain, "UPDATE standing SET state = 'withdrawn' WHERE id = 1"), ==, SQLITE_OK);
  g_assert_cmpint (helper_run_plain (plain, "DELETE FROM blank_composition WHERE position > 0"), ==, SQLITE_OK);
  g_assert_cmpint (helper_run_plain (plain, "PRAGMA foreign_keys = ON"), ==, SQLITE_OK);

  return plain;
}

static const char *
column_type (const BbField *field)
{
  switch ((int) field->kind)
    {
    case BB_KIND_NUMBER:
      return "REAL";
    case BB_KIND_INTEGER:
    case BB_KIND_FLAG:
    case BB_KIND_REFERENCE:
      return "INTEGER";
    default:
      return "TEXT";
    }
}

static void
check_column (sqlite3       *plain,
              const char    *table,
              const BbField *field)
{
  g_autofree char *query = g_strdup_printf ("SELECT type || CASE WHEN \"notnull\" OR pk THEN ' NOT NULL' ELSE '' END "
                                            "FROM pragma_table_info('%s') WHERE name = '%s'", table, field->name);
  g_autofree char *found = helper_query_plain (plain, query);
  gboolean is_key = g_str_equal (field->name, "id");
  g_autofree char *wanted = g_strconcat (column_type (field), field->required || is_key ? " NOT NULL" : "", NULL);

  if (g_strcmp0 (found, wanted) != 0)
    g_error ("%s.%s is “%s” in the database, the field table says “%s”", table, field->name, found, wanted);
}

static guint
check_columns (sqlite3       *plain,
               const char    *name,
               const BbTable *table)
{
  g_autofree char *strict = g_strdup_printf ("SELECT strict FROM pragma_table_list WHERE name = '%s'", name);
  guint n = 0;

  g_assert_cmpint (helper_count_plain (plain, strict), ==, 1);
  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];

      if (bb_field_is_column (field, BB_COLUMNS_ALL))
        {
          check_column (plain, name, field);
          n++;
        }
      else
        g_assert_cmpint (field->kind, ==, BB_KIND_LIST);
    }

  return n;
}

static void
check_column_count (sqlite3    *plain,
                    const char *table,
                    guint       n)
{
  g_autofree char *query = g_strdup_printf ("SELECT COUNT(*) FROM pragma_table_info('%s')", table);

  g_assert_cmpint (helper_count_plain (plain, query), ==, n);
}

static void
test_columns_are_the_fields (void)
{
  BbBook *book = NULL;
  sqlite3 *plain = open_filled (&book);
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);
  guint n_found = n_tables;

  for (guint i = 0; i < n_tables; i++)
    {
      check_column_count (plain, tables[i]->name, check_columns (plain, tables[i]->name, tables[i]));
      for (guint f = 0; f < tables[i]->n_fields; f++)
        if (tables[i]->fields[f].kind == BB_KIND_LIST)
          {
            const BbField *list = &tables[i]->fields[f];
            g_autofree char *name = g_strdup_printf ("%s_%s", tables[i]->name, list->name);

            check_column_count (plain, name, check_columns (plain, name, list->item) + 2);
            n_found++;
          }
    }

  /* Beside the records there are only half-typed forms, the search, a summary of the runs and what pictures hold. */
  g_assert_cmpint (helper_count_plain (plain, "SELECT COUNT(*) FROM sqlite_schema WHERE type = 'table' "
                                              "AND name NOT LIKE 'search%' "
                                              "AND name NOT IN ('form_draft', 'last_run', 'picture_content')"),
                   ==, n_found);
  sqlite3_close (plain);
  helper_close (book);
}

/* Which row the values are tried on: not one in use, which refuses more than limits. */
static const char *
row_of (const char *table)
{
  const char * const second[] = { "revision", "recipe", "supply", "lot", "job", "job_line", NULL };

  if (g_strv_contains (second, table))
    return "id = 2";

  return strchr (table, '_') != NULL && bb_book_find_table (table) == NULL ? "position = 0" : "id = 1";
}

/* What can't be changed, or keeps what it is a part of. A copy of it with another value is added instead. */
static gboolean
is_copied (const BbTable *table)
{
  return table == &bb_event_table || table == &bb_annotation_table || table == &bb_lot_entry_table ||
         table == &bb_run_table || table == &bb_signature_table || table == &bb_notice_table;
}

/* A part goes to the second of its wholes, where no number is taken. */
static const char *
value_of_copy (const BbField *field)
{
  if (g_str_equal (field->name, "id"))
    return "NULL";
  if (g_str_equal (field->name, "code"))
    return "'copy'";
  if (g_str_equal (field->name, "signed_at"))
    return "'2025-03-15'";

  return field->owner ? "2" : field->name;
}

static char *
make_try (const char    *table,
          const BbTable *fields,
          const BbField *field,
          const char    *literal)
{
  GString *sql = NULL;

  if (!is_copied (fields))
    return g_strdup_printf ("UPDATE %s SET %s = %s WHERE %s", table, field->name, literal, row_of (table));

  sql = g_string_new (NULL);
  g_string_append_printf (sql, "INSERT INTO %s SELECT ", table);
  for (guint i = 0; i < fields->n_fields; i++)
    {
      const BbField *column = &fields->fields[i];

      if (bb_field_is_column (column, BB_COLUMNS_ALL))
        g_string_append_printf (sql, "%s%s", i > 0 ? ", " : "",
                                column == field ? literal : value_of_copy (column));
    }
  g_string_append_printf (sql, " FROM %s WHERE id = 1", table);

  return g_string_free (sql, FALSE);
}

typedef struct {
  sqlite3 *plain;
  const char *table;
  const BbTable *fields;
  const BbField *field;
  guint n_refused;
  guint n_taken;
} Trial;

static void
expect (Trial      *trial,
        const char *literal,
        int         wanted)
{
  g_autofree char *sql = make_try (trial->table, trial->fields, trial->field, literal);
  int found = SQLITE_OK;

  g_assert_cmpint (helper_run_plain (trial->plain, "BEGIN"), ==, SQLITE_OK);
  found = helper_run_plain (trial->plain, sql);
  if (found != wanted)
    g_error ("%s: %d, expected %d (%s)", sql, found, wanted, sqlite3_errmsg (trial->plain));
  if (wanted == SQLITE_OK)
    g_assert_cmpint (sqlite3_changes (trial->plain), ==, 1);
  g_assert_cmpint (helper_run_plain (trial->plain, "ROLLBACK"), ==, SQLITE_OK);

  if (wanted == SQLITE_OK)
    trial->n_taken++;
  else
    trial->n_refused++;
}

static void
expect_number (Trial  *trial,
               double  value,
               int     wanted)
{
  g_autofree char *literal = g_strdup_printf ("%.17g", value);

  expect (trial, literal, wanted);
}

static void
try_numbers (Trial *trial)
{
  const BbLimits *limits = &trial->field->limits;
  gboolean whole = trial->field->kind == BB_KIND_INTEGER;

  expect (trial, "'some'", SQLITE_CONSTRAINT_DATATYPE);
  if (whole)
    expect (trial, "1.5", SQLITE_CONSTRAINT_DATATYPE);
  if (!limits->set)
    return;

  expect_number (trial, whole ? limits->minimum - 1 : nextafter (limits->minimum, -INFINITY), SQLITE_CONSTRAINT_CHECK);
  expect_number (trial, whole ? limits->maximum + 1 : nextafter (limits->maximum, INFINITY), SQLITE_CONSTRAINT_CHECK);
  expect_number (trial, limits->minimum, limits->open_minimum ? SQLITE_CONSTRAINT_CHECK : SQLITE_OK);
  expect_number (trial, limits->maximum, limits->open_maximum ? SQLITE_CONSTRAINT_CHECK : SQLITE_OK);
  expect_number (trial, whole ? limits->minimum + 1 : (limits->minimum + limits->maximum) / 2, SQLITE_OK);
  if (!whole)
    {
      expect (trial, "9e999", SQLITE_CONSTRAINT_CHECK);
      expect (trial, "-9e999", SQLITE_CONSTRAINT_CHECK);
    }
}

static void
expect_length (Trial *trial,
               gsize  length,
               int    wanted)
{
  g_autoptr (GString) literal = g_string_new ("'");

  for (gsize i = 0; i < length; i++)
    g_string_append (literal, "é");
  g_string_append_c (literal, '\'');
  expect (trial, literal->str, wanted);
}

static void
try_texts (Trial *trial)
{
  const BbLimits *limits = &trial->field->limits;

  expect (trial, "x'00ff'", SQLITE_CONSTRAINT_DATATYPE);
  if (!limits->set)
    return;

  if (limits->minimum >= 1)
    expect_length (trial, (gsize) limits->minimum - 1, SQLITE_CONSTRAINT_CHECK);
  expect_length (trial, (gsize) limits->minimum, SQLITE_OK);
  expect_length (trial, (gsize) limits->maximum, SQLITE_OK);
  expect_length (trial, (gsize) limits->maximum + 1, SQLITE_CONSTRAINT_CHECK);
}

static void
try_choices (Trial *trial)
{
  const BbChoices *choices = trial->field->choices;

  for (guint i = 0; i < choices->n_items; i++)
    {
      g_autofree char *literal = g_strdup_printf ("'%s'", choices->items[i].key);

      expect (trial, literal, SQLITE_OK);
    }
  expect (trial, "'none-such'", SQLITE_CONSTRAINT_CHECK);
  expect (trial, "''", SQLITE_CONSTRAINT_CHECK);
  expect (trial, "0", SQLITE_CONSTRAINT_CHECK);
}

/* Where only one kind of record may be referred to, any other is refused. */
static void
try_kinds (Trial *trial)
{
  const BbField *field = trial->field;
  const BbField *kind = NULL;
  guint n_others = 0;

  if (!field->among.set)
    return;

  kind = bb_table_find_field (field->target, "kind");
  for (guint i = 0; i < kind->choices->n_items; i++)
    {
      g_autofree char *sql = g_strdup_printf ("SELECT MIN (id) FROM %s WHERE kind = '%s'", field->target->name,
                                              kind->choices->items[i].key);
      g_autofree char *literal = helper_query_plain (trial->plain, sql);
      const gboolean is_wanted = (int) i == (int) field->among.value;

      if (literal == NULL)
        continue;
      expect (trial, literal, is_wanted ? SQLITE_OK : SQLITE_CONSTRAINT_TRIGGER);
      n_others += is_wanted ? 0 : 1;
    }
  g_assert_cmpuint (n_others, >, 0);
}

static void
try_field (Trial *trial)
{
  const BbField *field = trial->field;

  expect (trial, "NULL", field->required ? SQLITE_CONSTRAINT_NOTNULL : SQLITE_OK);

  switch ((int) field->kind)
    {
    case BB_KIND_NUMBER:
    case BB_KIND_INTEGER:
      try_numbers (trial);
      break;
    case BB_KIND_TEXT:
      try_texts (trial);
      break;
    case BB_KIND_CHOICE:
      try_choices (trial);
      break;
    case BB_KIND_DATE:
      expect (trial, "'yesterday'", SQLITE_CONSTRAINT_CHECK);
      expect (trial, "'2025-03-14'", SQLITE_OK);
      expect (trial, "'2025-03-14T09:26:53Z'", SQLITE_OK);
      break;
    case BB_KIND_FLAG:
      expect (trial, "0", SQLITE_OK);
      expect (trial, "1", SQLITE_OK);
      expect (trial, "2", SQLITE_CONSTRAINT_CHECK);
      expect (trial, "-1", SQLITE_CONSTRAINT_CHECK);
      break;
    case BB_KIND_REFERENCE:
      try_kinds (trial);
      expect (trial, "'one'", SQLITE_CONSTRAINT_DATATYPE);
      /* What a standing is of is a rule of its own, which is held against in another test. */
      if (trial->fields != &bb_standing_table || field->target != &bb_revision_table)
        expect (trial, "9999", SQLITE_CONSTRAINT_FOREIGNKEY);
      break;
    default:
      g_assert_not_reached ();
    }
}

static void
try_table (Trial *trial)
{
  for (guint i = 0; i < trial->fields->n_fields; i++)
    {
      trial->field = &trial->fields->fields[i];
      if (bb_field_is_column (trial->field, BB_COLUMNS_ALL) && !g_str_equal (trial->field->name, "id"))
        try_field (trial);
    }
}

static void
test_every_limit_is_a_rule_of_the_database (void)
{
  BbBook *book = NULL;
  sqlite3 *plain = open_filled (&book);
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);
  Trial trial = { .plain = plain };

  for (guint i = 0; i < n_tables; i++)
    {
      trial.table = tables[i]->name;
      trial.fields = tables[i];
      try_table (&trial);
    }
  for (guint i = 0; i < n_tables; i++)
    for (guint f = 0; f < tables[i]->n_fields; f++)
      if (tables[i]->fields[f].kind == BB_KIND_LIST)
        {
          g_autofree char *name = g_strdup_printf ("%s_%s", tables[i]->name, tables[i]->fields[f].name);

          trial.table = name;
          trial.fields = tables[i]->fields[f].item;
          try_table (&trial);
        }
  g_test_message ("%u values refused, %u taken", trial.n_refused, trial.n_taken);
  g_assert_cmpuint (trial.n_refused, >, 600);
  g_assert_cmpuint (trial.n_taken, >, 400);

  sqlite3_close (plain);
  helper_close (book);
}

static void
test_migrations_are_whole (void)
{
  g_autofree char *folder = g_test_build_filename (G_TEST_DIST, "..", "data", "migrations", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name = NULL;
  guint n_files = 0;

  g_assert_cmpuint (bb_migrations_get_first (), ==, 1);
  g_assert_cmpuint (bb_migrations_get_count (), ==, bb_migrations_get_latest () - bb_migrations_get_first () + 1);
  for (guint i = bb_migrations_get_first (); i <= bb_migrations_get_latest (); i++)
    {
      g_autofree char *script = bb_migrations_dup_script (i);

      g_assert_nonnull (script);
    }
  g_assert_null (bb_migrations_dup_script (bb_migrations_get_latest () + 1));

  /* Each file is embedded. */
  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    n_files += g_str_has_suffix (name, ".sql") ? 1 : 0;
  g_assert_cmpuint (n_files, ==, bb_migrations_get_count ());
}

/* What the triggers say is translated, so each has to be known, word for word. */
static void
test_every_rule_is_known (void)
{
  guint n = 0;

  for (guint i = bb_migrations_get_first (); i <= bb_migrations_get_latest (); i++)
    {
      g_autofree char *script = bb_migrations_dup_script (i);
      g_auto (GStrv) parts = g_strsplit (script, "RAISE (ABORT, '", -1);

      for (guint p = 1; parts[p] != NULL; p++)
        {
          char *end = strchr (parts[p], '\'');

          g_assert_nonnull (end);
          *end = '\0';
          if (bb_store_error_find_rule (parts[p]) == 0)
            g_error ("No rule of the program says: %s", parts[p]);
          n++;
        }
    }
  g_assert_cmpuint (n, >=, 12);
  g_assert_cmpint (bb_store_error_find_rule ("Something else."), ==, 0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/schema/columns-are-the-fields", test_columns_are_the_fields);
  g_test_add_func ("/schema/every-limit-is-a-rule-of-the-database", test_every_limit_is_a_rule_of_the_database);
  g_test_add_func ("/schema/migrations-are-whole", test_migrations_are_whole);
  g_test_add_func ("/schema/every-rule-is-known", test_every_rule_is_known);

  return g_test_run ();
}
