/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-catalogue-page.h"

G_BEGIN_DECLS

/**
 * BbJobsPage:
 *
 * The shop's orders: who wants what by when, by which recipes it is printed, and what it takes.
 */
#define BB_TYPE_JOBS_PAGE (bb_jobs_page_get_type ())
G_DECLARE_FINAL_TYPE (BbJobsPage, bb_jobs_page, BB, JOBS_PAGE, BbCataloguePage)

G_END_DECLS
