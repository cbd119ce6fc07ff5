/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-image"

#include "bb-scan-measure.h"

#include "bb-scan-colour.h"

typedef struct {
  BbScan *scan;
  GBytes *content;
  char *name;
} Job;

static void
job_free (gpointer data)
{
  Job *self = data;

  bb_scan_free (self->scan);
  g_bytes_unref (self->content);
  g_free (self->name);
  g_free (self);
}

static BbScanColourOut *
measure_rectangle (const BbScanColourIn  *in,
                   GBytes                *content,
                   const char            *name,
                   const BbImageWork     *work,
                   GError               **error)
{
  g_autoptr (BbPng) png = bb_png_new_for_bytes (content, name, BB_PNG_FORM_DEEP, error);
  g_autoptr (BbScanColourOut) out = bb_scan_colour_out_new ();

  return png != NULL && bb_scan_colour_measure (in, png, out, work, error) ? g_steal_pointer (&out) : NULL;
}

static gboolean
measure_subject (BbScan             *self,
                 GBytes             *content,
                 const char         *name,
                 const BbImageWork  *work,
                 GError            **error)
{
  const BbScanColourIn in = {
    .x_px = self->x_px, .y_px = self->y_px, .width_px = self->width_px, .height_px = self->height_px,
  };
  g_autoptr (BbScanColourOut) out = measure_rectangle (&in, content, name, work, error);

  if (out == NULL)
    return FALSE;

  self->l = out->l;
  self->a = out->a;
  self->b = out->b;
  self->l_sd = out->l_sd;
  self->a_sd = out->a_sd;
  self->b_sd = out->b_sd;

  return TRUE;
}

static gboolean
measure_patch (BbScan             *self,
               GBytes             *content,
               const char         *name,
               const BbImageWork  *work,
               GError            **error)
{
  const BbScanColourIn in = {
    .x_px = self->patch_x_px, .y_px = self->patch_y_px,
    .width_px = self->patch_width_px, .height_px = self->patch_height_px,
  };
  g_autoptr (BbScanColourOut) out = measure_rectangle (&in, content, name, work, error);

  if (out == NULL)
    return FALSE;

  self->patch_l = out->l;
  self->patch_a = out->a;
  self->patch_b = out->b;

  return TRUE;
}

/**
 * bb_scan_measure:
 * @scan: a scan whose rectangles are set, that of the patch only where there is one; gets its colours
 * @content: the bytes of the PNG picture
 * @name: what messages call it
 * @work: (nullable): how the work is watched and stopped
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR or %BB_IMAGE_ERROR, or %G_IO_ERROR_CANCELLED
 *
 * Measures what a scan shows, and its patch, as the calculator `scan-colour` does: CIELAB of D50.
 *
 * Returns: %FALSE if the picture can't be read, or a rectangle is not within it
 */
gboolean
bb_scan_measure (BbScan             *scan,
                 GBytes             *content,
                 const char         *name,
                 const BbImageWork  *work,
                 GError            **error)
{
  const BbField *patch = bb_table_find_field (&bb_scan_table, "patch_width_px");

  g_return_val_if_fail (scan != NULL && content != NULL && name != NULL, FALSE);

  return measure_subject (scan, content, name, work, error) &&
         (!bb_field_is_set (patch, scan) || measure_patch (scan, content, name, work, error));
}

static void
measure_in_thread (GTask        *task,
                   gpointer      source,
                   gpointer      data,
                   GCancellable *cancellable)
{
  Job *self = data;
  const BbImageWork work = { .cancellable = cancellable };
  GError *error = NULL;

  (void) source;

  if (bb_scan_measure (self->scan, self->content, self->name, &work, &error))
    g_task_return_pointer (task, g_steal_pointer (&self->scan), (GDestroyNotify) bb_scan_free);
  else
    g_task_return_error (task, error);
}

/**
 * bb_scan_measure_async:
 * @scan: a scan whose rectangles are set; copied
 * @content: the bytes of the PNG picture
 * @name: what messages call it
 * @cancellable: (nullable): stops the work
 * @callback: what to call when it is done
 * @data: for @callback
 *
 * Does what bb_scan_measure() does, in a thread of its own.
 */
void
bb_scan_measure_async (const BbScan        *scan,
                       GBytes              *content,
                       const char          *name,
                       GCancellable        *cancellable,
                       GAsyncReadyCallback  callback,
                       gpointer             data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, data);
  Job *self = g_new0 (Job, 1);

  self->scan = bb_record_copy (&bb_scan_table, scan);
  self->content = g_bytes_ref (content);
  self->name = g_strdup (name);
  g_task_set_task_data (task, self, job_free);
  g_task_run_in_thread (task, measure_in_thread);
}

/**
 * bb_scan_measure_finish:
 * @result: what the callback got
 * @error: return location for a #GError as of bb_scan_measure()
 *
 * Returns: (transfer full) (nullable): the scan with its colours; %NULL with an error
 */
BbScan *
bb_scan_measure_finish (GAsyncResult *result,
                        GError      **error)
{
  g_return_val_if_fail (g_task_is_valid (result, NULL), NULL);

  return g_task_propagate_pointer (G_TASK (result), error);
}
