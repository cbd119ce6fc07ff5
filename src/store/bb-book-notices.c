/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"
#include "bb-moment.h"

/*
 * Proofs that are lost. The database refuses what a proof does not survive (0005-proof.sql): the revision goes back on
 * trial, with a notice for people, and then what was refused is written after all, in the same transaction.
 */

static BbNotice *
make_notice (BbBook *self,
             gint64  revision,
             BbNews  news)
{
  BbNotice *notice = bb_notice_new ();

  notice->at = bb_dup_now ();
  notice->news = (int) news;
  notice->revision = revision;
  notice->person = self->person;

  return notice;
}

static gboolean
put_on_trial (BbBook    *self,
              BbNotice  *notice,
              GError   **error)
{
  g_autoptr (BbStanding) standing = bb_book_load_standing (self, notice->revision, error);
  g_autofree char *reason = NULL;

  if (standing == NULL)
    return FALSE;
  reason = bb_book_describe_notice (self, notice, error);

  return reason != NULL && _bb_book_take_step (self, standing, BB_STATE_ON_TRIAL, reason, error) &&
         _bb_book_save_within (self, &bb_notice_table, notice, error);
}

static gboolean
give_up_for_specimen (BbBook          *self,
                      const BbTable   *table,
                      gconstpointer    record,
                      BbNews           news,
                      GError         **error)
{
  const BbReading *reading = table == &bb_reading_table ? record : NULL;
  g_autoptr (BbWashTest) test = reading != NULL ? bb_book_load (self, &bb_wash_test_table, reading->wash_test, error)
                                                : bb_record_copy (&bb_wash_test_table, record);
  g_autoptr (BbNotice) notice = NULL;

  if (test == NULL)
    return FALSE;
  notice = make_notice (self, test->revision, news);
  /* A specimen that is only just being added has no key to refer to. */
  notice->wash_test = test->id != BB_INTEGER_NONE ? test->id : 0;
  if (reading != NULL)
    notice->cycles = reading->cycles;

  return put_on_trial (self, notice, error);
}

static gboolean
bring_in_on_trial (BbBook      *self,
                   BbStanding  *standing,
                   GError     **error)
{
  g_autoptr (BbNotice) notice = make_notice (self, standing->revision, BB_NEWS_BROUGHT_IN);
  char *reason = bb_book_describe_notice (self, notice, error);

  if (reason == NULL)
    return FALSE;
  standing->state = BB_STATE_ON_TRIAL;
  g_free (standing->reason);
  standing->reason = reason;

  return _bb_book_save_within (self, &bb_notice_table, notice, error);
}

/**
 * _bb_book_give_up_proof:
 * @self: a book, within a transaction
 * @table: the table of the record that the database refused to write
 * @record: that record; a standing that is brought in becomes one on trial
 * @error: (inout): why it was refused; cleared where the proof was given up
 *
 * Puts a revision back on trial whose proof does not survive a write, with a notice.
 *
 * Returns: %TRUE if the record can be written now; %FALSE with @error, which is as it was where this was not about a
 *   proof
 */
gboolean
_bb_book_give_up_proof (BbBook         *self,
                        const BbTable  *table,
                        gpointer        record,
                        GError        **error)
{
  gboolean disproved = g_error_matches (*error, BB_STORE_ERROR, BB_STORE_ERROR_DISPROVED);
  gboolean of_specimen = table == &bb_reading_table || table == &bb_wash_test_table;

  if (of_specimen && (disproved || g_error_matches (*error, BB_STORE_ERROR, BB_STORE_ERROR_UNFOUNDED)))
    {
      g_clear_error (error);
      return give_up_for_specimen (self, table, record, disproved ? BB_NEWS_FAILED : BB_NEWS_EVIDENCE_GONE, error);
    }
  if (table == &bb_standing_table && self->importing &&
      g_error_matches (*error, BB_STORE_ERROR, BB_STORE_ERROR_UNPROVEN))
    {
      g_clear_error (error);
      return bring_in_on_trial (self, record, error);
    }

  return FALSE;
}

/**
 * bb_book_load_notices:
 * @self: a book
 * @with_seen: whether those are wanted too that somebody took note of
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable) (element-type BbNotice): the news of proofs that were lost, newest first; the
 *   array frees them. %NULL with an error
 */
GPtrArray *
bb_book_load_notices (BbBook    *self,
                      gboolean   with_seen,
                      GError   **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  return _bb_book_load_many (self, &bb_notice_table,
                             with_seen ? "ORDER BY id DESC" : "WHERE seen_at IS NULL ORDER BY id DESC", 0, error);
}

/**
 * bb_book_load_open_jobs:
 * @self: a book
 * @revision: the key of a revision
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable) (element-type BbJob): the jobs, planned or running, that have a line by the
 *   revision, in the order of their codes; the array frees them. %NULL with an error
 */
GPtrArray *
bb_book_load_open_jobs (BbBook  *self,
                        gint64   revision,
                        GError **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  return _bb_book_load_many (self, &bb_job_table,
                             "WHERE state IN ('planned', 'running') AND id IN (SELECT l.job FROM job_line l "
                             "WHERE l.revision = ?1 AND l.withdrawn_at IS NULL) ORDER BY code", revision, error);
}

/**
 * bb_book_describe_notice:
 * @self: a book
 * @notice: a notice of it
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): the news as a sentence that names revision and specimen; %NULL with an error
 */
char *
bb_book_describe_notice (BbBook          *self,
                         const BbNotice  *notice,
                         GError         **error)
{
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (BbWashTest) test = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && notice != NULL, NULL);

  revision = bb_book_load (self, &bb_revision_table, notice->revision, error);
  if (revision == NULL)
    return NULL;
  if (notice->wash_test != 0)
    {
      test = bb_book_load (self, &bb_wash_test_table, notice->wash_test, error);
      if (test == NULL)
        return NULL;
    }

  return bb_notice_describe (notice, revision->code, test != NULL ? test->code : NULL);
}

static gboolean
see_notice (BbBook  *self,
            gint64   id,
            GError **error)
{
  g_autoptr (BbNotice) notice = bb_book_load (self, &bb_notice_table, id, error);

  if (notice == NULL)
    return FALSE;
  if (notice->seen_at != NULL)
    return TRUE;
  notice->seen_at = bb_dup_now ();
  notice->seen_by = self->person;

  return _bb_book_save_within (self, &bb_notice_table, notice, error);
}

/**
 * bb_book_see_notice:
 * @self: a book
 * @id: the key of a notice
 * @error: return location for a #GError
 *
 * Records that the person who writes the book took note of the news; once somebody has, that stays.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_NOT_FOUND or another error
 */
gboolean
bb_book_see_notice (BbBook  *self,
                    gint64   id,
                    GError **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), FALSE);

  return _bb_book_begin (self, error) && _bb_book_end (self, see_notice (self, id, error), error);
}
