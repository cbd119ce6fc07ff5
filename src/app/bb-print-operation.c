/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-print-operation"

#include "bb-print-operation.h"

struct _BbPrintOperation
{
  GtkPrintOperation parent_instance;

  BbDocument *document;
};

G_DEFINE_FINAL_TYPE (BbPrintOperation, bb_print_operation, GTK_TYPE_PRINT_OPERATION)

static void
bb_print_operation_begin_print (GtkPrintOperation *operation,
                                GtkPrintContext   *context)
{
  BbPrintOperation *self = BB_PRINT_OPERATION (operation);
  guint n_pages = bb_document_lay_out (self->document, gtk_print_context_get_width (context),
                                       gtk_print_context_get_height (context));

  gtk_print_operation_set_n_pages (operation, (int) n_pages);
}

static void
bb_print_operation_draw_page (GtkPrintOperation *operation,
                              GtkPrintContext   *context,
                              int                page)
{
  bb_document_draw_page (BB_PRINT_OPERATION (operation)->document, gtk_print_context_get_cairo_context (context),
                         (guint) page);
}

static void
bb_print_operation_finalize (GObject *object)
{
  g_clear_pointer (&BB_PRINT_OPERATION (object)->document, bb_document_free);

  G_OBJECT_CLASS (bb_print_operation_parent_class)->finalize (object);
}

static void
bb_print_operation_class_init (BbPrintOperationClass *klass)
{
  GtkPrintOperationClass *operation_class = GTK_PRINT_OPERATION_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = bb_print_operation_finalize;
  operation_class->begin_print = bb_print_operation_begin_print;
  operation_class->draw_page = bb_print_operation_draw_page;
}

static void
bb_print_operation_init (BbPrintOperation *self)
{
  /* A document has margins of its own, in points. */
  gtk_print_operation_set_use_full_page (GTK_PRINT_OPERATION (self), TRUE);
  gtk_print_operation_set_unit (GTK_PRINT_OPERATION (self), GTK_UNIT_POINTS);
  gtk_print_operation_set_embed_page_setup (GTK_PRINT_OPERATION (self), TRUE);
}

/**
 * bb_print_operation_new:
 * @document: (transfer full): a document with all its blocks
 *
 * Returns: (transfer full): an operation that prints it
 */
GtkPrintOperation *
bb_print_operation_new (BbDocument *document)
{
  BbPrintOperation *self = g_object_new (BB_TYPE_PRINT_OPERATION, NULL);

  self->document = document;
  gtk_print_operation_set_job_name (GTK_PRINT_OPERATION (self), bb_document_get_title (document));

  return GTK_PRINT_OPERATION (self);
}
