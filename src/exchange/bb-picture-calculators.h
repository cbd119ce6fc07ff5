/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-calculator.h"

G_BEGIN_DECLS

/*
 * The calculators that read a file. What they do stands in src/image, which knows pictures but no calculators; here
 * they get the description by which they are found. They answer as all others do, but what is wrong with the file is
 * told in the domain %BB_IMAGE_ERROR.
 */

extern const BbCalculator bb_artwork_calculator;
extern const BbCalculator bb_scan_colour_calculator;

G_END_DECLS
