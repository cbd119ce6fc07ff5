/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-wash-evidence.h"
#include "bb-wash-report.h"

G_BEGIN_DECLS

/**
 * BbWashReport:
 * @book: a book
 * @about: what it is about
 * @evidence: what the wash log has on that
 * @recipe: the recipe
 * @standing: where the revision stands
 * @signature: (nullable): what its proof rests on
 * @document: what is being made
 *
 * A wash report in the making.
 */
typedef struct {
  BbBook *book;
  const BbWashReportAbout *about;
  BbWashEvidence *evidence;
  BbRecipe *recipe;
  BbStanding *standing;
  BbSignature *signature;
  BbDocument *document;
} BbWashReport;

void _bb_wash_report_add_recipe   (const BbWashReport *self);
void _bb_wash_report_add_method   (const BbWashReport *self);
void _bb_wash_report_add_tables   (const BbWashReport *self);
void _bb_wash_report_add_life     (const BbWashReport *self);
void _bb_wash_report_add_limits   (const BbWashReport *self);

G_END_DECLS
