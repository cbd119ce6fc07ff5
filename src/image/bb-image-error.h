/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define BB_IMAGE_ERROR (bb_image_error_quark ())

/**
 * BbImageError:
 * @BB_IMAGE_ERROR_READ: the file can't be opened or read
 * @BB_IMAGE_ERROR_NOT_PNG: the file is something else than a PNG picture
 * @BB_IMAGE_ERROR_DAMAGED: the file ends early or breaks the rules of PNG
 * @BB_IMAGE_ERROR_LIMIT: the picture is larger than what is read here
 *
 * Why a picture was refused. The message is one line that begins with the file's name.
 */
typedef enum {
  BB_IMAGE_ERROR_READ = 1,
  BB_IMAGE_ERROR_NOT_PNG,
  BB_IMAGE_ERROR_DAMAGED,
  BB_IMAGE_ERROR_LIMIT,
} BbImageError;

GQuark bb_image_error_quark (void);

G_END_DECLS
