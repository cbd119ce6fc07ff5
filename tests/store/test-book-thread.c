/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-book-thread.h"

#include <glib/gstdio.h>

#include "store-helpers.h"
#include "thread-helpers.h"

static BbBookThread *
open_writer (const char *path)
{
  g_autoptr (GError) error = NULL;
  BbBook *book = helper_open (path);
  BbBookThread *writer = bb_book_thread_new (book, BB_ACCESS_WRITE, NULL);

  g_assert_true (bb_book_thread_start (writer, &error));
  g_assert_no_error (error);
  helper_close (book);

  return writer;
}

static void
test_writes_in_order (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  BbBookThread *writer = open_writer (path);
  Tally tally = { .main_thread = g_thread_self () };
  g_autoptr (GPtrArray) blanks = NULL;

  for (guint i = 0; i < 50; i++)
    thread_ask (writer, i, thread_save_blank, NULL, &tally);
  thread_ask (writer, 7, thread_save_blank, NULL, &tally);
  thread_wait_for (&tally);
  g_assert_cmpuint (tally.kept, ==, 50);
  g_assert_cmpuint (tally.refused, ==, 1);
  g_assert_cmpint (tally.last_id, ==, 50);

  /* A reader that was open all the while sees it. */
  blanks = bb_book_load_all (book, &bb_blank_table, FALSE, NULL);
  g_assert_cmpuint (blanks->len, ==, 50);
  for (guint i = 0; i < blanks->len; i++)
    {
      g_autofree char *code = g_strdup_printf ("B-%u", i);

      g_assert_cmpstr (((const BbBlank *) g_ptr_array_index (blanks, i))->code, ==, code);
    }

  thread_close (writer);
  helper_close (book);
}

static void
test_cancel_before_start (void)
{
  g_autofree char *path = helper_new_path ();
  BbBookThread *writer = NULL;
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  Tally tally = { .main_thread = g_thread_self () };
  sqlite3 *plain = NULL;

  helper_close (helper_create (path));
  writer = open_writer (path);
  thread_ask (writer, 1, thread_save_blank_slowly, NULL, &tally);
  thread_ask (writer, 2, thread_save_blank, cancellable, &tally);
  thread_ask (writer, 3, thread_save_blank, NULL, &tally);
  g_cancellable_cancel (cancellable);
  thread_wait_for (&tally);
  g_assert_cmpuint (tally.kept, ==, 2);
  g_assert_cmpuint (tally.cancelled, ==, 1);
  thread_close (writer);

  plain = helper_open_plain (path);
  g_assert_cmpint (helper_count_plain (plain, "SELECT COUNT(*) FROM blank WHERE code = 'B-2'"), ==, 0);
  sqlite3_close (plain);
}

/* One that was written answers so, also to who has stopped waiting. */
static void
test_cancel_after_start (void)
{
  g_autofree char *path = helper_new_path ();
  BbBookThread *writer = NULL;
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  Tally tally = { .main_thread = g_thread_self () };

  helper_close (helper_create (path));
  writer = open_writer (path);
  thread_ask (writer, 1, thread_save_blank_slowly, cancellable, &tally);
  g_usleep (G_USEC_PER_SEC / 20);
  g_cancellable_cancel (cancellable);
  thread_wait_for (&tally);
  g_assert_cmpuint (tally.kept, ==, 1);
  thread_close (writer);
}

static void
test_close_drains (void)
{
  g_autofree char *path = helper_new_path ();
  BbBookThread *writer = NULL;
  Tally tally = { .main_thread = g_thread_self () };
  sqlite3 *plain = NULL;

  helper_close (helper_create (path));
  writer = open_writer (path);
  thread_ask (writer, 0, thread_save_blank_slowly, NULL, &tally);
  for (guint i = 1; i < 20; i++)
    thread_ask (writer, i, thread_save_blank, NULL, &tally);
  bb_book_thread_close (writer);

  plain = helper_open_plain (path);
  g_assert_cmpint (helper_count_plain (plain, "SELECT COUNT(*) FROM blank"), ==, 20);
  sqlite3_close (plain);

  thread_ask (writer, 99, thread_save_blank, NULL, &tally);
  thread_wait_for (&tally);
  g_assert_cmpuint (tally.kept, ==, 20);
  g_assert_cmpuint (tally.refused, ==, 1);
  thread_close (writer);
}

/* Nobody holds the writer any more while a task still runs. */
static void
test_let_go_while_writing (void)
{
  g_autofree char *path = helper_new_path ();
  Tally tally = { .main_thread = g_thread_self () };
  g_autoptr (GPtrArray) blanks = NULL;
  BbBook *book = NULL;

  helper_close (helper_create (path));
  for (guint i = 0; i < 5; i++)
    {
      BbBookThread *writer = open_writer (path);

      thread_ask (writer, i, thread_save_blank, NULL, &tally);
      g_object_unref (writer);
      thread_wait_for (&tally);
    }
  g_assert_cmpuint (tally.kept, ==, 5);

  book = helper_open (path);
  blanks = bb_book_load_all (book, &bb_blank_table, FALSE, NULL);
  g_assert_cmpuint (blanks->len, ==, 5);
  helper_close (book);
}

static gboolean
count_run (BbBook    *book,
           gpointer   data,
           GError   **error)
{
  Tally *tally = data;

  (void) error;
  g_assert_true (g_thread_self () != tally->main_thread);
  g_assert_cmpint (bb_book_get_person (book), ==, 0);
  g_atomic_int_inc (&tally->ran);

  return TRUE;
}

static void
test_without_callback (void)
{
  g_autofree char *path = helper_new_path ();
  BbBookThread *writer = NULL;
  Tally tally = { .main_thread = g_thread_self () };

  helper_close (helper_create (path));
  writer = open_writer (path);
  bb_book_thread_run_async (writer, 0, count_run, &tally, NULL, NULL, NULL, NULL);
  bb_book_thread_close (writer);
  g_assert_cmpint (g_atomic_int_get (&tally.ran), ==, 1);
  while (g_main_context_iteration (NULL, FALSE))
    ;
  thread_close (writer);
}

static void
test_no_book_no_thread (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  BbBookThread *writer = bb_book_thread_new (book, BB_ACCESS_WRITE, NULL);
  BbBookThread *reader = bb_book_thread_new (book, BB_ACCESS_READ, NULL);
  Tally tally = { .main_thread = g_thread_self () };
  g_autoptr (GError) error = NULL;

  helper_close (book);
  g_assert_cmpint (g_unlink (path), ==, 0);
  g_assert_false (bb_book_thread_start (writer, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_IO);
  thread_close (writer);

  /* What is opened when it is first needed tells everyone who asks. */
  thread_ask (reader, 1, thread_save_blank, NULL, &tally);
  thread_ask (reader, 2, thread_save_blank, NULL, &tally);
  thread_wait_for (&tally);
  g_assert_cmpuint (tally.refused, ==, 2);
  thread_close (reader);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/book-thread/writes-in-order", test_writes_in_order);
  g_test_add_func ("/book-thread/cancel-before-start", test_cancel_before_start);
  g_test_add_func ("/book-thread/cancel-after-start", test_cancel_after_start);
  g_test_add_func ("/book-thread/close-drains", test_close_drains);
  g_test_add_func ("/book-thread/let-go-while-writing", test_let_go_while_writing);
  g_test_add_func ("/book-thread/without-callback", test_without_callback);
  g_test_add_func ("/book-thread/no-book-no-thread", test_no_book_no_thread);

  return g_test_run ();
}
