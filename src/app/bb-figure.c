/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-figure"

#include "bb-figure.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-compat.h"
#include "bb-show.h"
#include "bb-text-box.h"

#define NO_BREAK_SPACE "\302\240"

/* Beside its number, the unit is small and quiet. */
#define UNIT_SCALE 0.52
#define UNIT_ALPHA 0.75

struct _BbFigure
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *title_label;
  GtkLabel *value_label;
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
bb_figure_add (BbFigures  *box,
               const char *title)
{
  BbFigure *self = g_object_new (BB_TYPE_FIGURE, NULL);

  g_return_val_if_fail (BB_IS_FIGURES (box) && title != NULL, NULL);

  gtk_label_set_label (self->title_label, title);
  bb_figure_set (self, NULL, "", NULL);
  bb_figures_append (box, GTK_WIDGET (self));

  return self;
}

/**
 * bb_figure_set_title:
 * @self: a figure
 * @title: what the number is that will be set next, translated
 */
void
bb_figure_set_title (BbFigure   *self,
                     const char *title)
{
  g_return_if_fail (BB_IS_FIGURE (self) && title != NULL);

  gtk_label_set_label (self->title_label, title);
}

/* The unit is part of the text, so that it stays with its number where that has to go on to a second line. */
static void
show_value (BbFigure   *self,
            const char *value,
            const char *unit)
{
  g_autoptr (PangoAttrList) attributes = pango_attr_list_new ();
  g_autofree char *number = *unit != '\0' ? g_strconcat (value, NO_BREAK_SPACE, NULL) : g_strdup (value);
  g_autofree char *text = g_strconcat (number, unit, NULL);
  PangoAttribute *const of_unit[] = {
    pango_attr_scale_new (UNIT_SCALE),
    pango_attr_weight_new (PANGO_WEIGHT_NORMAL),
    pango_attr_foreground_alpha_new ((guint16) (UNIT_ALPHA * G_MAXUINT16)),
  };

  for (guint i = 0; i < G_N_ELEMENTS (of_unit); i++)
    {
      of_unit[i]->start_index = (guint) strlen (number);
      pango_attr_list_insert (attributes, of_unit[i]);
    }
  gtk_label_set_attributes (self->value_label, attributes);
  gtk_label_set_label (self->value_label, text);
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

  gtk_label_set_label (self->note_label, note != NULL ? note : "");
  gtk_widget_set_visible (GTK_WIDGET (self->note_label), note != NULL);

  if (value == NULL || *value == '\0')
    {
      show_value (self, "–", "");
      /* Translators: what a screen reader says of a figure without a number. */
      spoken = g_strdup_printf (_("%s, not known"), gtk_label_get_label (self->title_label));
    }
  else
    {
      show_value (self, value, unit);
      /* Translators: what a screen reader says of a figure: title, number, unit. */
      spoken = g_strchomp (g_strdup_printf (_("%s: %s %s"), gtk_label_get_label (self->title_label), value, unit));
    }
  bb_compat_set_name (GTK_WIDGET (self), spoken);
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
