/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-session-scans.h"

#include <glib/gi18n-lib.h>

#include "bb-book-pictures.h"

typedef struct {
  BbScan *scan;
  BbPicture *picture;
  GBytes *content;
} Work;

typedef struct {
  gint64 reading;
  BbSubject subject;
  int grade;
} Grade;

static void
work_free (gpointer data)
{
  Work *self = data;

  g_clear_pointer (&self->scan, bb_scan_free);
  g_clear_pointer (&self->picture, bb_picture_free);
  g_clear_pointer (&self->content, g_bytes_unref);
  g_free (self);
}

static gpointer
read_content (BbBook    *book,
              gpointer   data,
              GError   **error)
{
  const gint64 *picture = data;
  GError *local = NULL;
  GBytes *content = bb_book_load_content (book, *picture, &local);

  if (local != NULL)
    g_propagate_error (error, local);
  else if (content == NULL)
    g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND,
                         _("The picture of this scan is not in this book: its numbers came from a file of records. "
                           "Choose the picture again to see it."));

  return content;
}

/**
 * bb_session_load_content_async:
 * @self: a session
 * @picture: a picture's key
 * @cancellable: (nullable): drops the result, and the reading where it has not begun
 * @callback: what to call with it
 * @data: for @callback
 *
 * Reads a picture's bytes off the main loop.
 */
void
bb_session_load_content_async (BbSession           *self,
                               gint64               picture,
                               GCancellable        *cancellable,
                               GAsyncReadyCallback  callback,
                               gpointer             data)
{
  bb_session_read_async (self, read_content, g_memdup2 (&picture, sizeof picture), g_free,
                         (GDestroyNotify) g_bytes_unref, cancellable, callback, data);
}

/**
 * bb_session_load_content_finish:
 * @self: a session
 * @result: what the callback was given
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): the bytes; %NULL with an error
 */
GBytes *
bb_session_load_content_finish (BbSession     *self,
                                GAsyncResult  *result,
                                GError       **error)
{
  return bb_session_read_finish (self, result, error);
}

/* A specimen has one scan of a subject after so many washes: another takes its place. */
static gboolean
find_place (BbBook  *book,
            BbScan  *scan,
            GError **error)
{
  g_autoptr (GPtrArray) scans = bb_book_load_scans (book, scan->wash_test, error);

  for (guint i = 0; scans != NULL && i < scans->len; i++)
    {
      const BbScan *stored = scans->pdata[i];

      if (stored->subject == scan->subject && stored->cycles == scan->cycles)
        scan->id = stored->id;
    }

  return scans != NULL;
}

static gboolean
write_scan (BbBook   *book,
            gpointer  data,
            GError  **error)
{
  Work *self = data;

  if (self->picture != NULL)
    {
      if (!bb_book_add_picture (book, self->picture, self->content, error))
        return FALSE;
      self->scan->picture = self->picture->id;
    }

  return find_place (book, self->scan, error) && bb_book_save (book, &bb_scan_table, self->scan, error);
}

static gboolean
write_grade (BbBook   *book,
             gpointer  data,
             GError  **error)
{
  const Grade *self = data;
  g_autoptr (BbReading) reading = bb_book_load (book, &bb_reading_table, self->reading, error);

  if (reading == NULL)
    return FALSE;

  bb_field_set_choice (bb_subject_get_measured_field (self->subject), reading, self->grade);

  return bb_book_save (book, &bb_reading_table, reading, error);
}

static void
scan_written_cb (GObject      *source,
                 GAsyncResult *result,
                 gpointer      data)
{
  g_autoptr (GTask) task = data;
  GError *error = NULL;

  if (bb_session_write_finish (BB_SESSION (source), result, &error))
    g_task_return_pointer (task, bb_record_copy (&bb_scan_table, ((Work *) g_task_get_task_data (task))->scan),
                           (GDestroyNotify) bb_scan_free);
  else
    g_task_return_error (task, error);
}

/**
 * bb_session_save_scan_async:
 * @self: a session
 * @scan: a scan that was measured
 * @picture: (nullable): its picture, where the book may not have that yet
 * @content: (nullable): the picture's bytes
 * @callback: what to call when it is stored
 * @data: for @callback
 *
 * Stores a scan, and what it is of with it, off the main loop: in the place of one of the same specimen, subject and
 * washes, if there is one.
 */
void
bb_session_save_scan_async (BbSession           *self,
                            const BbScan        *scan,
                            const BbPicture     *picture,
                            GBytes              *content,
                            GAsyncReadyCallback  callback,
                            gpointer             data)
{
  GTask *task = NULL;
  Work *work = NULL;

  g_return_if_fail (BB_IS_SESSION (self) && scan != NULL && (picture == NULL || content != NULL));

  work = g_new0 (Work, 1);
  work->scan = bb_record_copy (&bb_scan_table, scan);
  if (picture != NULL)
    {
      work->picture = bb_record_copy (&bb_picture_table, picture);
      work->content = g_bytes_ref (content);
    }
  task = g_task_new (self, NULL, callback, data);
  g_task_set_task_data (task, work, work_free);
  /* The task holds what is written until both are done with it. */
  bb_session_write_async (self, write_scan, work, NULL, scan_written_cb, task);
}

/**
 * bb_session_save_scan_finish:
 * @self: a session
 * @result: what the callback was given
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): the scan as it stands in the book; %NULL with an error
 */
BbScan *
bb_session_save_scan_finish (BbSession     *self,
                             GAsyncResult  *result,
                             GError       **error)
{
  g_return_val_if_fail (g_task_is_valid (result, self), NULL);

  return g_task_propagate_pointer (G_TASK (result), error);
}

/**
 * bb_session_keep_grade:
 * @self: a session
 * @reading: a reading's key
 * @subject: what was measured
 * @grade: the grade by two scans
 *
 * Writes a measured grade into a reading, beside the eye's.
 */
void
bb_session_keep_grade (BbSession *self,
                       gint64     reading,
                       BbSubject  subject,
                       int        grade)
{
  Grade *work = NULL;

  g_return_if_fail (BB_IS_SESSION (self));

  work = g_new0 (Grade, 1);
  *work = (Grade) { reading, subject, grade };
  bb_session_write (self, write_grade, work, g_free);
}
