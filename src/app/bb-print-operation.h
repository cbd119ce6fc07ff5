/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-document.h"

G_BEGIN_DECLS

/**
 * BbPrintOperation:
 *
 * Prints a document, on whatever paper a person chooses; run it by gtk_print_operation_run().
 */
#define BB_TYPE_PRINT_OPERATION (bb_print_operation_get_type ())
G_DECLARE_FINAL_TYPE (BbPrintOperation, bb_print_operation, BB, PRINT_OPERATION, GtkPrintOperation)

GtkPrintOperation *bb_print_operation_new (BbDocument *document);

G_END_DECLS
