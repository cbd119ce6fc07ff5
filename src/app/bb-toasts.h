/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/* What a person is told in passing, at the foot of a window. */

void bb_toasts_connect    (AdwToastOverlay *overlay,
                           BbSession       *session);
void bb_toasts_say        (AdwToastOverlay *overlay,
                           const char      *text);
void bb_toasts_offer_form (AdwToastOverlay *overlay,
                           BbSession       *session,
                           const char      *page,
                           const char      *name,
                           const char      *key,
                           const char      *state);

G_END_DECLS
