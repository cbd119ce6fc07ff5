/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-document-view"

#include "bb-document-view.h"

#include <glib/gi18n-lib.h>

#include "bb-children.h"
#include "bb-compat.h"
#include "bb-document-save.h"
#include "bb-print-operation.h"

/* Pixels for each point of a page that is looked at: its smallest letters can be read. */
#define SCREEN_SCALE 1.1

/* How long nothing else is asked for before other pages are drawn: meanwhile somebody types. */
#define PAUSE_MS 300

struct _BbDocumentView
{
  GtkBox parent_instance;

  /* template */
  GtkStack *stack;
  GtkBox *pages_box;
  GtkLabel *problem_label;

  /* owned */
  BbSession *session;
  GCancellable *looking;
  char *name;

  /* Owned: an atomic box, which the thread that makes the document holds too, and only reads. */
  gpointer data;
  GDestroyNotify clear_data;

  BbReadFunc make;
  BbPaper paper;
  guint n_pages;
  guint pause_id;
};

G_DEFINE_FINAL_TYPE (BbDocumentView, bb_document_view, GTK_TYPE_BOX)

enum {
  SIGNAL_SAY,
  SIGNAL_SHOWN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

typedef enum {
  USE_LOOK,
  USE_PRINT,
  USE_PDF,
  USE_PNG,
} Use;

/* What a document is made for; @file is where it is saved. */
typedef struct {
  BbDocumentView *view;
  Use use;
  BbPaper paper;
  GFile *file;
  BbDocument *document;
} Job;

/* What the making holds while the view may ask for another document already. */
typedef struct {
  BbReadFunc make;
  gpointer data;
  GDestroyNotify clear_data;
} Making;

static void
job_free (gpointer data)
{
  Job *self = data;

  g_clear_object (&self->view);
  g_clear_object (&self->file);
  g_clear_pointer (&self->document, bb_document_free);
  g_free (self);
}

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

static void
say (BbDocumentView *self,
     char           *text)
{
  g_signal_emit (self, signals[SIGNAL_SAY], 0, text);
  g_free (text);
}

static void
say_problem (BbDocumentView *self,
             Use             use,
             const GError   *error)
{
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  if (use == USE_LOOK)
    {
      gtk_label_set_label (self->problem_label, error->message);
      gtk_stack_set_visible_child_name (self->stack, "problem");
    }
  else
    say (self, g_strdup_printf (use == USE_PRINT ? _("It was not printed: %s") : _("It was not saved: %s"),
                                error->message));
}

static GPtrArray *
draw_pages (Job     *self,
            GError **error)
{
  g_autoptr (GPtrArray) pngs = bb_document_to_pngs (self->document, self->paper, SCREEN_SCALE, error);
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
  Job *self = data;
  GError *error = NULL;
  GPtrArray *done = NULL;

  (void) source;
  if (g_task_return_error_if_cancelled (task))
    return;
  if (self->use == USE_LOOK)
    done = draw_pages (self, &error);
  else if (self->use == USE_PDF)
    done = bb_document_save_pdf (self->document, self->paper, self->file, cancellable, &error);
  else
    done = bb_document_save_pngs (self->document, self->paper, self->file, cancellable, &error);

  if (done != NULL)
    g_task_return_pointer (task, done, (GDestroyNotify) g_ptr_array_unref);
  else
    g_task_return_error (task, error);
}

static void
add_page (BbDocumentView *self,
          GdkPaintable   *page,
          guint           number)
{
  GtkWidget *picture = gtk_picture_new_for_paintable (page);
  g_autofree char *text = g_strdup_printf (_("Page %u of %u"), number, self->n_pages);

  gtk_picture_set_can_shrink (GTK_PICTURE (picture), FALSE);
  gtk_picture_set_alternative_text (GTK_PICTURE (picture), text);
  gtk_widget_set_halign (picture, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (picture, "page-of-paper");
  gtk_box_append (self->pages_box, picture);
}

static void
show_pages (BbDocumentView *self,
            GPtrArray      *pages)
{
  bb_children_empty_box (self->pages_box);
  self->n_pages = pages->len;
  for (guint i = 0; i < pages->len; i++)
    add_page (self, pages->pdata[i], i + 1);
  gtk_stack_set_visible_child_name (self->stack, "pages");
  g_signal_emit (self, signals[SIGNAL_SHOWN], 0);
}

static void
say_saved (BbDocumentView *self,
           GPtrArray      *files)
{
  g_autofree char *first = g_file_get_parse_name (files->pdata[0]);
  g_autofree char *last = g_file_get_parse_name (files->pdata[files->len - 1]);

  if (files->len == 1)
    say (self, g_strdup_printf (_("Saved as %s."), first));
  else
    /* Translators: how many pages there are, and the files of the first and the last. */
    say (self, g_strdup_printf (ngettext ("Saved %u page, from %s to %s.", "Saved %u pages, from %s to %s.",
                                          files->len), files->len, first, last));
}

static void
worked_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  BbDocumentView *self = BB_DOCUMENT_VIEW (source);
  const Job *job = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) done = g_task_propagate_pointer (G_TASK (result), &error);

  (void) data;
  if (done == NULL)
    say_problem (self, job->use, error);
  else if (job->use == USE_LOOK)
    show_pages (self, done);
  else
    say_saved (self, done);
}

static void
printed_cb (BbDocumentView          *self,
            GtkPrintOperationResult  result,
            GtkPrintOperation       *operation)
{
  g_autoptr (GError) error = NULL;

  if (result != GTK_PRINT_OPERATION_RESULT_ERROR)
    return;
  gtk_print_operation_get_error (operation, &error);
  if (error != NULL)
    say_problem (self, USE_PRINT, error);
}

static GtkWindow *
get_window (BbDocumentView *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  return GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL;
}

static void
print (BbDocumentView *self,
       BbPaper         paper,
       BbDocument     *document)
{
  g_autoptr (GtkPrintOperation) operation = bb_print_operation_new (document);
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();
  GtkPaperSize *size = gtk_paper_size_new (paper == BB_PAPER_LETTER ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);

  gtk_page_setup_set_paper_size_and_default_margins (setup, size);
  gtk_paper_size_free (size);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_allow_async (operation, TRUE);
  g_signal_connect_object (operation, "done", G_CALLBACK (printed_cb), self, G_CONNECT_SWAPPED);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, get_window (self), NULL);
}

static void
made_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  Job *job = data;
  g_autoptr (GError) error = NULL;
  BbDocument *document = bb_session_read_finish (BB_SESSION (source), result, &error);
  g_autoptr (GTask) task = NULL;

  if (document == NULL)
    {
      say_problem (job->view, job->use, error);
      job_free (job);
      return;
    }
  if (job->use == USE_PRINT)
    {
      print (job->view, job->paper, document);
      job_free (job);
      return;
    }

  job->document = document;
  task = g_task_new (job->view, job->use == USE_LOOK ? job->view->looking : NULL, worked_cb, NULL);
  g_task_set_task_data (task, job, job_free);
  g_task_run_in_thread (task, work_in_thread);
}

static void
start (BbDocumentView *self,
       Use             use,
       GFile          *file)
{
  Job *job = NULL;
  Making *making = NULL;

  if (self->make == NULL)
    return;

  job = g_new0 (Job, 1);
  job->view = g_object_ref (self);
  job->use = use;
  job->paper = self->paper;
  job->file = file != NULL ? g_object_ref (file) : NULL;
  making = g_new0 (Making, 1);
  *making = (Making) { self->make, g_atomic_rc_box_acquire (self->data), self->clear_data };
  bb_session_read_async (self->session, make_document, making, making_free, (GDestroyNotify) bb_document_free,
                         use == USE_LOOK ? self->looking : NULL, made_cb, job);
}

static void
named_pdf_cb (GFile    *file,
              gpointer  data)
{
  bb_document_view_save (data, file, TRUE);
}

static void
named_png_cb (GFile    *file,
              gpointer  data)
{
  bb_document_view_save (data, file, FALSE);
}

static void
save_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbDocumentView *self = BB_DOCUMENT_VIEW (widget);
  const gboolean as_pdf = g_str_has_suffix (name, "pdf");
  g_autofree char *file = NULL;

  (void) parameter;
  if (self->make == NULL)
    return;
  file = g_strconcat (self->name, as_pdf ? ".pdf" : ".png", NULL);
  bb_compat_save_file (get_window (self), as_pdf ? _("Save as PDF") : _("Save as Pictures"), file,
                       as_pdf ? named_pdf_cb : named_png_cb, g_object_ref (self), g_object_unref);
}

static void
print_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  start (BB_DOCUMENT_VIEW (widget), USE_PRINT, NULL);
}

static gboolean
paused_cb (gpointer data)
{
  BbDocumentView *self = data;

  self->pause_id = 0;
  start (self, USE_LOOK, NULL);

  return G_SOURCE_REMOVE;
}

static void
forget (BbDocumentView *self)
{
  g_clear_handle_id (&self->pause_id, g_source_remove);
  if (self->looking != NULL)
    g_cancellable_cancel (self->looking);
  g_clear_object (&self->looking);
  if (self->data != NULL)
    g_atomic_rc_box_release_full (g_steal_pointer (&self->data), self->clear_data);
}

/**
 * bb_document_view_new:
 *
 * Returns: (transfer floating): a view of nothing
 */
GtkWidget *
bb_document_view_new (void)
{
  return g_object_new (BB_TYPE_DOCUMENT_VIEW, NULL);
}

/**
 * bb_document_view_show:
 * @self: a view
 * @session: the session
 * @make: makes a #BbDocument, on the book's thread
 * @data: (transfer full): an atomic box for @make, which only reads it
 * @clear_data: (nullable): clears what @data has, not the box
 * @paper: what it is shown, printed and saved on
 * @name: how its files are called, without what a name ends in
 *
 * Shows a document; the pages of the one before stay until it is drawn. Printed and saved is this one at once.
 */
void
bb_document_view_show (BbDocumentView *self,
                       BbSession      *session,
                       BbReadFunc      make,
                       gpointer        data,
                       GDestroyNotify  clear_data,
                       BbPaper         paper,
                       const char     *name)
{
  g_return_if_fail (BB_IS_DOCUMENT_VIEW (self) && BB_IS_SESSION (session) && make != NULL && data != NULL);

  forget (self);
  g_set_object (&self->session, session);
  self->make = make;
  self->data = data;
  self->clear_data = clear_data;
  self->paper = paper;
  g_free (self->name);
  self->name = g_strdup (name);
  self->looking = g_cancellable_new ();
  if (self->n_pages == 0)
    start (self, USE_LOOK, NULL);
  else
    self->pause_id = g_timeout_add (PAUSE_MS, paused_cb, self);
}

/**
 * bb_document_view_get_n_pages:
 * @self: a view
 *
 * Returns: how many pages are shown; 0 until the first document is drawn
 */
guint
bb_document_view_get_n_pages (BbDocumentView *self)
{
  g_return_val_if_fail (BB_IS_DOCUMENT_VIEW (self), 0);

  return self->n_pages;
}

/**
 * bb_document_view_save:
 * @self: a view
 * @file: where to
 * @as_pdf: whether as PDF, or as a picture of each page
 *
 * Saves the document, and says how that went.
 */
void
bb_document_view_save (BbDocumentView *self,
                       GFile          *file,
                       gboolean        as_pdf)
{
  g_return_if_fail (BB_IS_DOCUMENT_VIEW (self) && G_IS_FILE (file));

  start (self, as_pdf ? USE_PDF : USE_PNG, file);
}

static void
bb_document_view_dispose (GObject *object)
{
  BbDocumentView *self = BB_DOCUMENT_VIEW (object);

  forget (self);
  self->make = NULL;
  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_DOCUMENT_VIEW);

  G_OBJECT_CLASS (bb_document_view_parent_class)->dispose (object);
}

static void
bb_document_view_finalize (GObject *object)
{
  g_free (BB_DOCUMENT_VIEW (object)->name);

  G_OBJECT_CLASS (bb_document_view_parent_class)->finalize (object);
}

static void
bb_document_view_class_init (BbDocumentViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_document_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_document_view_finalize;

  /**
   * BbDocumentView::say:
   * @text: what a person has to be told
   */
  signals[SIGNAL_SAY] = g_signal_new ("say", BB_TYPE_DOCUMENT_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                      G_TYPE_NONE, 1, G_TYPE_STRING);
  /**
   * BbDocumentView::shown:
   *
   * The pages of the document that was asked for last are shown.
   */
  signals[SIGNAL_SHOWN] = g_signal_new ("shown", BB_TYPE_DOCUMENT_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                        G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-document-view.ui");
  gtk_widget_class_bind_template_child (widget_class, BbDocumentView, stack);
  gtk_widget_class_bind_template_child (widget_class, BbDocumentView, pages_box);
  gtk_widget_class_bind_template_child (widget_class, BbDocumentView, problem_label);
  gtk_widget_class_install_action (widget_class, "document.print", NULL, print_action);
  gtk_widget_class_install_action (widget_class, "document.save-pdf", NULL, save_action);
  gtk_widget_class_install_action (widget_class, "document.save-png", NULL, save_action);
}

static void
bb_document_view_init (BbDocumentView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
