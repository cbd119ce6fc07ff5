/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-coverage-bars"

#include "bb-coverage-bars.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-split-bar.h"

typedef struct {
  const char *title;
  const char *help;
  gsize offset;
} Part;

static const Part parts[] = {
  { N_("Colour"), N_("What the colours cover."), G_STRUCT_OFFSET (BbCoverage, colour) },
  { N_("Underbase"), N_("What the white under the colours covers."), G_STRUCT_OFFSET (BbCoverage, underbase) },
  { N_("White"), N_("What is white in the artwork itself, and stays white on the underbase."),
    G_STRUCT_OFFSET (BbCoverage, highlight) },
  { N_("Knocked out"), N_("Black that is left to the garment."), G_STRUCT_OFFSET (BbCoverage, knockout) },
  { N_("Soft"), N_("Pixels that are neither empty nor opaque, as at soft edges."), G_STRUCT_OFFSET (BbCoverage, soft) },
};

struct _BbCoverageBars
{
  AdwBin parent_instance;

  BbSplitBar *bars[G_N_ELEMENTS (parts)];
  GtkLabel *shares[G_N_ELEMENTS (parts)];
  GtkLabel *areas[G_N_ELEMENTS (parts)];
};

G_DEFINE_FINAL_TYPE (BbCoverageBars, bb_coverage_bars, ADW_TYPE_BIN)

static GtkLabel *
add_label (GtkGrid    *grid,
           const char *text,
           float       xalign,
           int         column,
           int         row)
{
  GtkLabel *label = GTK_LABEL (gtk_label_new (text));

  gtk_label_set_xalign (label, xalign);
  gtk_widget_set_tooltip_text (GTK_WIDGET (label), _(parts[row].help));
  gtk_widget_add_css_class (GTK_WIDGET (label), "numeral");
  gtk_grid_attach (grid, GTK_WIDGET (label), column, row, 1, 1);

  return label;
}

static void
bb_coverage_bars_class_init (BbCoverageBarsClass *klass)
{
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
bb_coverage_bars_init (BbCoverageBars *self)
{
  GtkGrid *grid = GTK_GRID (gtk_grid_new ());

  gtk_grid_set_column_spacing (grid, 10);
  gtk_grid_set_row_spacing (grid, 6);
  for (int i = 0; i < (int) G_N_ELEMENTS (parts); i++)
    {
      add_label (grid, _(parts[i].title), 0, 0, i);
      self->bars[i] = g_object_new (BB_TYPE_SPLIT_BAR, "hexpand", TRUE, "valign", GTK_ALIGN_CENTER, NULL);
      gtk_grid_attach (grid, GTK_WIDGET (self->bars[i]), 1, i, 1, 1);
      self->shares[i] = add_label (grid, NULL, 1, 2, i);
      self->areas[i] = add_label (grid, NULL, 1, 3, i);
    }
  adw_bin_set_child (ADW_BIN (self), GTK_WIDGET (grid));
  bb_compat_set_name (GTK_WIDGET (self), _("Share of the art box"));
}

/**
 * bb_coverage_bars_set:
 * @self: bars
 * @units: how numbers are shown
 * @coverage: what to show
 * @has_size: whether the areas mean anything; shares do without a size
 */
void
bb_coverage_bars_set (BbCoverageBars      *self,
                      const BbUnitContext *units,
                      const BbCoverage    *coverage,
                      gboolean             has_size)
{
  g_return_if_fail (BB_IS_COVERAGE_BARS (self));

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      const BbShare *share = G_STRUCT_MEMBER_P (coverage, parts[i].offset);
      g_autofree char *fraction = bb_quantity_format_with_unit (BB_QUANTITY_FRACTION, share->fraction, units);
      g_autofree char *area = bb_quantity_format_with_unit (BB_QUANTITY_AREA, share->area_m2, units);

      bb_split_bar_set_fraction (self->bars[i], share->fraction);
      gtk_label_set_label (self->shares[i], fraction);
      gtk_label_set_label (self->areas[i], has_size ? area : "–");
    }
}
