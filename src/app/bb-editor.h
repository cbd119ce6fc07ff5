/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-form.h"

G_BEGIN_DECLS

/**
 * BbEditorAside:
 * @form: a form that is opened
 * @session: the session
 *
 * Returns: (transfer floating): what stands beside the form and fills it in
 */
typedef GtkWidget *(*BbEditorAside) (BbForm    *form,
                                     BbSession *session);

/**
 * BbEditor:
 *
 * A form with a title and the buttons to save it or to give it up. What is typed is kept in the book until one
 * of the two is done, so it survives closing the window. Escape gives up, which the person can undo where something
 * was typed; Ctrl+S saves.
 */
#define BB_TYPE_EDITOR (bb_editor_get_type ())
G_DECLARE_FINAL_TYPE (BbEditor, bb_editor, BB, EDITOR, AdwBin)

void     bb_editor_set_aside    (BbEditor      *self,
                                 const BbTable *table,
                                 BbEditorAside  make);
void     bb_editor_set_session  (BbEditor      *self,
                                 BbSession     *session,
                                 const char    *key);
void     bb_editor_open         (BbEditor      *self,
                                 const BbTable *table,
                                 gpointer       record,
                                 const BbField *fixed);
void     bb_editor_keep         (BbEditor      *self);
gboolean bb_editor_resume       (BbEditor      *self);
void     bb_editor_focus        (BbEditor      *self);
gboolean bb_editor_is_open      (BbEditor      *self);
gboolean bb_editor_is_put_aside (BbEditor      *self);

G_END_DECLS
