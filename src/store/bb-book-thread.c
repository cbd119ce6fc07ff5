/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-thread.h"

#include <glib/gi18n-lib.h>

#include "bb-book-private.h"

/*
 * @path: where the book is
 * @file: its file, which was looked through when it was opened before
 * @after: what was asked of this thread before has to be done first; none for the one that writes
 * @jobs: #Item in the order in which they are done; its lock is that of @thread too, since the last task to be let go
 *   of may close the thread from within another
 * @thread: none before there is anything to do, and none once closed
 */
struct _BbBookThread {
  GObject parent_instance;

  char *path;
  BbFile file;
  BbAccess access;
  BbBookThread *after;
  GAsyncQueue *jobs;
  GThread *thread;
  gboolean is_closed;
};

G_DEFINE_FINAL_TYPE (BbBookThread, bb_book_thread, G_TYPE_OBJECT)

typedef struct {
  gint64 person;
  BbBookFunc func;
  gpointer data;
  GDestroyNotify free_data;
} Job;

/*
 * @jobs: the queue of the thread that does it: another thread that comes to it hands it on
 * @task: what to do; nothing says that there is no more
 */
typedef struct {
  GAsyncQueue *jobs;
  GTask *task;
} Item;

/*
 * What the thread begins with, all its own: it may outlive the object by a moment.
 * @answers: where it says whether it could open the book, if anyone waits for that
 */
typedef struct {
  char *path;
  BbFile file;
  BbAccess access;
  GAsyncQueue *jobs;
  GAsyncQueue *answers;
} Start;

typedef struct {
  GError *error;
} Answer;

static void
job_free (gpointer data)
{
  Job *job = data;

  if (job->free_data != NULL)
    job->free_data (job->data);
  g_free (job);
}

static Item *
item_new (GAsyncQueue *jobs,
          GTask       *task)
{
  Item *self = g_new0 (Item, 1);

  self->jobs = g_async_queue_ref (jobs);
  self->task = task;

  return self;
}

static void
item_free (gpointer data)
{
  Item *self = data;

  g_clear_object (&self->task);
  g_async_queue_unref (self->jobs);
  g_free (self);
}

static void
start_free (Start *start)
{
  g_free (start->path);
  g_async_queue_unref (start->jobs);
  g_clear_pointer (&start->answers, g_async_queue_unref);
  g_free (start);
}

static Answer *
answer_new (const GError *error)
{
  Answer *self = g_new0 (Answer, 1);

  self->error = error != NULL ? g_error_copy (error) : NULL;

  return self;
}

/* What was written was written, whoever has stopped waiting; a reading that nobody waits for makes room. */
static void
run_job (BbBook *book,
         GTask  *task)
{
  const Job *job = g_task_get_task_data (task);
  GError *error = NULL;

  if (g_task_return_error_if_cancelled (task))
    return;

  bb_book_set_person (book, job->person);
  if (book->access == BB_ACCESS_READ)
    bb_db_set_cancellable (book->db, g_task_get_cancellable (task));
  if (bb_book_in_transaction (book, job->func, job->data, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
  bb_db_set_cancellable (book->db, NULL);
}

static void
hand_on (Item *item)
{
  /* The other thread may be at the end, and the last to hold its queue. */
  g_autoptr (GAsyncQueue) jobs = g_async_queue_ref (item->jobs);

  g_async_queue_push (jobs, item);
}

/* Where the book could not be opened, each job is told why. */
static void
run_jobs (GAsyncQueue  *jobs,
          BbBook       *book,
          const GError *failure)
{
  gboolean is_over = FALSE;

  while (!is_over)
    {
      Item *item = g_async_queue_pop (jobs);

      if (item->jobs != jobs)
        {
          hand_on (item);
          continue;
        }

      is_over = item->task == NULL;
      if (!is_over && book != NULL)
        run_job (book, item->task);
      else if (!is_over)
        g_task_return_error (item->task, g_error_copy (failure));
      item_free (item);
    }
}

static gpointer
book_thread (gpointer data)
{
  Start *start = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (BbBook) book = _bb_book_open_for (start->path, start->access, &start->file, &error);

  if (start->answers != NULL)
    g_async_queue_push (start->answers, answer_new (error));
  run_jobs (start->jobs, book, error);
  if (book != NULL && !bb_book_close (book, &error))
    g_warning ("%s: %s", start->path, error->message);
  start_free (start);

  return NULL;
}

static void
bb_book_thread_dispose (GObject *object)
{
  bb_book_thread_close (BB_BOOK_THREAD (object));

  G_OBJECT_CLASS (bb_book_thread_parent_class)->dispose (object);
}

static void
bb_book_thread_finalize (GObject *object)
{
  BbBookThread *self = BB_BOOK_THREAD (object);

  g_clear_object (&self->after);
  g_async_queue_unref (self->jobs);
  g_free (self->path);

  G_OBJECT_CLASS (bb_book_thread_parent_class)->finalize (object);
}

static void
bb_book_thread_class_init (BbBookThreadClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bb_book_thread_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_book_thread_finalize;
}

static void
bb_book_thread_init (BbBookThread *self)
{
  self->jobs = g_async_queue_new ();
}

/**
 * bb_book_thread_new:
 * @book: a book that is open, and stays so: it is not looked through again
 * @access: whether to write, or only to read: what a function that is to read writes is then refused
 * @after: (nullable): another thread with the book, which does first what it was asked before this one was
 *
 * Nothing is opened before it is needed: see bb_book_thread_start().
 *
 * Returns: (transfer full): the thread to be
 */
BbBookThread *
bb_book_thread_new (BbBook       *book,
                    BbAccess      access,
                    BbBookThread *after)
{
  BbBookThread *self = g_object_new (BB_TYPE_BOOK_THREAD, NULL);

  self->path = g_strdup (bb_book_get_path (book));
  self->file = book->file;
  self->access = access;
  self->after = after != NULL ? g_object_ref (after) : NULL;

  return self;
}

static void
start_thread (BbBookThread *self,
              GAsyncQueue  *answers)
{
  Start *start = g_new0 (Start, 1);

  start->path = g_strdup (self->path);
  start->file = self->file;
  start->access = self->access;
  start->jobs = g_async_queue_ref (self->jobs);
  start->answers = answers != NULL ? g_async_queue_ref (answers) : NULL;

  g_async_queue_lock (self->jobs);
  self->thread = g_thread_new ("book", book_thread, start);
  g_async_queue_unlock (self->jobs);
}

/**
 * bb_book_thread_start:
 * @self: a thread that was not asked for anything yet
 * @error: return location for a #GError
 *
 * Opens the book now, and waits for that. Otherwise it is opened when the thread is first asked for something, and what
 * keeps it from being opened is the answer.
 *
 * Returns: %FALSE with an error as bb_book_open(), and a thread that is closed
 */
gboolean
bb_book_thread_start (BbBookThread  *self,
                      GError       **error)
{
  g_autoptr (GAsyncQueue) answers = g_async_queue_new ();
  g_autofree Answer *answer = NULL;

  g_return_val_if_fail (BB_IS_BOOK_THREAD (self) && self->thread == NULL && !self->is_closed, FALSE);

  start_thread (self, answers);
  answer = g_async_queue_pop (answers);
  if (answer->error == NULL)
    return TRUE;

  bb_book_thread_close (self);
  g_propagate_error (error, answer->error);

  return FALSE;
}

/* Puts an item where the thread comes to it, unless there is none. */
static gboolean
enqueue (BbBookThread *self,
         Item         *item)
{
  gboolean is_running = FALSE;

  g_async_queue_lock (self->jobs);
  is_running = self->thread != NULL;
  if (is_running)
    g_async_queue_push_unlocked (self->jobs, item);
  g_async_queue_unlock (self->jobs);

  return is_running;
}

/**
 * bb_book_thread_run_async:
 * @self: a thread with the book
 * @person: in whose name; 0 for nobody in particular
 * @func: what to do, on that thread, in one transaction
 * @data: data for @func: a snapshot that nobody else touches until @callback
 * @free_data: (nullable): frees @data, on either thread, after @callback; %NULL if the caller does
 * @cancellable: (nullable): keeps @func from starting; once it writes it ends, while reading stops
 * @callback: (nullable): what to call on this thread's main context
 * @user_data: data for @callback
 *
 * Does something with the book after all that was asked for before.
 */
void
bb_book_thread_run_async (BbBookThread        *self,
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
  Item *item = NULL;

  g_return_if_fail (BB_IS_BOOK_THREAD (self) && func != NULL);

  job = g_new0 (Job, 1);
  job->person = person;
  job->func = func;
  job->data = data;
  job->free_data = free_data;

  task = g_task_new (self, cancellable, callback, user_data);
  g_task_set_name (task, self->access == BB_ACCESS_WRITE ? "[Blankbook] write" : "[Blankbook] read");
  g_task_set_task_data (task, job, job_free);
  /* What was written was written: the answer says so, also to one who has stopped waiting since. */
  g_task_set_check_cancellable (task, FALSE);

  if (self->is_closed)
    {
      g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_CLOSED, _("The book is closed."));
      return;
    }

  if (self->thread == NULL)
    start_thread (self, NULL);
  item = item_new (self->jobs, g_steal_pointer (&task));
  if (self->after == NULL || !enqueue (self->after, item))
    enqueue (self, item);
}

/**
 * bb_book_thread_run_finish:
 * @self: a thread with the book
 * @result: what the callback was given
 * @error: return location for a #GError
 *
 * Returns: %TRUE if all was done; %FALSE with the error of what was to be done, if nothing was
 */
gboolean
bb_book_thread_run_finish (BbBookThread  *self,
                           GAsyncResult  *result,
                           GError       **error)
{
  g_return_val_if_fail (g_task_is_valid (result, self), FALSE);

  return g_task_propagate_boolean (G_TASK (result), error);
}

/**
 * bb_book_thread_get_data:
 * @self: a thread with the book
 * @result: what the callback was given
 *
 * Returns: (transfer none): the data of the function that ran, with what it left there, like a record's new key;
 *   valid until the callback returns
 */
gpointer
bb_book_thread_get_data (BbBookThread *self,
                         GAsyncResult *result)
{
  g_return_val_if_fail (g_task_is_valid (result, self), NULL);

  return ((const Job *) g_task_get_task_data (G_TASK (result)))->data;
}

/**
 * bb_book_thread_close:
 * @self: a thread with the book
 *
 * Waits until all that was asked for is done, and closes the book. What is asked for later is refused. Closing again
 * does nothing. Of two threads, the one that comes after the other may be closed before it or after it.
 */
void
bb_book_thread_close (BbBookThread *self)
{
  GThread *thread = NULL;
  Item *end = NULL;

  g_return_if_fail (BB_IS_BOOK_THREAD (self));

  self->is_closed = TRUE;
  if (self->thread == NULL)
    return;

  end = item_new (self->jobs, NULL);
  if (self->after == NULL || !enqueue (self->after, end))
    enqueue (self, end);
  g_async_queue_lock (self->jobs);
  thread = g_steal_pointer (&self->thread);
  g_async_queue_unlock (self->jobs);

  /* The last task to be let go of may take the object along, on its own thread. */
  if (thread == g_thread_self ())
    g_thread_unref (thread);
  else
    g_thread_join (thread);
}
