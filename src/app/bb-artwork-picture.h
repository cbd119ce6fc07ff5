/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "bb-counts.h"
#include "bb-preview.h"

G_BEGIN_DECLS

/**
 * BbArtworkPicture:
 * @path: the file that was read
 * @name: its name without folders, as it can be shown
 * @counts: what was counted
 * @preview: the picture, small
 *
 * All that is kept of an artwork once its file was read. Nothing in it depends on how the picture is placed, on which
 * garment and in which mode, so that none of these reads the file again.
 */
typedef struct {
  char *path;
  char *name;
  BbCounts counts;
  BbPreview *preview;
} BbArtworkPicture;

/**
 * BbArtworkProgress:
 *
 * How far the reading is, watched from one thread while another reads.
 */
typedef struct _BbArtworkProgress BbArtworkProgress;

BbArtworkProgress *bb_artwork_progress_new          (void);
void               bb_artwork_progress_unref        (BbArtworkProgress   *self);
double             bb_artwork_progress_get_fraction (BbArtworkProgress   *self);

void               bb_artwork_picture_read_async    (gpointer             source,
                                                     const char          *path,
                                                     BbArtworkProgress   *progress,
                                                     GCancellable        *cancellable,
                                                     GAsyncReadyCallback  callback,
                                                     gpointer             data);
BbArtworkPicture  *bb_artwork_picture_read_finish   (GAsyncResult        *result,
                                                     GError             **error);
void               bb_artwork_picture_free          (BbArtworkPicture    *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbArtworkPicture, bb_artwork_picture_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbArtworkProgress, bb_artwork_progress_unref)

G_END_DECLS
