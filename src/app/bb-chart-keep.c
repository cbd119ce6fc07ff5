/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-chart-keep"

#include "bb-chart-keep.h"

#include <glib/gi18n-lib.h>

#include "bb-save.h"

/* A kept chart is as wide as the text of a page, in points; pixels of a picture are those of print. */
#define WIDTH 460.0
#define HEIGHT 300.0
#define SCALE (300.0 / 72.0)

static GBytes *
draw_pdf (gpointer   data,
          GError   **error)
{
  return bb_chart_to_pdf (data, WIDTH, HEIGHT, error);
}

static GBytes *
draw_png (gpointer   data,
          GError   **error)
{
  return bb_chart_to_png (data, WIDTH, HEIGHT, SCALE, error);
}

/**
 * bb_chart_save_async:
 * @chart: a chart
 * @file: a file that a person has just named
 * @as_pdf: whether it is saved as PDF, or as PNG
 * @callback: called when that is done, to finish it by bb_save_run_finish()
 * @data: for @callback
 *
 * Draws a chart as for print, off the main loop, and saves it.
 */
void
bb_chart_save_async (BbChart             *chart,
                     GFile               *file,
                     gboolean             as_pdf,
                     GAsyncReadyCallback  callback,
                     gpointer             data)
{
  g_return_if_fail (chart != NULL && G_IS_FILE (file));

  bb_save_run_async (bb_save_new (file, FALSE), as_pdf ? draw_pdf : draw_png, bb_chart_ref (chart),
                     (GDestroyNotify) bb_chart_unref, callback, data);
}

static void
draw_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  GError *error = NULL;
  GBytes *png = draw_png (data, &error);

  (void) source;
  (void) cancellable;
  if (png != NULL)
    g_task_return_pointer (task, png, (GDestroyNotify) g_bytes_unref);
  else
    g_task_return_error (task, error);
}

/**
 * bb_chart_copy_async:
 * @widget: where the chart is seen: its clipboard takes a copy
 * @chart: a chart
 * @callback: called when that is done, with @widget
 * @data: for @callback
 *
 * Draws a chart as for print, off the main loop, and copies it as a picture.
 */
void
bb_chart_copy_async (GtkWidget           *widget,
                     BbChart             *chart,
                     GAsyncReadyCallback  callback,
                     gpointer             data)
{
  g_autoptr (GTask) task = NULL;

  g_return_if_fail (GTK_IS_WIDGET (widget) && chart != NULL);

  task = g_task_new (widget, NULL, callback, data);
  g_task_set_task_data (task, bb_chart_ref (chart), (GDestroyNotify) bb_chart_unref);
  g_task_run_in_thread (task, draw_in_thread);
}

static gboolean
copy_picture (GtkWidget  *widget,
              GBytes     *png,
              GError    **error)
{
  g_autoptr (GdkTexture) picture = gdk_texture_new_from_bytes (png, error);

  if (picture != NULL)
    gdk_clipboard_set_texture (gtk_widget_get_clipboard (widget), picture);

  return picture != NULL;
}

/**
 * bb_chart_copy_finish:
 * @result: what the callback was given
 *
 * Returns: (transfer full): what a person has to be told: that it was copied, or why not
 */
char *
bb_chart_copy_finish (GAsyncResult *result)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) png = g_task_propagate_pointer (G_TASK (result), &error);

  if (png != NULL && copy_picture (g_task_get_source_object (G_TASK (result)), png, &error))
    return g_strdup (_("The chart was copied as a picture."));

  return g_strdup_printf (_("The chart was not copied: %s"), error->message);
}
