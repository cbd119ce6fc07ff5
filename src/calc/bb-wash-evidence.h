/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-compare.h"
#include "bb-pass-rate.h"
#include "bb-signature.h"
#include "bb-wash-life.h"
#include "bb-wash-schedule.h"

G_BEGIN_DECLS

/*
 * All that the wash log has on one revision, and what follows from it: the numbers on the page and on the report.
 *
 * A specimen counts where it was not withdrawn and was washed by the method that the revision asks for. What counts
 * and has a verdict is tested; what passed of it, with its bound, is the pass rate at the shop's confidence. Wash
 * life is estimated from all that count and were read: a specimen that failed was good up to its last reading before
 * and bad from that reading on, also where it had stood its plan by then; one that was bad before its first wash
 * counts as bad from that wash on; others leave at their last reading. The shop's rule is met where as many passed as
 * it asks for, and none failed.
 */

/**
 * BbSpecimen:
 * @test: the specimen
 * @plan: (nullable): the plan that it is washed to
 * @readings: (element-type BbReading): its readings, by cycles
 * @verdict: whether it stood its plan
 * @due: when it has to be read next
 * @counts: whether it has a part in the pass rate and in wash life
 *
 * One specimen as it stands.
 */
typedef struct {
  BbWashTest *test;
  BbWashPlan *plan;
  GPtrArray *readings;
  BbWashVerdictOut verdict;
  BbWashDue due;
  gboolean counts;
} BbSpecimen;

/**
 * BbWashEvidence:
 * @revision: the revision
 * @shop: the shop, with its rule
 * @specimens: (element-type BbSpecimen): in the order in which they were added
 * @n_passed: how many count and passed
 * @n_failed: how many count and failed
 * @n_open: how many count and have no verdict yet
 * @n_apart: how many do not count
 * @rate: the pass rate; without values where none was tested
 * @life: (nullable): wash life; %NULL where none was read
 * @rule_is_met: whether the shop's rule for a proof is met
 *
 * What speaks for and against one revision.
 */
typedef struct {
  BbRevision *revision;
  BbShop *shop;
  GPtrArray *specimens;
  guint n_passed;
  guint n_failed;
  guint n_open;
  guint n_apart;
  BbPassRateOut rate;
  BbWashLifeOut *life;
  gboolean rule_is_met;
} BbWashEvidence;

BbWashEvidence *bb_wash_evidence_new           (const BbRevision      *revision,
                                                const BbShop          *shop);
void            bb_wash_evidence_free          (BbWashEvidence        *self);
gboolean        bb_wash_evidence_add           (BbWashEvidence        *self,
                                                const BbWashTest      *test,
                                                const BbWashPlan      *plan,
                                                GPtrArray             *readings,
                                                const char            *today,
                                                GError               **error);
gboolean        bb_wash_evidence_sum_up        (BbWashEvidence        *self,
                                                GError               **error);
char           *bb_wash_evidence_describe_rate (const BbWashEvidence  *self);
char           *bb_wash_evidence_compare       (const BbWashEvidence  *self,
                                                const BbWashEvidence  *other,
                                                BbCompareOut          *out,
                                                GError               **error);

/* bb-wash-rule.c */
char           *bb_wash_evidence_describe_rule (const BbWashEvidence  *self);

/* bb-wash-dispute.c */
gboolean        bb_grades_disagree             (BbGrade                eye,
                                                BbGrade                measured);
char           *bb_reading_describe_dispute    (const BbReading       *reading);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbWashEvidence, bb_wash_evidence_free)

G_END_DECLS
