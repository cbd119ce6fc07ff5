/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-writer.h"
#include "store-helpers.h"

/* Longer than any of these tasks takes, shorter than the test's own limit. */
#define PATIENCE_S 20

typedef struct {
  guint pending;
  guint kept;
  guint cancelled;
  guint refused;
  GThread *main_thread;
  gint64 last_id;
  gint ran;
} Tally;

static void
done_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  Tally *tally = data;
  g_autoptr (GError) error = NULL;

  g_assert_true (g_thread_self () == tally->main_thread);
  tally->pending--;
  if (bb_writer_run_finish (BB_WRITER (source), result, &error))
    {
      tally->kept++;
      tally->last_id = ((const BbBlank *) bb_writer_get_data (BB_WRITER (source), result))->id;
    }
  else if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    tally->cancelled++;
  else
    tally->refused++;
}

static gboolean
timeout_cb (gpointer data)
{
  (void) data;
  g_assert_not_reached ();

  return G_SOURCE_REMOVE;
}

static void
wait_for (Tally *tally)
{
  guint timeout = g_timeout_add_seconds (PATIENCE_S, timeout_cb, NULL);

  while (tally->pending > 0)
    g_main_context_iteration (NULL, TRUE);
  g_source_remove (timeout);
}

static gboolean
save_blank (BbBook    *book,
            gpointer   data,
            GError   **error)
{
  return bb_book_save (book, &bb_blank_table, data, error);
}

static gboolean
save_blank_slowly (BbBook    *book,
                   gpointer   data,
                   GError   **error)
{
  g_usleep (G_USEC_PER_SEC / 5);

  return bb_book_save (book, &bb_blank_table, data, error);
}

static void
ask (BbWriter     *writer,
     guint         number,
     BbBookFunc    func,
     GCancellable *cancellable,
     Tally        *tally)
{
  g_autofree char *code = g_strdup_printf ("B-%u", number);

  tally->pending++;
  bb_writer_run_async (writer, 0, func, helper_make_blank (code, "Tee"), (GDestroyNotify) bb_blank_free, cancellable,
                       done_cb, tally);
}

static BbWriter *
open_writer (const char *path)
{
  g_autoptr (GError) error = NULL;
  BbWriter *writer = bb_writer_new (path, &error);

  g_assert_no_error (error);

  return writer;
}

/* The thread lets go of a task a moment after its answer; closing waits for that. */
static void
close_writer (BbWriter *writer)
{
  bb_writer_close (writer);
  g_assert_finalize_object (writer);
}

static void
test_writes_in_order (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  BbWriter *writer = open_writer (path);
  Tally tally = { .main_thread = g_thread_self () };
  g_autoptr (GPtrArray) blanks = NULL;

  for (guint i = 0; i < 50; i++)
    ask (writer, i, save_blank, NULL, &tally);
  ask (writer, 7, save_blank, NULL, &tally);
  wait_for (&tally);
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

  close_writer (writer);
  helper_close (book);
}

static void
test_cancel_before_start (void)
{
  g_autofree char *path = helper_new_path ();
  BbWriter *writer = NULL;
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  Tally tally = { .main_thread = g_thread_self () };
  sqlite3 *plain = NULL;

  helper_close (helper_create (path));
  writer = open_writer (path);
  ask (writer, 1, save_blank_slowly, NULL, &tally);
  ask (writer, 2, save_blank, cancellable, &tally);
  ask (writer, 3, save_blank, NULL, &tally);
  g_cancellable_cancel (cancellable);
  wait_for (&tally);
  g_assert_cmpuint (tally.kept, ==, 2);
  g_assert_cmpuint (tally.cancelled, ==, 1);
  close_writer (writer);

  plain = helper_open_plain (path);
  g_assert_cmpint (helper_count_plain (plain, "SELECT COUNT(*) FROM blank WHERE code = 'B-2'"), ==, 0);
  sqlite3_close (plain);
}

/* One that was written answers so, also to who has stopped waiting. */
static void
test_cancel_after_start (void)
{
  g_autofree char *path = helper_new_path ();
  BbWriter *writer = NULL;
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  Tally tally = { .main_thread = g_thread_self () };

  helper_close (helper_create (path));
  writer = open_writer (path);
  ask (writer, 1, save_blank_slowly, cancellable, &tally);
  g_usleep (G_USEC_PER_SEC / 20);
  g_cancellable_cancel (cancellable);
  wait_for (&tally);
  g_assert_cmpuint (tally.kept, ==, 1);
  close_writer (writer);
}

static void
test_close_drains (void)
{
  g_autofree char *path = helper_new_path ();
  BbWriter *writer = NULL;
  Tally tally = { .main_thread = g_thread_self () };
  sqlite3 *plain = NULL;

  helper_close (helper_create (path));
  writer = open_writer (path);
  ask (writer, 0, save_blank_slowly, NULL, &tally);
  for (guint i = 1; i < 20; i++)
    ask (writer, i, save_blank, NULL, &tally);
  bb_writer_close (writer);

  plain = helper_open_plain (path);
  g_assert_cmpint (helper_count_plain (plain, "SELECT COUNT(*) FROM blank"), ==, 20);
  sqlite3_close (plain);

  ask (writer, 99, save_blank, NULL, &tally);
  wait_for (&tally);
  g_assert_cmpuint (tally.kept, ==, 20);
  g_assert_cmpuint (tally.refused, ==, 1);
  close_writer (writer);
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
      BbWriter *writer = open_writer (path);

      ask (writer, i, save_blank, NULL, &tally);
      g_object_unref (writer);
      wait_for (&tally);
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
  BbWriter *writer = NULL;
  Tally tally = { .main_thread = g_thread_self () };

  helper_close (helper_create (path));
  writer = open_writer (path);
  bb_writer_run_async (writer, 0, count_run, &tally, NULL, NULL, NULL, NULL);
  bb_writer_close (writer);
  g_assert_cmpint (g_atomic_int_get (&tally.ran), ==, 1);
  while (g_main_context_iteration (NULL, FALSE))
    ;
  close_writer (writer);
}

static void
test_no_book_no_writer (void)
{
  g_autofree char *path = helper_new_path ();
  g_autoptr (GError) error = NULL;

  g_assert_null (bb_writer_new (path, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_IO);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/writer/writes-in-order", test_writes_in_order);
  g_test_add_func ("/writer/cancel-before-start", test_cancel_before_start);
  g_test_add_func ("/writer/cancel-after-start", test_cancel_after_start);
  g_test_add_func ("/writer/close-drains", test_close_drains);
  g_test_add_func ("/writer/let-go-while-writing", test_let_go_while_writing);
  g_test_add_func ("/writer/without-callback", test_without_callback);
  g_test_add_func ("/writer/no-book-no-writer", test_no_book_no_writer);

  return g_test_run ();
}
