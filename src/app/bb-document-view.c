/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-document-view"

#include "bb-document-view.h"

#include <glib/gi18n-lib.h>

#include "bb-children.h"
#include "bb-print-operation.h"
#include "bb-save.h"

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
  BbDocumentSource *source;
  GCancellable *looking;
  char *name;

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

static void
say (BbDocumentView *self,
     char           *text)
{
  g_signal_emit (self, signals[SIGNAL_SAY], 0, text);
  g_free (text);
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
drawn_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (BbDocumentView) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) pages = bb_document_source_draw_finish (BB_DOCUMENT_SOURCE (source), result, &error);

  if (pages != NULL)
    show_pages (self, pages);
  else if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    {
      gtk_label_set_label (self->problem_label, error->message);
      gtk_stack_set_visible_child_name (self->stack, "problem");
    }
}

static void
look (BbDocumentView *self)
{
  bb_document_source_draw_async (self->source, SCREEN_SCALE, self->looking, drawn_cb, g_object_ref (self));
}

static void
saved_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (BbDocumentView) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) files = bb_document_source_save_finish (BB_DOCUMENT_SOURCE (source), result, &error);

  if (files != NULL)
    say_saved (self, files);
  else
    say (self, g_strdup_printf (_("It was not saved: %s"), error->message));
}

static void
say_not_printed (BbDocumentView *self,
                 const GError   *error)
{
  say (self, g_strdup_printf (_("It was not printed: %s"), error->message));
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
  g_autoptr (BbPrintOperation) operation = bb_print_operation_new_document (document, paper);

  g_signal_connect_object (operation, "failed", G_CALLBACK (say_not_printed), self, G_CONNECT_SWAPPED);
  bb_print_operation_ask (operation, get_window (self));
}

static void
made_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  g_autoptr (BbDocumentView) self = data;
  g_autoptr (GError) error = NULL;
  BbDocument *document = bb_document_source_make_finish (BB_DOCUMENT_SOURCE (source), result, &error);

  if (document != NULL)
    print (self, bb_document_source_get_paper (BB_DOCUMENT_SOURCE (source)), document);
  else
    say_not_printed (self, error);
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
  if (self->source == NULL)
    return;
  file = g_strconcat (self->name, as_pdf ? ".pdf" : ".png", NULL);
  bb_save_ask (widget, as_pdf ? _("Save as PDF") : _("Save as Pictures"), file, as_pdf ? named_pdf_cb : named_png_cb,
               g_object_ref (self), g_object_unref);
}

static void
print_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  BbDocumentView *self = BB_DOCUMENT_VIEW (widget);

  (void) name;
  (void) parameter;

  if (self->source != NULL)
    bb_document_source_make_async (self->source, made_cb, g_object_ref (self));
}

static gboolean
paused_cb (gpointer data)
{
  BbDocumentView *self = data;

  self->pause_id = 0;
  look (self);

  return G_SOURCE_REMOVE;
}

static void
forget (BbDocumentView *self)
{
  g_clear_handle_id (&self->pause_id, g_source_remove);
  if (self->looking != NULL)
    g_cancellable_cancel (self->looking);
  g_clear_object (&self->looking);
  g_clear_object (&self->source);
}

/**
 * bb_document_view_show:
 * @self: a view
 * @source: where the document comes from
 * @name: how its files are called, without what a name ends in
 *
 * Shows a document; the pages of the one before stay until it is drawn. Printed and saved is this one at once.
 */
void
bb_document_view_show (BbDocumentView   *self,
                       BbDocumentSource *source,
                       const char       *name)
{
  g_return_if_fail (BB_IS_DOCUMENT_VIEW (self) && BB_IS_DOCUMENT_SOURCE (source) && name != NULL);

  forget (self);
  self->source = g_object_ref (source);
  g_free (self->name);
  self->name = g_strdup (name);
  self->looking = g_cancellable_new ();
  if (self->n_pages == 0)
    look (self);
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

  if (self->source != NULL)
    bb_document_source_save_async (self->source, file, as_pdf, saved_cb, g_object_ref (self));
}

static void
bb_document_view_dispose (GObject *object)
{
  BbDocumentView *self = BB_DOCUMENT_VIEW (object);

  forget (self);
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
