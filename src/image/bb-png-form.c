/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-image"

#include "bb-png-private.h"

/* What a picture is, and which transformations make rows of the form that is wanted of it. */

static void
note_header (BbPng *self)
{
  BbPngInfo *known = &self->known;
  png_uint_32 x = 0;
  png_uint_32 y = 0;
  int unit = 0;
  int bit_depth = 0;
  int colour_type = 0;
  int interlace = 0;

  png_get_IHDR (self->png, self->info, &known->width, &known->height, &bit_depth, &colour_type, &interlace, NULL,
                NULL);
  known->bit_depth = (guint) bit_depth;
  known->colour_type = (guint) colour_type;
  known->interlaced = interlace != PNG_INTERLACE_NONE;
  known->has_alpha = (colour_type & PNG_COLOR_MASK_ALPHA) != 0 ||
                     png_get_valid (self->png, self->info, PNG_INFO_tRNS) != 0;
  if (png_get_pHYs (self->png, self->info, &x, &y, &unit) != 0 && unit == PNG_RESOLUTION_METER)
    {
      known->pixels_per_metre_x = x;
      known->pixels_per_metre_y = y;
    }
}

static void
note_colour (BbPng *self)
{
  BbPngInfo *known = &self->known;
  png_charp profile_name = NULL;
  png_bytep profile = NULL;
  png_uint_32 length = 0;
  int intent = 0;
  int compression = 0;

  png_get_gAMA (self->png, self->info, &known->gamma);
  known->has_srgb = png_get_sRGB (self->png, self->info, &intent) != 0;
  if (self->form != BB_PNG_FORM_COUNTABLE &&
      png_get_iCCP (self->png, self->info, &profile_name, &compression, &profile, &length) != 0)
    {
      known->profile = profile;
      known->profile_length = length;
    }
  known->profile_bad = self->form != BB_PNG_FORM_COUNTABLE && self->has_profile_chunk && known->profile == NULL;
}

/**
 * _bb_png_note_info:
 * @self: a reader that has read up to the first row
 *
 * Notes what is known of the picture.
 */
void
_bb_png_note_info (BbPng *self)
{
  note_header (self);
  note_colour (self);
}

static void
fill_grey_table (BbPng *self,
                 guint  depth)
{
  guint highest = (1u << depth) - 1;
  png_color_16p transparent = NULL;

  for (guint i = 0; i < 256; i++)
    {
      guint8 grey = (guint8) ((i & highest) * 255 / highest);

      self->table[i][0] = self->table[i][1] = self->table[i][2] = grey;
      self->table[i][3] = 255;
    }
  if (png_get_tRNS (self->png, self->info, NULL, NULL, &transparent) != 0 && transparent != NULL)
    self->table[transparent->gray & highest][3] = 0;
}

/* A pixel whose index is behind the palette's end is opaque black, as libpng expands it. */
static void
fill_palette_table (BbPng *self)
{
  png_colorp palette = NULL;
  png_bytep alpha = NULL;
  int n_colours = 0;
  int n_alpha = 0;

  png_get_PLTE (self->png, self->info, &palette, &n_colours);
  png_get_tRNS (self->png, self->info, &alpha, &n_alpha, NULL);
  for (int i = 0; i < 256; i++)
    {
      self->table[i][0] = i < n_colours ? palette[i].red : 0;
      self->table[i][1] = i < n_colours ? palette[i].green : 0;
      self->table[i][2] = i < n_colours ? palette[i].blue : 0;
      self->table[i][3] = i < n_alpha ? alpha[i] : 255;
    }
}

/* A palette and grey are counted by their samples; what 16 bits of grey are transparent can't be told of 8. */
static gboolean
uses_table (const BbPng *self)
{
  return self->known.colour_type == PNG_COLOR_TYPE_PALETTE ||
         (self->known.colour_type == PNG_COLOR_TYPE_GRAY && !(self->known.bit_depth == 16 && self->known.has_alpha));
}

static void
ask_for_countable (BbPng *self)
{
  png_set_scale_16 (self->png);
  if (!uses_table (self))
    {
      if (self->known.colour_type != PNG_COLOR_TYPE_RGB || self->known.has_alpha)
        png_set_gray_to_rgb (self->png);
      png_set_tRNS_to_alpha (self->png);
      return;
    }

  if (self->known.colour_type == PNG_COLOR_TYPE_PALETTE)
    fill_palette_table (self);
  else
    fill_grey_table (self, MIN (self->known.bit_depth, 8));
  self->known.table = (const guint8 (*)[4]) self->table;
}

/**
 * _bb_png_ask_for_form:
 * @self: a reader that knows its picture
 *
 * Asks libpng for rows of the form that is wanted.
 */
void
_bb_png_ask_for_form (BbPng *self)
{
  /* What lies behind the palette's end is not worth a look at every pixel. */
  png_set_check_for_invalid_index (self->png, -1);
  switch (self->form)
    {
    case BB_PNG_FORM_RGBA:
      png_set_expand (self->png);
      png_set_scale_16 (self->png);
      png_set_gray_to_rgb (self->png);
      png_set_add_alpha (self->png, 255, PNG_FILLER_AFTER);
      break;
    case BB_PNG_FORM_DEEP:
      png_set_expand_16 (self->png);
      if (G_BYTE_ORDER == G_LITTLE_ENDIAN)
        png_set_swap (self->png);
      break;
    case BB_PNG_FORM_COUNTABLE:
    default:
      ask_for_countable (self);
      break;
    }
}

