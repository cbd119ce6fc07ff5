/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-image"

#include "bb-light-private.h"

#include <math.h>

#include "bb-srgb.h"

/**
 * _bb_light_new:
 *
 * Returns: (transfer full): the tables; free with g_free()
 */
BbLight *
_bb_light_new (void)
{
  BbLight *self = g_new (BbLight, 1);

  for (guint i = 0; i < 256; i++)
    self->linear[i] = (float) bb_srgb_to_linear (i / 255.0);
  for (guint i = 0; i <= BB_LIGHT_STEPS; i++)
    self->encoded[i] = (guint8) lround (255.0 * bb_srgb_from_linear (i / (double) BB_LIGHT_STEPS));

  return self;
}
