/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-calculator.h"

G_BEGIN_DECLS

char *bb_calculators_describe (void);

G_END_DECLS
