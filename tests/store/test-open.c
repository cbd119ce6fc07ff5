/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "store-helpers.h"

#include <glib/gstdio.h>
#include <string.h>

#include "bb-book-private.h"
#include "bb-clean-close.h"
#include "bb-store-error.h"

/* What opening makes of files that are no books, not ours, newer, or damaged. */

#define FLIPS 400

static void
assert_same (const char *before,
             gsize       before_length,
             const char *after,
             gsize       after_length)
{
  g_assert_cmpuint (before_length, ==, after_length);
  g_assert_true (memcmp (before, after, after_length) == 0);
}

static void
refuse (const char *path,
        int         code)
{
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  gsize before_length = 0;
  gsize after_length = 0;
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_get_contents (path, &before, &before_length, NULL));
  g_assert_null (bb_book_open (path, &error));
  g_assert_error (error, BB_STORE_ERROR, code);
  g_assert_nonnull (strstr (error->message, path));
  g_assert_null (strchr (error->message, '\n'));
  g_assert_true (g_file_get_contents (path, &after, &after_length, NULL));
  assert_same (before, before_length, after, after_length);
}

static gboolean
beside (const char *path,
        const char *ending)
{
  g_autofree char *name = g_strconcat (path, ending, NULL);

  return g_file_test (name, G_FILE_TEST_EXISTS);
}

static void
test_what_is_no_book (void)
{
  g_autofree char *path = helper_new_path ();
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *missing = g_build_filename (folder, "none.book", NULL);
  g_autoptr (GString) text = g_string_new (NULL);
  sqlite3 *plain = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_set_contents (path, "", 0, NULL));
  refuse (path, BB_STORE_ERROR_NOT_A_BOOK);
  for (guint i = 0; i < 5000; i++)
    g_string_append (text, "A list of recipes.\n");
  g_assert_true (g_file_set_contents (path, text->str, -1, NULL));
  refuse (path, BB_STORE_ERROR_NOT_A_BOOK);
  g_assert_true (g_file_set_contents (path, "x", 1, NULL));
  refuse (path, BB_STORE_ERROR_NOT_A_BOOK);
  g_assert_false (beside (path, "-wal"));

  g_unlink (path);
  plain = helper_open_plain (path);
  g_assert_cmpint (helper_run_plain (plain, "PRAGMA journal_mode = WAL; CREATE TABLE recipe (x)"), ==, SQLITE_OK);
  sqlite3_close (plain);
  refuse (path, BB_STORE_ERROR_NOT_A_BOOK);
  g_assert_false (beside (path, "-wal"));

  g_assert_null (bb_book_open (missing, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_IO);
  g_clear_error (&error);
  g_assert_null (bb_book_open (folder, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_A_BOOK);
}

static void
copy_file (const char *from,
           const char *to)
{
  g_autofree char *contents = NULL;
  gsize length = 0;

  g_assert_true (g_file_get_contents (from, &contents, &length, NULL));
  g_assert_true (g_file_set_contents (to, contents, (gssize) length, NULL));
}

static void
test_newer_book_is_left_alone (void)
{
  g_autofree char *path = helper_new_path ();
  g_autofree char *log = g_strconcat (path, "-wal", NULL);
  g_autofree char *crashed = helper_new_path ();
  g_autofree char *crashed_log = g_strconcat (crashed, "-wal", NULL);
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  gsize before_length = 0;
  gsize after_length = 0;
  sqlite3 *plain = NULL;

  helper_close (helper_create (path));
  plain = helper_open_plain (path);
  g_assert_cmpint (helper_run_plain (plain, "PRAGMA user_version = 999"), ==, SQLITE_OK);
  /* What a crash of the newer program leaves: the number is still in the log. */
  copy_file (path, crashed);
  copy_file (log, crashed_log);
  sqlite3_close (plain);

  refuse (path, BB_STORE_ERROR_NEWER);
  g_assert_false (beside (path, "-wal"));

  g_assert_true (g_file_get_contents (crashed_log, &before, &before_length, NULL));
  refuse (crashed, BB_STORE_ERROR_NEWER);
  g_assert_true (g_file_get_contents (crashed_log, &after, &after_length, NULL));
  assert_same (before, before_length, after, after_length);
}

static void
test_version_nought_is_damage (void)
{
  g_autofree char *path = helper_new_path ();
  sqlite3 *plain = NULL;

  helper_close (helper_create (path));
  plain = helper_open_plain (path);
  g_assert_cmpint (helper_run_plain (plain, "PRAGMA user_version = 0"), ==, SQLITE_OK);
  sqlite3_close (plain);
  refuse (path, BB_STORE_ERROR_DAMAGED);
}

static void
test_all_settings_hold (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = NULL;
  const struct {
    const char *sql;
    gint64 value;
  } settings[] = {
    { "PRAGMA synchronous", 2 }, { "PRAGMA foreign_keys", 1 }, { "PRAGMA trusted_schema", 0 },
    { "PRAGMA cell_size_check", 1 }, { "PRAGMA temp_store", 2 }, { "PRAGMA mmap_size", 0 },
    { "PRAGMA recursive_triggers", 1 },
    { "PRAGMA application_id", 0x426b426b }, { "SELECT journal_mode = 'wal' FROM pragma_journal_mode", 1 },
  };

  helper_close (helper_create (path));
  book = helper_open (path);
  for (guint i = 0; i < G_N_ELEMENTS (settings); i++)
    {
      gint64 value = -1;
      g_autoptr (GError) error = NULL;

      g_assert_true (bb_db_query_integer (book->db, settings[i].sql, &value, &error));
      g_assert_cmpint (value, ==, settings[i].value);
    }

  /* Defensive: the search's own tables, and the schema, can't be written by hand; "x" is no text. */
  g_assert_false (bb_db_run_script (book->db, "DELETE FROM search_recipe_data", NULL));
  g_assert_false (bb_db_run_script (book->db, "PRAGMA writable_schema = ON; DELETE FROM sqlite_schema", NULL));
  g_assert_false (bb_db_run_script (book->db, "SELECT load_extension ('x')", NULL));
  g_assert_false (bb_db_run_script (book->db, "SELECT \"no such column\"", NULL));
  helper_close (book);
}

static void
test_note_of_closing (void)
{
  g_autofree char *path = helper_new_path ();
  g_autofree char *copy = helper_new_path ();
  BbBook *book = bb_book_create (path, NULL);
  BbBook *second = NULL;

  g_assert_true (bb_clean_close_holds (path));
  g_assert_true (bb_book_keep_form (book, "x", "{\"a\":1}", NULL));
  g_assert_false (bb_clean_close_holds (path));
  helper_close (book);
  g_assert_true (bb_clean_close_holds (path));

  /* Reading does not spoil it; writing does, until it is closed again; one of two is not all. */
  book = helper_open (path);
  second = helper_open (path);
  g_assert_true (bb_clean_close_holds (path));
  g_assert_true (bb_book_keep_form (book, "x", "{}", NULL));
  g_assert_false (bb_clean_close_holds (path));
  helper_close (book);
  g_assert_false (bb_clean_close_holds (path));
  helper_close (second);
  g_assert_true (bb_clean_close_holds (path));

  copy_file (path, copy);
  g_assert_false (bb_clean_close_holds (copy));
  copy_file (copy, path);
  g_assert_false (bb_clean_close_holds (path));
}

/* Each page but the first is overwritten in turn in a copy: opening refuses it, or says at least which part is bad. */
static void
test_page_lost (void)
{
  g_autofree char *path = helper_new_path ();
  g_autofree char *copy = helper_new_path ();
  g_autofree char *contents = NULL;
  gsize length = 0;
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  guint n_refused = 0;

  helper_close (book);
  g_assert_true (g_file_get_contents (path, &contents, &length, NULL));
  for (gsize at = 4096; at < length; at += 4096)
    {
      g_autofree char *bad = g_memdup2 (contents, length);
      g_autoptr (GError) error = NULL;

      memset (bad + at, 0x5a, 4096);
      g_assert_true (g_file_set_contents (copy, bad, (gssize) length, NULL));
      book = bb_book_open (copy, &error);
      if (book == NULL)
        {
          g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED);
          helper_assert_line (error->message);
          n_refused++;
          continue;
        }
      {
        /* The search's pages are data to SQLite's quick check. */
        g_autoptr (GPtrArray) findings = bb_book_check (book, NULL, &error);

        g_assert_no_error (error);
        g_assert_cmpuint (findings->len, >, 0);
        for (guint i = 0; i < findings->len; i++)
          helper_assert_line (findings->pdata[i]);
      }
      g_object_unref (book);
    }
  g_assert_cmpuint (n_refused, >, length / 4096 / 2);
}

static void
test_cut_short (void)
{
  g_autofree char *path = helper_new_path ();
  g_autofree char *copy = helper_new_path ();
  g_autofree char *contents = NULL;
  gsize length = 0;
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  const gsize lengths[] = { 1, 15, 16, 99, 100, 101, 511, 512, 4095, 4096, 4097, 8192 };
  const gsize missing[] = { 1, 2048, 4095, 4096, 4097 };

  helper_close (book);
  g_assert_true (g_file_get_contents (path, &contents, &length, NULL));
  for (guint i = 0; i < G_N_ELEMENTS (lengths) + G_N_ELEMENTS (missing) + 8; i++)
    {
      gsize cut = (gsize) g_test_rand_int_range (8192, (gint32) length);
      g_autoptr (GError) error = NULL;

      if (i < G_N_ELEMENTS (lengths))
        cut = lengths[i];
      else if (i < G_N_ELEMENTS (lengths) + G_N_ELEMENTS (missing))
        cut = length - missing[i - G_N_ELEMENTS (lengths)];
      g_assert_true (g_file_set_contents (copy, contents, (gssize) cut, NULL));
      book = bb_book_open (copy, &error);
      if (book != NULL)
        g_error ("%" G_GSIZE_FORMAT " of %" G_GSIZE_FORMAT " bytes were opened", cut, length);
      g_assert_true (g_error_matches (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED) ||
                     g_error_matches (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_A_BOOK));
    }
}

/* Reads all that a person could look at; what is damaged may be refused, and nothing else may happen. */
static void
read_all (BbBook           *book,
          const BbRevision *revision)
{
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);
  g_autoptr (BbRevision) again = NULL;
  const BbTable * const listed[] = { &bb_recipe_table, &bb_blank_table, &bb_supply_table, &bb_wash_test_table };
  const BbQuery query = { .text = "tee" };
  g_autoptr (GPtrArray) findings = bb_book_check (book, NULL, NULL);
  const gint64 first = 1;

  for (guint i = 0; i < n_tables; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GPtrArray) records = bb_book_load_all (book, tables[i], TRUE, &error);

      g_assert_true ((records == NULL) == (error != NULL));
    }

  for (guint i = 0; i < G_N_ELEMENTS (listed); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GError) line_error = NULL;
      g_autoptr (GArray) ids = bb_book_search (book, listed[i], &query, &error);
      g_autoptr (GPtrArray) lines = bb_book_load_lines (book, listed[i], &first, 1, &line_error);

      g_assert_true ((ids == NULL) == (error != NULL));
      g_assert_true ((lines == NULL) == (line_error != NULL));
    }

  /* A revision that reads at all reads as it was written, but for its key, which is this book's alone. */
  again = bb_book_load (book, &bb_revision_table, revision->id, NULL);
  if (again != NULL)
    g_assert_true (bb_record_equal (&bb_revision_table, again, revision));
}

static void
test_bytes_flipped (void)
{
  g_autofree char *path = helper_new_path ();
  g_autofree char *copy = helper_new_path ();
  g_autofree char *contents = NULL;
  gsize length = 0;
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  guint n_refused = 0;

  helper_close (book);
  g_assert_true (g_file_get_contents (path, &contents, &length, NULL));
  for (guint i = 0; i < FLIPS; i++)
    {
      /* Half of them in the header and the schema, where they do most; nearly all pages are mostly empty. */
      gint32 end = i % 2 == 0 ? (gint32) length : MIN (16384, (gint32) length);
      gint32 at = g_test_rand_int_range (0, end);
      g_autofree char *bad = g_memdup2 (contents, length);
      g_autoptr (GError) error = NULL;

      while (bad[at] == 0)
        at = g_test_rand_int_range (0, end);
      bad[at] = (char) (bad[at] ^ (1 << g_test_rand_int_range (0, 8)));
      g_assert_true (g_file_set_contents (copy, bad, (gssize) length, NULL));
      book = bb_book_open (copy, &error);
      if (book != NULL)
        read_all (book, shop->revision);
      else
        n_refused++;
      g_assert_true (book != NULL || error->domain == BB_STORE_ERROR);
      if (error != NULL)
        helper_assert_line (error->message);
      g_clear_object (&book);
    }
  g_test_message ("%u of %u refused at opening", n_refused, FLIPS);
  g_assert_cmpuint (n_refused, >, FLIPS / 20);
}

/* A byte inside a revision's own text: no check of the database can know, the seal does. */
static void
test_flipped_payload_breaks_the_seal (void)
{
  g_autofree char *path = helper_new_path ();
  g_autofree char *contents = NULL;
  gsize length = 0;
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbRevision) revision = helper_make_revision (shop->recipe->id, shop->pretreat->id);
  char *at = NULL;
  guint n_flipped = 0;
  g_autoptr (GError) error = NULL;

  revision->reason = g_strdup ("Sevenfold reason");
  g_assert_true (bb_book_save_revision (book, revision, &error));
  helper_close (book);

  g_assert_true (g_file_get_contents (path, &contents, &length, NULL));
  for (at = contents; at + 16 <= contents + length; at++)
    if (memcmp (at, "Sevenfold reason", 16) == 0)
      {
        at[3] = 'X';
        n_flipped++;
      }
  g_assert_cmpuint (n_flipped, >, 0);
  g_assert_true (g_file_set_contents (path, contents, (gssize) length, NULL));

  book = helper_open (path);
  g_assert_null (bb_book_load (book, &bb_revision_table, revision->id, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED);
  g_assert_nonnull (strstr (error->message, "R-1.2"));
  helper_close (book);
}

/* Whatever SQLite says, a person reads one line, and the program a code that it can act on. */
static void
test_failures_have_messages (void)
{
  const struct {
    int failure;
    int code;
  } failures[] = {
    { SQLITE_BUSY, BB_STORE_ERROR_BUSY },
    { SQLITE_BUSY_RECOVERY, BB_STORE_ERROR_BUSY },
    { SQLITE_LOCKED, BB_STORE_ERROR_BUSY },
    { SQLITE_FULL, BB_STORE_ERROR_IO },
    { SQLITE_READONLY, BB_STORE_ERROR_IO },
    { SQLITE_READONLY_DBMOVED, BB_STORE_ERROR_IO },
    { SQLITE_CANTOPEN, BB_STORE_ERROR_IO },
    { SQLITE_PERM, BB_STORE_ERROR_IO },
    { SQLITE_NOMEM, BB_STORE_ERROR_IO },
    { SQLITE_IOERR_WRITE, BB_STORE_ERROR_IO },
    { SQLITE_IOERR_SHORT_READ, BB_STORE_ERROR_IO },
    { SQLITE_PROTOCOL, BB_STORE_ERROR_IO },
    { SQLITE_NOTADB, BB_STORE_ERROR_NOT_A_BOOK },
    { SQLITE_CORRUPT, BB_STORE_ERROR_DAMAGED },
    { SQLITE_CORRUPT_VTAB, BB_STORE_ERROR_DAMAGED },
    { SQLITE_ERROR, BB_STORE_ERROR_DAMAGED },
    { SQLITE_CONSTRAINT_UNIQUE, BB_STORE_ERROR_EXISTS },
    { SQLITE_CONSTRAINT_PRIMARYKEY, BB_STORE_ERROR_EXISTS },
    { SQLITE_CONSTRAINT_FOREIGNKEY, BB_STORE_ERROR_NOT_FOUND },
    { SQLITE_CONSTRAINT_TRIGGER, BB_STORE_ERROR_REFUSED },
    { SQLITE_CONSTRAINT_CHECK, BB_STORE_ERROR_REFUSED },
    { SQLITE_CONSTRAINT_NOTNULL, BB_STORE_ERROR_REFUSED },
  };

  for (guint i = 0; i < G_N_ELEMENTS (failures); i++)
    {
      g_autoptr (GError) error = NULL;

      bb_store_error_set_sqlite (&error, failures[i].failure, "what it\nsaid of \xff");
      g_assert_error (error, BB_STORE_ERROR, failures[i].code);
      g_assert_cmpuint (strlen (error->message), >, 10);
      helper_assert_line (error->message);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/open/what-is-no-book", test_what_is_no_book);
  g_test_add_func ("/open/newer-book-is-left-alone", test_newer_book_is_left_alone);
  g_test_add_func ("/open/version-nought-is-damage", test_version_nought_is_damage);
  g_test_add_func ("/open/all-settings-hold", test_all_settings_hold);
  g_test_add_func ("/open/note-of-closing", test_note_of_closing);
  g_test_add_func ("/open/page-lost", test_page_lost);
  g_test_add_func ("/open/cut-short", test_cut_short);
  g_test_add_func ("/open/bytes-flipped", test_bytes_flipped);
  g_test_add_func ("/open/flipped-payload-breaks-the-seal", test_flipped_payload_breaks_the_seal);
  g_test_add_func ("/open/failures-have-messages", test_failures_have_messages);

  return g_test_run ();
}
