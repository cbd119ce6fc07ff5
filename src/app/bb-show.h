/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-session.h"

G_BEGIN_DECLS

char *bb_show_field          (BbSession           *session,
                              const BbTable       *table,
                              const BbField       *field,
                              gconstpointer        record);
char *bb_show_date           (const char          *date);
char *bb_show_limits         (BbSession           *session,
                              const BbField       *field);
char *bb_show_name           (BbSession           *session,
                              const BbTable       *table,
                              gint64               id);
char *bb_show_size           (const BbUnitContext *units,
                              double               width_mm,
                              double               height_mm);

G_END_DECLS
