/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

#include "bb-field.h"

G_BEGIN_DECLS

GType bb_field_row_type_for (const BbField *field);

G_END_DECLS
