/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-worksheet-view"

#include "bb-worksheet-view.h"

#include <glib/gi18n-lib.h>

#include "bb-figure.h"
#include "bb-hazard-line.h"
#include "bb-rounding.h"
#include "bb-safety.h"
#include "bb-split-bar.h"

struct _BbWorksheetView
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *missing_label;
  BbFigures *pour_box;
  BbSplitBar *split_bar;
  GtkLabel *split_label;
  BbFigures *sheet_box;
  GtkLabel *safety_label;
  BbHazardLine *hazards;

  /* in the boxes */
  BbFigure *concentrate;
  BbFigure *water;
  BbFigure *total;
  BbFigure *per_garment;
  BbFigure *box;
  BbFigure *garments;
  BbFigure *left;
};

G_DEFINE_FINAL_TYPE (BbWorksheetView, bb_worksheet_view, ADW_TYPE_BIN)

static void
set_mass_and_volume (BbFigure            *figure,
                     const BbUnitContext *units,
                     double               grams,
                     double               millilitres)
{
  g_autofree char *mass = bb_quantity_format (BB_QUANTITY_MASS, bb_round_for_scale (grams), units);
  g_autofree char *volume = bb_quantity_format_with_unit (BB_QUANTITY_VOLUME, bb_round_for_scale (millilitres), units);
  g_autofree char *note = g_strdup_printf (_("or %s"), volume);

  bb_figure_set (figure, mass, bb_quantity_get_unit (BB_QUANTITY_MASS, units), note);
}

static char *
describe_split (const BbUnitContext *units,
                const BbWorksheetIn *in,
                const BbMixOut      *mix)
{
  g_autofree char *dilution = bb_dilution_format (in->parts_concentrate, in->parts_water, units);
  g_autofree char *share = bb_quantity_format_with_unit (BB_QUANTITY_FRACTION, mix->concentrate_mass_fraction, units);
  g_autofree char *solids = bb_quantity_format_with_unit (BB_QUANTITY_FRACTION, mix->solids_fraction, units);
  const gboolean by_volume = in->basis == BB_BASIS_VOLUME;
  const gboolean has_solids = !isnan (mix->solids_fraction);

  if (in->parts_water <= 0)
    return has_solids ? g_strdup_printf (_("Undiluted: solids are %s."), solids) : g_strdup (_("Undiluted."));
  if (!has_solids)
    return by_volume ? g_strdup_printf (_("%s by volume: concentrate is %s of the mass."), dilution, share)
                     : g_strdup_printf (_("%s by mass: concentrate is %s of the mass."), dilution, share);

  return g_strdup_printf (by_volume ? _("%s by volume: concentrate is %s of the mass, solids are %s.")
                                    : _("%s by mass: concentrate is %s of the mass, solids are %s."),
                          dilution, share, solids);
}

static void
show_split (BbWorksheetView     *self,
            const BbUnitContext *units,
            const BbWorksheetIn *in,
            const BbMixOut      *mix)
{
  g_autofree char *text = describe_split (units, in, mix);

  gtk_label_set_label (self->split_label, text);
  bb_split_bar_set_fraction (self->split_bar, mix->concentrate_mass_fraction);
}

static void
show_box (BbWorksheetView     *self,
          const BbUnitContext *units,
          const BbBoxOut      *box)
{
  g_autofree char *width = bb_quantity_format (BB_QUANTITY_LENGTH, box->box_width_mm, units);
  g_autofree char *height = bb_quantity_format (BB_QUANTITY_LENGTH, box->box_height_mm, units);
  g_autofree char *value = g_strdup_printf ("%s × %s", width, height);

  bb_figure_set (self->box, value, bb_quantity_get_unit (BB_QUANTITY_LENGTH, units),
                 box->clipped == 1 ? _("the margin is cut to the sprayer's reach") : NULL);
}

static void
show_garment (BbWorksheetView     *self,
              const BbUnitContext *units,
              const BbWorksheetIn *in,
              const BbWorksheet   *sheet)
{
  g_autofree char *wet = bb_quantity_format (BB_QUANTITY_MASS, bb_round_for_scale (sheet->laydown.wet_g), units);
  g_autofree char *laydown = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, in->laydown_g_per_m2, units);
  g_autofree char *used = bb_quantity_format_with_unit (BB_QUANTITY_MASS, bb_round_for_scale (sheet->laydown.used_g),
                                                        units);
  g_autofree char *note = NULL;

  note = in->overspray_fraction > 0 ? g_strdup_printf (_("%s; %s leave the nozzles"), laydown, used)
                                    : g_strdup (laydown);
  bb_figure_set (self->per_garment, wet, bb_quantity_get_unit (BB_QUANTITY_MASS, units), note);
}

static void
show_counts (BbWorksheetView     *self,
             const BbWorksheetIn *in,
             const BbWorksheet   *sheet)
{
  g_autofree char *garments = g_strdup_printf ("%" G_GINT64_FORMAT, sheet->batch.garments);
  g_autofree char *spare = NULL;

  if (sheet->batch.garments != in->count)
    spare = g_strdup_printf (_("%d wanted, the rest to spare"), (int) in->count);
  bb_figure_set (self->garments, garments, "", spare);
}

static void
show_left (BbWorksheetView   *self,
           const BbWorksheet *sheet,
           const char        *container)
{
  const gboolean short_of = sheet->has_stretch && sheet->stretch.garments < sheet->batch.garments;
  g_autofree char *left = NULL;
  g_autofree char *note = NULL;

  if (sheet->has_stretch)
    left = g_strdup_printf ("%" G_GINT64_FORMAT, sheet->stretch.garments);
  if (!sheet->has_stretch)
    note = g_strdup (_("say how much concentrate is left"));
  else if (container != NULL)
    /* Translators: the code of a container. */
    note = g_strdup_printf (short_of ? _("not enough in %s alone") : _("from %s"), container);
  else if (short_of)
    note = g_strdup (_("not enough for this count"));
  bb_figure_set (self->left, left, "", note);
  bb_figure_mark (self->left, short_of);
}

/**
 * bb_worksheet_view_show:
 * @self: a worksheet
 * @session: the session
 * @in: what was asked for
 * @sheet: the results
 * @container: (nullable): the code of the container that the concentrate was counted from; %NULL where a person said
 *   how much there is, or nobody
 */
void
bb_worksheet_view_show (BbWorksheetView     *self,
                        BbSession           *session,
                        const BbWorksheetIn *in,
                        const BbWorksheet   *sheet,
                        const char          *container)
{
  const BbUnitContext *units = bb_session_get_units (session);

  g_return_if_fail (BB_IS_WORKSHEET_VIEW (self));

  set_mass_and_volume (self->concentrate, units, sheet->mix.concentrate_g, sheet->mix.concentrate_ml);
  set_mass_and_volume (self->water, units, sheet->mix.water_g, sheet->mix.water_ml);
  set_mass_and_volume (self->total, units, sheet->batch.total_g, sheet->mix.total_ml);
  show_split (self, units, in, &sheet->mix);
  show_box (self, units, &sheet->box);
  show_garment (self, units, in, sheet);
  show_counts (self, in, sheet);
  show_left (self, sheet, container);
  gtk_widget_set_visible (GTK_WIDGET (self->missing_label), FALSE);
}

/**
 * bb_worksheet_view_set_pretreat:
 * @self: a worksheet
 * @session: the session
 * @pretreat: key of the pretreat that is mixed, or 0 where that is not known
 *
 * Shows what the pretreat does to who pours it, as its safety data sheet says.
 */
void
bb_worksheet_view_set_pretreat (BbWorksheetView *self,
                                BbSession       *session,
                                gint64           pretreat)
{
  g_return_if_fail (BB_IS_WORKSHEET_VIEW (self));

  bb_hazard_line_show (self->hazards, session, pretreat);
}

/**
 * bb_worksheet_view_show_empty:
 * @self: a worksheet
 * @text: what is missing, translated
 */
void
bb_worksheet_view_show_empty (BbWorksheetView *self,
                              const char      *text)
{
  BbFigure *figures[] = { self->concentrate, self->water, self->total, self->per_garment, self->box, self->garments,
                          self->left };

  g_return_if_fail (BB_IS_WORKSHEET_VIEW (self));

  gtk_label_set_label (self->missing_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->missing_label), TRUE);
  for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
    {
      bb_figure_set (figures[i], NULL, "", NULL);
      bb_figure_mark (figures[i], FALSE);
    }
  gtk_label_set_label (self->split_label, "");
  bb_split_bar_set_fraction (self->split_bar, 0);
}

static void
bb_worksheet_view_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_worksheet_view_parent_class)->dispose (object);
}

static void
bb_worksheet_view_class_init (BbWorksheetViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_worksheet_view_dispose;
  g_type_ensure (BB_TYPE_FIGURES);
  g_type_ensure (BB_TYPE_HAZARD_LINE);
  g_type_ensure (BB_TYPE_SPLIT_BAR);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-worksheet-view.ui");
  gtk_widget_class_bind_template_child (widget_class, BbWorksheetView, missing_label);
  gtk_widget_class_bind_template_child (widget_class, BbWorksheetView, pour_box);
  gtk_widget_class_bind_template_child (widget_class, BbWorksheetView, split_bar);
  gtk_widget_class_bind_template_child (widget_class, BbWorksheetView, split_label);
  gtk_widget_class_bind_template_child (widget_class, BbWorksheetView, sheet_box);
  gtk_widget_class_bind_template_child (widget_class, BbWorksheetView, safety_label);
  gtk_widget_class_bind_template_child (widget_class, BbWorksheetView, hazards);
}

static void
bb_worksheet_view_init (BbWorksheetView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));

  self->concentrate = bb_figure_add (self->pour_box, _("Concentrate"));
  self->water = bb_figure_add (self->pour_box, _("Water"));
  self->total = bb_figure_add (self->pour_box, _("Makes"));
  self->per_garment = bb_figure_add (self->sheet_box, _("On each garment"));
  self->box = bb_figure_add (self->sheet_box, _("Box"));
  self->garments = bb_figure_add (self->sheet_box, _("Garments to pretreat"));
  self->left = bb_figure_add (self->sheet_box, _("The container makes"));
  gtk_label_set_label (self->safety_label, _(bb_safety_find (BB_STATION_PRETREAT, 0)->brief));
}
