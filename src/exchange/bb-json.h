/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <json-glib/json-glib.h>

#include "bb-exchange-error.h"
#include "bb-field.h"

G_BEGIN_DECLS

/* The most items a list may have whose field names no limit of its own. */
#define BB_JSON_ITEMS 10000

/* The largest file that is read. */
#define BB_EXCHANGE_BYTES (64 * 1024 * 1024)

/**
 * BbJsonResolve:
 * @field: a field that refers to another record
 * @code: the code of the record that it refers to
 * @id: (out): where to put the key of that record
 * @data: the data given with the function
 * @error: return location for a #GError
 *
 * Finds the record of the table `field->target` that has a code.
 *
 * Returns: %FALSE if there is none; the message does not repeat the field's name
 */
typedef gboolean (*BbJsonResolve) (const BbField *field,
                                   const char    *code,
                                   gint64        *id,
                                   gpointer       data,
                                   GError       **error);

/**
 * BbJsonReading:
 * @resolve: (nullable): finds what a reference names; %NULL where no references are allowed
 * @data: for @resolve
 * @null_is_none: %TRUE if `null` empties a field that has a default; %FALSE if it is refused there
 * @exchanged: %TRUE if fields that are no part of an exchange file are unknown keys
 *
 * How a record is read.
 */
typedef struct {
  BbJsonResolve resolve;
  gpointer data;
  gboolean null_is_none;
  gboolean exchanged;
} BbJsonReading;

JsonNode *bb_json_parse        (const char          *text,
                                gsize                length,
                                GError             **error);
gboolean  bb_json_read_record  (const BbTable       *table,
                                JsonNode            *node,
                                const BbJsonReading *reading,
                                gpointer             record,
                                GError             **error);
gboolean  bb_json_is_exchanged (const BbField       *field);

G_END_DECLS
