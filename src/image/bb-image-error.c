/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-image-error.h"

G_DEFINE_QUARK (bb-image-error-quark, bb_image_error)
