/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-error.h"

G_DEFINE_QUARK (bb-model-error-quark, bb_model_error)

/**
 * bb_refuse_value:
 * @error: return location for a #GError
 * @message: what is wrong with a value, as a person reads it
 *
 * Sets %BB_MODEL_ERROR_VALUE.
 *
 * Returns: %FALSE
 */
gboolean
bb_refuse_value (GError     **error,
                 const char  *message)
{
  g_set_error_literal (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, message);

  return FALSE;
}

/**
 * bb_refuse_text:
 * @error: return location for a #GError
 * @message: why a text can't be read, as a person reads it
 *
 * Sets %BB_MODEL_ERROR_TEXT.
 *
 * Returns: %FALSE
 */
gboolean
bb_refuse_text (GError     **error,
                const char  *message)
{
  g_set_error_literal (error, BB_MODEL_ERROR, BB_MODEL_ERROR_TEXT, message);

  return FALSE;
}
