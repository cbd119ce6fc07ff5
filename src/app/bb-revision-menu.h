/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-session.h"

G_BEGIN_DECLS

void        bb_revision_menu_fill          (GtkDropDown *drop_down,
                                            BbSession   *session,
                                            GPtrArray   *revisions,
                                            guint        selected);
BbStanding *bb_revision_menu_load_standing (BbSession   *session,
                                            gint64       revision);
BbState     bb_revision_menu_load_state    (BbSession   *session,
                                            gint64       revision);

G_END_DECLS
