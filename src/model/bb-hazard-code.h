/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

gboolean bb_hazard_code_is_well_formed (const char  *code);
GStrv    bb_hazard_codes_split         (const char  *codes);
gboolean bb_hazard_codes_check         (const char  *codes,
                                        const char  *name,
                                        GError     **error);

G_END_DECLS
