/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-print-operation"

#include "bb-print-operation.h"

struct _BbPrintOperation
{
  GtkPrintOperation parent_instance;

  /* owned: one of them */
  BbDocument *document;
  BbLabelSheets *sheets;

  /* Why a page could not be drawn; NULL while all could. */
  GError *error;
};

G_DEFINE_FINAL_TYPE (BbPrintOperation, bb_print_operation, GTK_TYPE_PRINT_OPERATION)

enum {
  SIGNAL_FAILED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
bb_print_operation_begin_print (GtkPrintOperation *operation,
                                GtkPrintContext   *context)
{
  BbPrintOperation *self = BB_PRINT_OPERATION (operation);
  guint n_pages = self->sheets != NULL ? bb_label_sheets_count_pages (self->sheets)
                                       : bb_document_lay_out (self->document, gtk_print_context_get_width (context),
                                                              gtk_print_context_get_height (context));

  gtk_print_operation_set_n_pages (operation, (int) n_pages);
}

static void
bb_print_operation_draw_page (GtkPrintOperation *operation,
                              GtkPrintContext   *context,
                              int                page)
{
  BbPrintOperation *self = BB_PRINT_OPERATION (operation);
  cairo_t *cr = gtk_print_context_get_cairo_context (context);

  if (self->error != NULL)
    return;
  if (self->document != NULL)
    bb_document_draw_page (self->document, cr, (guint) page);
  else if (!bb_label_sheets_draw_page (self->sheets, (guint) page, cr, &self->error))
    gtk_print_operation_cancel (operation);
}

static void
bb_print_operation_done (GtkPrintOperation       *operation,
                         GtkPrintOperationResult  result)
{
  BbPrintOperation *self = BB_PRINT_OPERATION (operation);

  if (self->error == NULL && result == GTK_PRINT_OPERATION_RESULT_ERROR)
    gtk_print_operation_get_error (operation, &self->error);
  if (self->error != NULL)
    g_signal_emit (self, signals[SIGNAL_FAILED], 0, self->error);
}

static void
bb_print_operation_finalize (GObject *object)
{
  BbPrintOperation *self = BB_PRINT_OPERATION (object);

  g_clear_pointer (&self->document, bb_document_free);
  g_clear_pointer (&self->sheets, bb_label_sheets_free);
  g_clear_error (&self->error);

  G_OBJECT_CLASS (bb_print_operation_parent_class)->finalize (object);
}

static void
bb_print_operation_class_init (BbPrintOperationClass *klass)
{
  GtkPrintOperationClass *operation_class = GTK_PRINT_OPERATION_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = bb_print_operation_finalize;
  operation_class->begin_print = bb_print_operation_begin_print;
  operation_class->draw_page = bb_print_operation_draw_page;
  operation_class->done = bb_print_operation_done;

  /**
   * BbPrintOperation::failed:
   * @error: (type GError): why it was not printed
   */
  signals[SIGNAL_FAILED] = g_signal_new ("failed", BB_TYPE_PRINT_OPERATION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 1, G_TYPE_ERROR);
}

static void
bb_print_operation_init (BbPrintOperation *self)
{
  /* What is printed has margins of its own, in points. */
  gtk_print_operation_set_use_full_page (GTK_PRINT_OPERATION (self), TRUE);
  gtk_print_operation_set_unit (GTK_PRINT_OPERATION (self), GTK_UNIT_POINTS);
  gtk_print_operation_set_allow_async (GTK_PRINT_OPERATION (self), TRUE);
}

static BbPrintOperation *
new_on_paper (BbPaper     paper,
              const char *title)
{
  BbPrintOperation *self = g_object_new (BB_TYPE_PRINT_OPERATION, "job-name", title, NULL);
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();
  GtkPaperSize *size = gtk_paper_size_new (paper == BB_PAPER_LETTER ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);

  gtk_page_setup_set_paper_size_and_default_margins (setup, size);
  gtk_paper_size_free (size);
  gtk_print_operation_set_default_page_setup (GTK_PRINT_OPERATION (self), setup);

  return self;
}

/**
 * bb_print_operation_new_document:
 * @document: (transfer full): a document with all its blocks
 * @paper: what is proposed to print it on
 *
 * Returns: (transfer full): an operation that prints it
 */
BbPrintOperation *
bb_print_operation_new_document (BbDocument *document,
                                 BbPaper     paper)
{
  BbPrintOperation *self = new_on_paper (paper, bb_document_get_title (document));

  self->document = document;
  gtk_print_operation_set_embed_page_setup (GTK_PRINT_OPERATION (self), TRUE);

  return self;
}

/**
 * bb_print_operation_new_labels:
 * @sheets: (transfer full): labels on sheets
 * @title: what the printer calls it
 *
 * Returns: (transfer full): an operation that prints them
 */
BbPrintOperation *
bb_print_operation_new_labels (BbLabelSheets *sheets,
                               const char    *title)
{
  BbPrintOperation *self = new_on_paper (sheets->layout->paper, title);

  self->sheets = sheets;

  return self;
}

/**
 * bb_print_operation_ask:
 * @self: an operation
 * @parent: (nullable): the window that asks
 *
 * Asks which printer to take, and prints. Returns at once; what goes wrong is said by #BbPrintOperation::failed.
 */
void
bb_print_operation_ask (BbPrintOperation *self,
                        GtkWindow        *parent)
{
  g_return_if_fail (BB_IS_PRINT_OPERATION (self));

  gtk_print_operation_run (GTK_PRINT_OPERATION (self), GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, parent, NULL);
}
