/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "thread-helpers.h"

#include "store-helpers.h"

static void
done_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  Tally *tally = data;
  g_autoptr (GError) error = NULL;

  g_assert_true (g_thread_self () == tally->main_thread);
  tally->pending--;
  if (bb_book_thread_run_finish (BB_BOOK_THREAD (source), result, &error))
    {
      tally->kept++;
      tally->last_id = ((const BbBlank *) bb_book_thread_get_data (BB_BOOK_THREAD (source), result))->id;
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

void
thread_wait_for (Tally *tally)
{
  guint timeout = g_timeout_add_seconds (PATIENCE_S, timeout_cb, NULL);

  while (tally->pending > 0)
    g_main_context_iteration (NULL, TRUE);
  g_source_remove (timeout);
}

gboolean
thread_save_blank (BbBook    *book,
                   gpointer   data,
                   GError   **error)
{
  return bb_book_save (book, &bb_blank_table, data, error);
}

gboolean
thread_save_blank_slowly (BbBook    *book,
                          gpointer   data,
                          GError   **error)
{
  g_usleep (G_USEC_PER_SEC / 5);

  return bb_book_save (book, &bb_blank_table, data, error);
}

void
thread_ask (BbBookThread *thread,
            guint         number,
            BbBookFunc    func,
            GCancellable *cancellable,
            Tally        *tally)
{
  g_autofree char *code = g_strdup_printf ("B-%u", number);

  tally->pending++;
  bb_book_thread_run_async (thread, 0, func, helper_make_blank (code, "Tee"), (GDestroyNotify) bb_blank_free,
                            cancellable, done_cb, tally);
}

/* The thread lets go of a task a moment after its answer; closing waits for that. */
void
thread_close (BbBookThread *thread)
{
  bb_book_thread_close (thread);
  g_assert_finalize_object (thread);
}
