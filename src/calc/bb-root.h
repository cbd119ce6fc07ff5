/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <gsl/gsl_math.h>

G_BEGIN_DECLS

double bb_root_between (gsl_function *function,
                        double        from,
                        double        to);

G_END_DECLS
