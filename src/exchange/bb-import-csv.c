/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-exchange"

#include "bb-exchange.h"

#include "bb-csv.h"
#include "bb-exchange-watch.h"
#include "bb-intake-private.h"

/* The rows of one table. */
typedef struct {
  const BbTable *table;
  const char *text;
  gsize length;
  BbIntake *intake;
} Rows;

static gboolean
resolve_row (const BbField *field,
             const char    *code,
             gint64        *id,
             gpointer       data,
             GError       **error)
{
  const Rows *self = data;

  return bb_codes_resolve (field, code, id, self->intake->codes, error);
}

static gboolean
take_row (gpointer   record,
          guint      done,
          guint      total,
          gpointer   data,
          GError   **error)
{
  const Rows *self = data;
  gboolean taken = _bb_exchange_watch (self->intake->watch, done, total, error) &&
                   _bb_intake_take (self->intake, self->table, record, error);

  bb_record_free (self->table, record);
  self->intake->total = total;

  return taken;
}

static gboolean
take_rows (BbIntake  *intake,
           gpointer   data,
           GError   **error)
{
  Rows *self = data;

  self->intake = intake;

  return bb_csv_read (self->table, self->text, self->length, resolve_row, take_row, self, error);
}

/**
 * bb_exchange_import_csv:
 * @book: a book
 * @table: the table of the records
 * @text: CSV as bb_csv_write() makes it
 * @length: its length in bytes, at most %BB_EXCHANGE_BYTES
 * @watch: (nullable): how to follow and stop the work
 * @imported: (out) (optional): what was done
 * @error: return location for a #GError
 *
 * Like bb_exchange_import(), for the records of one table. The message names row and column, like `row 4: name: …`.
 *
 * Returns: %FALSE with an error as bb_exchange_import()
 */
gboolean
bb_exchange_import_csv (BbBook                *book,
                        const BbTable         *table,
                        const char            *text,
                        gsize                  length,
                        const BbExchangeWatch *watch,
                        BbImported            *imported,
                        GError               **error)
{
  Rows rows = { .table = table, .text = text, .length = length };

  g_return_val_if_fail (BB_IS_BOOK (book) && text != NULL, FALSE);
  g_return_val_if_fail (bb_book_table_is_exchanged (table), FALSE);

  return _bb_intake_run (book, take_rows, &rows, watch, imported, error);
}
