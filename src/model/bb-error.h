/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define BB_MODEL_ERROR (bb_model_error_quark ())

/**
 * BbModelError:
 * @BB_MODEL_ERROR_VALUE: a value is missing, of the wrong type or out of its limits
 * @BB_MODEL_ERROR_KEY: a key is unknown, or given twice
 * @BB_MODEL_ERROR_TEXT: a text can't be read as the quantity asked for
 * @BB_MODEL_ERROR_UNDETERMINED: the inputs are each allowed but together determine no result
 *
 * What the model and the calculators refuse.
 */
typedef enum {
  BB_MODEL_ERROR_VALUE = 1,
  BB_MODEL_ERROR_KEY,
  BB_MODEL_ERROR_TEXT,
  BB_MODEL_ERROR_UNDETERMINED,
} BbModelError;

GQuark   bb_model_error_quark (void);
gboolean bb_refuse_value      (GError     **error,
                               const char  *message);
gboolean bb_refuse_text       (GError     **error,
                               const char  *message);

G_END_DECLS
