/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

/* For syscall(). */
#define _DEFAULT_SOURCE

#include <glib/gstdio.h>
#include <linux/capability.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

#include "bb-book-thread.h"
#include "store-helpers.h"
#include "thread-helpers.h"

/* Books that can't be written where they are: in a folder, or with a file, that nobody may write. */

/* What a folder allows binds this program too, whoever runs it (capabilities(7)). */
static void
give_up_privileges (void)
{
  struct __user_cap_header_struct header = { .version = _LINUX_CAPABILITY_VERSION_3 };
  struct __user_cap_data_struct sets[_LINUX_CAPABILITY_U32S_3] = { { 0 } };
  const guint32 gone = 1u << CAP_DAC_OVERRIDE | 1u << CAP_DAC_READ_SEARCH;

  g_assert_cmpint (syscall (SYS_capget, &header, sets), ==, 0);
  sets[0].effective &= ~gone;
  sets[0].permitted &= ~gone;
  g_assert_cmpint (syscall (SYS_capset, &header, sets), ==, 0);
}

static void
set_modes (const char *path,
           mode_t      folder_mode,
           mode_t      file_mode)
{
  g_autofree char *folder = g_path_get_dirname (path);

  g_assert_cmpint (g_chmod (path, file_mode), ==, 0);
  g_assert_cmpint (g_chmod (folder, folder_mode), ==, 0);
}

static guint
count_files (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n_files = 0;

  g_assert_nonnull (dir);
  while (g_dir_read_name (dir) != NULL)
    n_files++;

  return n_files;
}

/* A name that would mean something in an address. */
static char *
make_filled_book (void)
{
  g_autofree char *plain = helper_new_path ();
  g_autofree char *folder = g_path_get_dirname (plain);
  char *path = g_build_filename (folder, "50% of ä?mode=rw#x.book", NULL);
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);

  helper_close (book);

  return path;
}

static void
assert_reads (BbBook *book)
{
  const BbQuery query = { .text = "tee" };
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) blanks = bb_book_load_all (book, &bb_blank_table, FALSE, &error);
  g_autoptr (GArray) found = bb_book_search (book, &bb_blank_table, &query, &error);
  g_autoptr (GPtrArray) findings = NULL;

  g_assert_no_error (error);
  findings = bb_book_check (book, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (findings->len, ==, 0);
  g_assert_cmpuint (blanks->len, ==, 1);
  g_assert_cmpuint (found->len, ==, 1);
}

static void
assert_cannot_save (BbBook *book)
{
  g_autoptr (BbBlank) blank = helper_make_blank ("B-9", "Tee");
  g_autoptr (GError) error = NULL;

  g_assert_false (bb_book_save (book, &bb_blank_table, blank, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_READ_ONLY);
  helper_assert_line (error->message);
  g_clear_error (&error);
  g_assert_false (bb_book_keep_form (book, "x", "{}", &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_READ_ONLY);
}

static void
test_read_where_nothing_can_be_written (void)
{
  const mode_t modes[][2] = { { 0555, 0644 }, { 0555, 0444 }, { 0755, 0444 } };
  g_autofree char *path = make_filled_book ();
  BbBook *book = helper_open (path);

  g_assert_true (bb_book_can_write (book));
  helper_close (book);
  for (guint i = 0; i < G_N_ELEMENTS (modes); i++)
    {
      set_modes (path, modes[i][0], modes[i][1]);
      book = helper_open (path);
      g_assert_false (bb_book_can_write (book));
      assert_reads (book);
      assert_cannot_save (book);
      assert_reads (book);
      helper_close (book);
      if (modes[i][0] == 0555)
        g_assert_cmpuint (count_files (path), ==, 1);
    }

  /* What it says to do helps. */
  set_modes (path, 0755, 0644);
  book = helper_open (path);
  g_assert_true (bb_book_can_write (book));
  helper_close (book);
}

/* A window's threads: what would write is refused on the one, and the other reads. */
static void
test_threads (void)
{
  g_autofree char *path = make_filled_book ();
  Tally tally = { .main_thread = g_thread_self () };
  BbBook *book = NULL;
  BbBookThread *thread = NULL;

  set_modes (path, 0555, 0444);
  book = helper_open (path);
  thread = bb_book_thread_new (book, BB_ACCESS_READ, NULL);
  thread_ask (thread, 7, thread_save_blank, NULL, &tally);
  thread_wait_for (&tally);
  g_assert_cmpuint (tally.refused, ==, 1);
  thread_close (thread);
  helper_close (book);
  set_modes (path, 0755, 0644);
}

/* Who may write there did so all the same: what was read of the old state does not go with the new one. */
static void
test_changed_meanwhile (void)
{
  g_autofree char *path = make_filled_book ();
  sqlite3 *plain = NULL;
  BbBook *book = NULL;
  g_autoptr (GError) error = NULL;

  set_modes (path, 0555, 0644);
  book = helper_open (path);
  assert_reads (book);
  set_modes (path, 0755, 0644);
  plain = helper_open_plain (path);
  g_assert_cmpint (helper_run_plain (plain, "UPDATE blank SET name = 'Top'"), ==, SQLITE_OK);
  sqlite3_close (plain);
  g_assert_null (bb_book_load_all (book, &bb_blank_table, FALSE, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_BUSY);
  helper_assert_line (error->message);
  g_object_unref (book);

  set_modes (path, 0555, 0644);
  book = helper_open (path);
  helper_close (book);
  set_modes (path, 0755, 0644);
}

/* Another program writes it: what stands in the log is read too, as far as its files may be read. */
static void
test_open_elsewhere (void)
{
  g_autofree char *path = make_filled_book ();
  BbBook *other = helper_open (path);
  BbBook *book = NULL;
  g_autoptr (BbBlank) blank = helper_make_blank ("B-9", "Top");
  g_autoptr (GPtrArray) blanks = NULL;

  helper_save (other, &bb_blank_table, blank);
  set_modes (path, 0555, 0644);
  book = helper_open (path);
  g_assert_false (bb_book_can_write (book));
  blanks = bb_book_load_all (book, &bb_blank_table, FALSE, NULL);
  g_assert_cmpuint (blanks->len, ==, 2);
  helper_close (book);
  set_modes (path, 0755, 0644);
  helper_close (other);
}

static void
test_earlier_version (void)
{
  g_autofree char *path = make_filled_book ();
  sqlite3 *plain = helper_open_plain (path);
  gint64 version = helper_count_plain (plain, "PRAGMA user_version");
  g_autofree char *sql = g_strdup_printf ("PRAGMA user_version = %" G_GINT64_FORMAT, version - 1);
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (helper_run_plain (plain, sql), ==, SQLITE_OK);
  sqlite3_close (plain);
  set_modes (path, 0555, 0444);
  g_assert_null (bb_book_open (path, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_READ_ONLY);
  helper_assert_line (error->message);
  set_modes (path, 0755, 0644);
}

/* Not to be written is no reason not to look. */
static void
test_damaged (void)
{
  g_autofree char *path = make_filled_book ();
  g_autofree char *contents = NULL;
  gsize length = 0;
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_get_contents (path, &contents, &length, NULL));
  g_assert_true (g_file_set_contents (path, contents, (gssize) (length / 2), NULL));
  set_modes (path, 0555, 0444);
  g_assert_null (bb_book_open (path, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED);
  set_modes (path, 0755, 0644);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  give_up_privileges ();

  g_test_add_func ("/read-only/read-where-nothing-can-be-written", test_read_where_nothing_can_be_written);
  g_test_add_func ("/read-only/threads", test_threads);
  g_test_add_func ("/read-only/changed-meanwhile", test_changed_meanwhile);
  g_test_add_func ("/read-only/open-elsewhere", test_open_elsewhere);
  g_test_add_func ("/read-only/earlier-version", test_earlier_version);
  g_test_add_func ("/read-only/damaged", test_damaged);

  return g_test_run ();
}
