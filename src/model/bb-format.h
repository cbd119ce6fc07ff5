/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field.h"

G_BEGIN_DECLS

char *bb_field_format (const BbTable       *table,
                       const BbField       *field,
                       gconstpointer        record,
                       const BbUnitContext *context);

G_END_DECLS
