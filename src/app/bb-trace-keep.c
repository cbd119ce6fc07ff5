/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-trace-keep"

#include "bb-trace-keep.h"

#include <string.h>

#include "bb-csv.h"
#include "bb-moment.h"
#include "bb-save.h"
#include "bb-trace-report.h"

/* All that the making of a file needs, on the thread that reads the book. */
typedef struct {
  char *today;
  const BbTable *table;
  gint64 id;
  BbUnitContext units;
  BbPaper paper;
  gboolean as_pdf;
} Order;

static void
order_free (gpointer data)
{
  Order *self = data;

  g_free (self->today);
  g_free (self);
}

static Order *
make_order (BbSession     *session,
            const BbTable *table,
            gint64         id,
            gboolean       as_pdf)
{
  const BbUnitContext units = bb_session_copy_units (session);
  Order *order = g_new0 (Order, 1);

  *order = (Order) {
    .today = bb_dup_today (), .table = table, .id = id, .units = units,
    .paper = units.system == BB_UNITS_US ? BB_PAPER_LETTER : BB_PAPER_A4, .as_pdf = as_pdf,
  };

  return order;
}

static GPtrArray *
borrow_runs (const BbTrace *trace)
{
  GPtrArray *runs = g_ptr_array_new ();

  for (guint i = 0; i < trace->runs->len; i++)
    g_ptr_array_add (runs, &g_array_index (trace->runs, BbRunCard, i));

  return runs;
}

static GBytes *
make_csv (const Order  *self,
          BbBook       *book,
          GError      **error)
{
  g_autoptr (BbTrace) trace = bb_trace_load (book, self->table, self->id, error);
  g_autoptr (GPtrArray) runs = trace != NULL ? borrow_runs (trace) : NULL;
  char *text = runs != NULL ? bb_csv_write (&bb_run_card_table, runs, NULL, NULL, error) : NULL;

  return text != NULL ? g_bytes_new_take (text, strlen (text)) : NULL;
}

static GBytes *
make_pdf (const Order  *self,
          BbBook       *book,
          GError      **error)
{
  g_autoptr (BbDocument) document = bb_trace_report_new (book, self->table, self->id, self->today, &self->units,
                                                         error);

  return document != NULL ? bb_document_to_pdf (document, self->paper, error) : NULL;
}

static gpointer
make_file (BbBook    *book,
           gpointer   data,
           GError   **error)
{
  const Order *self = data;

  return self->as_pdf ? make_pdf (self, book, error) : make_csv (self, book, error);
}

static GBytes *
take_bytes (gpointer   data,
            GError   **error)
{
  (void) error;

  return g_bytes_ref (data);
}

static void
made_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  BbSession *session = BB_SESSION (source);
  g_autoptr (BbSave) save = data;
  g_autoptr (GError) error = NULL;
  GBytes *bytes = bb_session_read_finish (session, result, &error);
  g_autofree char *text = bytes == NULL ? bb_save_describe (save, error) : NULL;

  if (bytes == NULL)
    bb_session_say (session, text);
  else
    bb_save_run (g_steal_pointer (&save), take_bytes, bytes, (GDestroyNotify) g_bytes_unref, session);
}

/**
 * bb_trace_keep:
 * @session: the session
 * @table: the table of what had a part in runs; see bb_book_trace_runs()
 * @id: its key
 * @file: a file that a person has just named
 * @as_pdf: whether as a fault report, on the paper that goes with the units, or as a table of the runs
 *
 * Saves what the book says on it now, made and written off the main loop, and says how that went. It names customers,
 * so that nobody but the file's owner may read it.
 */
void
bb_trace_keep (BbSession     *session,
               const BbTable *table,
               gint64         id,
               GFile         *file,
               gboolean       as_pdf)
{
  g_return_if_fail (BB_IS_SESSION (session) && table != NULL && G_IS_FILE (file));

  bb_session_read_async (session, make_file, make_order (session, table, id, as_pdf), order_free,
                         (GDestroyNotify) g_bytes_unref, NULL, made_cb, bb_save_new (file, TRUE));
}
