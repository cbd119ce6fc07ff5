/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-writer.h"

#include <glib/gi18n-lib.h>

/*
 * @thread: the thread that writes; none once closed
 * @jobs: #GTask in the order in which they run, then #end_of_jobs
 */
struct _BbWriter {
  GObject parent_instance;

  GThread *thread;
  GAsyncQueue *jobs;
};

G_DEFINE_FINAL_TYPE (BbWriter, bb_writer, G_TYPE_OBJECT)

typedef struct {
  gint64 person;
  BbBookFunc func;
  gpointer data;
  GDestroyNotify free_data;
} Job;

/* What the thread begins with, all its own: it may outlive the writer by a moment. */
typedef struct {
  char *path;
  GAsyncQueue *jobs;
  GAsyncQueue *answers;
} Start;

typedef struct {
  GError *error;
} Answer;

static const char end_of_jobs = '\0';

static void
job_free (gpointer data)
{
  Job *job = data;

  if (job->free_data != NULL)
    job->free_data (job->data);
  g_free (job);
}

static void
start_free (Start *start)
{
  g_free (start->path);
  g_async_queue_unref (start->jobs);
  g_async_queue_unref (start->answers);
  g_free (start);
}

static void
run_job (BbBook *book,
         GTask  *task)
{
  const Job *job = g_task_get_task_data (task);
  GError *error = NULL;

  if (g_task_return_error_if_cancelled (task))
    return;

  bb_book_set_person (book, job->person);
  if (bb_book_in_transaction (book, job->func, job->data, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
run_jobs (BbBook      *book,
          GAsyncQueue *jobs)
{
  gpointer job = NULL;
  g_autoptr (GError) error = NULL;

  while ((job = g_async_queue_pop (jobs)) != &end_of_jobs)
    {
      run_job (book, job);
      g_object_unref (job);
    }

  if (!bb_book_close (book, &error))
    g_warning ("%s: %s", bb_book_get_path (book), error->message);
}

static gpointer
writer_thread (gpointer data)
{
  Start *start = data;
  Answer *answer = g_new0 (Answer, 1);
  g_autoptr (BbBook) book = bb_book_open (start->path, &answer->error);

  g_async_queue_push (start->answers, answer);
  if (book != NULL)
    run_jobs (book, start->jobs);
  start_free (start);

  return NULL;
}

static void
bb_writer_dispose (GObject *object)
{
  bb_writer_close (BB_WRITER (object));

  G_OBJECT_CLASS (bb_writer_parent_class)->dispose (object);
}

static void
bb_writer_finalize (GObject *object)
{
  g_async_queue_unref (BB_WRITER (object)->jobs);

  G_OBJECT_CLASS (bb_writer_parent_class)->finalize (object);
}

static void
bb_writer_class_init (BbWriterClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bb_writer_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_writer_finalize;
}

static void
bb_writer_init (BbWriter *self)
{
  self->jobs = g_async_queue_new ();
}

/**
 * bb_writer_new:
 * @path: where the book is
 * @error: return location for a #GError
 *
 * Starts a thread that opens the book, and waits for that.
 *
 * Returns: (transfer full) (nullable): the writer, or %NULL with an error as bb_book_open()
 */
BbWriter *
bb_writer_new (const char  *path,
               GError     **error)
{
  g_autoptr (BbWriter) self = g_object_new (BB_TYPE_WRITER, NULL);
  g_autoptr (GAsyncQueue) answers = g_async_queue_new ();
  g_autofree Answer *answer = NULL;
  Start *start = g_new0 (Start, 1);

  g_return_val_if_fail (path != NULL, NULL);

  start->path = g_strdup (path);
  start->jobs = g_async_queue_ref (self->jobs);
  start->answers = g_async_queue_ref (answers);
  self->thread = g_thread_new ("book", writer_thread, start);

  answer = g_async_queue_pop (answers);
  if (answer->error == NULL)
    return g_steal_pointer (&self);
  g_propagate_error (error, answer->error);

  return NULL;
}

/**
 * bb_writer_run_async:
 * @self: a writer
 * @person: in whose name; 0 for nobody in particular
 * @func: what to do, on the writer's thread, in one transaction
 * @data: data for @func: a snapshot that nobody else touches until @callback
 * @free_data: (nullable): frees @data, on either thread, after @callback; %NULL if the caller does
 * @cancellable: (nullable): keeps @func from starting; once it runs, it ends
 * @callback: (nullable): what to call on this thread's main context
 * @user_data: data for @callback
 *
 * Writes the book after all that was asked for before.
 */
void
bb_writer_run_async (BbWriter            *self,
                     gint64               person,
                     BbBookFunc           func,
                     gpointer             data,
                     GDestroyNotify       free_data,
                     GCancellable        *cancellable,
                     GAsyncReadyCallback  callback,
                     gpointer             user_data)
{
  g_autoptr (GTask) task = NULL;
  Job *job = NULL;

  g_return_if_fail (BB_IS_WRITER (self) && func != NULL);

  job = g_new0 (Job, 1);
  job->person = person;
  job->func = func;
  job->data = data;
  job->free_data = free_data;

  task = g_task_new (self, cancellable, callback, user_data);
  g_task_set_name (task, "[Blankbook] write");
  g_task_set_task_data (task, job, job_free);
  /* What was written was written: the answer says so, also to one who has stopped waiting since. */
  g_task_set_check_cancellable (task, FALSE);

  if (self->thread == NULL)
    g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_CLOSED, _("The book is closed."));
  else
    g_async_queue_push (self->jobs, g_steal_pointer (&task));
}

/**
 * bb_writer_run_finish:
 * @self: a writer
 * @result: what the callback was given
 * @error: return location for a #GError
 *
 * Returns: %TRUE if all was kept; %FALSE with the error of what was to be done, if nothing was
 */
gboolean
bb_writer_run_finish (BbWriter      *self,
                      GAsyncResult  *result,
                      GError       **error)
{
  g_return_val_if_fail (g_task_is_valid (result, self), FALSE);

  return g_task_propagate_boolean (G_TASK (result), error);
}

/**
 * bb_writer_get_data:
 * @self: a writer
 * @result: what the callback was given
 *
 * Returns: (transfer none): the data of the function that ran, with what it left there, like a record's new key;
 *   valid until the callback returns
 */
gpointer
bb_writer_get_data (BbWriter     *self,
                    GAsyncResult *result)
{
  g_return_val_if_fail (g_task_is_valid (result, self), NULL);

  return ((const Job *) g_task_get_task_data (G_TASK (result)))->data;
}

/**
 * bb_writer_close:
 * @self: a writer
 *
 * Waits until all that was asked for is written, and closes the book. What is asked for later is refused. Closing again
 * does nothing.
 */
void
bb_writer_close (BbWriter *self)
{
  GThread *thread = NULL;

  g_return_if_fail (BB_IS_WRITER (self));

  thread = g_steal_pointer (&self->thread);
  if (thread == NULL)
    return;

  g_async_queue_push (self->jobs, (gpointer) &end_of_jobs);
  /* The last task to be let go of may take the writer along, on its own thread. */
  if (thread == g_thread_self ())
    g_thread_unref (thread);
  else
    g_thread_join (thread);
}
