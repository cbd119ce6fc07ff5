/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbFieldHint:
 *
 * What is said below a field: what is wrong with its value, or else its help and limits while a person attends to it,
 * or else nothing.
 */
#define BB_TYPE_FIELD_HINT (bb_field_hint_get_type ())
G_DECLARE_FINAL_TYPE (BbFieldHint, bb_field_hint, BB, FIELD_HINT, AdwBin)

void     bb_field_hint_set_field    (BbFieldHint   *self,
                                     BbSession     *session,
                                     const BbField *field);
void     bb_field_hint_set_named    (BbFieldHint   *self);
void     bb_field_hint_set_attended (BbFieldHint   *self,
                                     gboolean       attended);
void     bb_field_hint_set_fault    (BbFieldHint   *self,
                                     const char    *fault);
void     bb_field_hint_set_advice   (BbFieldHint   *self,
                                     const char    *advice);
gboolean bb_field_hint_has_fault    (BbFieldHint   *self);
void     bb_field_hint_refresh      (BbFieldHint   *self);

G_END_DECLS
