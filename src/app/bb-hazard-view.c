/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-hazard-view"

#include "bb-hazard-view.h"

#include <glib/gi18n-lib.h>

#include "bb-children.h"
#include "bb-hazard-code.h"

/* Lines of this many characters read well, and let the view stand beside other things. */
#define LINE_LENGTH 48
#define TITLE_LENGTH 36

struct _BbHazardView
{
  GtkBox parent_instance;

  GtkWidget *heading;
  GtkGrid *grid;
  BbHazards *hazards;
  int n_lines;
};

G_DEFINE_FINAL_TYPE (BbHazardView, bb_hazard_view, GTK_TYPE_BOX)

static GtkWidget *
make_label (const char *text,
            gboolean    wrap)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_yalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), wrap);
  gtk_label_set_max_width_chars (GTK_LABEL (label), wrap ? LINE_LENGTH : -1);

  return label;
}

/**
 * bb_hazard_view_load_hazards:
 *
 * Returns: (transfer full) (nullable): the wording of the statements that the program comes with; %NULL if it is
 *   damaged
 */
BbHazards *
bb_hazard_view_load_hazards (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = g_resources_lookup_data ("/io/blankbook/Blankbook/ghs-statements.json", 0, &error);
  BbHazards *hazards = bytes != NULL ? bb_hazards_new (bytes, &error) : NULL;

  if (error != NULL)
    g_warning ("Hazard statements can't be shown in full: %s", error->message);

  return hazards;
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
  GtkWidget *source = make_label (_("Codes from section 2 of the supplier's safety data sheet, in the wording of "
                                    "Regulation (EC) No 1272/2008 (© European Union, eur-lex.europa.eu, CC BY 4.0). "
                                    "The data sheet itself comes first; where the wording has <…> or …, it says "
                                    "what."),
                                  TRUE);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 8);
  self->heading = make_label (_("Hazard Statements"), FALSE);
  gtk_widget_add_css_class (self->heading, "heading");
  gtk_widget_add_css_class (source, "caption");
  gtk_widget_add_css_class (source, "dim-label");
  self->grid = GTK_GRID (gtk_grid_new ());
  gtk_grid_set_column_spacing (self->grid, 14);
  gtk_grid_set_row_spacing (self->grid, 4);
  /* GTK 4.8 takes a container it first saw empty to be as high at any width. */
  gtk_grid_attach (self->grid, make_label ("", TRUE), 0, 0, 1, 1);
  gtk_box_append (GTK_BOX (self), self->heading);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->grid));
  gtk_box_append (GTK_BOX (self), source);
  self->hazards = bb_hazard_view_load_hazards ();
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

static void
add_line (BbHazardView *self,
          const char   *code)
{
  const char *text = NULL;
  GtkWidget *wording = NULL;

  if (self->hazards != NULL)
    text = bb_hazards_find (self->hazards, code, g_get_language_names ());
  wording = make_label (text != NULL ? text : _("Not in our list: read the safety data sheet."), TRUE);
  gtk_widget_set_hexpand (wording, TRUE);
  gtk_grid_attach (self->grid, make_label (code, FALSE), 0, self->n_lines, 1, 1);
  gtk_grid_attach (self->grid, wording, 1, self->n_lines, 1, 1);
  self->n_lines++;
}

static void
add_title (BbHazardView *self,
           const char   *title,
           const char   *subtitle)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *name = make_label (title, TRUE);
  GtkWidget *code = make_label (subtitle, FALSE);

  gtk_label_set_max_width_chars (GTK_LABEL (name), TITLE_LENGTH);
  gtk_widget_add_css_class (name, "heading");
  gtk_widget_add_css_class (code, "dim-label");
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), code);
  if (self->n_lines > 0)
    gtk_widget_add_css_class (box, "next");
  gtk_grid_attach (self->grid, box, 0, self->n_lines++, 2, 1);
}

/**
 * bb_hazard_view_show:
 * @self: a view
 * @codes: (nullable): the statements' codes, separated by spaces; the view hides where there are none
 *
 * Shows the statements of one supply.
 */
void
bb_hazard_view_show (BbHazardView *self,
                     const char   *codes)
{
  g_auto (GStrv) list = bb_hazard_codes_split (codes);

  g_return_if_fail (BB_IS_HAZARD_VIEW (self));

  bb_hazard_view_clear (self);
  for (guint i = 0; list[i] != NULL; i++)
    add_line (self, list[i]);
  gtk_widget_set_visible (self->heading, TRUE);
  gtk_widget_set_visible (GTK_WIDGET (self), list[0] != NULL);
}

/**
 * bb_hazard_view_clear:
 * @self: a view
 *
 * Takes all statements away, and hides the view.
 */
void
bb_hazard_view_clear (BbHazardView *self)
{
  g_return_if_fail (BB_IS_HAZARD_VIEW (self));

  bb_children_empty_grid (self->grid);
  self->n_lines = 0;
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

/**
 * bb_hazard_view_add:
 * @self: a view
 * @title: what the statements are about
 * @subtitle: what stands beside the title
 * @codes: their codes, separated by spaces
 *
 * Adds the statements of one supply, under its name.
 */
void
bb_hazard_view_add (BbHazardView *self,
                    const char   *title,
                    const char   *subtitle,
                    const char   *codes)
{
  g_auto (GStrv) list = bb_hazard_codes_split (codes);

  g_return_if_fail (BB_IS_HAZARD_VIEW (self) && title != NULL && subtitle != NULL);

  if (list[0] == NULL)
    return;

  add_title (self, title, subtitle);
  for (guint i = 0; list[i] != NULL; i++)
    add_line (self, list[i]);
  gtk_widget_set_visible (self->heading, FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
}

/**
 * bb_hazard_view_is_empty:
 * @self: a view
 *
 * Returns: %TRUE if it shows no statement
 */
gboolean
bb_hazard_view_is_empty (BbHazardView *self)
{
  g_return_val_if_fail (BB_IS_HAZARD_VIEW (self), TRUE);

  return self->n_lines == 0;
}
