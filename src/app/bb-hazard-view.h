/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-hazards.h"

G_BEGIN_DECLS

/**
 * BbHazardView:
 *
 * Hazard statements in full: code and the regulation's wording in the person's language, of one supply or of several,
 * each under its name. A code that is not known is shown as it is, with the word to look into the data sheet.
 */
#define BB_TYPE_HAZARD_VIEW (bb_hazard_view_get_type ())
G_DECLARE_FINAL_TYPE (BbHazardView, bb_hazard_view, BB, HAZARD_VIEW, GtkBox)

BbHazards *bb_hazard_view_load_hazards (void);
GtkWidget *bb_hazard_view_new      (void);
void       bb_hazard_view_show     (BbHazardView *self,
                                    const char   *codes);
void       bb_hazard_view_clear    (BbHazardView *self);
void       bb_hazard_view_add      (BbHazardView *self,
                                    const char   *title,
                                    const char   *subtitle,
                                    const char   *codes);
gboolean   bb_hazard_view_is_empty (BbHazardView *self);

G_END_DECLS
