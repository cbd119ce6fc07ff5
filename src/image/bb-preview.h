/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-png.h"

G_BEGIN_DECLS

/* The longest side that a preview can have. */
#define BB_PREVIEW_LONGEST 2048

/**
 * BbPreview:
 * @width: columns of the preview
 * @height: rows of the preview
 * @full_width: columns of the picture
 * @full_height: rows of the picture
 * @pixels: RGBA of 8 bits, row by row without gaps; sRGB, alpha not multiplied in
 *
 * A picture made small enough to be shown. @pixels suits `gdk_memory_texture_new()` with `GDK_MEMORY_R8G8B8A8` and a
 * stride of 4 × @width.
 *
 * Each pixel of the picture adds to the one pixel of the preview that it falls into, so that memory depends on the
 * preview's size only (16 bytes a pixel while it is made) and an interlaced picture needs no more. Light is averaged,
 * by its alpha, and not values of sRGB, which would darken fine patterns. Colours go by the picture's own ICC
 * profile, else as sRGB. No picture is made larger.
 */
typedef struct {
  guint width;
  guint height;
  guint32 full_width;
  guint32 full_height;
  GBytes *pixels;
} BbPreview;

BbPreview *bb_preview_read             (BbPng               *png,
                                        guint                longest_side,
                                        const BbImageWork   *work,
                                        GError             **error);
void       bb_preview_load_async       (const char          *path,
                                        guint                longest_side,
                                        GCancellable        *cancellable,
                                        GAsyncReadyCallback  callback,
                                        gpointer             data);
void       bb_preview_load_bytes_async (GBytes              *bytes,
                                        const char          *name,
                                        guint                longest_side,
                                        GCancellable        *cancellable,
                                        GAsyncReadyCallback  callback,
                                        gpointer             data);
BbPreview *bb_preview_load_finish      (GAsyncResult        *result,
                                        GError             **error);
BbPreview *bb_preview_new              (guint                width,
                                        guint                height,
                                        GBytes              *pixels);
void       bb_preview_free             (BbPreview           *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbPreview, bb_preview_free)

G_END_DECLS
