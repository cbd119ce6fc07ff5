/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-document-source"

#include "bb-document-source.h"

#include <gdk/gdk.h>

#include "bb-save-document.h"

struct _BbDocumentSource
{
  GObject parent_instance;

  /* owned */
  BbSession *session;

  /* Owned: an atomic box, which the thread that makes the document holds too, and only reads. */
  gpointer data;
  GDestroyNotify clear_data;

  BbReadFunc make;
  BbPaper paper;
};

G_DEFINE_FINAL_TYPE (BbDocumentSource, bb_document_source, G_TYPE_OBJECT)

/* What the making holds while the source may be gone already. */
typedef struct {
  BbReadFunc make;
  gpointer data;
  GDestroyNotify clear_data;
} Making;

static void
making_free (gpointer data)
{
  Making *self = data;

  g_atomic_rc_box_release_full (self->data, self->clear_data);
  g_free (self);
}

static gpointer
make_document (BbBook    *book,
               gpointer   data,
               GError   **error)
{
  const Making *self = data;

  return self->make (book, self->data, error);
}

typedef enum {
  USE_MAKE,
  USE_DRAW,
  USE_PDF,
  USE_PNG,
} Use;

/* What a document is made for: @scale is of what is drawn, @save is where. */
typedef struct {
  Use use;
  BbPaper paper;
  double scale;
  BbSave *save;
  BbDocument *document;
} Job;

static void
job_free (gpointer data)
{
  Job *self = data;

  g_clear_pointer (&self->save, bb_save_free);
  g_clear_pointer (&self->document, bb_document_free);
  g_free (self);
}

static GPtrArray *
draw_pages (const Job  *self,
            GError    **error)
{
  g_autoptr (GPtrArray) pngs = bb_document_to_pngs (self->document, self->paper, self->scale, error);
  g_autoptr (GPtrArray) pages = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; pngs != NULL && i < pngs->len; i++)
    {
      GdkTexture *page = gdk_texture_new_from_bytes (pngs->pdata[i], error);

      if (page == NULL)
        return NULL;
      g_ptr_array_add (pages, page);
    }

  return pngs != NULL ? g_steal_pointer (&pages) : NULL;
}

static void
work_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  const Job *self = data;
  GError *error = NULL;
  GPtrArray *done = NULL;

  (void) source;
  if (g_task_return_error_if_cancelled (task))
    return;
  if (self->use == USE_DRAW)
    done = draw_pages (self, &error);
  else if (self->use == USE_PDF)
    done = bb_save_document_pdf (self->save, self->document, self->paper, cancellable, &error);
  else
    done = bb_save_document_pngs (self->save, self->document, self->paper, cancellable, &error);

  if (done != NULL)
    g_task_return_pointer (task, done, (GDestroyNotify) g_ptr_array_unref);
  else
    g_task_return_error (task, error);
}

static void
made_cb (GObject      *session,
         GAsyncResult *result,
         gpointer      data)
{
  g_autoptr (GTask) task = data;
  Job *job = g_task_get_task_data (task);
  GError *error = NULL;
  BbDocument *document = bb_session_read_finish (BB_SESSION (session), result, &error);

  if (document == NULL)
    {
      g_task_return_error (task, error);
      return;
    }
  if (job->use == USE_MAKE)
    {
      g_task_return_pointer (task, document, (GDestroyNotify) bb_document_free);
      return;
    }
  job->document = document;
  g_task_run_in_thread (task, work_in_thread);
}

static void
start (BbDocumentSource    *self,
       Job                  job,
       GCancellable        *cancellable,
       GAsyncReadyCallback  callback,
       gpointer             user_data)
{
  const Making making = { self->make, g_atomic_rc_box_acquire (self->data), self->clear_data };
  GTask *task = g_task_new (self, cancellable, callback, user_data);

  job.paper = self->paper;
  g_task_set_task_data (task, g_memdup2 (&job, sizeof job), job_free);
  bb_session_read_async (self->session, make_document, g_memdup2 (&making, sizeof making), making_free,
                         (GDestroyNotify) bb_document_free, cancellable, made_cb, task);
}

static void
bb_document_source_finalize (GObject *object)
{
  BbDocumentSource *self = BB_DOCUMENT_SOURCE (object);

  g_clear_object (&self->session);
  g_atomic_rc_box_release_full (self->data, self->clear_data);

  G_OBJECT_CLASS (bb_document_source_parent_class)->finalize (object);
}

static void
bb_document_source_class_init (BbDocumentSourceClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bb_document_source_finalize;
}

static void
bb_document_source_init (BbDocumentSource *self)
{
  (void) self;
}

/**
 * bb_document_source_new:
 * @session: the session
 * @make: makes a #BbDocument, on the book's thread
 * @data: (transfer full): an atomic box for @make, which only reads it
 * @clear_data: (nullable): clears what @data has, not the box
 * @paper: what the document is drawn, printed and saved on
 *
 * Returns: (transfer full): where the document comes from
 */
BbDocumentSource *
bb_document_source_new (BbSession      *session,
                        BbReadFunc      make,
                        gpointer        data,
                        GDestroyNotify  clear_data,
                        BbPaper         paper)
{
  BbDocumentSource *self = NULL;

  g_return_val_if_fail (BB_IS_SESSION (session) && make != NULL && data != NULL, NULL);

  self = g_object_new (BB_TYPE_DOCUMENT_SOURCE, NULL);
  self->session = g_object_ref (session);
  self->make = make;
  self->data = data;
  self->clear_data = clear_data;
  self->paper = paper;

  return self;
}

/**
 * bb_document_source_get_paper:
 * @self: a source
 *
 * Returns: what its document is drawn, printed and saved on
 */
BbPaper
bb_document_source_get_paper (BbDocumentSource *self)
{
  g_return_val_if_fail (BB_IS_DOCUMENT_SOURCE (self), BB_PAPER_A4);

  return self->paper;
}

/**
 * bb_document_source_make_async:
 * @self: a source
 * @callback: called when the document is made
 * @user_data: for @callback
 *
 * Makes the document, and no more.
 */
void
bb_document_source_make_async (BbDocumentSource    *self,
                               GAsyncReadyCallback  callback,
                               gpointer             user_data)
{
  g_return_if_fail (BB_IS_DOCUMENT_SOURCE (self));

  start (self, (Job) { .use = USE_MAKE }, NULL, callback, user_data);
}

/**
 * bb_document_source_make_finish:
 * @self: a source
 * @result: what the callback was given
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): the document; %NULL with an error of the book
 */
BbDocument *
bb_document_source_make_finish (BbDocumentSource  *self,
                                GAsyncResult      *result,
                                GError           **error)
{
  g_return_val_if_fail (g_task_is_valid (result, self), NULL);

  return g_task_propagate_pointer (G_TASK (result), error);
}

/**
 * bb_document_source_draw_async:
 * @self: a source
 * @scale: pixels for each point
 * @cancellable: (nullable): stops it
 * @callback: called when the pages are drawn
 * @user_data: for @callback
 *
 * Makes the document, and draws its pages.
 */
void
bb_document_source_draw_async (BbDocumentSource    *self,
                               double               scale,
                               GCancellable        *cancellable,
                               GAsyncReadyCallback  callback,
                               gpointer             user_data)
{
  g_return_if_fail (BB_IS_DOCUMENT_SOURCE (self) && scale > 0);

  start (self, (Job) { .use = USE_DRAW, .scale = scale }, cancellable, callback, user_data);
}

/**
 * bb_document_source_draw_finish:
 * @self: a source
 * @result: what the callback was given
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable) (element-type GdkTexture): the pages; %NULL with an error of the book or of
 *   drawing, or %G_IO_ERROR_CANCELLED
 */
GPtrArray *
bb_document_source_draw_finish (BbDocumentSource  *self,
                                GAsyncResult      *result,
                                GError           **error)
{
  g_return_val_if_fail (g_task_is_valid (result, self), NULL);

  return g_task_propagate_pointer (G_TASK (result), error);
}

/**
 * bb_document_source_save_async:
 * @self: a source
 * @file: a file that a person has just named
 * @as_pdf: whether as PDF, or as a picture of each page
 * @callback: called when it is saved
 * @user_data: for @callback
 *
 * Makes the document, and saves it: see bb_save_document_pdf() and bb_save_document_pngs().
 */
void
bb_document_source_save_async (BbDocumentSource    *self,
                               GFile               *file,
                               gboolean             as_pdf,
                               GAsyncReadyCallback  callback,
                               gpointer             user_data)
{
  g_return_if_fail (BB_IS_DOCUMENT_SOURCE (self) && G_IS_FILE (file));

  start (self, (Job) { .use = as_pdf ? USE_PDF : USE_PNG, .save = bb_save_new (file, FALSE) }, NULL, callback,
         user_data);
}

/**
 * bb_document_source_save_finish:
 * @self: a source
 * @result: what the callback was given
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable) (element-type GFile): what was written; %NULL with an error of the book, of
 *   drawing or of writing
 */
GPtrArray *
bb_document_source_save_finish (BbDocumentSource  *self,
                                GAsyncResult      *result,
                                GError           **error)
{
  g_return_val_if_fail (g_task_is_valid (result, self), NULL);

  return g_task_propagate_pointer (G_TASK (result), error);
}
