/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-figure"

#include "bb-figure.h"

#include <glib/gi18n-lib.h>

#include "bb-show.h"
#include "bb-text-box.h"

struct _BbFigure
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *title_label;
  GtkLabel *value_label;
  GtkLabel *unit_label;
  GtkLabel *note_label;
};

G_DEFINE_FINAL_TYPE (BbFigure, bb_figure, ADW_TYPE_BIN)

static void
bb_figure_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_figure_parent_class)->dispose (object);
}

static void
bb_figure_class_init (BbFigureClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_figure_dispose;
  g_type_ensure (BB_TYPE_TEXT_BOX);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-figure.ui");
  gtk_widget_class_bind_template_child (widget_class, BbFigure, title_label);
  gtk_widget_class_bind_template_child (widget_class, BbFigure, value_label);
  gtk_widget_class_bind_template_child (widget_class, BbFigure, unit_label);
  gtk_widget_class_bind_template_child (widget_class, BbFigure, note_label);
}

static void
bb_figure_init (BbFigure *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_figure_add:
 * @box: where figures stand beside each other
 * @title: what the number is, translated
 *
 * Returns: (transfer none): a figure without a number, in @box
 */
BbFigure *
bb_figure_add (GtkFlowBox *box,
               const char *title)
{
  BbFigure *self = g_object_new (BB_TYPE_FIGURE, NULL);

  g_return_val_if_fail (GTK_IS_FLOW_BOX (box) && title != NULL, NULL);

  gtk_label_set_label (self->title_label, title);
  bb_figure_set (self, NULL, "", NULL);
  gtk_flow_box_insert (box, GTK_WIDGET (self), -1);
  gtk_widget_set_focusable (gtk_widget_get_parent (GTK_WIDGET (self)), FALSE);

  return self;
}

/**
 * bb_figure_set:
 * @self: a figure
 * @value: (nullable): the number, or words; %NULL where it is not known
 * @unit: the unit, empty for none
 * @note: (nullable): where it comes from
 */
void
bb_figure_set (BbFigure   *self,
               const char *value,
               const char *unit,
               const char *note)
{
  g_autofree char *spoken = NULL;

  g_return_if_fail (BB_IS_FIGURE (self));

  gtk_label_set_label (self->value_label, value != NULL && *value != '\0' ? value : "–");
  gtk_label_set_label (self->unit_label, value != NULL ? unit : "");
  gtk_label_set_label (self->note_label, note != NULL ? note : "");
  gtk_widget_set_visible (GTK_WIDGET (self->note_label), note != NULL);

  if (value == NULL || *value == '\0')
    /* Translators: what a screen reader says of a figure without a number. */
    spoken = g_strdup_printf (_("%s, not known"), gtk_label_get_label (self->title_label));
  else
    /* Translators: what a screen reader says of a figure: title, number, unit. */
    spoken = g_strchomp (g_strdup_printf (_("%s: %s %s"), gtk_label_get_label (self->title_label),
                                          gtk_label_get_label (self->value_label),
                                          gtk_label_get_label (self->unit_label)));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
}

/**
 * bb_figure_set_field:
 * @self: a figure
 * @session: the session
 * @table: the record's table
 * @field: a field of @table
 * @record: a record
 * @note: (nullable): where it comes from
 *
 * Shows a field's value in the units that hold now.
 */
void
bb_figure_set_field (BbFigure      *self,
                     BbSession     *session,
                     const BbTable *table,
                     const BbField *field,
                     gconstpointer  record,
                     const char    *note)
{
  const BbUnitContext *units = bb_session_get_units (session);
  g_autofree char *value = NULL;

  if (!bb_field_is_set (field, record))
    {
      bb_figure_set (self, NULL, "", note);
      return;
    }

  if (field->kind != BB_KIND_NUMBER || field->parts_with != NULL || field->quantity == BB_QUANTITY_MONEY)
    {
      value = bb_show_field (session, table, field, record);
      bb_figure_set (self, value, "", note);
      return;
    }

  value = bb_quantity_format (field->quantity, bb_field_get_number (field, record), units);
  bb_figure_set (self, value, bb_quantity_get_unit (field->quantity, units), note);
}

/**
 * bb_figure_mark:
 * @self: a figure
 * @marked: whether the number differs from what a person would expect
 */
void
bb_figure_mark (BbFigure *self,
                gboolean  marked)
{
  g_return_if_fail (BB_IS_FIGURE (self));

  if (marked)
    gtk_widget_add_css_class (GTK_WIDGET (self), "marked");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "marked");
}
