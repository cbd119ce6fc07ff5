/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-artwork-picture"

#include "bb-artwork-picture.h"

#include "bb-artwork.h"

/* Sharp enough for the largest preview on a screen of two pixels a point, and drawn anew within a frame. */
#define LONGEST_SIDE 720

/* A file is read once to count it and once to make it small, about as long each. */
#define N_PASSES 2

#define STEPS 1000

struct _BbArtworkProgress
{
  int steps;
};

typedef struct {
  char *path;
  BbArtworkProgress *progress;
  int n_passes_done;
} Reading;

/**
 * bb_artwork_progress_new:
 *
 * Returns: (transfer full): nothing read yet
 */
BbArtworkProgress *
bb_artwork_progress_new (void)
{
  return g_atomic_rc_box_new0 (BbArtworkProgress);
}

/**
 * bb_artwork_progress_unref:
 * @self: (transfer full): a progress
 */
void
bb_artwork_progress_unref (BbArtworkProgress *self)
{
  g_atomic_rc_box_release (self);
}

/**
 * bb_artwork_progress_get_fraction:
 * @self: a progress
 *
 * Returns: how much of the reading is done, 0 to 1
 */
double
bb_artwork_progress_get_fraction (BbArtworkProgress *self)
{
  return (double) g_atomic_int_get (&self->steps) / (N_PASSES * STEPS);
}

static void
reading_free (gpointer data)
{
  Reading *self = data;

  g_clear_pointer (&self->progress, bb_artwork_progress_unref);
  g_free (self->path);
  g_free (self);
}

static void
progress_cb (double   fraction,
             gpointer data)
{
  Reading *self = data;

  g_atomic_int_set (&self->progress->steps, self->n_passes_done * STEPS + (int) (fraction * STEPS));
}

static BbArtworkPicture *
read_picture (Reading      *reading,
              GCancellable *cancellable,
              GError      **error)
{
  const BbImageWork work = { .cancellable = cancellable, .progress = progress_cb, .data = reading };
  g_autoptr (BbArtworkPicture) self = g_new0 (BbArtworkPicture, 1);
  g_autoptr (BbArtworkIn) in = bb_artwork_in_new ();
  g_autoptr (BbPng) png = NULL;

  self->path = g_strdup (reading->path);
  self->name = g_filename_display_basename (reading->path);
  in->file = g_strdup (reading->path);
  if (!bb_artwork_count (in, &self->counts, &work, error))
    return NULL;

  reading->n_passes_done++;
  png = bb_png_new_for_file (reading->path, BB_PNG_FORM_RGBA, error);
  if (png == NULL)
    return NULL;
  self->preview = bb_preview_read (png, LONGEST_SIDE, &work, error);

  return self->preview != NULL ? g_steal_pointer (&self) : NULL;
}

static void
read_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  g_autoptr (GError) error = NULL;
  BbArtworkPicture *picture = read_picture (data, cancellable, &error);

  (void) source;

  if (picture != NULL)
    g_task_return_pointer (task, picture, (GDestroyNotify) bb_artwork_picture_free);
  else
    g_task_return_error (task, g_steal_pointer (&error));
}

/**
 * bb_artwork_picture_read_async:
 * @source: the object that asks
 * @path: a file's name
 * @progress: tells meanwhile how far it is
 * @cancellable: stops it within a block of rows
 * @callback: called when it is read, stopped or refused
 * @data: for @callback
 *
 * Reads an artwork in a thread of its own.
 */
void
bb_artwork_picture_read_async (gpointer             source,
                               const char          *path,
                               BbArtworkProgress   *progress,
                               GCancellable        *cancellable,
                               GAsyncReadyCallback  callback,
                               gpointer             data)
{
  g_autoptr (GTask) task = g_task_new (source, cancellable, callback, data);
  Reading *reading = g_new0 (Reading, 1);

  reading->path = g_strdup (path);
  reading->progress = g_atomic_rc_box_acquire (progress);
  g_task_set_task_data (task, reading, reading_free);
  g_task_run_in_thread (task, read_in_thread);
}

/**
 * bb_artwork_picture_read_finish:
 * @result: what the callback was given
 * @error: return location for a #GError in the domain %BB_IMAGE_ERROR, or %G_IO_ERROR_CANCELLED
 *
 * Returns: (transfer full): the picture, or %NULL
 */
BbArtworkPicture *
bb_artwork_picture_read_finish (GAsyncResult *result,
                                GError      **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

/**
 * bb_artwork_picture_free:
 * @self: (nullable): a picture
 */
void
bb_artwork_picture_free (BbArtworkPicture *self)
{
  if (self == NULL)
    return;

  g_clear_pointer (&self->preview, bb_preview_free);
  g_free (self->path);
  g_free (self->name);
  g_free (self);
}
