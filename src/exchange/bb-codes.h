/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"

G_BEGIN_DECLS

/**
 * BbCodes:
 *
 * Translates between the keys by which the records of one book refer to each other and the codes by which files do.
 * What was looked up once is remembered.
 */
typedef struct _BbCodes BbCodes;

BbCodes *bb_codes_new     (BbBook         *book);
void     bb_codes_free    (BbCodes        *self);
void     bb_codes_add     (BbCodes        *self,
                           const BbTable  *table,
                           gconstpointer   record);
char    *bb_codes_name    (const BbField  *field,
                           gint64          id,
                           gpointer        codes,
                           GError        **error);
gboolean bb_codes_resolve (const BbField  *field,
                           const char     *code,
                           gint64         *id,
                           gpointer        codes,
                           GError        **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbCodes, bb_codes_free)

G_END_DECLS
