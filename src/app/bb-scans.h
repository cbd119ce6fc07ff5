/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbScans:
 *
 * The scans of a specimen: before the first wash and after some, beside each other, and what they say of change or
 * staining.
 */
#define BB_TYPE_SCANS (bb_scans_get_type ())
G_DECLARE_FINAL_TYPE (BbScans, bb_scans, BB, SCANS, GtkBox)

GtkWidget *bb_scans_new  (void);
void       bb_scans_show (BbScans   *self,
                          BbSession *session,
                          gint64     wash_test);

G_END_DECLS
