/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-recipe.h"

G_BEGIN_DECLS

/*
 * Which garments are of a colour like one that a person points at. Colours are sRGB (IEC 61966-2-1) read as CIELAB of
 * the white point D50, compared by CIEDE2000 (ISO/CIE 11664-6). Beyond BB_LIKE_DE nobody calls two garments alike:
 * common practice, no source.
 *
 * What a shop calls white has L* of 92 or more and a chroma of at most 8, light 45 or more, dark 65 or less, and black
 * 25 or less and a chroma of at most 12; what lies between is called one or the other. Common practice, no source.
 */
#define BB_LIKE_DE 20.0

GArray *bb_colourways_like (const GPtrArray *colourways,
                            const char      *srgb,
                            guint            limit);
guint   bb_shades_of       (const char      *srgb);

G_END_DECLS
