/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * An artwork whose numbers can be reckoned by hand. It has 40 × 20 pixels. The art box begins 10 from the left and 5
 * from the top and has 20 × 10: half of it, on the left, red; then 50 black pixels, 30 white ones, and 20 blue ones of
 * alpha 0.2. All of it can be written several times as large, each pixel as a square of pixels.
 */

/* 10 a mm. */
#define ART_PIXELS_PER_METRE 10000

/* A path in a folder of its own under the test's temporary folder. */
char *art_new_path     (const char *name);
char *art_write        (const char *name,
                        guint       scale,
                        guint32     pixels_per_metre);
char *art_write_broken (const char *name);

G_END_DECLS
