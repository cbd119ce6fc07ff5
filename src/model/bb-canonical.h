/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field.h"

G_BEGIN_DECLS

/**
 * BbTextScope:
 * @BB_SCOPE_ALL: every field that is set
 * @BB_SCOPE_OUTPUT: every field; those that are not set as `null`
 * @BB_SCOPE_SEALED: only the fields that a seal covers
 */
typedef enum {
  BB_SCOPE_ALL = 0,
  BB_SCOPE_OUTPUT,
  BB_SCOPE_SEALED,
} BbTextScope;

char *bb_number_to_text        (double         value);
void  bb_json_append_string    (GString       *out,
                                const char    *text);
void  bb_json_append_field     (GString       *out,
                                const BbField *field,
                                gconstpointer  record,
                                BbTextScope    scope);
char *bb_record_to_json        (const BbTable *table,
                                gconstpointer  record,
                                BbTextScope    scope);
char *bb_record_seal           (const BbTable *table,
                                gconstpointer  record);

G_END_DECLS
