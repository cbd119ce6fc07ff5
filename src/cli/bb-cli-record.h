/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-codes.h"

G_BEGIN_DECLS

/**
 * BbCliFields:
 *
 * The fields of a record as options of a command: one for each field that a person enters.
 */
typedef struct _BbCliFields BbCliFields;

BbCliFields        *bb_cli_fields_new         (const BbTable  *table,
                                               const char     *given);
void                bb_cli_fields_free        (BbCliFields    *self);
const GOptionEntry *bb_cli_fields_get_entries (BbCliFields    *self);
gboolean            bb_cli_fields_read        (BbCliFields    *self,
                                               BbCodes        *codes,
                                               gpointer        record,
                                               GError        **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbCliFields, bb_cli_fields_free)

G_END_DECLS
