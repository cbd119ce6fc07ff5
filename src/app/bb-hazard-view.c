/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-hazard-view"

#include "bb-hazard-view.h"

#include <glib/gi18n-lib.h>

#include "bb-hazards.h"

struct _BbHazardView
{
  GtkBox parent_instance;

  GtkGrid *grid;
  BbHazards *hazards;
};

G_DEFINE_FINAL_TYPE (BbHazardView, bb_hazard_view, GTK_TYPE_BOX)

static GtkWidget *
make_label (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_yalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);

  return label;
}

static void
bb_hazard_view_finalize (GObject *object)
{
  bb_hazards_free (BB_HAZARD_VIEW (object)->hazards);

  G_OBJECT_CLASS (bb_hazard_view_parent_class)->finalize (object);
}

static void
bb_hazard_view_class_init (BbHazardViewClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bb_hazard_view_finalize;
}

static void
bb_hazard_view_init (BbHazardView *self)
{
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;
  GtkWidget *heading = make_label (_("Hazard Statements"));
  GtkWidget *source = make_label (_("From section 2 of the supplier's safety data sheet, in the wording of Regulation "
                                    "(EC) No 1272/2008. The data sheet itself comes first."));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 8);
  gtk_widget_add_css_class (heading, "heading");
  gtk_widget_add_css_class (source, "caption");
  gtk_widget_add_css_class (source, "dim-label");
  self->grid = GTK_GRID (gtk_grid_new ());
  gtk_grid_set_column_spacing (self->grid, 14);
  gtk_grid_set_row_spacing (self->grid, 4);
  gtk_box_append (GTK_BOX (self), heading);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->grid));
  gtk_box_append (GTK_BOX (self), source);

  bytes = g_resources_lookup_data ("/io/blankbook/Blankbook/ghs-statements.json", 0, &error);
  if (bytes != NULL)
    self->hazards = bb_hazards_new (bytes, &error);
  if (error != NULL)
    g_warning ("Hazard statements can't be shown in full: %s", error->message);
}

/**
 * bb_hazard_view_new:
 *
 * Returns: (transfer floating): a view of no statements, not shown
 */
GtkWidget *
bb_hazard_view_new (void)
{
  return g_object_new (BB_TYPE_HAZARD_VIEW, "visible", FALSE, NULL);
}

/**
 * bb_hazard_view_show:
 * @self: a view
 * @codes: (nullable): the statements' codes, separated by spaces; the view hides where there are none
 */
void
bb_hazard_view_show (BbHazardView *self,
                     const char   *codes)
{
  g_auto (GStrv) list = bb_hazards_split (codes);
  GtkWidget *child = NULL;

  g_return_if_fail (BB_IS_HAZARD_VIEW (self));

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->grid))) != NULL)
    gtk_grid_remove (self->grid, child);

  for (int i = 0; list[i] != NULL; i++)
    {
      const char *text = NULL;
      GtkWidget *wording = NULL;

      if (self->hazards != NULL)
        text = bb_hazards_find (self->hazards, list[i], g_get_language_names ());
      wording = make_label (text != NULL ? text : _("Not in our list: see the data sheet."));
      gtk_widget_set_hexpand (wording, TRUE);
      gtk_grid_attach (self->grid, make_label (list[i]), 0, i, 1, 1);
      gtk_grid_attach (self->grid, wording, 1, i, 1, 1);
    }

  gtk_widget_set_visible (GTK_WIDGET (self), list[0] != NULL);
}
