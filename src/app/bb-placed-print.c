/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-placed-print"

#include "bb-placed-print.h"

#include <glib/gi18n-lib.h>

#include "bb-box-key.h"
#include "bb-print-preview.h"
#include "bb-print-view.h"
#include "bb-show.h"

struct _BbPlacedPrint
{
  GtkBox parent_instance;

  /* template */
  BbPrintPreview *preview;
  BbBoxKey *art_key;
  BbBoxKey *spray_key;
  GtkLabel *art_label;
  GtkLabel *spray_label;

  /* owned: the garment's colour that the print was drawn on, with its mode; NULL where it has to be drawn anew */
  char *drawn_srgb;
  BbPrintMode drawn_mode;
};

G_DEFINE_FINAL_TYPE (BbPlacedPrint, bb_placed_print, GTK_TYPE_BOX)

/**
 * bb_placed_print_forget:
 * @self: a placed print
 *
 * To be called where the picture is another than before: the print is drawn anew.
 */
void
bb_placed_print_forget (BbPlacedPrint *self)
{
  g_return_if_fail (BB_IS_PLACED_PRINT (self));

  g_clear_pointer (&self->drawn_srgb, g_free);
}

/**
 * bb_placed_print_draw:
 * @self: a placed print
 * @picture: the picture, small
 * @garment_srgb: the garment's colour as `#rrggbb`
 * @mode: how it is printed
 * @black_at: up to this value of each colour a pixel counts as black
 *
 * Draws the print as it would look. This is the only part that takes longer than a key stroke may: done where the print
 * looks different, not where it is placed elsewhere.
 */
void
bb_placed_print_draw (BbPlacedPrint   *self,
                      const BbPreview *picture,
                      const char      *garment_srgb,
                      BbPrintMode      mode,
                      guint8           black_at)
{
  g_autoptr (BbPreview) print = NULL;
  guint8 rgb[3] = { 255, 255, 255 };
  GdkRGBA garment = { 1, 1, 1, 1 };

  g_return_if_fail (BB_IS_PLACED_PRINT (self) && picture != NULL && garment_srgb != NULL);

  if (g_strcmp0 (self->drawn_srgb, garment_srgb) == 0 && self->drawn_mode == mode)
    return;
  g_free (self->drawn_srgb);
  self->drawn_srgb = g_strdup (garment_srgb);
  self->drawn_mode = mode;

  bb_srgb_parse (garment_srgb, rgb);
  gdk_rgba_parse (&garment, garment_srgb);
  print = bb_print_view_new (picture, rgb, mode, black_at);
  bb_print_preview_set_garment (self->preview, &garment);
  bb_print_preview_set_print (self->preview, print);
  bb_box_key_set (self->art_key, BB_BOX_LINE_ART, &garment);
  bb_box_key_set (self->spray_key, BB_BOX_LINE_SPRAY, &garment);
}

/**
 * bb_placed_print_place:
 * @self: a placed print
 * @units: how lengths are shown
 * @placement: where the picture and its boxes lie
 * @has_art: whether anything of the picture is visible
 * @has_size: whether it is known how large that is
 * @has_box: whether the box that is sprayed is known
 */
void
bb_placed_print_place (BbPlacedPrint       *self,
                       const BbUnitContext *units,
                       const BbPlacement   *placement,
                       gboolean             has_art,
                       gboolean             has_size,
                       gboolean             has_box)
{
  const char *unknown = has_art ? _("size not known") : _("nothing is visible");
  g_autofree char *art = NULL;
  g_autofree char *spray = NULL;

  g_return_if_fail (BB_IS_PLACED_PRINT (self) && placement != NULL);

  art = bb_show_size (units, placement->art.width_mm, placement->art.height_mm);
  spray = bb_show_size (units, placement->box.width_mm, placement->box.height_mm);
  gtk_label_set_label (self->art_label, has_size ? art : unknown);
  gtk_label_set_label (self->spray_label, has_box ? spray : unknown);
  bb_print_preview_set_placement (self->preview, placement, has_art, has_box);
}

/**
 * bb_placed_print_describe:
 * @self: a placed print
 * @picture: what the picture is called
 * @garment: what the garment's colour is called
 * @mode: how it is printed
 *
 * Tells in words what is drawn and placed. Lines are told apart by their keys, and both are told here too.
 */
void
bb_placed_print_describe (BbPlacedPrint *self,
                          const char    *picture,
                          const char    *garment,
                          BbPrintMode    mode)
{
  g_autofree char *text = NULL;

  g_return_if_fail (BB_IS_PLACED_PRINT (self) && picture != NULL && garment != NULL);

  /* Translators: the picture for a screen reader: file, garment's colour, print mode, size, size of the box. */
  text = g_strdup_printf (_("%s on “%s”, printed as “%s”. Art: %s. Box that is sprayed: %s."), picture, garment,
                          bb_choices_get_title (&bb_print_mode_choices, (int) mode),
                          gtk_label_get_label (self->art_label), gtk_label_get_label (self->spray_label));
  bb_print_preview_describe (self->preview, text);
}

static void
bb_placed_print_dispose (GObject *object)
{
  bb_placed_print_forget (BB_PLACED_PRINT (object));
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_PLACED_PRINT);

  G_OBJECT_CLASS (bb_placed_print_parent_class)->dispose (object);
}

static void
bb_placed_print_class_init (BbPlacedPrintClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_placed_print_dispose;

  g_type_ensure (BB_TYPE_BOX_KEY);
  g_type_ensure (BB_TYPE_PRINT_PREVIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-placed-print.ui");
  gtk_widget_class_bind_template_child (widget_class, BbPlacedPrint, preview);
  gtk_widget_class_bind_template_child (widget_class, BbPlacedPrint, art_key);
  gtk_widget_class_bind_template_child (widget_class, BbPlacedPrint, spray_key);
  gtk_widget_class_bind_template_child (widget_class, BbPlacedPrint, art_label);
  gtk_widget_class_bind_template_child (widget_class, BbPlacedPrint, spray_label);
}

static void
bb_placed_print_init (BbPlacedPrint *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
