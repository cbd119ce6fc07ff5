/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "node.h"

G_BEGIN_DECLS

Node *tree_read (Stage *stage);

G_END_DECLS
