/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbRevisionPicker:
 *
 * The revisions of one recipe, newest first, and which of them is looked at: the one that a person chose, or else the
 * one that counts now.
 */
#define BB_TYPE_REVISION_PICKER (bb_revision_picker_get_type ())
G_DECLARE_FINAL_TYPE (BbRevisionPicker, bb_revision_picker, BB, REVISION_PICKER, AdwBin)

void        bb_revision_picker_show       (BbRevisionPicker *self,
                                           BbSession        *session,
                                           gint64            recipe);
void        bb_revision_picker_choose     (BbRevisionPicker *self,
                                           gint64            revision);
BbRevision *bb_revision_picker_hold       (BbRevisionPicker *self);
BbRevision *bb_revision_picker_get_shown  (BbRevisionPicker *self);
BbRevision *bb_revision_picker_get_before (BbRevisionPicker *self);
BbRevision *bb_revision_picker_get_newest (BbRevisionPicker *self);
GPtrArray  *bb_revision_picker_get_all    (BbRevisionPicker *self);

G_END_DECLS
