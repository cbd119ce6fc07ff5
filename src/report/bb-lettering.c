/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-lettering.h"

/**
 * bb_lettering_new_context:
 *
 * Returns: (transfer full): what letters are laid out in: on paper and on a screen alike, so that a layout holds for
 *   both
 */
PangoContext *
bb_lettering_new_context (void)
{
  PangoContext *context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  cairo_font_options_t *options = cairo_font_options_create ();

  pango_context_set_round_glyph_positions (context, FALSE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);

  return context;
}

/**
 * bb_lettering_new:
 * @context: see bb_lettering_new_context()
 * @text: what is written; plain text, never markup
 * @font: a family
 * @size: the height of the letters, in the units that are drawn in
 * @bold: whether they are bold
 * @width: where lines break, in the same units; below 0 for one line
 *
 * Returns: (transfer full): the letters in their places
 */
PangoLayout *
bb_lettering_new (PangoContext *context,
                  const char   *text,
                  const char   *font,
                  double        size,
                  gboolean      bold,
                  double        width)
{
  PangoLayout *self = pango_layout_new (context);
  PangoFontDescription *description = pango_font_description_from_string (font);
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_font_description_set_absolute_size (description, size * PANGO_SCALE);
  pango_font_description_set_weight (description, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (self, description);
  pango_font_description_free (description);
  /* Figures of one width stand below each other. */
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum"));
  pango_layout_set_attributes (self, attributes);
  pango_attr_list_unref (attributes);
  pango_layout_set_wrap (self, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_width (self, width < 0 ? -1 : (int) (width * PANGO_SCALE));
  pango_layout_set_text (self, text, -1);

  return self;
}

/**
 * bb_lettering_get_width:
 * @self: letters
 *
 * Returns: how wide they are
 */
double
bb_lettering_get_width (PangoLayout *self)
{
  int width = 0;

  pango_layout_get_size (self, &width, NULL);

  return (double) width / PANGO_SCALE;
}

/**
 * bb_lettering_get_height:
 * @self: letters
 *
 * Returns: how high they are
 */
double
bb_lettering_get_height (PangoLayout *self)
{
  int height = 0;

  pango_layout_get_size (self, NULL, &height);

  return (double) height / PANGO_SCALE;
}

/**
 * bb_lettering_show:
 * @self: letters
 * @cr: where to draw, with its colour set
 * @x: the left edge
 * @y: the upper edge
 *
 * Draws letters; no path is left behind.
 */
void
bb_lettering_show (PangoLayout *self,
                   cairo_t     *cr,
                   double       x,
                   double       y)
{
  cairo_move_to (cr, x, y);
  pango_cairo_show_layout (cr, self);
  cairo_new_path (cr);
}

/**
 * bb_lettering_clear_ground:
 * @self: letters
 * @cr: where to draw
 * @x: as it will be given to bb_lettering_show()
 * @y: as it will be given to bb_lettering_show()
 * @edge: how far around the letters
 *
 * Paints the colour that is set below the letters, so that a line which they stand on does not cross them.
 */
void
bb_lettering_clear_ground (PangoLayout *self,
                           cairo_t     *cr,
                           double       x,
                           double       y,
                           double       edge)
{
  cairo_rectangle (cr, x - edge, y, bb_lettering_get_width (self) + 2.0 * edge, bb_lettering_get_height (self));
  cairo_fill (cr);
}
