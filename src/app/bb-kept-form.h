/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-form.h"

G_BEGIN_DECLS

char     *bb_kept_form_describe    (BbForm         *form);
gboolean  bb_kept_form_parse       (const char     *text,
                                    const BbTable **table,
                                    GVariant      **state);
gpointer  bb_kept_form_load_record (BbBook         *book,
                                    const BbTable  *table,
                                    GVariant       *state);

G_END_DECLS
