/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-json-write.h"
#include "bb-json.h"

G_BEGIN_DECLS

/*
 * One table as CSV (RFC 4180): UTF-8, commas, lines ended by CR LF; the first line holds the fields' names. Numbers
 * are in canonical units with a decimal point, references are codes, lists are JSON. A text that a spreadsheet would
 * take for a formula gets an apostrophe before it, which reading takes off again.
 */

/**
 * BbCsvTake:
 * @record: (transfer full): a record that was read
 * @done: how many were read before
 * @total: how many there are
 * @data: the data given with the function
 * @error: return location for a #GError
 *
 * Takes a record.
 *
 * Returns: %FALSE to stop, with an error
 */
typedef gboolean (*BbCsvTake) (gpointer   record,
                               guint      done,
                               guint      total,
                               gpointer   data,
                               GError   **error);

char      *bb_csv_write       (const BbTable        *table,
                               GPtrArray            *records,
                               BbJsonName            name,
                               gpointer              data,
                               GError              **error);
gboolean   bb_csv_read         (const BbTable        *table,
                               const char           *text,
                               gsize                 length,
                               BbJsonResolve         resolve,
                               BbCsvTake             take,
                               gpointer              data,
                               GError              **error);
GPtrArray *bb_csv_split       (const char           *text,
                               gsize                 length,
                               GError              **error);
JsonNode  *bb_csv_cell_to_node (const BbField       *field,
                               const char           *cell);
void       bb_csv_append_cell (GString              *out,
                               const char           *text);

G_END_DECLS
