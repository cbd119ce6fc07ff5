/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-after-paint"

#include "bb-after-paint.h"

typedef struct {
  BbAfterPaint func;
  guint *id;
  gint64 frame;
  gint64 due;
} Call;

/* The first time is at the beginning of the frame that is to be painted before. */
static gboolean
tick_cb (GtkWidget     *widget,
         GdkFrameClock *clock,
         gpointer       data)
{
  Call *call = data;
  const gint64 frame = gdk_frame_clock_get_frame_counter (clock);

  if (call->frame < 0)
    call->frame = frame;
  if (call->frame == frame || g_get_monotonic_time () < call->due)
    return G_SOURCE_CONTINUE;

  *call->id = 0;
  call->func (widget);

  return G_SOURCE_REMOVE;
}

/**
 * bb_after_paint:
 * @widget: a widget
 * @id: (inout): what is to be called already, or 0; it lives as long as @widget
 * @rest_ms: how long it has to wait in any case, in milliseconds: %BB_REST_BETWEEN_KEYS_MS for what follows typing
 * @func: what to do
 *
 * Lets a frame be painted, and calls @func for one that follows, and once only if this is called again before that.
 * Where nothing is painted, because @widget can't be seen, it is called at once.
 */
void
bb_after_paint (GtkWidget    *widget,
                guint        *id,
                guint         rest_ms,
                BbAfterPaint  func)
{
  Call *call = NULL;

  g_return_if_fail (GTK_IS_WIDGET (widget) && id != NULL && func != NULL);

  if (*id != 0)
    gtk_widget_remove_tick_callback (widget, *id);
  *id = 0;
  if (!gtk_widget_get_mapped (widget))
    {
      func (widget);
      return;
    }

  call = g_new0 (Call, 1);
  call->func = func;
  call->id = id;
  call->frame = -1;
  call->due = g_get_monotonic_time () + (gint64) rest_ms * G_TIME_SPAN_MILLISECOND;
  *id = gtk_widget_add_tick_callback (widget, tick_cb, call, g_free);
}

/**
 * bb_after_paint_now:
 * @widget: a widget
 * @id: (inout): what bb_after_paint() was given
 * @func: what it was asked to do
 *
 * Does at once what still waits, where something does.
 */
void
bb_after_paint_now (GtkWidget    *widget,
                    guint        *id,
                    BbAfterPaint  func)
{
  g_return_if_fail (GTK_IS_WIDGET (widget) && id != NULL && func != NULL);

  if (*id == 0)
    return;
  gtk_widget_remove_tick_callback (widget, *id);
  *id = 0;
  func (widget);
}
