/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/* As many records of each kind as a window has to stand. */
#define MANY 20000

typedef gboolean (*Condition) (gpointer data);

/* A book with MANY records of each kind, for one test alone: what it writes is gone with it. Or any other. */
BbSession  *helper_open_crowd   (void);
BbSession  *helper_open_session (const char *path);
void        helper_end_session  (BbSession  *session);

/* Lets the window work until something holds; half a minute without it is a failure. */
void        helper_wait_until   (Condition   condition,
                                 gpointer    data);

/* Lets it draw some frames, in which it comes to rest; or do what is at hand, without a window. */
void        helper_wait_drawn   (GtkWidget  *widget);
void        helper_wait_idle    (void);
void        helper_finalize     (gpointer    object);

/* The first widget of a type within another. */
gpointer    helper_find_widget  (GtkWidget  *within,
                                 GType       type);

G_END_DECLS
