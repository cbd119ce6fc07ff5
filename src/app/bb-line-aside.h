/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-form.h"

G_BEGIN_DECLS

/**
 * BbLineAside:
 *
 * What stands beside the form of a job's line and fills it in: the recipe, proposed with its reasons or chosen, and the
 * artwork with its size.
 */
#define BB_TYPE_LINE_ASIDE (bb_line_aside_get_type ())
G_DECLARE_FINAL_TYPE (BbLineAside, bb_line_aside, BB, LINE_ASIDE, AdwBin)

GtkWidget *bb_line_aside_new (BbForm    *form,
                              BbSession *session);

G_END_DECLS
