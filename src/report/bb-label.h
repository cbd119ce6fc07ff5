/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

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
void     bb_label_free (BbLabel        *self);
gboolean bb_label_draw (const BbLabel  *self,
                        cairo_t        *cr,
                        double          width,
                        double          height,
                        GError        **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbLabel, bb_label_free)

/**
 * BbLabelLayout:
 * @page_width_mm: width of the paper
 * @page_height_mm: height of the paper
 * @margin_mm: what is left free on all four sides
 * @gap_mm: between two labels
 * @columns: labels beside each other
 * @rows: labels below each other
 *
 * How labels lie on a sheet.
 */
typedef struct {
  double page_width_mm;
  double page_height_mm;
  double margin_mm;
  double gap_mm;
  guint columns;
  guint rows;
} BbLabelLayout;

extern const BbLabelLayout bb_label_layout_a4;
extern const BbLabelLayout bb_label_layout_letter;

guint    bb_label_layout_count_places (const BbLabelLayout *self);
void     bb_label_layout_draw_fitted (const BbLabelLayout  *self,
                                      GPtrArray            *labels,
                                      guint                 skip,
                                      cairo_t              *cr,
                                      double                width,
                                      double                height);
guint    bb_label_layout_count_pages (const BbLabelLayout  *self,
                                      guint                 n_labels,
                                      guint                 skip);
gboolean bb_label_layout_draw_page   (const BbLabelLayout  *self,
                                      GPtrArray            *labels,
                                      guint                 skip,
                                      guint                 page,
                                      cairo_t              *cr,
                                      GError              **error);
GBytes  *bb_label_layout_to_pdf      (const BbLabelLayout  *self,
                                      GPtrArray            *labels,
                                      guint                 skip,
                                      GError              **error);
gboolean bb_label_layout_save_pdf    (const BbLabelLayout  *self,
                                      GPtrArray            *labels,
                                      guint                 skip,
                                      const char           *path,
                                      GError              **error);

G_END_DECLS
