/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field.h"

G_BEGIN_DECLS

double _bb_field_longest_text (const BbField *self);

G_END_DECLS
