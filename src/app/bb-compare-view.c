/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-compare-view"

#include "bb-compare-view.h"

#include <glib/gi18n-lib.h>

#include "bb-children.h"
#include "bb-compat.h"
#include "bb-proof-compare.h"
#include "bb-revision-menu.h"
#include "bb-show.h"

struct _BbCompareView
{
  GtkBox parent_instance;

  /* template */
  GtkDropDown *left_drop_down;
  GtkDropDown *right_drop_down;
  GtkLabel *count_label;
  BbProofCompare *proof;
  GtkGrid *grid;

  /* owned */
  BbSession *session;
  GPtrArray *revisions;
};

G_DEFINE_FINAL_TYPE (BbCompareView, bb_compare_view, GTK_TYPE_BOX)

static GtkWidget *
add_label (BbCompareView *self,
           const char    *text,
           int            column,
           int            line,
           const char    *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_yalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_grid_attach (self->grid, label, column, line, 1, 1);

  return label;
}

static gboolean
is_compared (const BbField *field)
{
  return (field->station != BB_STATION_NONE || field->multiline || g_str_equal (field->name, "reason")) &&
         !bb_table_is_second_part (&bb_revision_table, field);
}

static gboolean
is_equal (const BbField    *field,
          const BbRevision *left,
          const BbRevision *right)
{
  const BbField *second = field->parts_with != NULL ? bb_table_find_field (&bb_revision_table, field->parts_with)
                                                    : NULL;

  return bb_field_equal (field, left, right) && (second == NULL || bb_field_equal (second, left, right));
}

static void
add_field (BbCompareView    *self,
           const BbField    *field,
           const BbRevision *left,
           const BbRevision *right,
           int               line)
{
  const gboolean equal = is_equal (field, left, right);
  g_autofree char *left_text = bb_show_field (self->session, &bb_revision_table, field, left);
  g_autofree char *right_text = bb_show_field (self->session, &bb_revision_table, field, right);
  GtkWidget *mark = add_label (self, equal ? "" : "≠", 0, line, "difference");

  if (!equal)
    bb_compat_set_name (mark, _("Differs"));
  add_label (self, _(field->title), 1, line, "dim-label");
  gtk_widget_set_hexpand (add_label (self, *left_text != '\0' ? left_text : "–", 2, line,
                                     equal ? "numeral" : "different"), TRUE);
  gtk_widget_set_hexpand (add_label (self, *right_text != '\0' ? right_text : "–", 3, line,
                                     equal ? "numeral" : "different"), TRUE);
}

static const BbRevision *
get_selected (BbCompareView *self,
              GtkDropDown   *drop_down)
{
  guint position = gtk_drop_down_get_selected (drop_down);

  return position < self->revisions->len ? self->revisions->pdata[position] : NULL;
}

static void
fill (BbCompareView *self)
{
  const BbRevision *left = get_selected (self, self->left_drop_down);
  const BbRevision *right = get_selected (self, self->right_drop_down);
  BbStation station = BB_STATION_NONE;
  g_autofree char *count = NULL;
  guint n = 0;
  int line = 0;

  bb_children_empty_grid (self->grid);
  if (left == NULL || right == NULL)
    return;

  for (guint i = 0; i < bb_revision_table.n_fields; i++)
    {
      const BbField *field = &bb_revision_table.fields[i];

      if (!is_compared (field) || (!bb_field_is_set (field, left) && !bb_field_is_set (field, right)))
        continue;
      if (field->station != station && field->station != BB_STATION_NONE)
        add_label (self, bb_station_get_title (field->station), 1, line++, "station-title");
      station = field->station;
      if (field->station != BB_STATION_NONE && !is_equal (field, left, right))
        n++;
      add_field (self, field, left, right, line++);
    }

  bb_proof_compare_show (self->proof, self->session, left->id, right->id);
  count = n == 0 ? g_strdup (_("All settings are the same."))
                 : g_strdup_printf (ngettext ("%u setting differs.", "%u settings differ.", n), n);
  gtk_label_set_label (self->count_label, count);
}

static void
selected_cb (BbCompareView *self)
{
  if (self->revisions != NULL)
    fill (self);
}

/**
 * bb_compare_view_show:
 * @self: a comparison
 * @session: the session
 * @revisions: #BbRevision of one recipe, newest first
 *
 * Shows the two newest beside each other; the person chooses others.
 */
void
bb_compare_view_show (BbCompareView *self,
                      BbSession     *session,
                      GPtrArray     *revisions)
{
  g_return_if_fail (BB_IS_COMPARE_VIEW (self) && revisions != NULL);

  g_clear_pointer (&self->revisions, g_ptr_array_unref);
  g_set_object (&self->session, session);
  if (revisions->len == 0)
    {
      bb_children_empty_grid (self->grid);
      return;
    }

  bb_revision_menu_fill (self->left_drop_down, session, revisions, MIN (1, revisions->len - 1));
  bb_revision_menu_fill (self->right_drop_down, session, revisions, 0);
  self->revisions = g_ptr_array_ref (revisions);
  fill (self);
}

static void
bb_compare_view_dispose (GObject *object)
{
  BbCompareView *self = BB_COMPARE_VIEW (object);

  g_clear_pointer (&self->revisions, g_ptr_array_unref);
  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_COMPARE_VIEW);

  G_OBJECT_CLASS (bb_compare_view_parent_class)->dispose (object);
}

static void
bb_compare_view_class_init (BbCompareViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_compare_view_dispose;
  g_type_ensure (BB_TYPE_PROOF_COMPARE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-compare-view.ui");
  gtk_widget_class_bind_template_child (widget_class, BbCompareView, left_drop_down);
  gtk_widget_class_bind_template_child (widget_class, BbCompareView, right_drop_down);
  gtk_widget_class_bind_template_child (widget_class, BbCompareView, count_label);
  gtk_widget_class_bind_template_child (widget_class, BbCompareView, proof);
  gtk_widget_class_bind_template_child (widget_class, BbCompareView, grid);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
}

static void
bb_compare_view_init (BbCompareView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  bb_compat_set_name (GTK_WIDGET (self->left_drop_down), _("Revision on the left"));
  bb_compat_set_name (GTK_WIDGET (self->right_drop_down), _("Revision on the right"));
}
