/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-book-thread.h"

#include <glib/gstdio.h>
#include <string.h>

#include "bb-book-private.h"
#include "bb-clean-close.h"
#include "store-helpers.h"
#include "thread-helpers.h"

/* A window's connections: the first is opened by who opens the book. */
typedef struct {
  BbBook *book;
  BbBookThread *writer;
  BbBookThread *reader;
  Tally tally;
} Connections;

static void
open_connections (Connections *self,
                  const char  *path)
{
  g_autoptr (GError) error = NULL;

  self->tally = (Tally) { .main_thread = g_thread_self () };
  self->book = helper_create (path);
  self->writer = bb_book_thread_new (self->book, BB_ACCESS_WRITE, NULL);
  self->reader = bb_book_thread_new (self->book, BB_ACCESS_READ, self->writer);
  g_assert_true (bb_book_thread_start (self->writer, &error));
  g_assert_no_error (error);
}

static void
close_connections (Connections *self)
{
  thread_close (self->reader);
  thread_close (self->writer);
  helper_close (self->book);
}

/* @now, @later: what there was to be read before and after it waited; @begun, @go_on: what it told, and waits for */
typedef struct {
  gint64 now;
  gint64 later;
  GAsyncQueue *begun;
  GAsyncQueue *go_on;
} Count;

static gboolean
count_blanks (BbBook  *book,
              gint64  *count,
              GError **error)
{
  g_autoptr (GPtrArray) blanks = bb_book_load_all (book, &bb_blank_table, FALSE, error);

  *count = blanks != NULL ? (gint64) blanks->len : -1;

  return blanks != NULL;
}

static gboolean
read_count (BbBook    *book,
            gpointer   data,
            GError   **error)
{
  return count_blanks (book, &((Count *) data)->now, error);
}

static gboolean
read_count_slowly (BbBook    *book,
                   gpointer   data,
                   GError   **error)
{
  Count *count = data;

  if (!count_blanks (book, &count->now, error))
    return FALSE;
  g_async_queue_push (count->begun, count);
  g_assert_nonnull (g_async_queue_timeout_pop (count->go_on, PATIENCE_S * G_USEC_PER_SEC));

  return count_blanks (book, &count->later, error);
}

static void
read_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_book_thread_run_finish (BB_BOOK_THREAD (source), result, &error));
  g_assert_no_error (error);
  ((Tally *) data)->pending--;
}

static void
read_with (Connections *self,
           BbBookFunc   func,
           gpointer     data)
{
  self->tally.pending++;
  bb_book_thread_run_async (self->reader, 0, func, data, NULL, NULL, read_cb, &self->tally);
}

static void
test_writes_while_reading (void)
{
  g_autofree char *path = helper_new_path ();
  Connections self = { 0 };
  Tally written = { .main_thread = g_thread_self () };
  g_autoptr (GAsyncQueue) begun = g_async_queue_new ();
  g_autoptr (GAsyncQueue) go_on = g_async_queue_new ();
  Count count = { .begun = begun, .go_on = go_on };
  sqlite3 *plain = NULL;

  open_connections (&self, path);
  thread_ask (self.writer, 1, thread_save_blank, NULL, &written);
  read_with (&self, read_count_slowly, &count);
  g_assert_nonnull (g_async_queue_timeout_pop (begun, PATIENCE_S * G_USEC_PER_SEC));

  /* Neither this window's writes wait for what is being read, nor those of another program. */
  thread_ask (self.writer, 2, thread_save_blank, NULL, &written);
  thread_wait_for (&written);
  g_assert_cmpuint (written.kept, ==, 2);
  plain = helper_open_plain (path);
  g_assert_cmpint (helper_run_plain (plain, "UPDATE blank SET name = 'Top' WHERE code = 'B-2'"), ==, SQLITE_OK);
  sqlite3_close (plain);
  g_assert_cmpuint (self.tally.pending, ==, 1);

  g_async_queue_push (go_on, go_on);
  thread_wait_for (&self.tally);
  g_assert_cmpint (count.now, ==, 1);
  g_assert_cmpint (count.later, ==, 1);
  read_with (&self, read_count, &count);
  thread_wait_for (&self.tally);
  g_assert_cmpint (count.now, ==, 2);
  close_connections (&self);
}

static void
test_reads_what_was_asked_before (void)
{
  g_autofree char *path = helper_new_path ();
  Connections self = { 0 };
  Count counts[3] = { { 0 } };

  open_connections (&self, path);
  for (guint i = 0; i < G_N_ELEMENTS (counts); i++)
    {
      thread_ask (self.writer, i, thread_save_blank_slowly, NULL, &self.tally);
      read_with (&self, read_count, &counts[i]);
    }
  thread_wait_for (&self.tally);
  for (guint i = 0; i < G_N_ELEMENTS (counts); i++)
    g_assert_cmpint (counts[i].now, >=, i + 1);
  close_connections (&self);
}

static gboolean
write_by_hand (BbBook    *book,
               gpointer   data,
               GError   **error)
{
  (void) data;

  return bb_db_run_script (book->db, "PRAGMA query_only = OFF; UPDATE blank SET name = 'Top'", error);
}

static void
refused_cb (GObject      *source,
            GAsyncResult *result,
            gpointer      data)
{
  GError **error = data;

  g_assert_false (bb_book_thread_run_finish (BB_BOOK_THREAD (source), result, error));
}

/* By the book's own functions with a word of why, and by the database whatever they do. */
static void
test_reader_cannot_write (void)
{
  g_autofree char *path = helper_new_path ();
  g_autoptr (BbBlank) blank = helper_make_blank ("B-2", "Tee");
  Connections self = { 0 };
  Count count = { 0 };
  g_autoptr (GError) refusal = NULL;
  g_autoptr (GError) by_hand = NULL;

  open_connections (&self, path);
  thread_ask (self.writer, 1, thread_save_blank, NULL, &self.tally);
  bb_book_thread_run_async (self.reader, 0, thread_save_blank, blank, NULL, NULL, refused_cb, &refusal);
  bb_book_thread_run_async (self.reader, 0, write_by_hand, NULL, NULL, NULL, refused_cb, &by_hand);
  read_with (&self, read_count, &count);
  thread_wait_for (&self.tally);
  g_assert_error (refusal, BB_STORE_ERROR, BB_STORE_ERROR_READ_ONLY);
  helper_assert_line (refusal->message);
  g_assert_error (by_hand, BB_STORE_ERROR, BB_STORE_ERROR_IO);
  g_assert_cmpint (count.now, ==, 1);
  close_connections (&self);
}

/* Numbers without end: what stops it is that nobody waits any more. */
static gboolean
count_forever (BbBook    *book,
               gpointer   data,
               GError   **error)
{
  Count *count = data;

  g_async_queue_push (count->begun, count);

  return bb_db_query_integer (book->db, "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) "
                              "SELECT COUNT(*) FROM n", &count->now, error);
}

static void
test_cancel_while_reading (void)
{
  g_autofree char *path = helper_new_path ();
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GAsyncQueue) begun = g_async_queue_new ();
  Connections self = { 0 };
  Count count = { .begun = begun };
  g_autoptr (GError) stopped = NULL;

  open_connections (&self, path);
  bb_book_thread_run_async (self.reader, 0, count_forever, &count, NULL, cancellable, refused_cb, &stopped);
  g_assert_nonnull (g_async_queue_timeout_pop (begun, PATIENCE_S * G_USEC_PER_SEC));
  g_cancellable_cancel (cancellable);
  read_with (&self, read_count, &count);
  thread_wait_for (&self.tally);
  g_assert_error (stopped, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_cmpint (count.now, ==, 0);
  close_connections (&self);
}

static gboolean
read_count_late (BbBook    *book,
                 gpointer   data,
                 GError   **error)
{
  g_usleep (G_USEC_PER_SEC / 5);

  return read_count (book, data, error);
}

/* Whichever is closed first, all is read and written that was asked for, and the file is left whole. */
static void
test_close_while_reading (void)
{
  for (guint i = 0; i < 2; i++)
    {
      g_autofree char *path = helper_new_path ();
      g_autofree char *log = g_strconcat (path, "-wal", NULL);
      Connections self = { 0 };
      Count counts[2] = { { .now = -1 }, { .now = -1 } };

      open_connections (&self, path);
      read_with (&self, read_count_late, &counts[0]);
      thread_ask (self.writer, 1, thread_save_blank_slowly, NULL, &self.tally);
      read_with (&self, read_count_late, &counts[1]);
      bb_book_thread_close (i == 0 ? self.writer : self.reader);
      bb_book_thread_close (i == 0 ? self.reader : self.writer);
      g_assert_true (bb_book_close (self.book, NULL));
      g_assert_cmpint (counts[0].now, >=, 0);
      g_assert_cmpint (counts[1].now, ==, 1);
      g_assert_false (g_file_test (log, G_FILE_TEST_EXISTS));
      g_assert_true (bb_clean_close_holds (path));

      thread_wait_for (&self.tally);
      thread_ask (self.reader, 2, thread_save_blank, NULL, &self.tally);
      thread_wait_for (&self.tally);
      g_assert_cmpuint (self.tally.refused, ==, 1);
      close_connections (&self);
    }
}

/* Nobody holds the threads any more while one of them still reads. */
static void
test_let_go_while_reading (void)
{
  g_autofree char *path = helper_new_path ();
  Connections self = { 0 };
  Count count = { 0 };

  open_connections (&self, path);
  thread_ask (self.writer, 1, thread_save_blank_slowly, NULL, &self.tally);
  read_with (&self, read_count_late, &count);
  g_object_unref (self.writer);
  g_object_unref (self.reader);
  thread_wait_for (&self.tally);
  g_assert_cmpint (count.now, ==, 1);
  helper_close (self.book);
}

/* Overwrites a page where the file is, which a copy would not do. */
static void
spoil_page (const char *path,
            gsize       at)
{
  char page[4096];
  FILE *file = g_fopen (path, "r+b");

  memset (page, 0x5a, sizeof page);
  g_assert_cmpint (fseek (file, (long) at, SEEK_SET), ==, 0);
  g_assert_cmpuint (fwrite (page, sizeof page, 1, file), ==, 1);
  g_assert_cmpint (fclose (file), ==, 0);
}

static gboolean
is_refused (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbBook) book = bb_book_open (path, &error);

  if (book == NULL)
    g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED);

  return book == NULL;
}

/* A page that is found to be bad by who looks through all of them; the last ones hold no part of the schema. */
static gsize
find_telling_page (const char *contents,
                   gsize       length)
{
  g_autofree char *copy = helper_new_path ();

  for (gsize at = length - 4096; at > length / 2; at -= 4096)
    {
      g_assert_true (g_file_set_contents (copy, contents, (gssize) length, NULL));
      spoil_page (copy, at);
      if (is_refused (copy))
        return at;
    }
  g_assert_not_reached ();
}

/* The whole of a book is looked through once: it was sound when it was opened, so what opens it beside that finds no
 * fault with a page that it does not use. Another file of the same name was not looked through by anyone. */
static void
test_looks_through_once (void)
{
  g_autofree char *path = helper_new_path ();
  g_autofree char *contents = NULL;
  gsize length = 0;
  gsize at = 0;
  Connections self = { 0 };
  g_autoptr (Shop) shop = NULL;
  BbBookThread *another = NULL;
  Count count = { 0 };
  g_autoptr (GError) error = NULL;

  self.book = helper_create (path);
  shop = helper_fill (self.book);
  helper_close (self.book);
  g_assert_true (g_file_get_contents (path, &contents, &length, NULL));
  at = find_telling_page (contents, length);

  self.book = helper_open (path);
  spoil_page (path, at);
  self.writer = bb_book_thread_new (self.book, BB_ACCESS_WRITE, NULL);
  self.reader = bb_book_thread_new (self.book, BB_ACCESS_READ, self.writer);
  another = bb_book_thread_new (self.book, BB_ACCESS_WRITE, NULL);
  g_assert_true (bb_book_thread_start (self.writer, &error));
  read_with (&self, read_count, &count);
  thread_wait_for (&self.tally);
  g_assert_true (is_refused (path));

  g_assert_true (g_file_set_contents (path, contents, (gssize) length, NULL));
  spoil_page (path, at);
  g_assert_false (bb_book_thread_start (another, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED);
  thread_close (another);
  close_connections (&self);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/reading-thread/writes-while-reading", test_writes_while_reading);
  g_test_add_func ("/reading-thread/reads-what-was-asked-before", test_reads_what_was_asked_before);
  g_test_add_func ("/reading-thread/reader-cannot-write", test_reader_cannot_write);
  g_test_add_func ("/reading-thread/cancel-while-reading", test_cancel_while_reading);
  g_test_add_func ("/reading-thread/close-while-reading", test_close_while_reading);
  g_test_add_func ("/reading-thread/let-go-while-reading", test_let_go_while_reading);
  g_test_add_func ("/reading-thread/looks-through-once", test_looks_through_once);

  return g_test_run ();
}
