/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

/* For kill and setrlimit: the build asks for plain C17. */
#define _POSIX_C_SOURCE 200809L

#include "store-helpers.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>

#include "bb-book-private.h"

/* Two programs on one book, a program that is killed, and a disk that is full: what was acknowledged stays. */

#define KILLS 12

static gboolean
save_numbered (BbBook  *book,
               guint    number,
               GError **error)
{
  g_autofree char *code = g_strdup_printf ("B-%u", number);
  g_autoptr (BbBlank) blank = helper_make_blank (code, "Tee");

  return bb_book_save (book, &bb_blank_table, blank, error);
}

static gint64
count_blanks (const char *path)
{
  sqlite3 *plain = helper_open_plain (path);
  gint64 n = helper_count_plain (plain, "SELECT COUNT(*) FROM blank");

  sqlite3_close (plain);

  return n;
}

static void
check_sound (const char *path)
{
  BbBook *book = helper_open (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) findings = bb_book_check (book, NULL, &error);

  g_assert_no_error (error);
  if (findings->len > 0)
    g_error ("%s", (const char *) g_ptr_array_index (findings, 0));
  helper_close (book);
}

static gboolean
try_second (BbBook    *book,
            gpointer   data,
            GError   **error)
{
  BbBook *second = data;
  g_autoptr (GError) refused = NULL;
  gint64 start = 0;

  g_assert_true (save_numbered (book, 1, error));
  bb_db_set_patience (second->db, 100);
  start = g_get_monotonic_time ();
  g_assert_false (save_numbered (second, 2, &refused));
  g_assert_error (refused, BB_STORE_ERROR, BB_STORE_ERROR_BUSY);
  g_assert_cmpint (g_get_monotonic_time () - start, >=, 80000);
  g_assert_cmpint (g_get_monotonic_time () - start, <, 3000000);

  return TRUE;
}

static void
test_second_writer_is_told (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *first = helper_create (path);
  BbBook *second = helper_open (path);
  g_autoptr (GPtrArray) seen = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_book_in_transaction (first, try_second, second, &error));
  g_assert_no_error (error);
  g_assert_true (save_numbered (second, 2, &error));
  g_assert_no_error (error);
  seen = bb_book_load_all (first, &bb_blank_table, FALSE, &error);
  g_assert_cmpuint (seen->len, ==, 2);
  helper_close (first);
  helper_close (second);
  check_sound (path);
}

static gboolean
hold (BbBook    *book,
      gpointer   data,
      GError   **error)
{
  GAsyncQueue *holding = data;

  g_assert_true (save_numbered (book, 1, error));
  g_async_queue_push (holding, book);
  g_usleep (G_USEC_PER_SEC * 3 / 10);

  return TRUE;
}

typedef struct {
  const char *path;
  GAsyncQueue *holding;
} Holder;

static gpointer
hold_thread (gpointer data)
{
  const Holder *holder = data;
  BbBook *book = helper_open (holder->path);
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_book_in_transaction (book, hold, holder->holding, &error));
  helper_close (book);

  return NULL;
}

static void
test_second_writer_waits (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  Holder holder = { .path = path, .holding = g_async_queue_new () };
  GThread *thread = g_thread_new ("holder", hold_thread, &holder);
  g_autoptr (GError) error = NULL;
  gint64 start = 0;

  g_async_queue_pop (holder.holding);
  start = g_get_monotonic_time ();
  g_assert_true (save_numbered (book, 2, &error));
  g_assert_no_error (error);
  g_assert_cmpint (g_get_monotonic_time () - start, >, G_USEC_PER_SEC / 10);
  g_thread_join (thread);
  g_async_queue_unref (holder.holding);
  helper_close (book);
  g_assert_cmpint (count_blanks (path), ==, 2);
}

/* The child: says each number once it is saved, until it is ended or refused. */
static int
child_main (const char *path,
            const char *first,
            const char *room)
{
  g_autoptr (GError) error = NULL;
  BbBook *book = NULL;

  if (atol (room) > 0)
    {
      struct rlimit limit = { .rlim_cur = (rlim_t) atol (room), .rlim_max = (rlim_t) atol (room) };

      if (setrlimit (RLIMIT_FSIZE, &limit) != 0 || signal (SIGXFSZ, SIG_IGN) == SIG_ERR)
        return 2;
    }

  book = bb_book_open (path, &error);
  for (guint i = (guint) atol (first); book != NULL && save_numbered (book, i, &error); i++)
    {
      printf ("%u\n", i);
      fflush (stdout);
    }
  printf ("%s\n", error->message);
  fflush (stdout);

  return 1;
}

static GSubprocess *
start_child (const char *path,
             guint       first,
             gint64      room)
{
  g_autoptr (GSubprocessLauncher) launcher = g_subprocess_launcher_new (G_SUBPROCESS_FLAGS_STDOUT_PIPE);
  g_autofree char *first_text = g_strdup_printf ("%u", first);
  g_autofree char *room_text = g_strdup_printf ("%" G_GINT64_FORMAT, room);
  g_autofree char *self = g_file_read_link ("/proc/self/exe", NULL);
  g_autoptr (GError) error = NULL;
  GSubprocess *child = NULL;

  g_subprocess_launcher_setenv (launcher, "XDG_CACHE_HOME", g_get_user_cache_dir (), TRUE);
  child = g_subprocess_launcher_spawn (launcher, &error, self, "--child", path, first_text, room_text, NULL);
  g_assert_no_error (error);

  return child;
}

/* The last number that the child said, reading until it said @enough; 0 reads to its end. What it said last, if that
 * was no number, goes to @last_words. */
static guint
read_child (GDataInputStream  *lines,
            guint              enough,
            char             **last_words)
{
  guint last = 0;

  for (;;)
    {
      g_autofree char *line = g_data_input_stream_read_line (lines, NULL, NULL, NULL);
      char *end = NULL;
      guint64 number = 0;

      if (line == NULL)
        return last;
      number = g_ascii_strtoull (line, &end, 10);
      if (end != line && *end == '\0')
        last = (guint) number;
      else if (last_words != NULL)
        *last_words = g_steal_pointer (&line);
      if (enough > 0 && last >= enough)
        return last;
    }
}

static void
test_killed_program_loses_nothing (void)
{
  g_autofree char *path = helper_new_path ();
  guint first = 1;

  helper_close (helper_create (path));
  for (guint i = 0; i < KILLS; i++)
    {
      g_autoptr (GSubprocess) child = start_child (path, first, 0);
      g_autoptr (GDataInputStream) lines = g_data_input_stream_new (g_subprocess_get_stdout_pipe (child));
      guint last = read_child (lines, first + (guint) g_test_rand_int_range (0, 8), NULL);
      guint rest = 0;
      gint64 n = 0;

      g_usleep ((gulong) g_test_rand_int_range (0, 10000));
      g_subprocess_send_signal (child, SIGKILL);
      rest = read_child (lines, 0, NULL);
      last = MAX (last, rest);
      g_assert_true (g_subprocess_wait (child, NULL, NULL));
      g_assert_true (g_subprocess_get_if_signaled (child));

      /* Every one that was acknowledged, and at most the one whose word was cut off. */
      check_sound (path);
      n = count_blanks (path);
      g_assert_cmpint (n, >=, last);
      g_assert_cmpint (n, <=, last + 1);
      first = (guint) n + 1;
    }
  g_test_message ("%u records in %u lives", first - 1, KILLS);
  g_assert_cmpuint (first, >, KILLS);
}

static void
test_no_room_for_the_file (void)
{
  g_autofree char *path = helper_new_path ();
  g_autoptr (GSubprocess) child = NULL;
  g_autoptr (GDataInputStream) lines = NULL;
  g_autofree char *last_words = NULL;
  GStatBuf info;
  guint last = 0;

  helper_close (helper_create (path));
  g_assert_cmpint (g_stat (path, &info), ==, 0);
  child = start_child (path, 1, info.st_size + 300000);
  lines = g_data_input_stream_new (g_subprocess_get_stdout_pipe (child));
  last = read_child (lines, 0, &last_words);
  g_assert_true (g_subprocess_wait (child, NULL, NULL));
  g_assert_cmpint (g_subprocess_get_exit_status (child), ==, 1);
  g_test_message ("%u records, then: %s", last, last_words);
  g_assert_cmpuint (last, >, 0);
  g_assert_true (g_str_has_prefix (last_words, "The disk"));

  check_sound (path);
  g_assert_cmpint (count_blanks (path), ==, last);
}

static void
limit_pages (BbBook *book,
             gint64  more)
{
  gint64 pages = 0;
  g_autofree char *sql = NULL;

  g_assert_true (bb_db_query_integer (book->db, "PRAGMA page_count", &pages, NULL));
  sql = g_strdup_printf ("PRAGMA max_page_count = %" G_GINT64_FORMAT, pages + more);
  g_assert_true (bb_db_run_script (book->db, sql, NULL));
}

static void
test_full_disk (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  guint n = 0;
  g_autoptr (GError) error = NULL;

  limit_pages (book, 3);
  while (save_numbered (book, n, &error))
    n++;
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_IO);
  g_assert_true (g_str_has_prefix (error->message, "The disk is full"));
  g_clear_error (&error);
  g_assert_cmpint (count_blanks (path), ==, n);
  g_assert_cmpuint (n, >, 0);

  /* Once there is room, the same book goes on. */
  limit_pages (book, 1000);
  g_assert_true (save_numbered (book, n, &error));
  g_assert_no_error (error);
  helper_close (book);
  check_sound (path);
  g_assert_cmpint (count_blanks (path), ==, n + 1);
}

static gboolean
ignore_failures (BbBook    *book,
                 gpointer   data,
                 GError   **error)
{
  guint *n = data;

  (void) error;
  for (guint i = 0; i < 500; i++)
    *n += save_numbered (book, i, NULL) ? 1 : 0;

  return TRUE;
}

/* Who does not look at failures within a transaction gets all that was said to be saved, or none of it. */
static void
test_full_disk_within_a_transaction (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  guint n = 0;
  gboolean kept = FALSE;
  g_autoptr (GError) error = NULL;

  limit_pages (book, 3);
  kept = bb_book_in_transaction (book, ignore_failures, &n, &error);
  g_assert_true (kept == (error == NULL));
  g_assert_cmpuint (n, >, 0);
  g_assert_cmpuint (n, <, 500);
  g_assert_cmpint (count_blanks (path), ==, kept ? n : 0);
  limit_pages (book, 1000);
  g_clear_error (&error);
  g_assert_true (save_numbered (book, 1000, &error));
  g_assert_no_error (error);
  helper_close (book);
  check_sound (path);
}

static gboolean
lose_transaction (BbBook    *book,
                  gpointer   data,
                  GError   **error)
{
  guint *n_saved = data;
  g_autoptr (GError) inner = NULL;

  (void) error;
  g_assert_true (save_numbered (book, 1, NULL));
  /* As SQLite does by itself after some failures. */
  g_assert_true (bb_db_run_script (book->db, "ROLLBACK", NULL));
  *n_saved = save_numbered (book, 2, &inner) ? 1 : 0;
  g_assert_error (inner, BB_STORE_ERROR, BB_STORE_ERROR_IO);

  return TRUE;
}

static void
test_lost_transaction_writes_nothing_more (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  guint n_saved = 9;
  g_autoptr (GError) error = NULL;

  g_assert_false (bb_book_in_transaction (book, lose_transaction, &n_saved, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_IO);
  g_assert_cmpuint (n_saved, ==, 0);
  g_assert_cmpint (count_blanks (path), ==, 0);
  g_clear_error (&error);
  g_assert_true (save_numbered (book, 1, &error));
  g_assert_no_error (error);
  helper_close (book);
}

int
main (int   argc,
      char *argv[])
{
  if (argc == 5 && g_str_equal (argv[1], "--child"))
    return child_main (argv[2], argv[3], argv[4]);

  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/survival/second-writer-is-told", test_second_writer_is_told);
  g_test_add_func ("/survival/second-writer-waits", test_second_writer_waits);
  g_test_add_func ("/survival/killed-program-loses-nothing", test_killed_program_loses_nothing);
  g_test_add_func ("/survival/no-room-for-the-file", test_no_room_for_the_file);
  g_test_add_func ("/survival/full-disk", test_full_disk);
  g_test_add_func ("/survival/full-disk-within-a-transaction", test_full_disk_within_a_transaction);
  g_test_add_func ("/survival/lost-transaction-writes-nothing-more", test_lost_transaction_writes_nothing_more);

  return g_test_run ();
}
