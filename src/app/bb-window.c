/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-window"

#include "bb-window-private.h"

#include <glib/gi18n-lib.h>

#include "bb-notice-bar.h"
#include "bb-page-list.h"
#include "bb-page.h"
#include "bb-person-menu.h"
#include "bb-session-stock.h"
#include "bb-toasts.h"

struct _BbWindow
{
  AdwApplicationWindow parent_instance;

  /* template */
  AdwToastOverlay *toasts;
  GtkListBox *sidebar;
  GtkDropDown *person_drop_down;
  AdwWindowTitle *title;
  BbNoticeBar *notices;
  GtkStack *stack;

  /* owned */
  BbSession *session;
};

G_DEFINE_FINAL_TYPE (BbWindow, bb_window, ADW_TYPE_APPLICATION_WINDOW)

/* A page that nobody has gone to costs nothing. */
static void
ensure_page (BbWindow         *self,
             const BbPageInfo *info)
{
  GtkWidget *page = NULL;

  if (gtk_stack_get_child_by_name (self->stack, info->name) != NULL)
    return;

  page = g_object_new (info->get_type (), NULL);
  gtk_stack_add_named (self->stack, page, info->name);
  bb_page_set_session (BB_PAGE (page), self->session);
}

static void
row_selected_cb (BbWindow      *self,
                 GtkListBoxRow *row)
{
  const BbPageInfo *info = NULL;

  if (row == NULL || self->session == NULL)
    return;

  info = bb_page_list_get_info (row);
  ensure_page (self, info);
  gtk_stack_set_visible_child_name (self->stack, info->name);
  adw_window_title_set_title (self->title, _(info->title));
  g_settings_set_string (bb_session_get_settings (self->session), "page", info->name);
}

static BbPage *
go_to_page (BbWindow   *self,
            const char *name)
{
  GtkWidget *page = NULL;

  bb_page_list_select (self->sidebar, name);
  page = gtk_stack_get_child_by_name (self->stack, name);

  return page != NULL ? BB_PAGE (page) : NULL;
}

static void
show_cb (BbWindow   *self,
         const char *name,
         gint64      id)
{
  BbPage *page = go_to_page (self, name);

  if (page != NULL)
    bb_page_show_record (page, id);
}

static void
show_for_cb (BbWindow   *self,
             const char *name,
             gpointer    table,
             gint64      id)
{
  BbPage *page = go_to_page (self, name);

  if (page != NULL)
    bb_page_show_for (page, table, id);
}

static void
put_aside_cb (BbWindow   *self,
              const char *name,
              const char *key,
              const char *state)
{
  bb_toasts_offer_form (self->toasts, self->session, gtk_stack_get_visible_child_name (self->stack), name, key, state);
}

static void
take_up_action (GtkWidget  *widget,
                const char *name,
                GVariant   *parameter)
{
  BbWindow *self = BB_WINDOW (widget);
  const char *page = NULL;
  const char *key = NULL;
  const char *state = NULL;

  (void) name;

  g_variant_get (parameter, "(&s&s&s)", &page, &key, &state);
  go_to_page (self, page);
  bb_session_take_up (self->session, key, state);
}

static void
restore_action (GtkWidget  *widget,
                const char *name,
                GVariant   *parameter)
{
  BbWindow *self = BB_WINDOW (widget);
  const char *table = NULL;
  gint64 id = 0;

  (void) name;

  g_variant_get (parameter, "(&sx)", &table, &id);
  bb_session_restore (self->session, bb_book_find_table (table), id);
}

static void
undo_calibration_action (GtkWidget  *widget,
                         const char *name,
                         GVariant   *parameter)
{
  const char *before = NULL;
  gint64 id = 0;

  (void) name;

  g_variant_get (parameter, "(x&s)", &id, &before);
  bb_session_undo_calibration (BB_WINDOW (widget)->session, id, *before != '\0' ? before : NULL);
}

static void
go_action (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  BbPage *page = go_to_page (BB_WINDOW (widget), g_variant_get_string (parameter, NULL));

  (void) name;

  if (page != NULL)
    bb_page_focus (page);
}

static BbPage *
get_page (GtkWidget *window)
{
  return BB_PAGE (gtk_stack_get_visible_child (BB_WINDOW (window)->stack));
}

/* What a page has no search for is looked for among the recipes. */
static void
find_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  if (!bb_page_find (get_page (widget)))
    bb_page_focus (go_to_page (BB_WINDOW (widget), "recipes"));
}

static void
add_action (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  bb_page_add (get_page (widget));
}

static void
edit_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  bb_page_edit (get_page (widget));
}

static void
changed_cb (BbWindow *self)
{
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.edit-person", bb_session_get_person (self->session) != 0);
}

static void
restore_size (BbWindow *self)
{
  GSettings *settings = bb_session_get_settings (self->session);

  g_settings_bind (settings, "window-width", self, "default-width", G_SETTINGS_BIND_DEFAULT);
  g_settings_bind (settings, "window-height", self, "default-height", G_SETTINGS_BIND_DEFAULT);
  g_settings_bind (settings, "window-maximized", self, "maximized", G_SETTINGS_BIND_DEFAULT);
}

static gboolean
bb_window_close_request (GtkWindow *window)
{
  bb_session_close (BB_WINDOW (window)->session);

  return GTK_WINDOW_CLASS (bb_window_parent_class)->close_request (window);
}

/* Whoever opens the window starts typing where the page starts, not on the menu. */
static void
bb_window_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (bb_window_parent_class)->map (widget);
  if (gtk_stack_get_visible_child (BB_WINDOW (widget)->stack) != NULL)
    bb_page_focus (get_page (widget));
}

static void
bb_window_dispose (GObject *object)
{
  BbWindow *self = BB_WINDOW (object);

  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_WINDOW);

  G_OBJECT_CLASS (bb_window_parent_class)->dispose (object);
}

static void
add_bindings (GtkWidgetClass *widget_class)
{
  bb_page_list_add_keys (widget_class, "win.go");
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_f, GDK_CONTROL_MASK, "win.find", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_f, GDK_CONTROL_MASK | GDK_SHIFT_MASK, "win.go", "s",
                                       "recipes");
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_comma, GDK_CONTROL_MASK, "win.preferences", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_n, GDK_CONTROL_MASK, "win.add", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_e, GDK_CONTROL_MASK, "win.edit", NULL);
}

static void
bb_window_class_init (BbWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_window_dispose;
  widget_class->map = bb_window_map;
  GTK_WINDOW_CLASS (klass)->close_request = bb_window_close_request;
  g_type_ensure (BB_TYPE_NOTICE_BAR);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-window.ui");
  gtk_widget_class_bind_template_child (widget_class, BbWindow, toasts);
  gtk_widget_class_bind_template_child (widget_class, BbWindow, sidebar);
  gtk_widget_class_bind_template_child (widget_class, BbWindow, person_drop_down);
  gtk_widget_class_bind_template_child (widget_class, BbWindow, title);
  gtk_widget_class_bind_template_child (widget_class, BbWindow, notices);
  gtk_widget_class_bind_template_child (widget_class, BbWindow, stack);
  gtk_widget_class_bind_template_callback (widget_class, row_selected_cb);
  gtk_widget_class_install_action (widget_class, "win.restore", "(sx)", restore_action);
  gtk_widget_class_install_action (widget_class, "win.take-up", "(sss)", take_up_action);
  gtk_widget_class_install_action (widget_class, "win.undo-calibration", "(xs)", undo_calibration_action);
  gtk_widget_class_install_action (widget_class, "win.go", "s", go_action);
  gtk_widget_class_install_action (widget_class, "win.find", NULL, find_action);
  gtk_widget_class_install_action (widget_class, "win.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "win.edit", NULL, edit_action);
  _bb_window_install_dialogs (widget_class);
  add_bindings (widget_class);
}

static void
bb_window_init (BbWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_window_new:
 * @application: the program
 * @session: an open book
 *
 * Returns: (transfer none): a window on the book, at the page where it was left
 */
BbWindow *
bb_window_new (GtkApplication *application,
               BbSession      *session)
{
  BbWindow *self = g_object_new (BB_TYPE_WINDOW, "application", application, NULL);
  g_autofree char *page = NULL;
  g_autofree char *name = g_path_get_basename (bb_book_get_path (bb_session_get_book (session)));

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "show", G_CALLBACK (show_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "show-for", G_CALLBACK (show_for_cb), self, G_CONNECT_SWAPPED);
  bb_toasts_connect (self->toasts, session);
  g_signal_connect_object (session, "put-aside", G_CALLBACK (put_aside_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
  restore_size (self);
  bb_person_menu_connect (self->person_drop_down, session);
  bb_notice_bar_set_session (self->notices, session);
  adw_window_title_set_subtitle (self->title, name);

  page = g_settings_get_string (bb_session_get_settings (session), "page");
  bb_page_list_fill (self->sidebar);
  if (go_to_page (self, page) == NULL)
    go_to_page (self, "recipes");

  return self;
}

/**
 * _bb_window_get_session:
 * @self: a window
 *
 * Returns: (transfer none): the session that it shows
 */
BbSession *
_bb_window_get_session (BbWindow *self)
{
  return self->session;
}

/**
 * bb_window_get_path:
 * @self: a window
 *
 * Returns: (transfer none): path of the book that the window shows
 */
const char *
bb_window_get_path (BbWindow *self)
{
  g_return_val_if_fail (BB_IS_WINDOW (self), NULL);

  return bb_book_get_path (bb_session_get_book (self->session));
}
