/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* sRGB and light as tables, for all pixels of a picture. */

#define BB_LIGHT_STEPS 8191

/**
 * BbLight:
 * @linear: the light, 0 to 1, of each 8-bit value of sRGB
 * @encoded: the 8-bit value of sRGB of light in steps of 1 ÷ 8,191, fine enough for every value to come back
 */
typedef struct {
  float linear[256];
  guint8 encoded[BB_LIGHT_STEPS + 1];
} BbLight;

BbLight *_bb_light_new (void);

/**
 * _bb_light_encode:
 * @self: the tables
 * @light: an amount of light, 0 to 1
 *
 * Returns: its 8-bit value of sRGB
 */
static inline guint8
_bb_light_encode (const BbLight *self,
                  float          light)
{
  return self->encoded[(guint) (CLAMP (light, 0.0f, 1.0f) * BB_LIGHT_STEPS + 0.5f)];
}

G_END_DECLS
