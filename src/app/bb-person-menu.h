/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-session.h"

G_BEGIN_DECLS

void bb_person_menu_connect (GtkDropDown *drop_down,
                             BbSession   *session);

G_END_DECLS
