/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field-row.h"

G_BEGIN_DECLS

/**
 * BbForm:
 *
 * The form of one record, made from its field table: a row per field that a person fills in, in groups by
 * station, held against the table while it is typed.
 */
#define BB_TYPE_FORM (bb_form_get_type ())
G_DECLARE_FINAL_TYPE (BbForm, bb_form, BB, FORM, GtkBox)

GtkWidget     *bb_form_new          (BbSession     *session,
                                     const BbTable *table);
GtkWidget     *bb_form_new_strip    (BbSession     *session,
                                     const BbTable *table);
const BbTable *bb_form_get_table    (BbForm        *self);
BbFieldRow    *bb_form_find_row     (BbForm        *self,
                                     const BbField *field);
void           bb_form_fix          (BbForm        *self,
                                     const BbField *field);
void           bb_form_set_fixed    (BbForm        *self,
                                     const BbField *field,
                                     double         value);
void           bb_form_take         (BbForm        *self,
                                     const BbField *field,
                                     gconstpointer  record);
void           bb_form_load         (BbForm        *self,
                                     gconstpointer  record);
void           bb_form_focus_start  (BbForm        *self);
gpointer       bb_form_dup_draft    (BbForm        *self);

/* bb-form-fault.c */
gpointer       bb_form_dup_record   (BbForm        *self,
                                     gboolean       complain_about_all);
gboolean       bb_form_show_fault   (BbForm        *self,
                                     const char    *message,
                                     gboolean       even_if_untouched);
gboolean       bb_form_focus_fault  (BbForm        *self);

/* bb-form-state.c */
GVariant      *bb_form_save_state   (BbForm        *self);
void           bb_form_load_state   (BbForm        *self,
                                     GVariant      *state);

G_END_DECLS
