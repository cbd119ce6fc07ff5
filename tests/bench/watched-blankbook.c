/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-application.h"
#include "probe.h"

/* The program as it is, but for what the probe tells. */

static void
window_added_cb (GtkApplication *application,
                 GtkWidget      *window)
{
  (void) application;

  probe_watch (window);
}

int
main (int   argc,
      char *argv[])
{
  g_autoptr (BbApplication) application = NULL;

  probe_start ();
  application = bb_application_new ();
  g_signal_connect (application, "window-added", G_CALLBACK (window_added_cb), NULL);

  return g_application_run (G_APPLICATION (application), argc, argv);
}
