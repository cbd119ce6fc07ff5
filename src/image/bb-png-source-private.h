/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * The bytes of a PNG file, from a file or from memory, and which chunk they belong to. The length that a chunk claims
 * is known here before anything is made ready to hold it.
 */

#define BB_CHUNK(a, b, c, d) ((guint32) (a) << 24 | (guint32) (b) << 16 | (guint32) (c) << 8 | (guint32) (d))

/**
 * BbPngSource:
 * @fd: the open file, or -1 where all bytes are in memory
 * @bytes: (nullable): the bytes in memory
 * @buffer: (nullable): what was read of the file ahead
 * @next: the next byte that is ahead
 * @end: behind the last byte that is ahead
 * @position: how many bytes were taken
 * @left: how many bytes of the current chunk, with its checksum, are still to come
 * @header: length and name of the next chunk, as far as they came
 * @n_header: how many bytes of @header
 * @chunk: the name of the current chunk; 0 for the signature
 * @length: the length that it claims
 */
typedef struct {
  int fd;
  GBytes *bytes;
  guint8 *buffer;
  const guint8 *next;
  const guint8 *end;
  guint64 position;
  guint64 left;
  guint8 header[8];
  guint n_header;
  guint32 chunk;
  guint32 length;
} BbPngSource;

gboolean _bb_png_source_open_file  (BbPngSource  *self,
                                    const char   *path,
                                    GError      **error);
void     _bb_png_source_open_bytes (BbPngSource  *self,
                                    GBytes       *bytes);
void     _bb_png_source_close      (BbPngSource  *self);
gssize   _bb_png_source_take       (BbPngSource  *self,
                                    guint8       *out,
                                    gsize         n,
                                    int          *code);
gboolean _bb_png_source_follow     (BbPngSource  *self,
                                    const guint8 *data,
                                    gsize         n);
void     _bb_png_source_get_chunk  (const BbPngSource *self,
                                    char               name[5]);

G_END_DECLS
