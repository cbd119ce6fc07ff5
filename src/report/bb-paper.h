/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

/* Files from surfaces, in memory; whoever asked writes them. */

cairo_surface_t *bb_paper_new_pdf  (GByteArray       *bytes,
                                    double            width,
                                    double            height,
                                    const char       *title);
GBytes          *bb_paper_take_pdf (cairo_surface_t  *surface,
                                    GByteArray       *bytes,
                                    GError          **error);
GBytes          *bb_paper_take_png (cairo_surface_t  *surface,
                                    GError          **error);

G_END_DECLS
