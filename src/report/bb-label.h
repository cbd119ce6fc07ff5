/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "bb-paper.h"
#include "bb-tag.h"

G_BEGIN_DECLS

/**
 * BbLabel:
 * @tag: what the square code says, as bb_tag_to_text() writes it
 * @title: the name that a person knows it by
 * @detail: (nullable): more lines, separated by line feeds
 *
 * A label of a job, a recipe, a specimen or a container.
 */
typedef struct {
  char *tag;
  char *title;
  char *detail;
} BbLabel;

BbLabel *bb_label_new  (BbTagKind       kind,
                        const char     *code,
                        const char     *title,
                        const char     *detail);
BbLabel *bb_label_copy (const BbLabel  *self);
void     bb_label_free (BbLabel        *self);
gboolean bb_label_draw (const BbLabel  *self,
                        cairo_t        *cr,
                        double          width,
                        double          height,
                        GError        **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbLabel, bb_label_free)

/**
 * BbLabelLayout:
 * @paper: what they are printed on
 * @margin_mm: what is left free on all four sides
 * @gap_mm: between two labels
 * @columns: labels beside each other
 * @rows: labels below each other
 *
 * How labels lie on a sheet.
 */
typedef struct {
  BbPaper paper;
  double margin_mm;
  double gap_mm;
  guint columns;
  guint rows;
} BbLabelLayout;

extern const BbLabelLayout bb_label_layout_a4;
extern const BbLabelLayout bb_label_layout_letter;

guint bb_label_layout_count_places (const BbLabelLayout *self);

/**
 * BbLabelSheets:
 * @layout: (unowned): how labels lie on a sheet
 * @labels: (owned) (element-type BbLabel): the labels
 * @skip: how many places of the first sheet are used up already
 *
 * Labels on sheets.
 */
typedef struct {
  const BbLabelLayout *layout;
  GPtrArray *labels;
  guint skip;
} BbLabelSheets;

BbLabelSheets *bb_label_sheets_new         (const BbLabelLayout  *layout,
                                            GPtrArray            *labels,
                                            guint                 skip);
void           bb_label_sheets_free        (BbLabelSheets        *self);
guint          bb_label_sheets_count_pages (const BbLabelSheets  *self);
gboolean       bb_label_sheets_draw_page   (const BbLabelSheets  *self,
                                            guint                 page,
                                            cairo_t              *cr,
                                            GError              **error);
void           bb_label_sheets_draw_fitted (const BbLabelSheets  *self,
                                            cairo_t              *cr,
                                            double                width,
                                            double                height);
GBytes        *bb_label_sheets_to_pdf      (const BbLabelSheets  *self,
                                            GError              **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbLabelSheets, bb_label_sheets_free)

G_END_DECLS
