/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-window"

#include "bb-window.h"

#include <glib/gi18n-lib.h>

#include "bb-blanks-page.h"
#include "bb-compat.h"
#include "bb-equipment-page.h"
#include "bb-jobs-page.h"
#include "bb-labels-dialog.h"
#include "bb-mix-page.h"
#include "bb-notice-bar.h"
#include "bb-person-menu.h"
#include "bb-plans-page.h"
#include "bb-preferences.h"
#include "bb-recipes-page.h"
#include "bb-record-dialog.h"
#include "bb-safety-page.h"
#include "bb-session-stock.h"
#include "bb-supplies-page.h"
#include "bb-toasts.h"
#include "bb-wash-page.h"

/* The shop's form is long, and scrolls; it must fit the smallest screen. */
#define SHOP_WIDTH 640
#define SHOP_HEIGHT 620

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

/* A page of the window: its name in the session, what a person reads, and the group it stands in. */
typedef struct {
  const char *name;
  const char *title;
  const char *icon_name;
  const char *group;
  GType (*get_type) (void);
} PageInfo;

static const PageInfo pages[] = {
  { "jobs", N_("Jobs"), "blankbook-jobs-symbolic", N_("Bench"), bb_jobs_page_get_type },
  { "mix", N_("Mix"), "blankbook-mix-symbolic", N_("Bench"), bb_mix_page_get_type },
  { "recipes", N_("Recipes"), "blankbook-recipes-symbolic", N_("Develop"), bb_recipes_page_get_type },
  { "wash", N_("Wash Log"), "blankbook-wash-symbolic", N_("Develop"), bb_wash_page_get_type },
  { "plans", N_("Wash Plans"), "blankbook-plans-symbolic", N_("Develop"), bb_plans_page_get_type },
  { "blanks", N_("Blanks"), "blankbook-blanks-symbolic", N_("Shop"), bb_blanks_page_get_type },
  { "supplies", N_("Supplies"), "blankbook-supplies-symbolic", N_("Shop"), bb_supplies_page_get_type },
  { "equipment", N_("Equipment"), "blankbook-equipment-symbolic", N_("Shop"), bb_equipment_page_get_type },
  { "safety", N_("Safety"), "blankbook-safety-symbolic", N_("Shop"), bb_safety_page_get_type },
};

static const PageInfo *
get_info (GtkListBoxRow *row)
{
  return &pages[gtk_list_box_row_get_index (row)];
}

/* A page that nobody has gone to costs nothing. */
static void
ensure_page (BbWindow       *self,
             const PageInfo *info)
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
  const PageInfo *info = NULL;

  if (row == NULL || self->session == NULL)
    return;

  info = get_info (row);
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

  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    if (g_str_equal (pages[i].name, name))
      gtk_list_box_select_row (self->sidebar, gtk_list_box_get_row_at_index (self->sidebar, (int) i));
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
person_saved_cb (BbWindow *self,
                 gint64    id)
{
  bb_session_set_person (self->session, id);
}

static void
edit_person (BbWindow   *self,
             const char *title,
             BbPerson   *person)
{
  BbRecordDialog *dialog = bb_record_dialog_new (GTK_WINDOW (self), self->session, title, &bb_person_table, person);

  g_signal_connect_object (dialog, "saved", G_CALLBACK (person_saved_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
add_person_action (GtkWidget  *widget,
                   const char *name,
                   GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  edit_person (BB_WINDOW (widget), _("Add a Person"), bb_person_new ());
}

static void
edit_person_action (GtkWidget  *widget,
                    const char *name,
                    GVariant   *parameter)
{
  BbWindow *self = BB_WINDOW (widget);
  g_autoptr (GError) error = NULL;
  BbPerson *person = bb_book_load (bb_session_get_book (self->session), &bb_person_table,
                                   bb_session_get_person (self->session), &error);

  (void) name;
  (void) parameter;

  if (person == NULL)
    bb_session_report (self->session, error);
  else
    edit_person (self, _("The Person at the Bench"), person);
}

static void
changed_cb (BbWindow *self)
{
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.edit-person", bb_session_get_person (self->session) != 0);
}

static void
edit_shop_action (GtkWidget  *widget,
                  const char *name,
                  GVariant   *parameter)
{
  BbWindow *self = BB_WINDOW (widget);
  g_autoptr (GError) error = NULL;
  BbShop *shop = bb_book_load_shop (bb_session_get_book (self->session), &error);
  BbRecordDialog *dialog = NULL;

  (void) name;
  (void) parameter;

  if (shop == NULL)
    {
      bb_session_report (self->session, error);
      return;
    }
  dialog = bb_record_dialog_new (GTK_WINDOW (self), self->session, _("The Shop"), &bb_shop_table, shop);
  gtk_window_set_default_size (GTK_WINDOW (dialog), SHOP_WIDTH, SHOP_HEIGHT);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
labels_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  BbWindow *self = BB_WINDOW (widget);
  g_autoptr (GError) error = NULL;
  GtkWidget *dialog = NULL;
  const char *table = NULL;
  gint64 id = 0;

  (void) name;

  g_variant_get (parameter, "(&sx)", &table, &id);
  dialog = bb_labels_dialog_new (GTK_WINDOW (self), self->session, bb_book_find_table (table), id, &error);
  if (dialog != NULL)
    gtk_window_present (GTK_WINDOW (dialog));
  else
    bb_session_report (self->session, error);
}

static void
preferences_action (GtkWidget  *widget,
                    const char *name,
                    GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  gtk_window_present (GTK_WINDOW (bb_preferences_new (GTK_WINDOW (widget),
                                                      bb_session_get_settings (BB_WINDOW (widget)->session))));
}

static void
update_header_cb (GtkListBoxRow *row,
                  GtkListBoxRow *before,
                  gpointer       data)
{
  const char *group = get_info (row)->group;
  GtkWidget *label = NULL;

  (void) data;

  if (before != NULL && g_str_equal (get_info (before)->group, group))
    {
      gtk_list_box_row_set_header (row, NULL);
      return;
    }
  label = gtk_label_new (_(group));
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_add_css_class (label, "group-title");
  gtk_list_box_row_set_header (row, label);
}

static GtkWidget *
make_sidebar_row (const PageInfo *info)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *label = gtk_label_new (_(info->title));

  gtk_box_append (GTK_BOX (box), gtk_image_new_from_icon_name (info->icon_name));
  gtk_box_append (GTK_BOX (box), label);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  bb_compat_set_name (row, _(info->title));

  return row;
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
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    gtk_widget_class_add_binding_action (widget_class, GDK_KEY_1 + i, GDK_ALT_MASK, "win.go", "s", pages[i].name);
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
  gtk_widget_class_install_action (widget_class, "win.undo-calibration", "(xs)", undo_calibration_action);
  gtk_widget_class_install_action (widget_class, "win.go", "s", go_action);
  gtk_widget_class_install_action (widget_class, "win.find", NULL, find_action);
  gtk_widget_class_install_action (widget_class, "win.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "win.edit", NULL, edit_action);
  gtk_widget_class_install_action (widget_class, "win.show-shortcuts", NULL, show_shortcuts_action);
  gtk_widget_class_install_action (widget_class, "win.add-person", NULL, add_person_action);
  gtk_widget_class_install_action (widget_class, "win.edit-person", NULL, edit_person_action);
  gtk_widget_class_install_action (widget_class, "win.edit-shop", NULL, edit_shop_action);
  gtk_widget_class_install_action (widget_class, "win.labels", "(sx)", labels_action);
  gtk_widget_class_install_action (widget_class, "win.preferences", NULL, preferences_action);
  add_bindings (widget_class);
}

static void
bb_window_init (BbWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_list_box_set_header_func (self->sidebar, update_header_cb, NULL, NULL);
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
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
  restore_size (self);
  bb_person_menu_connect (self->person_drop_down, session);
  bb_notice_bar_set_session (self->notices, session);
  adw_window_title_set_subtitle (self->title, name);

  page = g_settings_get_string (bb_session_get_settings (session), "page");
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    gtk_list_box_append (self->sidebar, make_sidebar_row (&pages[i]));
  if (go_to_page (self, page) == NULL)
    go_to_page (self, "recipes");

  return self;
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
