/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gdk/gdk.h>

#include "bb-field.h"

G_BEGIN_DECLS

/*
 * Values that are entered by one key: those of a field's choices, or the few integers that it may be. Grades have the
 * key of their number; a half step, which lies between two numbers, has the lower one and five more: 4-5 is 9. All
 * others are counted from 1. So one hand on a number pad is enough.
 */

guint  bb_quick_get_n     (const BbField *field);
char  *bb_quick_dup_title (const BbField *field,
                           guint          index);
char   bb_quick_get_key   (const BbField *field,
                           guint          index);
int    bb_quick_find      (const BbField *field,
                           guint          keyval);
int    bb_quick_get       (const BbField *field,
                           gconstpointer  record);
void   bb_quick_set       (const BbField *field,
                           gpointer       record,
                           int            index);

G_END_DECLS
