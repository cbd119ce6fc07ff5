/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <png.h>

#include "bb-png.h"

G_BEGIN_DECLS

/* The committed pictures, pictures that are made on the spot, and all pixels of one at once. */

typedef struct {
  guint32 width;
  guint32 height;
  guint8 *pixels;
} Plane;

typedef struct {
  guint32 width;
  guint32 height;
  int colour_type;
  int bit_depth;
  gboolean interlaced;
  const guint8 *rows;
  gsize row_bytes;
  const png_color *palette;
  int n_palette;
  const guint8 *alpha;
  int n_alpha;
  const png_color_16 *transparent;
  const guint8 *profile;
  gsize profile_length;
} Drawing;

char    *picture_path         (const char     *name);
GBytes  *picture_load         (const char     *name);
GStrv    picture_list         (void);
Plane   *plane_read           (BbPng          *png,
                               GError        **error);
Plane   *plane_load           (const char     *name,
                               BbPngForm       form);
void     plane_free           (Plane          *self);
GBytes  *drawing_write        (const Drawing  *self);
GBytes  *chunks_write         (const char     *first_name,
                               ...) G_GNUC_NULL_TERMINATED;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Plane, plane_free)

G_END_DECLS
