/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-document-source.h"

G_BEGIN_DECLS

/**
 * BbDocumentView:
 *
 * Shows a document page by page, prints it, and saves it as PDF or as a picture of each page: each time as the book is
 * then.
 *
 * Its actions are `document.print`, `document.save-pdf` and `document.save-png`. Signal `say` (text): what a person has
 * to be told.
 */
#define BB_TYPE_DOCUMENT_VIEW (bb_document_view_get_type ())
G_DECLARE_FINAL_TYPE (BbDocumentView, bb_document_view, BB, DOCUMENT_VIEW, GtkBox)

void  bb_document_view_show        (BbDocumentView   *self,
                                    BbDocumentSource *source,
                                    const char       *name);
guint bb_document_view_get_n_pages (BbDocumentView   *self);
void  bb_document_view_save        (BbDocumentView   *self,
                                    GFile            *file,
                                    gboolean          as_pdf);

G_END_DECLS
