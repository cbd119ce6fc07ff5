/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbNoticeBar:
 *
 * The news that nobody took note of yet: revisions that were proven and are so no longer, with the open jobs that use
 * them. It takes no place where there is none.
 */
#define BB_TYPE_NOTICE_BAR (bb_notice_bar_get_type ())
G_DECLARE_FINAL_TYPE (BbNoticeBar, bb_notice_bar, BB, NOTICE_BAR, AdwBin)

void bb_notice_bar_set_session (BbNoticeBar *self,
                                BbSession   *session);

G_END_DECLS
