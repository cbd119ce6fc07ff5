/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-window.h"

G_BEGIN_DECLS

BbSession *_bb_window_get_session     (BbWindow       *self);
void       _bb_window_install_dialogs (GtkWidgetClass *klass);

G_END_DECLS
