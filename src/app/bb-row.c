/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-row"

#include "bb-row.h"

#include "bb-swatch.h"

struct _BbRow
{
  AdwBin parent_instance;

  /* template */
  BbSwatch *swatch;
  GtkLabel *title_label;
  GtkLabel *subtitle_label;
  GtkLabel *code_label;
  AdwBin *badge_bin;
};

G_DEFINE_FINAL_TYPE (BbRow, bb_row, ADW_TYPE_BIN)

static void
bb_row_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_row_parent_class)->dispose (object);
}

static void
bb_row_class_init (BbRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_row_dispose;
  g_type_ensure (BB_TYPE_SWATCH);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-row.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRow, swatch);
  gtk_widget_class_bind_template_child (widget_class, BbRow, title_label);
  gtk_widget_class_bind_template_child (widget_class, BbRow, subtitle_label);
  gtk_widget_class_bind_template_child (widget_class, BbRow, code_label);
  gtk_widget_class_bind_template_child (widget_class, BbRow, badge_bin);
}

static void
bb_row_init (BbRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_row_new:
 *
 * Returns: (transfer floating): an empty line
 */
GtkWidget *
bb_row_new (void)
{
  return g_object_new (BB_TYPE_ROW, NULL);
}

/**
 * bb_row_set:
 * @self: a line
 * @title: the name
 * @code: the short code
 * @subtitle: what the second line says
 */
void
bb_row_set (BbRow      *self,
            const char *title,
            const char *code,
            const char *subtitle)
{
  g_return_if_fail (BB_IS_ROW (self));

  gtk_label_set_label (self->title_label, title);
  gtk_label_set_label (self->code_label, code);
  gtk_label_set_label (self->subtitle_label, subtitle);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), title);
}

/**
 * bb_row_set_srgb:
 * @self: a line
 * @srgb: (nullable): a colour as `#rrggbb`, or an empty text for a patch without one; %NULL for no patch
 */
void
bb_row_set_srgb (BbRow      *self,
                 const char *srgb)
{
  g_return_if_fail (BB_IS_ROW (self));

  bb_swatch_set_srgb (self->swatch, srgb);
  gtk_widget_set_visible (GTK_WIDGET (self->swatch), srgb != NULL);
}

/**
 * bb_row_set_badge:
 * @self: a line
 * @badge: (transfer floating): what stands below both lines
 */
void
bb_row_set_badge (BbRow     *self,
                  GtkWidget *badge)
{
  g_return_if_fail (BB_IS_ROW (self));

  adw_bin_set_child (self->badge_bin, badge);
  gtk_widget_set_visible (GTK_WIDGET (self->badge_bin), TRUE);
}
