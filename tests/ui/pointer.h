/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tree.h"

G_BEGIN_DECLS

/* What became of the wish to press something with the pointer. */
typedef enum {
  POINTER_PRESSED,
  POINTER_MOVING,
  POINTER_LOST,
} PointerResult;

PointerResult pointer_click (Stage *stage,
                             Node  *node);

G_END_DECLS
