/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-chart-keep"

#include "bb-chart-keep.h"

#include <glib/gi18n-lib.h>

/* A kept chart is as wide as the text of a page, in points; pixels of a picture are those of print. */
#define WIDTH 460.0
#define HEIGHT 300.0
#define SCALE (300.0 / 72.0)

/* @file is none where a picture is copied. */
typedef struct {
  BbChart *chart;
  GFile *file;
  gboolean as_pdf;
} Keeping;

static void
keeping_free (gpointer data)
{
  Keeping *self = data;

  g_clear_pointer (&self->chart, bb_chart_unref);
  g_clear_object (&self->file);
  g_free (self);
}

static void
keep_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  const Keeping *self = data;
  g_autoptr (GBytes) bytes = NULL;
  GError *error = NULL;

  (void) source;
  bytes = self->as_pdf ? bb_chart_to_pdf (self->chart, WIDTH, HEIGHT, &error)
                       : bb_chart_to_png (self->chart, WIDTH, HEIGHT, SCALE, &error);
  if (bytes != NULL && (self->file == NULL ||
                        g_file_replace_contents (self->file, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes),
                                                 NULL, FALSE, G_FILE_CREATE_NONE, NULL, cancellable, &error)))
    g_task_return_pointer (task, g_steal_pointer (&bytes), (GDestroyNotify) g_bytes_unref);
  else
    g_task_return_error (task, error);
}

/**
 * bb_chart_keep_async:
 * @widget: where the chart is seen: its clipboard takes a copy
 * @chart: a chart
 * @file: (nullable): where to save it; %NULL to copy it as a picture
 * @as_pdf: whether it is saved as PDF, or as PNG
 * @callback: called when that is done, with @widget
 * @data: for @callback
 *
 * Draws a chart as for print, off the main loop, and saves or copies it.
 */
void
bb_chart_keep_async (GtkWidget           *widget,
                     BbChart             *chart,
                     GFile               *file,
                     gboolean             as_pdf,
                     GAsyncReadyCallback  callback,
                     gpointer             data)
{
  Keeping *keeping = NULL;
  g_autoptr (GTask) task = NULL;

  g_return_if_fail (GTK_IS_WIDGET (widget) && chart != NULL && (file != NULL || !as_pdf));

  keeping = g_new0 (Keeping, 1);
  keeping->chart = bb_chart_ref (chart);
  keeping->file = file != NULL ? g_object_ref (file) : NULL;
  keeping->as_pdf = as_pdf;
  task = g_task_new (widget, NULL, callback, data);
  g_task_set_task_data (task, keeping, keeping_free);
  g_task_run_in_thread (task, keep_in_thread);
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
 * bb_chart_keep_finish:
 * @result: what the callback was given
 *
 * Returns: (transfer full): what a person has to be told: where it is now, or why it is not
 */
char *
bb_chart_keep_finish (GAsyncResult *result)
{
  const Keeping *self = g_task_get_task_data (G_TASK (result));
  g_autofree char *name = self->file != NULL ? g_file_get_parse_name (self->file) : NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = g_task_propagate_pointer (G_TASK (result), &error);

  if (bytes != NULL && name != NULL)
    return g_strdup_printf (_("The chart was saved as %s."), name);
  if (bytes != NULL && copy_picture (g_task_get_source_object (G_TASK (result)), bytes, &error))
    return g_strdup (_("The chart was copied as a picture."));

  return g_strdup_printf (name != NULL ? _("The chart was not saved: %s") : _("The chart was not copied: %s"),
                          error->message);
}
