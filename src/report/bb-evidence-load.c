/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-evidence-load.h"

static gboolean
add_specimen (BbWashEvidence    *evidence,
              BbBook            *book,
              const BbWashTest  *test,
              const char        *today,
              GError           **error)
{
  g_autoptr (BbWashPlan) plan = test->plan != 0 ? bb_book_load (book, &bb_wash_plan_table, test->plan, error) : NULL;
  g_autoptr (GPtrArray) readings = NULL;

  if (test->plan != 0 && plan == NULL)
    return FALSE;
  readings = bb_book_load_referring (book, &bb_reading_table, &bb_wash_test_table, test->id, error);

  return readings != NULL && bb_wash_evidence_add (evidence, test, plan, readings, today, error);
}

static BbWashEvidence *
load (BbBook      *book,
      gint64       id,
      GPtrArray   *tests,
      const char  *today,
      GError     **error)
{
  g_autoptr (BbRevision) revision = bb_book_load (book, &bb_revision_table, id, error);
  g_autoptr (BbShop) shop = revision != NULL ? bb_book_load_shop (book, error) : NULL;
  g_autoptr (BbWashEvidence) evidence = NULL;

  if (shop == NULL)
    return NULL;

  evidence = bb_wash_evidence_new (revision, shop);
  for (guint i = 0; i < tests->len; i++)
    if (!add_specimen (evidence, book, tests->pdata[i], today, error))
      return NULL;

  return bb_wash_evidence_sum_up (evidence, error) ? g_steal_pointer (&evidence) : NULL;
}

/**
 * bb_evidence_load:
 * @book: a book
 * @revision: the key of a revision
 * @today: the day, as an ISO date
 * @error: return location for a #GError
 *
 * Loads what the wash log has on a revision, and sums it up. Pages, reports and the command line all take their
 * numbers from here.
 *
 * Returns: (transfer full) (nullable): the evidence; %NULL with an error of the book or of the domain %BB_MODEL_ERROR
 */
BbWashEvidence *
bb_evidence_load (BbBook      *book,
                  gint64       revision,
                  const char  *today,
                  GError     **error)
{
  g_autoptr (GPtrArray) tests = NULL;

  g_return_val_if_fail (BB_IS_BOOK (book) && today != NULL, NULL);

  tests = bb_book_load_referring (book, &bb_wash_test_table, &bb_revision_table, revision, error);

  return tests != NULL ? load (book, revision, tests, today, error) : NULL;
}

/**
 * bb_evidence_load_test:
 * @book: a book
 * @wash_test: the key of a specimen
 * @today: the day, as an ISO date
 * @error: return location for a #GError
 *
 * Loads what the wash log has on one specimen, as if its revision had no other.
 *
 * Returns: (transfer full) (nullable): the evidence; %NULL with an error as bb_evidence_load()
 */
BbWashEvidence *
bb_evidence_load_test (BbBook      *book,
                       gint64       wash_test,
                       const char  *today,
                       GError     **error)
{
  g_autoptr (GPtrArray) tests = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_wash_test_free);
  BbWashTest *test = NULL;

  g_return_val_if_fail (BB_IS_BOOK (book) && today != NULL, NULL);

  test = bb_book_load (book, &bb_wash_test_table, wash_test, error);
  if (test == NULL)
    return NULL;
  g_ptr_array_add (tests, test);

  return load (book, test->revision, tests, today, error);
}
