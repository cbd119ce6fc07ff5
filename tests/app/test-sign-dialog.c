/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-sign-dialog.h"

#include "app-helpers.h"
#include "store-helpers.h"

/* Signing a revision as proven. */

static void
said_cb (GString    *said,
         const char *text)
{
  g_string_append (said, text);
}

static gboolean
has_text (gpointer data)
{
  return ((const GString *) data)->len > 0;
}

/* Who closes the dialog before the answer is there hears all the same that it is a no. */
static void
test_closed_early (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  BbSession *session = NULL;
  GtkWidget *dialog = NULL;
  g_autoptr (GString) said = g_string_new (NULL);
  gulong id = 0;

  helper_close (book);
  session = helper_open_session (path);
  id = g_signal_connect_swapped (session, "say", G_CALLBACK (said_cb), said);
  dialog = bb_sign_dialog_new (NULL, session, shop->revision, "", FALSE);
  gtk_window_present (GTK_WINDOW (dialog));
  g_assert_true (gtk_widget_activate_action (dialog, "dialog.sign", NULL));
  gtk_window_destroy (GTK_WINDOW (dialog));
  helper_wait_until (has_text, said);
  helper_wait_idle ();
  g_signal_handler_disconnect (session, id);
  helper_end_session (session);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();
  g_test_add_func ("/sign-dialog/closed-early", test_closed_early);

  return g_test_run ();
}
