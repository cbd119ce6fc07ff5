/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field.h"

G_BEGIN_DECLS

/**
 * BbJsonName:
 * @field: a field that refers to another record
 * @id: the key of the record that it refers to
 * @data: the data given with the function
 * @error: return location for a #GError
 *
 * Finds the code of the record of the table `field->target` that has a key.
 *
 * Returns: (transfer full) (nullable): the code, or %NULL on failure
 */
typedef char *(*BbJsonName) (const BbField *field,
                             gint64         id,
                             gpointer       data,
                             GError       **error);

gboolean bb_json_append_exchanged (GString        *out,
                                   const BbTable  *table,
                                   gconstpointer   record,
                                   BbJsonName      name,
                                   gpointer        data,
                                   GError        **error);

G_END_DECLS
