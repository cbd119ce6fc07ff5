/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbReadings:
 *
 * The readings of one specimen by cycle, its verdict, and the way to add the next one.
 */
#define BB_TYPE_READINGS (bb_readings_get_type ())
G_DECLARE_FINAL_TYPE (BbReadings, bb_readings, BB, READINGS, GtkBox)

GtkWidget *bb_readings_new         (void);
void       bb_readings_show        (BbReadings *self,
                                    BbSession  *session,
                                    gint64      test);
char      *bb_readings_dup_subject (BbReadings *self);

G_END_DECLS
