/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-artwork-picture.h"

G_BEGIN_DECLS

/**
 * BbArtworkReader:
 *
 * Gets an artwork from a file that is dropped, chosen or named, off the main loop. Nothing is seen of it but the
 * progress while it reads, with a button that stops it, and one line where it could not. What a file says is dropped if
 * another was asked for meanwhile.
 */
#define BB_TYPE_ARTWORK_READER (bb_artwork_reader_get_type ())
G_DECLARE_FINAL_TYPE (BbArtworkReader, bb_artwork_reader, BB, ARTWORK_READER, AdwBin)

void              bb_artwork_reader_load         (BbArtworkReader *self,
                                                  const char      *path);
void              bb_artwork_reader_choose       (BbArtworkReader *self);
void              bb_artwork_reader_take_drops   (BbArtworkReader *self,
                                                  GtkWidget       *widget);
BbArtworkPicture *bb_artwork_reader_take_picture (BbArtworkReader *self);
const char       *bb_artwork_reader_get_unread   (BbArtworkReader *self);
void              bb_artwork_reader_clear        (BbArtworkReader *self);

G_END_DECLS
