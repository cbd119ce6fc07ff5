/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

/**
 * BbQr:
 *
 * A text as a QR code (ISO/IEC 18004), to be drawn.
 */
typedef struct _BbQr BbQr;

BbQr *bb_qr_new  (const char  *text,
                  GError     **error);
void  bb_qr_free (BbQr        *self);
void  bb_qr_draw (const BbQr  *self,
                  cairo_t     *cr,
                  double       x,
                  double       y,
                  double       side);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbQr, bb_qr_free)

G_END_DECLS
