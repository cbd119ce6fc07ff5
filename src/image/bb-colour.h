/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-png.h"

G_BEGIN_DECLS

/*
 * Colours of a picture as an eye or a screen has them, through Little CMS, relative colorimetric, in floating point:
 * its 16-bit way to CIELAB is off by up to 0.6 in ΔE.
 */

/**
 * BbColourTarget:
 * @BB_COLOUR_LAB: L*, a*, b* of CIELAB, white point D50
 * @BB_COLOUR_SRGB: red, green and blue of sRGB (IEC 61966-2-1), from 0 to 1
 *
 * What colours are converted to. All are three numbers.
 */
typedef enum {
  BB_COLOUR_LAB = 1,
  BB_COLOUR_SRGB,
} BbColourTarget;

/**
 * BbColourSource:
 * @BB_COLOUR_BY_PROFILE: by the picture's own ICC profile
 * @BB_COLOUR_BY_SRGB: as sRGB, as the picture says
 * @BB_COLOUR_BY_DEFAULT: as sRGB, because the picture says nothing
 * @BB_COLOUR_BY_FALLBACK: as sRGB, because the picture's own profile can't be used
 *
 * How the picture's colours were understood.
 */
typedef enum {
  BB_COLOUR_BY_PROFILE = 1,
  BB_COLOUR_BY_SRGB,
  BB_COLOUR_BY_DEFAULT,
  BB_COLOUR_BY_FALLBACK,
} BbColourSource;

typedef struct _BbColour BbColour;

BbColour      *bb_colour_new        (const BbPngInfo *info,
                                     BbColourTarget   target);
void           bb_colour_free       (BbColour        *self);
BbColourSource bb_colour_get_source (const BbColour  *self);
void           bb_colour_convert    (const BbColour  *self,
                                     const double    *rgb,
                                     double          *out,
                                     gsize            n_pixels);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbColour, bb_colour_free)

G_END_DECLS
