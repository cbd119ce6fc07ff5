/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-form.h"

G_BEGIN_DECLS

void bb_form_rules_apply (BbForm    *form,
                          BbSession *session);

G_END_DECLS
