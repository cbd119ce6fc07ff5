/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbEditorTitle:
 *
 * Which record is edited: what kind it is, and below that whether it is new, its name and code, and what it belongs to.
 */
#define BB_TYPE_EDITOR_TITLE (bb_editor_title_get_type ())
G_DECLARE_FINAL_TYPE (BbEditorTitle, bb_editor_title, BB, EDITOR_TITLE, AdwBin)

void  bb_editor_title_show     (BbEditorTitle *self,
                                BbSession     *session,
                                const BbTable *table,
                                gconstpointer  record);
char *bb_editor_title_dup_text (BbSession     *session,
                                const BbTable *table,
                                gconstpointer  record);

G_END_DECLS
