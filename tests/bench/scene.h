/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <png.h>

G_BEGIN_DECLS

/*
 * Large pictures that are like real ones for a decoder, made from a fixed seed. A *photograph*: clouds of noise over
 * six octaves, each channel its own, and grain of ±3 on each pixel. *Artwork*: overlapping discs with edges a pixel
 * or two soft, a third filled flat, a third with a gradient, a third with the photograph, on nothing; 43 % of it is
 * empty. A *painting* is the same with all discs filled with the photograph. With a palette, the artwork is dithered.
 * Written by libpng as it does by default (level 6, all filters).
 */

typedef enum {
  SCENE_PHOTO_RGB = 1,
  SCENE_PHOTO_GREY,
  SCENE_PHOTO_RGB_16,
  SCENE_ART_RGBA,
  SCENE_PAINTING_RGBA,
  SCENE_ART_RGBA_ADAM7,
  SCENE_ART_PALETTE,
  SCENE_ART_GREY_ALPHA,
} SceneKind;

void scene_write (SceneKind   kind,
                  guint32     width,
                  guint32     height,
                  const char *path);

G_END_DECLS
