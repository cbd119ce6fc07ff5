/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "probe.h"

/* The floor: a window of the toolkit with nothing in it. */

int
main (void)
{
  g_autoptr (GMainLoop) loop = g_main_loop_new (NULL, FALSE);
  GtkWidget *window = NULL;

  probe_start ();
  gtk_init ();
  window = gtk_window_new ();
  gtk_window_set_default_size (GTK_WINDOW (window), 1180, 780);
  g_signal_connect_swapped (window, "destroy", G_CALLBACK (g_main_loop_quit), loop);
  probe_watch (window);
  gtk_window_present (GTK_WINDOW (window));
  g_main_loop_run (loop);

  return 0;
}
