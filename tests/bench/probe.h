/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/*
 * What a program under measurement tells, a line each on standard output, in microseconds. Moments are of the monotonic
 * clock, which all processes share.
 *
 *   pid ID                         once
 *   frame TIME CPU ITEMS CHANGES   a frame was painted; what the program has had of the processor so far, items of the
 *                                  window's list, and how often that was made anew
 *   busy TIME DURATION CPU         how long the main loop did not wait for events, where that was more than a moment
 *
 * With PROBE_CLOSE_AFTER_MS in its environment the program closes its window itself, as a profiler wants it.
 */
void probe_start (void);
void probe_watch (GtkWidget *window);

G_END_DECLS
