/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-error.h"

G_DEFINE_QUARK (bb-model-error-quark, bb_model_error)
