/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-trace-report.h"

#include <glib/gi18n-lib.h>

#include "bb-words.h"

/*
 * @book: a book
 * @table: the table of what the report is about
 * @units: the units that are shown
 * @trace: what it touched
 * @document: what is being made
 */
typedef struct {
  BbBook *book;
  const BbTable *table;
  const BbUnitContext *units;
  BbTrace *trace;
  BbDocument *document;
} Report;

static BbDocument *
make_document (const BbShop  *shop,
               const BbTrace *trace,
               const char    *today)
{
  const char *name = shop->name != NULL ? shop->name : _("Fault report");
  g_autofree char *title = g_strdup_printf (_("Fault report %s"), trace->code);
  g_autofree char *head = bb_trace_dup_title (trace);
  g_autofree char *day = bb_words_of_day (today);
  g_autofree char *foot = g_strdup_printf (_("Made by Blankbook from the shop's book on %s"), day);

  return bb_document_new (title, name, head, foot);
}

static void
add_title (const Report *self)
{
  g_autofree char *title = bb_trace_dup_title (self->trace);
  g_autofree char *sum = bb_trace_describe (self->trace);

  bb_document_take (self->document, bb_heading_new (_("Fault report"), 0));
  bb_document_take (self->document, bb_text_new (title, TRUE));
  bb_document_take (self->document, bb_text_new (sum, FALSE));
}

/* What the book has on the thing itself: batch and dates of a lot, maker of a machine. */
static gboolean
add_subject (const Report  *self,
             gint64         id,
             GError       **error)
{
  gpointer record = bb_book_load (self->book, self->table, id, error);
  BbBlock *facts = NULL;

  if (record == NULL)
    return FALSE;
  facts = bb_facts_new ();
  for (guint i = 0; i < self->table->n_fields; i++)
    {
      const BbField *field = &self->table->fields[i];
      g_autofree char *value = NULL;

      if (field->derived || field->kind == BB_KIND_LIST || field->station != BB_STATION_NONE ||
          bb_table_is_second_part (self->table, field))
        continue;
      value = bb_words_of_field (self->book, self->table, field, record, self->units);
      if (*value != '\0')
        bb_facts_add (facts, _(field->title), value);
    }
  bb_document_take (self->document, bb_heading_new (_(self->table->title), 1));
  bb_document_take (self->document, facts);
  bb_record_free (self->table, record);

  return TRUE;
}

static void
add_customers (const Report *self)
{
  const BbColumn columns[] = {
    { _("Customer"), 2.2, FALSE }, { _("Contact"), 2.6, FALSE }, { _("Jobs"), 1.8, FALSE },
    { _("Garments"), 1.1, TRUE }, { _("Printed"), 2.0, FALSE },
  };
  BbBlock *table = bb_table_new (columns, G_N_ELEMENTS (columns));

  for (guint i = 0; i < self->trace->customers->len; i++)
    {
      const BbTouched *touched = &g_array_index (self->trace->customers, BbTouched, i);
      g_autofree char *good = g_strdup_printf ("%" G_GINT64_FORMAT, touched->good);
      g_autofree char *first = bb_words_of_day (touched->first_at);
      g_autofree char *last = bb_words_of_day (touched->last_at);
      /* Translators: two days, from and to. */
      g_autofree char *span = g_str_equal (first, last) ? g_strdup (first)
                                                        : g_strdup_printf (_("%s – %s"), first, last);
      const char *cells[] = { touched->customer, touched->contact, touched->jobs, good, span, NULL };

      bb_table_add (table, (GStrv) (gpointer) cells, NULL);
    }
  bb_document_take (self->document, bb_heading_new (_("Customers"), 1));
  bb_document_take (self->document, table);
}

static char *
describe_run (const BbRunCard *run)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  if (*run->artwork != '\0')
    g_ptr_array_add (parts, g_strdup_printf (_("Artwork: %s"), run->artwork));
  if (*run->lots != '\0')
    g_ptr_array_add (parts, g_strdup_printf (_("Lots: %s"), run->lots));
  if (*run->machines != '\0')
    g_ptr_array_add (parts, g_strdup_printf (_("Machines: %s"), run->machines));
  if (*run->person != '\0')
    g_ptr_array_add (parts, g_strdup_printf (_("By: %s"), run->person));
  g_ptr_array_add (parts, NULL);

  return parts->len > 1 ? g_strjoinv (" · ", (char **) parts->pdata) : NULL;
}

static char *
format_count (gint64 count)
{
  return count != BB_INTEGER_NONE ? g_strdup_printf ("%" G_GINT64_FORMAT, count) : g_strdup ("–");
}

static void
add_runs (const Report *self)
{
  const BbColumn columns[] = {
    { _("Run"), 1.7, FALSE }, { _("Started"), 1.5, FALSE }, { _("Customer"), 2.0, FALSE }, { _("Garment"), 2.6, FALSE },
    { _("Recipe"), 1.7, FALSE }, { _("Good"), 0.8, TRUE }, { _("Spoiled"), 1.0, TRUE },
  };
  BbBlock *table = bb_table_new (columns, G_N_ELEMENTS (columns));

  for (guint i = 0; i < self->trace->runs->len; i++)
    {
      const BbRunCard *run = &g_array_index (self->trace->runs, BbRunCard, i);
      g_autofree char *day = bb_words_of_day (run->started_at);
      /* Translators: a garment and its colour. */
      g_autofree char *garment = g_strdup_printf (_("%s, %s"), run->blank, run->colourway);
      g_autofree char *good = format_count (run->good);
      g_autofree char *spoiled = format_count (run->spoiled);
      g_autofree char *note = describe_run (run);
      const char *cells[] = { run->code, day, run->customer, garment, run->revision, good, spoiled, NULL };

      bb_table_add (table, (GStrv) (gpointer) cells, note);
    }
  bb_document_take (self->document, bb_heading_new (_("Runs"), 1));
  bb_document_take (self->document, table);
}

static void
add_limits (const Report *self)
{
  bb_document_take (self->document, bb_heading_new (_("What this does not say"), 1));
  bb_document_take (self->document,
                    bb_text_new (_("It lists the runs that were entered in the book. What was printed or taken from a "
                                   "container without being entered is not in it, and a run that is in it need not "
                                   "be faulty. Who stood at the machines is not who is at fault."), FALSE));
  bb_document_take (self->document,
                    bb_text_new (_("It names customers and people as the book does: give it only to those who need it, "
                                   "and keep it no longer than they do."), FALSE));
}

/**
 * bb_trace_report_new:
 * @book: a book
 * @table: the table of what is at fault; see bb_book_trace_runs()
 * @id: its key
 * @today: the day, as an ISO date
 * @units: the units that are shown
 * @error: return location for a #GError
 *
 * Writes a report on what may be at fault: what the book has on it, the customers, jobs and runs that it touched, and
 * what the report does not say.
 *
 * Returns: (transfer full) (nullable): the report; %NULL with an error of the book
 */
BbDocument *
bb_trace_report_new (BbBook               *book,
                     const BbTable        *table,
                     gint64                id,
                     const char           *today,
                     const BbUnitContext  *units,
                     GError              **error)
{
  g_autoptr (BbTrace) trace = NULL;
  g_autoptr (BbShop) shop = NULL;
  g_autoptr (BbDocument) document = NULL;
  Report self = { .book = book, .table = table, .units = units };

  g_return_val_if_fail (BB_IS_BOOK (book) && table != NULL && today != NULL && units != NULL, NULL);

  trace = bb_trace_load (book, table, id, error);
  shop = trace != NULL ? bb_book_load_shop (book, error) : NULL;
  if (shop == NULL)
    return NULL;
  document = make_document (shop, trace, today);
  self.trace = trace;
  self.document = document;
  add_title (&self);
  if (!add_subject (&self, id, error))
    return NULL;
  if (trace->runs->len > 0)
    {
      add_customers (&self);
      add_runs (&self);
    }
  add_limits (&self);

  return g_steal_pointer (&document);
}
