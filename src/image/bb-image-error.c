/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-image"

#include "bb-image-error.h"

G_DEFINE_QUARK (bb-image-error-quark, bb_image_error)
