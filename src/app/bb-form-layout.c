/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-form"

#include "bb-form-layout.h"

#include <glib/gi18n-lib.h>

#include "bb-show.h"

/* Most fields beside each other in a strip. */
#define STRIP_LENGTH 4

static const char *
get_heading (const BbField *field)
{
  const char *station = bb_station_get_title (field->station);

  return station != NULL ? station : field->group != NULL ? _(field->group) : "";
}

/* Fields of one heading stand together; those without one where the table has them. */
static AdwPreferencesGroup *
find_group (GtkBox     *form,
            const char *heading)
{
  GtkWidget *last = gtk_widget_get_last_child (GTK_WIDGET (form));

  if (*heading == '\0')
    return last != NULL && *adw_preferences_group_get_title (ADW_PREFERENCES_GROUP (last)) == '\0'
             ? ADW_PREFERENCES_GROUP (last) : NULL;

  for (GtkWidget *child = last; child != NULL; child = gtk_widget_get_prev_sibling (child))
    if (g_str_equal (adw_preferences_group_get_title (ADW_PREFERENCES_GROUP (child)), heading))
      return ADW_PREFERENCES_GROUP (child);

  return NULL;
}

static AdwPreferencesGroup *
ensure_group (GtkBox     *form,
              const char *heading)
{
  AdwPreferencesGroup *group = find_group (form, heading);

  if (group == NULL)
    {
      group = ADW_PREFERENCES_GROUP (adw_preferences_group_new ());
      adw_preferences_group_set_title (group, heading);
      gtk_box_append (form, GTK_WIDGET (group));
    }

  return group;
}

/**
 * bb_form_layout_column:
 * @form: the box of a form, empty so far
 * @rows: (element-type BbFieldRow): its rows, in the order of its fields
 *
 * Puts the rows below each other in groups, the editors in one column.
 */
void
bb_form_layout_column (GtkBox    *form,
                       GPtrArray *rows)
{
  g_autoptr (GtkSizeGroup) controls = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);

  g_return_if_fail (GTK_IS_BOX (form) && rows != NULL);

  for (guint i = 0; i < rows->len; i++)
    {
      BbFieldRow *row = rows->pdata[i];

      bb_field_row_align (row, controls);
      adw_preferences_group_add (ensure_group (form, get_heading (bb_field_row_get_field (row))), GTK_WIDGET (row));
    }
}

static GtkFlowBox *
make_strip (void)
{
  GtkFlowBox *strip = GTK_FLOW_BOX (gtk_flow_box_new ());

  gtk_flow_box_set_selection_mode (strip, GTK_SELECTION_NONE);
  gtk_flow_box_set_homogeneous (strip, TRUE);
  gtk_flow_box_set_min_children_per_line (strip, 2);
  gtk_flow_box_set_max_children_per_line (strip, STRIP_LENGTH);
  gtk_flow_box_set_column_spacing (strip, 12);
  gtk_flow_box_set_row_spacing (strip, 8);

  return strip;
}

static void
add_to_strip (GtkFlowBox *strip,
              BbFieldRow *row)
{
  bb_field_row_set_stacked (row);
  gtk_flow_box_insert (strip, GTK_WIDGET (row), -1);
  gtk_widget_set_focusable (gtk_widget_get_parent (GTK_WIDGET (row)), FALSE);
  g_object_bind_property (row, "visible", gtk_widget_get_parent (GTK_WIDGET (row)), "visible",
                          G_BINDING_SYNC_CREATE);
}

/**
 * bb_form_layout_strip:
 * @form: the box of a form, empty so far
 * @rows: (element-type BbFieldRow): its rows, in the order of its fields
 *
 * Puts the rows beside each other as far as there is room.
 */
void
bb_form_layout_strip (GtkBox    *form,
                      GPtrArray *rows)
{
  GtkFlowBox *strip = NULL;

  g_return_if_fail (GTK_IS_BOX (form) && rows != NULL);

  strip = make_strip ();
  gtk_box_append (form, GTK_WIDGET (strip));
  for (guint i = 0; i < rows->len; i++)
    add_to_strip (strip, rows->pdata[i]);
}
