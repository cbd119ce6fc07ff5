/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbWithdrawnBar:
 *
 * Says since when a record is out of use and who withdrew it, and takes it back. It is seen only while it is withdrawn.
 */
#define BB_TYPE_WITHDRAWN_BAR (bb_withdrawn_bar_get_type ())
G_DECLARE_FINAL_TYPE (BbWithdrawnBar, bb_withdrawn_bar, BB, WITHDRAWN_BAR, AdwBin)

void bb_withdrawn_bar_show (BbWithdrawnBar *self,
                            BbSession      *session,
                            const BbTable  *table,
                            gconstpointer   record);

G_END_DECLS
