/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-qr.h"

#include <glib/gi18n-lib.h>
#include <qrencode.h>

#include "bb-error.h"

struct _BbQr
{
  QRcode *code;
};

/* White around the code, in modules: ISO/IEC 18004 asks for four. */
#define QUIET_ZONE 4

/**
 * bb_qr_new:
 * @text: a text
 * @error: return location for an error
 *
 * Encodes @text so that a quarter of the code may be lost: labels crease, and get wet.
 *
 * Returns: (transfer full) (nullable): the code; %NULL with @error, of %BB_MODEL_ERROR, where @text is empty or too
 *   long
 */
BbQr *
bb_qr_new (const char *text,
           GError    **error)
{
  QRcode *code = NULL;
  BbQr *self = NULL;

  g_return_val_if_fail (text != NULL, NULL);

  code = QRcode_encodeString8bit (text, 0, QR_ECLEVEL_Q);
  if (code == NULL)
    {
      g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
                   _("“%s” can't be written as a QR code: it is empty or too long."), text);
      return NULL;
    }

  self = g_new0 (BbQr, 1);
  self->code = code;

  return self;
}

/**
 * bb_qr_free:
 * @self: (transfer full): a code
 */
void
bb_qr_free (BbQr *self)
{
  QRcode_free (self->code);
  g_free (self);
}

/**
 * bb_qr_draw:
 * @self: a code
 * @cr: where to draw
 * @x: left edge
 * @y: top edge
 * @side: side of the square, its white border included
 *
 * Draws black on white whatever the theme is: a scanner reads contrast.
 */
void
bb_qr_draw (const BbQr *self,
            cairo_t    *cr,
            double      x,
            double      y,
            double      side)
{
  const int width = self->code->width;

  g_return_if_fail (self != NULL && cr != NULL && side > 0);

  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_scale (cr, side / (width + 2 * QUIET_ZONE), side / (width + 2 * QUIET_ZONE));
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_rectangle (cr, 0, 0, width + 2 * QUIET_ZONE, width + 2 * QUIET_ZONE);
  cairo_fill (cr);

  /* One path, so that no hairline of the background shows between two modules. */
  for (int row = 0; row < width; row++)
    for (int column = 0; column < width; column++)
      if (self->code->data[row * width + column] & 1)
        cairo_rectangle (cr, column + QUIET_ZONE, row + QUIET_ZONE, 1, 1);
  cairo_set_source_rgb (cr, 0, 0, 0);
  cairo_fill (cr);
  cairo_restore (cr);
}
