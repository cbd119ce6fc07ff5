/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * BbHazardView:
 *
 * Hazard statements in full: code and the regulation's wording in the person's language. A code that is not
 * known is shown as it is, with the word to look into the data sheet.
 */
#define BB_TYPE_HAZARD_VIEW (bb_hazard_view_get_type ())
G_DECLARE_FINAL_TYPE (BbHazardView, bb_hazard_view, BB, HAZARD_VIEW, GtkBox)

GtkWidget *bb_hazard_view_new  (void);
void       bb_hazard_view_show (BbHazardView *self,
                                const char   *codes);

G_END_DECLS
