/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-nearest-row"

#include "bb-nearest-row.h"

#include "bb-compat.h"
#include "bb-state-badge.h"
#include "bb-swatch.h"

struct _BbNearestRow
{
  GtkListBoxRow parent_instance;

  /* template */
  BbSwatch *swatch;
  GtkLabel *name_label;
  GtkLabel *reasons_label;
  BbStateBadge *badge;
  GtkLabel *code_label;

  gint64 recipe;
};

G_DEFINE_FINAL_TYPE (BbNearestRow, bb_nearest_row, GTK_TYPE_LIST_BOX_ROW)

/**
 * bb_nearest_row_new:
 * @recipe: what the book knows of a recipe
 * @reasons: in what its garment is like the wanted one, and in what it differs
 *
 * Returns: (transfer floating): a row that shows it
 */
GtkWidget *
bb_nearest_row_new (const BbKnownRecipe *recipe,
                    const char          *reasons)
{
  BbNearestRow *self = g_object_new (BB_TYPE_NEAREST_ROW, NULL);
  g_autofree char *spoken = g_strdup_printf ("%s, %s: %s", recipe->name,
                                             bb_choices_get_title (&bb_state_choices, recipe->state), reasons);

  self->recipe = recipe->id;
  bb_swatch_set_garment (self->swatch, recipe->srgb, (BbShade) recipe->shade);
  bb_state_badge_set_state (self->badge, (BbState) recipe->state);
  gtk_label_set_label (self->name_label, recipe->name);
  gtk_label_set_label (self->reasons_label, reasons);
  gtk_label_set_label (self->code_label, recipe->revision_code);
  bb_compat_set_name (GTK_WIDGET (self), spoken);

  return GTK_WIDGET (self);
}

/**
 * bb_nearest_row_get_recipe:
 * @self: a row
 *
 * Returns: key of the recipe
 */
gint64
bb_nearest_row_get_recipe (BbNearestRow *self)
{
  g_return_val_if_fail (BB_IS_NEAREST_ROW (self), 0);

  return self->recipe;
}

static void
bb_nearest_row_dispose (GObject *object)
{
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (object), NULL);

  G_OBJECT_CLASS (bb_nearest_row_parent_class)->dispose (object);
}

static void
bb_nearest_row_class_init (BbNearestRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_nearest_row_dispose;
  g_type_ensure (BB_TYPE_STATE_BADGE);
  g_type_ensure (BB_TYPE_SWATCH);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-nearest-row.ui");
  gtk_widget_class_bind_template_child (widget_class, BbNearestRow, swatch);
  gtk_widget_class_bind_template_child (widget_class, BbNearestRow, name_label);
  gtk_widget_class_bind_template_child (widget_class, BbNearestRow, reasons_label);
  gtk_widget_class_bind_template_child (widget_class, BbNearestRow, badge);
  gtk_widget_class_bind_template_child (widget_class, BbNearestRow, code_label);
}

static void
bb_nearest_row_init (BbNearestRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
