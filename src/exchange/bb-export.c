/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-exchange"

#include "bb-exchange.h"

#include "bb-canonical.h"
#include "bb-codes.h"
#include "bb-csv.h"
#include "bb-exchange-watch.h"
#include "bb-json-write.h"
#include "bb-selection.h"

typedef struct {
  BbSelection *selection;
  const gint64 *recipes;
  guint n_recipes;
  GCancellable *cancellable;
} Choosing;

/* In one transaction, so that all records are of the same moment. */
static gboolean
choose (BbBook   *book,
        gpointer  data,
        GError  **error)
{
  Choosing *self = data;

  if (self->recipes == NULL)
    return bb_selection_add_all (self->selection, book, self->cancellable, error);

  return bb_selection_add_recipes (self->selection, book, self->recipes, self->n_recipes, self->cancellable, error);
}

static gboolean
append_table (GString               *out,
              const BbTable         *table,
              GPtrArray             *records,
              BbCodes               *codes,
              const BbExchangeWatch *watch,
              guint                  total,
              guint                 *done,
              GError               **error)
{
  g_string_append (out, ",\n");
  bb_json_append_string (out, table->name);
  g_string_append (out, ":[");
  for (guint i = 0; i < records->len; i++)
    {
      if (!_bb_exchange_watch (watch, (*done)++, total, error))
        return FALSE;
      g_string_append (out, i > 0 ? ",\n" : "\n");
      if (!bb_json_append_exchanged (out, table, records->pdata[i], bb_codes_name, codes, error))
        return FALSE;
      bb_codes_add (codes, table, records->pdata[i]);
    }
  g_string_append (out, "]");

  return TRUE;
}

static char *
write_selection (BbBook                *book,
                 BbSelection           *selection,
                 const BbExchangeWatch *watch,
                 GError               **error)
{
  g_autoptr (GString) out = g_string_new ("{\n\"format\":\"" BB_EXCHANGE_FORMAT "\",\n\"version\":");
  g_autoptr (BbCodes) codes = bb_codes_new (book);
  guint total = bb_selection_count (selection);
  guint done = 0;
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  g_string_append_printf (out, "%d", BB_EXCHANGE_VERSION);
  for (guint t = 0; t < n_tables; t++)
    if (bb_book_table_is_exchanged (tables[t]) &&
        !append_table (out, tables[t], bb_selection_get_records (selection, tables[t]), codes, watch, total, &done,
                       error))
      return NULL;
  g_string_append (out, "\n}\n");

  return _bb_exchange_watch (watch, total, total, error) ? g_string_free (g_steal_pointer (&out), FALSE) : NULL;
}

/**
 * bb_exchange_export:
 * @book: a book
 * @recipes: (nullable) (array length=n_recipes): keys of the recipes that are wanted, or %NULL for the whole book
 * @n_recipes: how many
 * @watch: (nullable): how to follow and stop the work
 * @error: return location for a #GError
 *
 * Writes a book, or some recipes with all that belongs to them and all that they refer to, as a file that
 * bb_exchange_import() reads. One record stands on each line. Withdrawn records are part of it. Every revision is held
 * against its seal.
 *
 * Returns: (transfer full) (nullable): the text; %NULL with %BB_STORE_ERROR_DAMAGED where a seal does not fit, another
 *   error of the book, or %G_IO_ERROR_CANCELLED
 */
char *
bb_exchange_export (BbBook                *book,
                    const gint64          *recipes,
                    guint                  n_recipes,
                    const BbExchangeWatch *watch,
                    GError               **error)
{
  g_autoptr (BbSelection) selection = bb_selection_new ();
  Choosing choosing = { selection, recipes, n_recipes, watch != NULL ? watch->cancellable : NULL };

  g_return_val_if_fail (BB_IS_BOOK (book), NULL);

  if (!bb_book_in_transaction (book, choose, &choosing, error))
    return NULL;

  return write_selection (book, selection, watch, error);
}

/**
 * bb_exchange_export_csv:
 * @book: a book
 * @table: a table of the book
 * @error: return location for a #GError
 *
 * Writes all records of one table as CSV, withdrawn ones too; see the top of bb-csv.h.
 *
 * Returns: (transfer full) (nullable): the text; %NULL with an error of the book
 */
char *
bb_exchange_export_csv (BbBook        *book,
                        const BbTable *table,
                        GError       **error)
{
  g_autoptr (BbCodes) codes = NULL;
  g_autoptr (GPtrArray) records = NULL;

  g_return_val_if_fail (BB_IS_BOOK (book), NULL);

  codes = bb_codes_new (book);
  records = bb_book_load_all (book, table, TRUE, error);

  return records != NULL ? bb_csv_write (table, records, bb_codes_name, codes, error) : NULL;
}
