/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-field-row"

#include "bb-field-row-private.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"

/**
 * bb_field_row_focus:
 * @self: a row
 *
 * Puts the keyboard into the row's editor.
 *
 * Returns: %FALSE if it could not
 */
gboolean
bb_field_row_focus (BbFieldRow *self)
{
  BbFieldRowPrivate *priv = _bb_field_row_get_private (self);

  return priv->focus != NULL && gtk_widget_grab_focus (priv->focus);
}

static void
set_focus_widget (BbFieldRow *self,
                  GtkWidget  *focus)
{
  BbFieldRowPrivate *priv = _bb_field_row_get_private (self);

  /* The title names what it stands beside; a name of its own would make screen readers say it twice. */
  priv->focus = focus;
  gtk_label_set_mnemonic_widget (priv->title_label, focus);
  gtk_accessible_update_property (GTK_ACCESSIBLE (focus), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, _(priv->field->help),
                                  -1);
}

/**
 * bb_field_row_set_editor:
 * @self: a row
 * @editor: (transfer floating): what stands at the end of the row's line
 * @focus: the widget inside @editor that takes the keyboard
 *
 * For subclasses. Labels @focus with the row's title for those who can't see it.
 */
void
bb_field_row_set_editor (BbFieldRow *self,
                         GtkWidget  *editor,
                         GtkWidget  *focus)
{
  BbFieldRowPrivate *priv = _bb_field_row_get_private (self);

  gtk_box_prepend (priv->control, editor);
  set_focus_widget (self, focus);
}

/**
 * bb_field_row_set_below:
 * @self: a row
 * @editor: (transfer floating): an editor that needs the row's whole width
 * @focus: the widget inside @editor that takes the keyboard
 *
 * For subclasses.
 */
void
bb_field_row_set_below (BbFieldRow *self,
                        GtkWidget  *editor,
                        GtkWidget  *focus)
{
  BbFieldRowPrivate *priv = _bb_field_row_get_private (self);

  gtk_box_insert_child_after (priv->column, editor, GTK_WIDGET (priv->line));
  set_focus_widget (self, focus);
}

/**
 * bb_field_row_align:
 * @self: a row
 * @controls: what the editors of a form have in common
 *
 * Lets the editors of a form begin below each other.
 */
void
bb_field_row_align (BbFieldRow   *self,
                    GtkSizeGroup *controls)
{
  BbFieldRowPrivate *priv = _bb_field_row_get_private (self);

  gtk_size_group_add_widget (controls, GTK_WIDGET (priv->control));
}

/**
 * bb_field_row_set_stacked:
 * @self: a row
 *
 * Puts the title above the editor: the row stands beside others, as in a strip.
 */
void
bb_field_row_set_stacked (BbFieldRow *self)
{
  BbFieldRowPrivate *priv = _bb_field_row_get_private (self);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (priv->line), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (priv->line, 3);
  gtk_widget_add_css_class (GTK_WIDGET (self), "stacked");
}

/**
 * bb_field_row_set_compact:
 * @self: a row
 * @hints: where what there is to say of the row goes: below the line, so that it takes no room among the editors
 *
 * Leaves the title to those who can't see the row: it stands in a line of a list.
 */
void
bb_field_row_set_compact (BbFieldRow *self,
                          GtkBox     *hints)
{
  BbFieldRowPrivate *priv = _bb_field_row_get_private (self);
  g_autoptr (GtkWidget) hint = g_object_ref (GTK_WIDGET (priv->hint));

  gtk_box_remove (priv->column, hint);
  gtk_box_append (hints, hint);
  bb_field_hint_set_named (priv->hint);
  gtk_label_set_mnemonic_widget (priv->title_label, NULL);
  bb_compat_set_name (priv->focus, _(priv->field->title));
  gtk_widget_set_visible (GTK_WIDGET (priv->title_label), FALSE);
  gtk_widget_add_css_class (GTK_WIDGET (self), "compact");
}

/**
 * bb_field_row_set_unit:
 * @self: a row
 * @unit: the unit shown behind the editor; an empty one keeps its place, so that numbers stand below each other
 *
 * For subclasses.
 */
void
bb_field_row_set_unit (BbFieldRow *self,
                       const char *unit)
{
  BbFieldRowPrivate *priv = _bb_field_row_get_private (self);

  gtk_label_set_label (priv->unit_label, unit);
  gtk_widget_set_visible (GTK_WIDGET (priv->unit_label), TRUE);
}
