/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-remark"

#include "bb-remark.h"

#include "bb-plan-words.h"
#include "bb-wash-evidence.h"

/* Why some of a plan can't be changed. */
static char *
dup_of_plan (BbSession        *session,
             const BbWashPlan *draft)
{
  BbBook *book = bb_session_get_book (session);
  g_autoptr (BbWashPlan) plan = NULL;
  gint64 n_specimens = 0;

  if (draft->id != BB_INTEGER_NONE)
    plan = bb_book_load (book, &bb_wash_plan_table, draft->id, NULL);
  if (plan == NULL)
    return NULL;
  n_specimens = bb_book_count_referring (book, &bb_wash_test_table, &bb_wash_plan_table, plan->id, NULL);
  if (n_specimens <= 0 && (!bb_wash_plan_is_published (plan) || draft->origin == BB_PLAN_ORIGIN_STANDARD))
    return NULL;

  return bb_plan_words_of_use (plan, n_specimens);
}

/**
 * bb_remark_dup:
 * @session: the session
 * @table: a table
 * @record: a record of it, which may be half typed
 *
 * Returns: (transfer full) (nullable): what a person should know before they save the record, although it may be saved;
 *   %NULL for nothing
 */
char *
bb_remark_dup (BbSession     *session,
               const BbTable *table,
               gconstpointer  record)
{
  g_return_val_if_fail (BB_IS_SESSION (session) && table != NULL && record != NULL, NULL);

  if (table == &bb_wash_plan_table)
    return dup_of_plan (session, record);

  return table == &bb_reading_table ? bb_reading_describe_dispute (record) : NULL;
}
