/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-window"

#include "bb-window-private.h"

#include <glib/gi18n-lib.h>

#include "bb-labels-dialog.h"
#include "bb-preferences.h"
#include "bb-record-dialog.h"

/* The shop's form is long, and scrolls; it must fit the smallest screen. */
#define SHOP_WIDTH 640
#define SHOP_HEIGHT 620

static BbSession *
get_session (GtkWidget *window)
{
  return _bb_window_get_session (BB_WINDOW (window));
}

/* Made when it is asked for: GTK would make its own help overlay with every window. */
static void
show_shortcuts_action (GtkWidget  *widget,
                       const char *name,
                       GVariant   *parameter)
{
  g_autoptr (GtkBuilder) builder = gtk_builder_new_from_resource ("/io/blankbook/Blankbook/shortcuts.ui");
  GtkWindow *window = GTK_WINDOW (gtk_builder_get_object (builder, "shortcuts"));

  (void) name;
  (void) parameter;

  gtk_window_set_transient_for (window, GTK_WINDOW (widget));
  gtk_window_present (window);
}

/* Whoever is added is at the bench, or would not add themselves; who is there may have other initials from now on. */
static void
person_saved_cb (BbSession *session,
                 gint64     id)
{
  bb_session_set_person (session, id);
}

static void
edit_person (GtkWidget  *window,
             const char *title,
             BbPerson   *person)
{
  BbSession *session = get_session (window);
  BbRecordDialog *dialog = bb_record_dialog_new (GTK_WINDOW (window), session, title, &bb_person_table, person);

  g_signal_connect_object (dialog, "saved", G_CALLBACK (person_saved_cb), session, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
add_person_action (GtkWidget  *widget,
                   const char *name,
                   GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  edit_person (widget, _("Add a Person"), bb_person_new ());
}

static void
edit_person_action (GtkWidget  *widget,
                    const char *name,
                    GVariant   *parameter)
{
  BbSession *session = get_session (widget);
  g_autoptr (GError) error = NULL;
  BbPerson *person = bb_book_load (bb_session_get_book (session), &bb_person_table, bb_session_get_person (session),
                                   &error);

  (void) name;
  (void) parameter;

  if (person == NULL)
    bb_session_report (session, error);
  else
    edit_person (widget, _("The Person at the Bench"), person);
}

static void
edit_shop_action (GtkWidget  *widget,
                  const char *name,
                  GVariant   *parameter)
{
  BbSession *session = get_session (widget);
  g_autoptr (GError) error = NULL;
  BbShop *shop = bb_book_load_shop (bb_session_get_book (session), &error);
  BbRecordDialog *dialog = NULL;

  (void) name;
  (void) parameter;

  if (shop == NULL)
    {
      bb_session_report (session, error);
      return;
    }
  dialog = bb_record_dialog_new (GTK_WINDOW (widget), session, _("The Shop"), &bb_shop_table, shop);
  gtk_window_set_default_size (GTK_WINDOW (dialog), SHOP_WIDTH, SHOP_HEIGHT);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
labels_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  BbSession *session = get_session (widget);
  g_autoptr (GError) error = NULL;
  GtkWidget *dialog = NULL;
  const char *table = NULL;
  gint64 id = 0;

  (void) name;

  g_variant_get (parameter, "(&sx)", &table, &id);
  dialog = bb_labels_dialog_new (GTK_WINDOW (widget), session, bb_book_find_table (table), id, &error);
  if (dialog != NULL)
    gtk_window_present (GTK_WINDOW (dialog));
  else
    bb_session_report (session, error);
}

static void
preferences_action (GtkWidget  *widget,
                    const char *name,
                    GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  gtk_window_present (GTK_WINDOW (bb_preferences_new (GTK_WINDOW (widget),
                                                      bb_session_get_settings (get_session (widget)))));
}

/**
 * _bb_window_install_dialogs:
 * @klass: the class of windows
 *
 * Gives them the actions that open a dialog: the shop, its people, labels, the person's settings, the keys.
 */
void
_bb_window_install_dialogs (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "win.show-shortcuts", NULL, show_shortcuts_action);
  gtk_widget_class_install_action (klass, "win.add-person", NULL, add_person_action);
  gtk_widget_class_install_action (klass, "win.edit-person", NULL, edit_person_action);
  gtk_widget_class_install_action (klass, "win.edit-shop", NULL, edit_shop_action);
  gtk_widget_class_install_action (klass, "win.labels", "(sx)", labels_action);
  gtk_widget_class_install_action (klass, "win.preferences", NULL, preferences_action);
}
