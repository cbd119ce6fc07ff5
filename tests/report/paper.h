/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <gio/gio.h>

/* What was drawn, read back: a PDF by poppler's programs, a picture pixel by pixel, as 0xRRGGBB. */
char    *paper_read_text    (GBytes          *pdf);
char    *paper_read_page    (GBytes          *pdf,
                             guint            page);
char    *paper_read_facts   (GBytes          *pdf);

typedef struct _Picture Picture;

Picture *picture_read       (GBytes          *png);
Picture *picture_take       (cairo_surface_t *surface);
void     picture_free       (Picture         *self);
int      picture_get_width  (const Picture   *self);
int      picture_get_height (const Picture   *self);
guint    picture_get        (const Picture   *self,
                             int              x,
                             int              y);
guint    picture_count      (const Picture   *self,
                             guint            colour);
gboolean picture_equal      (const Picture   *self,
                             const Picture   *other);
