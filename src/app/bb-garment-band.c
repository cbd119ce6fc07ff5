/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-garment-band"

#include "bb-garment-band.h"

#include "bb-contrast.h"
#include "bb-swatch.h"
#include "bb-text-box.h"

struct _BbGarmentBand
{
  AdwBin parent_instance;

  /* template */
  BbSwatch *swatch;
  GtkLabel *title_label;
  GtkLabel *subtitle_label;

  GdkRGBA ground;
  gboolean has_ground;
};

G_DEFINE_FINAL_TYPE (BbGarmentBand, bb_garment_band, ADW_TYPE_BIN)

static void
bb_garment_band_snapshot (GtkWidget   *widget,
                          GtkSnapshot *snapshot)
{
  BbGarmentBand *self = BB_GARMENT_BAND (widget);

  if (self->has_ground)
    gtk_snapshot_append_color (snapshot, &self->ground,
                               &GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (widget),
                                                    (float) gtk_widget_get_height (widget)));

  GTK_WIDGET_CLASS (bb_garment_band_parent_class)->snapshot (widget, snapshot);
}

static void
bb_garment_band_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_garment_band_parent_class)->dispose (object);
}

static void
bb_garment_band_class_init (BbGarmentBandClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_garment_band_dispose;
  widget_class->snapshot = bb_garment_band_snapshot;
  gtk_widget_class_set_css_name (widget_class, "garmentband");
  g_type_ensure (BB_TYPE_SWATCH);
  g_type_ensure (BB_TYPE_TEXT_BOX);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-garment-band.ui");
  gtk_widget_class_bind_template_child (widget_class, BbGarmentBand, swatch);
  gtk_widget_class_bind_template_child (widget_class, BbGarmentBand, title_label);
  gtk_widget_class_bind_template_child (widget_class, BbGarmentBand, subtitle_label);
}

static void
bb_garment_band_init (BbGarmentBand *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_garment_band_set_title:
 * @self: a band
 * @title: the name
 * @subtitle: what else identifies it
 */
void
bb_garment_band_set_title (BbGarmentBand *self,
                           const char    *title,
                           const char    *subtitle)
{
  g_return_if_fail (BB_IS_GARMENT_BAND (self));

  gtk_label_set_label (self->title_label, title);
  gtk_label_set_label (self->subtitle_label, subtitle);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->title_label), title);
}

/**
 * bb_garment_band_set_colour:
 * @self: a band
 * @srgb: (nullable): the one colour that is meant, as `#rrggbb`; %NULL or an empty text where it is several
 * @shade: which colours are meant
 */
void
bb_garment_band_set_colour (BbGarmentBand *self,
                            const char    *srgb,
                            BbShade        shade)
{
  g_return_if_fail (BB_IS_GARMENT_BAND (self));

  self->has_ground = srgb != NULL && gdk_rgba_parse (&self->ground, srgb);
  gtk_widget_remove_css_class (GTK_WIDGET (self), "dark-ground");
  gtk_widget_remove_css_class (GTK_WIDGET (self), "light-ground");
  if (self->has_ground)
    gtk_widget_add_css_class (GTK_WIDGET (self),
                              bb_contrast_wants_white_text ((double) self->ground.red, (double) self->ground.green,
                                                            (double) self->ground.blue)
                                ? "dark-ground" : "light-ground");

  bb_swatch_set_garment (self->swatch, NULL, shade);
  gtk_widget_set_visible (GTK_WIDGET (self->swatch), !self->has_ground);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
