/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <pango/pangocairo.h>

#include "bb-chart.h"

G_BEGIN_DECLS

/**
 * BbType:
 * @letters: what words are laid out in
 * @font: the family
 * @size: the height of the letters of the text, in points
 *
 * The letters of a document.
 */
typedef struct {
  PangoContext *letters;
  const char *font;
  double size;
} BbType;

typedef struct _BbBlock BbBlock;

/**
 * BbBlock:
 * @heights: (element-type double): the heights of its parts, once it is laid out; a page break comes between parts
 * @head: the height of what stands above its parts on each page, once it is laid out
 * @after: what is left free below it
 * @keep: whether the next block begins on the same page
 * @whole: whether it goes to the next page rather than being broken, where it fits there
 * @lay_out: finds the heights for a width
 * @draw: draws some of its parts below each other, and what stands above them
 * @free: (nullable): frees what it has
 *
 * A piece of a document. Its kinds put this first in a struct of their own.
 */
struct _BbBlock {
  GArray *heights;
  double head;
  double after;
  gboolean keep;
  gboolean whole;
  void (*lay_out) (BbBlock      *self,
                   const BbType *type,
                   double        width);
  void (*draw)    (BbBlock      *self,
                   cairo_t      *cr,
                   guint         from,
                   guint         to);
  void (*free)    (BbBlock      *self);
};

/**
 * BbColumn:
 * @title: what stands above it
 * @share: its share of the width, of all shares together
 * @to_right: whether its cells end below each other, as numbers do
 *
 * A column of a table.
 */
typedef struct {
  const char *title;
  double share;
  gboolean to_right;
} BbColumn;

/* bb-block.c */
BbBlock *bb_heading_new (const char      *text,
                         guint            level);
BbBlock *bb_text_new    (const char      *text,
                         gboolean         strong);
BbBlock *bb_figure_new  (BbChart         *chart,
                         double           height);
void     bb_block_free  (BbBlock         *self);

/* bb-table-block.c */
BbBlock *bb_facts_new   (void);
void     bb_facts_add   (BbBlock         *self,
                         const char      *name,
                         const char      *value);
BbBlock *bb_table_new   (const BbColumn  *columns,
                         guint            n_columns);
void     bb_table_add   (BbBlock         *self,
                         GStrv            cells,
                         const char      *note);

G_END_DECLS
