/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * What a person's eyes, hands and window frame do on an X display without a window manager: see windows and take a
 * picture of one, press keys, give a window another size, ask it to close.
 */
typedef struct _Glass Glass;
typedef gulong GlassWindow;

typedef struct {
  int x;
  int y;
  int width;
  int height;
} GlassBox;

Glass      *glass_new          (const char  *display);
void        glass_free         (Glass       *self);

GlassWindow glass_find_window  (Glass       *self);
gboolean    glass_get_box      (Glass       *self,
                                GlassWindow  window,
                                GlassBox    *box);
void        glass_focus        (Glass       *self,
                                GlassWindow  window);
void        glass_resize       (Glass       *self,
                                GlassWindow  window,
                                int          width,
                                int          height);
void        glass_ask_to_close (Glass       *self,
                                GlassWindow  window);

void        glass_press        (Glass       *self,
                                const char  *keys);
gboolean    glass_type         (Glass       *self,
                                const char  *text);

guint8     *glass_copy_pixels  (Glass       *self,
                                GlassWindow  window,
                                GlassBox    *box);
gboolean    glass_save_png     (Glass       *self,
                                GlassWindow  window,
                                const char  *path);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Glass, glass_free)

G_END_DECLS
