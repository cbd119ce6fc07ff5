/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "bb-document.h"

G_BEGIN_DECLS

char      *bb_document_name_page (const char    *name,
                                  guint          page,
                                  guint          n_pages);
GPtrArray *bb_document_save_pdf  (BbDocument    *self,
                                  BbPaper        paper,
                                  GFile         *file,
                                  GCancellable  *cancellable,
                                  GError       **error);
GPtrArray *bb_document_save_pngs (BbDocument    *self,
                                  BbPaper        paper,
                                  GFile         *file,
                                  GCancellable  *cancellable,
                                  GError       **error);

G_END_DECLS
