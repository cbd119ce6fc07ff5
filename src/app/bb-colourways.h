/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbColourways:
 *
 * The colours of one blank, each with its patch, to add, edit and withdraw.
 */
#define BB_TYPE_COLOURWAYS (bb_colourways_get_type ())
G_DECLARE_FINAL_TYPE (BbColourways, bb_colourways, BB, COLOURWAYS, GtkBox)

GtkWidget *bb_colourways_new  (void);
void       bb_colourways_show (BbColourways *self,
                               BbSession    *session,
                               gint64        blank);

G_END_DECLS
