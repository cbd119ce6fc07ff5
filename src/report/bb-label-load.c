/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-label-load.h"

#include <glib/gi18n-lib.h>

#include "bb-words.h"

static BbLabel *
make_job_label (BbBook      *book,
                const BbJob *job)
{
  g_autofree char *customer = bb_words_of_name (book, &bb_customer_table, job->customer);
  g_autofree char *day = bb_words_of_day (job->due_at);
  g_autofree char *due = *day != '\0' ? g_strdup_printf (_("Due %s"), day) : g_strdup ("");
  g_autofree char *detail = job->title != NULL ? g_strjoin ("\n", job->title, due, NULL) : g_strdup (due);

  return bb_label_new (BB_TAG_JOB, job->code, customer, detail);
}

static BbLabel *
make_revision_label (BbBook           *book,
                     const BbRevision *revision)
{
  g_autofree char *name = bb_words_of_name (book, &bb_recipe_table, revision->recipe);
  g_autofree char *made = bb_words_of_day (revision->made_at);
  g_autofree char *detail = g_strdup_printf (_("Revision %d of %s"), (int) revision->number, made);

  return bb_label_new (BB_TAG_RECIPE, revision->code, name, detail);
}

static BbLabel *
make_specimen_label (BbBook            *book,
                     const BbWashTest  *test,
                     GError           **error)
{
  g_autoptr (BbRevision) revision = bb_book_load (book, &bb_revision_table, test->revision, error);
  g_autofree char *name = NULL;
  g_autofree char *colour = bb_words_of_name (book, &bb_colourway_table, test->colourway);
  g_autofree char *washes = NULL;
  g_autofree char *detail = NULL;

  if (revision == NULL)
    return NULL;
  name = bb_words_of_name (book, &bb_recipe_table, revision->recipe);
  washes = g_strdup_printf (ngettext ("%d wash", "%d washes", (gulong) test->plan_cycles), (int) test->plan_cycles);
  detail = g_strjoin ("\n", revision->code, washes, *colour != '\0' ? colour : NULL, NULL);

  return bb_label_new (BB_TAG_SPECIMEN, test->code, name, detail);
}

static BbLabel *
make_lot_label (BbBook      *book,
                const BbLot *lot)
{
  g_autofree char *name = bb_words_of_name (book, &bb_supply_table, lot->supply);
  g_autofree char *day = bb_words_of_day (lot->expires_at);
  g_autofree char *last = *day != '\0' ? g_strdup_printf (_("Use by %s"), day) : g_strdup ("");
  g_autofree char *detail = g_strjoin ("\n", last, lot->batch, NULL);

  return bb_label_new (BB_TAG_LOT, lot->code, name, detail);
}

/**
 * bb_label_load:
 * @book: a book
 * @table: the table of what is labelled: jobs, recipes, revisions, wash tests or lots
 * @id: its key
 * @error: return location for an error
 *
 * Returns: (transfer full) (nullable): the label of that thing; %NULL with an error where it can't be read
 */
BbLabel *
bb_label_load (BbBook         *book,
               const BbTable  *table,
               gint64          id,
               GError        **error)
{
  gpointer record = bb_book_load (book, table, id, error);
  BbLabel *label = NULL;

  if (record == NULL)
    return NULL;

  if (table == &bb_job_table)
    label = make_job_label (book, record);
  else if (table == &bb_recipe_table)
    label = bb_label_new (BB_TAG_RECIPE, ((const BbRecipe *) record)->code, ((const BbRecipe *) record)->name, NULL);
  else if (table == &bb_revision_table)
    label = make_revision_label (book, record);
  else if (table == &bb_wash_test_table)
    label = make_specimen_label (book, record, error);
  else if (table == &bb_lot_table)
    label = make_lot_label (book, record);
  else
    g_warn_if_reached ();
  bb_record_free (table, record);

  return label;
}
