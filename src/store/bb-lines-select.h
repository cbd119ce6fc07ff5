/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field.h"

G_BEGIN_DECLS

const char *bb_lines_select (const BbTable *table);

G_END_DECLS
