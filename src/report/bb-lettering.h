/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <pango/pangocairo.h>

G_BEGIN_DECLS

PangoContext *bb_lettering_new_context  (void);
PangoLayout  *bb_lettering_new          (PangoContext *context,
                                         const char   *text,
                                         const char   *font,
                                         double        size,
                                         gboolean      bold,
                                         double        width);
double        bb_lettering_get_width    (PangoLayout  *self);
double        bb_lettering_get_height   (PangoLayout  *self);
void          bb_lettering_show         (PangoLayout  *self,
                                         cairo_t      *cr,
                                         double        x,
                                         double        y);
void          bb_lettering_clear_ground (PangoLayout  *self,
                                         cairo_t      *cr,
                                         double        x,
                                         double        y,
                                         double        edge);

G_END_DECLS
