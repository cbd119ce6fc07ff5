/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-document.h"
#include "bb-quantity.h"

G_BEGIN_DECLS

/**
 * BbWashReportAbout:
 * @revision: the key of the revision that it is about
 * @wash_test: the key of its one specimen that it is about; 0 for all of them
 * @today: the day, as an ISO date
 * @units: the units that are shown
 * @customer: (nullable): whom it is made for
 * @remark: (nullable): what is said beside the limits of the method
 *
 * What a wash report is about.
 */
typedef struct {
  gint64 revision;
  gint64 wash_test;
  const char *today;
  const BbUnitContext *units;
  const char *customer;
  const char *remark;
} BbWashReportAbout;

BbDocument *bb_wash_report_new (BbBook                   *book,
                                const BbWashReportAbout  *about,
                                GError                  **error);

G_END_DECLS
