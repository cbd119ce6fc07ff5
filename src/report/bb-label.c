/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-label.h"

#include "bb-lettering.h"
#include "bb-qr.h"

/* Shares of the label's height, by eye: what is read from a metre away, and what is read in the hand. */
#define TITLE_SHARE 0.12
#define SMALL_SHARE 0.09
#define PADDING_SHARE 0.06

/* A narrow label still has room for words: the square takes no more than this share of the width. */
#define SQUARE_SHARE 0.4

/**
 * bb_label_new:
 * @kind: what it names
 * @code: the code of that
 * @title: the name that a person knows it by
 * @detail: (nullable): more lines
 *
 * Returns: (transfer full): a label
 */
BbLabel *
bb_label_new (BbTagKind   kind,
              const char *code,
              const char *title,
              const char *detail)
{
  BbLabel *self = g_new0 (BbLabel, 1);

  self->tag = bb_tag_to_text (kind, code);
  self->title = g_strdup (title);
  self->detail = g_strdup (detail);

  return self;
}

/**
 * bb_label_copy:
 * @self: a label
 *
 * Returns: (transfer full): the same label again
 */
BbLabel *
bb_label_copy (const BbLabel *self)
{
  BbLabel *copy = g_new0 (BbLabel, 1);

  copy->tag = g_strdup (self->tag);
  copy->title = g_strdup (self->title);
  copy->detail = g_strdup (self->detail);

  return copy;
}

/**
 * bb_label_free:
 * @self: (transfer full): a label
 */
void
bb_label_free (BbLabel *self)
{
  g_free (self->tag);
  g_free (self->title);
  g_free (self->detail);
  g_free (self);
}

/* Draws @text at most @height high, and returns how high it became. */
static double
draw_text (cairo_t      *cr,
           PangoContext *context,
           const char   *text,
           double        size,
           gboolean      bold,
           double        width,
           double        height)
{
  g_autoptr (PangoLayout) layout = bb_lettering_new (context, text, "Sans", size, bold, width);

  pango_layout_set_height (layout, (int) (height * PANGO_SCALE));
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  bb_lettering_show (layout, cr, 0, 0);

  return bb_lettering_get_height (layout);
}

/**
 * bb_label_draw:
 * @self: a label
 * @cr: where to draw, with the label's corner at its origin
 * @width: the label's width, in units of @cr
 * @height: its height
 * @error: return location for an error
 *
 * Draws in black on white. Words that don't fit are cut with an ellipsis; the square code is always whole.
 *
 * Returns: whether the label could be drawn; %FALSE with @error, of %BB_MODEL_ERROR, where its code is too long for a
 *   QR code
 */
gboolean
bb_label_draw (const BbLabel *self,
               cairo_t       *cr,
               double         width,
               double         height,
               GError       **error)
{
  PangoContext *context = NULL;
  g_autoptr (BbQr) qr = NULL;
  const double side = MIN (height, width * SQUARE_SHARE);
  const double padding = height * PADDING_SHARE;
  const double title = height * TITLE_SHARE;
  double room = height - 2 * padding;

  g_return_val_if_fail (self != NULL && cr != NULL, FALSE);

  qr = bb_qr_new (self->tag, error);
  if (qr == NULL)
    return FALSE;

  context = bb_lettering_new_context ();
  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  bb_qr_draw (qr, cr, 0, (height - side) / 2, side);

  cairo_translate (cr, side, padding);
  cairo_set_source_rgb (cr, 0, 0, 0);
  width -= side + padding;
  for (guint i = 0; i < 3; i++)
    {
      const char * const texts[] = { self->tag, self->title, self->detail };
      const double sizes[] = { height * SMALL_SHARE, title, height * SMALL_SHARE };
      double drawn = 0;

      if (texts[i] == NULL || *texts[i] == '\0' || room < sizes[i])
        continue;
      /* A title of three lines would push the details off. */
      drawn = draw_text (cr, context, texts[i], sizes[i], i == 1, width, i == 1 ? MIN (room, 2.8 * title) : room);
      cairo_translate (cr, 0, drawn + padding / 2);
      room -= drawn + padding / 2;
    }
  g_object_unref (context);
  cairo_restore (cr);

  return TRUE;
}
