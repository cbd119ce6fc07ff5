/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-document.h"
#include "bb-label.h"

G_BEGIN_DECLS

/**
 * BbPrintOperation:
 *
 * Prints a document, on whatever paper a person chooses, or labels, on the sheets that they are laid out for. Signal
 * `failed` (error): why it was not printed.
 */
#define BB_TYPE_PRINT_OPERATION (bb_print_operation_get_type ())
G_DECLARE_FINAL_TYPE (BbPrintOperation, bb_print_operation, BB, PRINT_OPERATION, GtkPrintOperation)

BbPrintOperation *bb_print_operation_new_document (BbDocument       *document,
                                                   BbPaper           paper);
BbPrintOperation *bb_print_operation_new_labels   (BbLabelSheets    *sheets,
                                                   const char       *title);
void              bb_print_operation_ask          (BbPrintOperation *self,
                                                   GtkWindow        *parent);

G_END_DECLS
