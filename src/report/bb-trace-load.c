/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-trace-report.h"

#include <glib/gi18n-lib.h>

#include "bb-trace.h"
#include "bb-words.h"

BB_DEFINE_TABLE (BbTouched, bb_touched, "touched", N_("Customer"), BB_TOUCHED_FIELDS, NULL)
BB_DEFINE_TABLE (BbTrace, bb_trace, "trace", N_("Trace"), BB_TRACE_FIELDS, NULL)

/* What stands beside the code of a record that has no name of its own: the name of what it refers to. */
static char *
dup_name (BbBook        *book,
          const BbTable *table,
          gconstpointer  record)
{
  const char * const names[] = { "name", "supply", "recipe", "customer", "blank" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      const BbField *field = bb_table_find_field (table, names[i]);

      if (field != NULL && field->kind == BB_KIND_TEXT)
        return g_strdup (bb_field_get_text (field, record));
      if (field != NULL)
        return bb_words_of_name (book, field->target, bb_field_get_integer (field, record));
    }

  return NULL;
}

static gboolean
load_subject (BbTrace        *self,
              BbBook         *book,
              const BbTable  *table,
              gint64          id,
              GError        **error)
{
  gpointer record = bb_book_load (book, table, id, error);

  if (record == NULL)
    return FALSE;
  self->kind = g_strdup (table->name);
  self->code = g_strdup (bb_field_get_text (bb_table_find_field (table, "code"), record));
  self->name = dup_name (book, table, record);
  bb_record_free (table, record);

  return TRUE;
}

/* What the cards hold moves into the trace. */
static gboolean
load_runs (BbTrace        *self,
           BbBook         *book,
           const BbTable  *table,
           gint64          id,
           GError        **error)
{
  const BbField *list = bb_table_find_field (&bb_trace_table, "runs");
  g_autoptr (GArray) ids = bb_book_trace_runs (book, table, id, error);
  g_autoptr (GPtrArray) cards = NULL;

  if (ids != NULL)
    cards = bb_book_load_lines (book, &bb_run_table, (const gint64 *) (gpointer) ids->data, ids->len, error);
  bb_field_ensure_array (list, self);
  for (guint i = 0; cards != NULL && i < cards->len; i++)
    {
      *(BbRunCard *) bb_field_append_item (list, self) = *(const BbRunCard *) cards->pdata[i];
      bb_record_init (&bb_run_card_table, cards->pdata[i]);
    }

  return cards != NULL;
}

static BbTouched *
find_touched (BbTrace         *self,
              const BbRunCard *run)
{
  const BbField *list = bb_table_find_field (&bb_trace_table, "customers");
  BbTouched *touched = NULL;

  for (guint i = 0; self->customers != NULL && i < self->customers->len; i++)
    {
      BbTouched *known = &g_array_index (self->customers, BbTouched, i);

      if (g_str_equal (known->code, run->customer_code))
        return known;
    }

  touched = bb_field_append_item (list, self);
  touched->code = g_strdup (run->customer_code);
  touched->customer = g_strdup (run->customer);
  touched->contact = g_strdup (run->contact);
  touched->jobs = g_strdup ("");
  touched->runs = touched->good = 0;
  touched->last_at = g_strdup (run->started_at);

  return touched;
}

static gint64
or_nothing (gint64 value)
{
  return value != BB_INTEGER_NONE ? value : 0;
}

/* Runs come with the newest first. */
static void
add_run (BbTrace         *self,
         GHashTable      *jobs,
         const BbRunCard *run)
{
  BbTouched *touched = find_touched (self, run);

  touched->runs++;
  touched->good += or_nothing (run->good);
  g_free (touched->first_at);
  touched->first_at = g_strdup (run->started_at);
  self->good += or_nothing (run->good);
  self->spoiled += or_nothing (run->spoiled);
  self->open += run->finished_at == NULL ? 1 : 0;
  if (g_hash_table_add (jobs, run->job))
    {
      char *before = touched->jobs;

      touched->jobs = *before != '\0' ? g_strdup_printf ("%s, %s", before, run->job) : g_strdup (run->job);
      g_free (before);
    }
}

static void
sum_up (BbTrace *self)
{
  g_autoptr (GHashTable) jobs = g_hash_table_new (g_str_hash, g_str_equal);

  bb_field_ensure_array (bb_table_find_field (&bb_trace_table, "customers"), self);
  self->good = self->spoiled = self->open = 0;
  for (guint i = 0; i < self->runs->len; i++)
    add_run (self, jobs, &g_array_index (self->runs, BbRunCard, i));
  self->jobs = g_hash_table_size (jobs);
}

/**
 * bb_trace_load:
 * @book: a book
 * @table: the table of what had a part in runs; see bb_book_trace_runs()
 * @id: its key
 * @error: return location for a #GError
 *
 * Finds what something had a part in, and whom that touched. Pages, reports and the command line all ask here.
 *
 * Returns: (transfer full) (nullable): the trace; %NULL with an error of the book
 */
BbTrace *
bb_trace_load (BbBook         *book,
               const BbTable  *table,
               gint64          id,
               GError        **error)
{
  g_autoptr (BbTrace) self = NULL;

  g_return_val_if_fail (BB_IS_BOOK (book) && table != NULL, NULL);

  self = bb_trace_new ();
  if (!load_subject (self, book, table, id, error) || !load_runs (self, book, table, id, error))
    return NULL;
  sum_up (self);

  return g_steal_pointer (&self);
}

/**
 * bb_trace_dup_title:
 * @self: a trace
 *
 * Returns: (transfer full): what it starts from, like “Lot L-1, Marsh 40 pretreat”
 */
char *
bb_trace_dup_title (const BbTrace *self)
{
  const BbTable *table = NULL;

  g_return_val_if_fail (self != NULL, NULL);

  table = bb_book_find_table (self->kind);
  if (self->name == NULL || *self->name == '\0')
    /* Translators: what kind of thing it is, and its code, like “Run 2503-01.1.1”. */
    return g_strdup_printf (_("%s %s"), _(table->title), self->code);

  /* Translators: what kind of thing it is, its code and its name, like “Lot L-1, Marsh 40 pretreat”. */
  return g_strdup_printf (_("%s %s, %s"), _(table->title), self->code, self->name);
}

/**
 * bb_trace_describe:
 * @self: a trace
 *
 * Returns: (transfer full): in sentences, how much it touched
 */
char *
bb_trace_describe (const BbTrace *self)
{
  g_autoptr (GPtrArray) sentences = g_ptr_array_new_with_free_func (g_free);

  g_return_val_if_fail (self != NULL, NULL);

  if (self->runs->len == 0)
    return g_strdup (_("It had a part in no run of this book."));
  g_ptr_array_add (sentences, g_strdup_printf (ngettext ("It had a part in %u run.", "It had a part in %u runs.",
                                                         (gulong) self->runs->len), (guint) self->runs->len));
  g_ptr_array_add (sentences, g_strdup_printf (ngettext ("%u job was touched.", "%u jobs were touched.",
                                                         (gulong) self->jobs), (guint) self->jobs));
  g_ptr_array_add (sentences, g_strdup_printf (ngettext ("%u customer was touched.", "%u customers were touched.",
                                                         (gulong) self->customers->len),
                                               (guint) self->customers->len));
  g_ptr_array_add (sentences, g_strdup_printf (ngettext ("%u garment came out well.", "%u garments came out well.",
                                                         (gulong) self->good), (guint) self->good));
  g_ptr_array_add (sentences, g_strdup_printf (ngettext ("%u garment was spoiled.", "%u garments were spoiled.",
                                                         (gulong) self->spoiled), (guint) self->spoiled));
  if (self->open > 0)
    g_ptr_array_add (sentences, g_strdup_printf (ngettext ("%u run has not ended yet.", "%u runs have not ended yet.",
                                                           (gulong) self->open), (guint) self->open));
  g_ptr_array_add (sentences, NULL);

  return g_strjoinv (" ", (char **) sentences->pdata);
}
