/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"
#include "bb-worksheet.h"

G_BEGIN_DECLS

/**
 * BbMixForm:
 *
 * The figures of a mix: a form of #BbWorksheetIn that starts with the shop's losses, and says below whether a job sheet
 * reckons with the same.
 */
#define BB_TYPE_MIX_FORM (bb_mix_form_get_type ())
G_DECLARE_FINAL_TYPE (BbMixForm, bb_mix_form, BB, MIX_FORM, GtkBox)

void           bb_mix_form_set_session   (BbMixForm        *self,
                                          BbSession        *session);
void           bb_mix_form_start_over    (BbMixForm        *self);
void           bb_mix_form_refresh       (BbMixForm        *self);
void           bb_mix_form_take_revision (BbMixForm        *self,
                                          const BbRevision *revision);
void           bb_mix_form_set_size      (BbMixForm        *self,
                                          double            width_mm,
                                          double            height_mm);
BbWorksheetIn *bb_mix_form_dup_draft     (BbMixForm        *self);
BbWorksheetIn *bb_mix_form_dup_figures   (BbMixForm        *self);
GVariant      *bb_mix_form_save_state    (BbMixForm        *self);
void           bb_mix_form_load_state    (BbMixForm        *self,
                                          GVariant         *state);

G_END_DECLS
