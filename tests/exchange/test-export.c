/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop.h"

#include <sqlite3.h>
#include <string.h>

static void
test_export_comes_in_as_the_same (Fixture       *self,
                                  gconstpointer  data)
{
  g_autoptr (BbBook) second = make_book (self, "second.book");
  g_autofree char *first_text = NULL;
  g_autofree char *second_text = NULL;

  (void) data;
  first_text = export (self->book);
  import (second, first_text);
  second_text = export (second);
  g_assert_cmpstr (first_text, ==, second_text);
}

static void
test_an_emptied_default_stays_empty (Fixture       *self,
                                     gconstpointer  data)
{
  g_autoptr (BbRevision) revision = NULL;
  g_autofree char *text = NULL;

  (void) data;
  import (self->book, SHOP);
  revision = bb_book_load_by_code (self->book, &bb_revision_table, "R.1", NULL);
  g_assert_cmpint (revision->proof_stain, ==, BB_CHOICE_NONE);
  g_assert_cmpint (revision->proof_change, ==, BB_GRADE_4);
  text = export (self->book);
  g_assert_nonnull (strstr (text, "\"proof_stain\":null"));
  g_assert_null (strstr (text, "\"seal\""));
  g_assert_null (strstr (text, "\"id\""));
}

static void
test_stopped_export (Fixture       *self,
                     gconstpointer  data)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  const BbExchangeWatch watch = { .cancellable = cancellable };
  g_autoptr (GError) error = NULL;

  (void) data;
  import (self->book, SHOP);
  g_cancellable_cancel (cancellable);
  g_assert_null (bb_exchange_export (self->book, NULL, 0, &watch, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

static void
test_one_recipe_with_what_belongs_to_it (Fixture       *self,
                                         gconstpointer  data)
{
  g_autoptr (BbBook) second = make_book (self, "second.book");
  g_autoptr (BbRecipe) recipe = NULL;
  g_autoptr (BbRecipe) copy = NULL;
  g_autoptr (GPtrArray) revisions = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  recipe = bb_book_load_by_code (self->book, &bb_recipe_table, "MUD-BLACK", &error);
  g_assert_no_error (error);
  revisions = bb_book_load_referring (self->book, &bb_revision_table, &bb_recipe_table, recipe->id, NULL);
  text = bb_exchange_export (self->book, &recipe->id, 1, NULL, &error);
  g_assert_no_error (error);

  import (second, text);
  g_assert_cmpuint (count (second, &bb_recipe_table), ==, 1);
  g_assert_cmpuint (count (second, &bb_revision_table), ==, revisions->len);
  g_assert_cmpuint (count (second, &bb_standing_table), ==, revisions->len);
  g_assert_cmpuint (count (second, &bb_blank_table), <, count (self->book, &bb_blank_table));
  g_assert_cmpuint (count (second, &bb_wash_test_table), >, 0);
  g_assert_cmpuint (count (second, &bb_wash_test_table), <, count (self->book, &bb_wash_test_table));
  g_assert_cmpuint (count (second, &bb_reading_table), >, count (second, &bb_wash_test_table));
  copy = bb_book_load_by_code (second, &bb_recipe_table, "MUD-BLACK", NULL);
  g_assert_cmpstr (copy->note, ==, recipe->note);

  /* And the book it came from has all of it already. */
  g_assert_cmpuint (import (self->book, text).n_added, ==, 0);
}

static void
test_export_finds_a_changed_byte (Fixture       *self,
                                  gconstpointer  data)
{
  g_autofree char *path = g_strdup (bb_book_get_path (self->book));
  g_autoptr (GError) error = NULL;
  sqlite3 *db = NULL;

  (void) data;
  import (self->book, SHOP);
  g_assert_true (bb_book_close (self->book, NULL));
  g_clear_object (&self->book);

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (db, "DROP TRIGGER revision_update; UPDATE revision SET cure_c = 161", NULL, NULL,
                                 NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_close (db), ==, SQLITE_OK);

  self->book = bb_book_open (path, &error);
  g_assert_no_error (error);
  g_assert_null (bb_exchange_export (self->book, NULL, 0, NULL, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED);
  g_assert_nonnull (strstr (error->message, "R.1"));
}

static void
test_every_table_as_csv (Fixture       *self,
                         gconstpointer  data)
{
  g_autoptr (BbBook) second = make_book (self, "second.book");
  g_autofree char *first_text = NULL;
  g_autofree char *second_text = NULL;
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  (void) data;
  for (guint t = 0; t < n_tables; t++)
    if (bb_book_table_is_exchanged (tables[t]) && tables[t] != &bb_standing_table)
      {
        g_autoptr (GError) error = NULL;
        g_autofree char *text = bb_exchange_export_csv (self->book, tables[t], &error);
        BbImported imported = { 0, 0 };

        g_assert_no_error (error);
        bb_exchange_import_csv (second, tables[t], text, strlen (text), NULL, &imported, &error);
        g_assert_no_error (error);
        g_assert_cmpuint (imported.n_added, ==, count (self->book, tables[t]));
      }

  /* Whatever state they had, revisions alone come in as drafts, and are else the same. */
  first_text = bb_exchange_export_csv (self->book, &bb_revision_table, NULL);
  second_text = bb_exchange_export_csv (second, &bb_revision_table, NULL);
  g_assert_cmpstr (first_text, ==, second_text);
  g_assert_cmpuint (count (second, &bb_standing_table), ==, count (self->book, &bb_standing_table));
}

static void
test_csv_names_the_row (Fixture       *self,
                        gconstpointer  data)
{
  const char *text = "code,name,role\nA,Ann,lead\nB,Bo,boss\n";
  const char *short_code = "code,name,role\nA,Ann,lead\nB,,lead\n";
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_false (bb_exchange_import_csv (self->book, &bb_person_table, text, strlen (text), NULL, NULL, &error));
  g_assert_true (g_str_has_prefix (error->message, "row 3: role: \"boss\" is not one of: operator"));
  g_clear_error (&error);
  g_assert_false (bb_exchange_import_csv (self->book, &bb_person_table, short_code, strlen (short_code), NULL, NULL,
                                          &error));
  g_assert_true (g_str_has_prefix (error->message, "row 3: name: missing"));
  assert_empty (self->book);
}

static void
add (const char *demo)
{
  ADD_IN_DEMO ("/export/export-comes-in-as-the-same", test_export_comes_in_as_the_same);
  ADD ("/export/an-emptied-default-stays-empty", test_an_emptied_default_stays_empty);
  ADD ("/export/stopped-export", test_stopped_export);
  ADD_IN_DEMO ("/export/one-recipe-with-what-belongs-to-it", test_one_recipe_with_what_belongs_to_it);
  ADD ("/export/export-finds-a-changed-byte", test_export_finds_a_changed_byte);
  ADD_IN_DEMO ("/export/every-table-as-csv", test_every_table_as_csv);
  ADD ("/export/csv-names-the-row", test_csv_names_the_row);
}

int
main (int   argc,
      char *argv[])
{
  return run_tests (argc, argv, add);
}
