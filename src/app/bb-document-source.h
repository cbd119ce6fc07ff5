/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-document.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbDocumentSource:
 *
 * Where a document comes from: it is made of the book, and drawn and written off the main loop, anew each time it is
 * asked for. What is asked of it goes on without its holder.
 */
#define BB_TYPE_DOCUMENT_SOURCE (bb_document_source_get_type ())
G_DECLARE_FINAL_TYPE (BbDocumentSource, bb_document_source, BB, DOCUMENT_SOURCE, GObject)

BbDocumentSource *bb_document_source_new         (BbSession            *session,
                                                  BbReadFunc            make,
                                                  gpointer              data,
                                                  GDestroyNotify        clear_data,
                                                  BbPaper               paper);
BbPaper           bb_document_source_get_paper   (BbDocumentSource     *self);
void              bb_document_source_make_async  (BbDocumentSource     *self,
                                                  GAsyncReadyCallback   callback,
                                                  gpointer              user_data);
BbDocument       *bb_document_source_make_finish (BbDocumentSource     *self,
                                                  GAsyncResult         *result,
                                                  GError              **error);
void              bb_document_source_draw_async  (BbDocumentSource     *self,
                                                  double                scale,
                                                  GCancellable         *cancellable,
                                                  GAsyncReadyCallback   callback,
                                                  gpointer              user_data);
GPtrArray        *bb_document_source_draw_finish (BbDocumentSource     *self,
                                                  GAsyncResult         *result,
                                                  GError              **error);
void              bb_document_source_save_async  (BbDocumentSource     *self,
                                                  GFile                *file,
                                                  gboolean              as_pdf,
                                                  GAsyncReadyCallback   callback,
                                                  gpointer              user_data);
GPtrArray        *bb_document_source_save_finish (BbDocumentSource     *self,
                                                  GAsyncResult         *result,
                                                  GError              **error);

G_END_DECLS
