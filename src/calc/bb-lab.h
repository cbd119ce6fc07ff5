/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <lcms2.h>

#include "bb-field.h"

G_BEGIN_DECLS

/*
 * CIELAB colours as the calculators take them: a list of L*, a*, b*, all from the same instrument, illuminant
 * and observer. L* is 0 to 150, because fluorescent garments are lighter than white; a* and b* are -500 to 500.
 */
#define BB_LAB_LIMITS BB_BETWEEN (-500, 500)
#define BB_LAB_COUNT BB_BETWEEN (3, 3)

gboolean  bb_lab_check           (const char      *key,
                                  GArray          *lab,
                                  GError         **error);
cmsCIELab bb_lab_from_array      (GArray          *lab);
cmsCIELab bb_lab_from_srgb       (const guint8     rgb[3]);
double    bb_lch_hue_difference  (const cmsCIELCh *from,
                                  const cmsCIELCh *to);

G_END_DECLS
