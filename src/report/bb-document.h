/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-block.h"
#include "bb-paper.h"

G_BEGIN_DECLS

/* Pixels for each point of a page that becomes a picture: 150 to the inch. */
#define BB_DOCUMENT_PNG_SCALE (150.0 / 72.0)

typedef struct _BbDocument BbDocument;

/**
 * BbDocument:
 *
 * Pages of text, tables and figures, with a head and a foot that numbers them. Blocks are added, then it is laid out
 * for a size of paper, and then its pages are drawn, on a screen, a printer or into files alike. Sizes are in points.
 */
BbDocument *bb_document_new             (const char        *title,
                                         const char        *left_head,
                                         const char        *right_head,
                                         const char        *foot);
void        bb_document_free            (BbDocument        *self);
const char *bb_document_get_title       (const BbDocument  *self);
void        bb_document_take            (BbDocument        *self,
                                         BbBlock           *block);
guint       bb_document_lay_out         (BbDocument        *self,
                                         double             width,
                                         double             height);
void        bb_document_draw_page       (BbDocument        *self,
                                         cairo_t           *cr,
                                         guint              page);
GBytes     *bb_document_to_pdf          (BbDocument        *self,
                                         BbPaper            paper,
                                         GError           **error);
GPtrArray  *bb_document_to_pngs         (BbDocument        *self,
                                         BbPaper            paper,
                                         double             scale,
                                         GError           **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbDocument, bb_document_free)

G_END_DECLS
