/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-document.h"
#include "bb-save.h"

G_BEGIN_DECLS

GPtrArray *bb_save_document_pdf  (const BbSave  *self,
                                  BbDocument    *document,
                                  BbPaper        paper,
                                  GCancellable  *cancellable,
                                  GError       **error);
GPtrArray *bb_save_document_pngs (const BbSave  *self,
                                  BbDocument    *document,
                                  BbPaper        paper,
                                  GCancellable  *cancellable,
                                  GError       **error);

G_END_DECLS
