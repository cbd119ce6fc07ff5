/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>
#include <locale.h>

#include "bb-application.h"

static int
handle_local_options_cb (GApplication *application,
                         GVariantDict *options,
                         gpointer      data)
{
  (void) application;
  (void) data;

  if (!g_variant_dict_contains (options, "version"))
    return -1;

  g_print ("Blankbook %s\n", BB_VERSION);

  return 0;
}

int
main (int   argc,
      char *argv[])
{
  g_autoptr (BbApplication) application = NULL;

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, BB_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);

  application = bb_application_new ();
  g_signal_connect (application, "handle-local-options", G_CALLBACK (handle_local_options_cb), NULL);

  return g_application_run (G_APPLICATION (application), argc, argv);
}
