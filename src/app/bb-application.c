/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-application"

#include "bb-application.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#ifdef __GLIBC__
#include <malloc.h>
#endif

#include "bb-compat.h"
#include "bb-exchange.h"
#include "bb-refusal-window.h"
#include "bb-window.h"

#define RESOURCES "/io/blankbook/Blankbook/"

/* Larger than any widget's, smaller than what a window is painted into. */
#define LARGE_BLOCK (1024 * 1024)

/*
 * What stays at the end of the heap for the next page. Where one limit is set the C library no longer finds the other
 * by itself, and would give back each small piece to the system only to ask for it again.
 */
#define HEAP_TO_KEEP (2 * LARGE_BLOCK)

/* Each thread that decodes an icon would have a heap of its own, of which little is ever used again. */
#define MOST_HEAPS 2

struct _BbApplication
{
  AdwApplication parent_instance;

  /* owned */
  GSettings *settings;
  GtkCssProvider *dark_style;
};

G_DEFINE_FINAL_TYPE (BbApplication, bb_application, ADW_TYPE_APPLICATION)

static char *
dup_own_book (void)
{
  return g_build_filename (g_get_user_data_dir (), "blankbook", "shop.book", NULL);
}

static BbWindow *
find_window (BbApplication *self,
             const char    *path)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next)
    if (BB_IS_WINDOW (l->data) && g_str_equal (bb_window_get_path (l->data), path))
      return l->data;

  return NULL;
}

/* The one window that says why a book can't be had; NULL where there is none. */
static GtkWindow *
find_refusal (BbApplication *self)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next)
    if (BB_IS_REFUSAL_WINDOW (l->data))
      return l->data;

  return NULL;
}

static void
show_refusal (BbApplication *self,
              const char    *path,
              const GError  *error)
{
  GtkWindow *window = find_refusal (self);

  if (window == NULL)
    window = GTK_WINDOW (bb_refusal_window_new (GTK_APPLICATION (self)));
  bb_refusal_window_tell (BB_REFUSAL_WINDOW (window), path, error);
  gtk_window_present (window);
}

/* Who has another book open has read why the first one could not be. */
static void
close_refusal (BbApplication *self)
{
  GtkWindow *window = find_refusal (self);

  if (window != NULL)
    gtk_window_close (window);
}

static void
open_book (BbApplication *self,
           const char    *path)
{
  BbWindow *window = find_window (self, path);
  g_autoptr (BbSession) session = NULL;
  g_autoptr (GError) error = NULL;

  if (window == NULL)
    {
      session = bb_session_new (path, self->settings, &error);
      if (session == NULL)
        {
          show_refusal (self, path, error);
          return;
        }
      window = bb_window_new (GTK_APPLICATION (self), session);
      g_settings_set_string (self->settings, "last-book", path);
    }
  gtk_window_present (GTK_WINDOW (window));
  close_refusal (self);
}

static gboolean
create_book (const char  *path,
             GError     **error)
{
  g_autofree char *folder = g_path_get_dirname (path);

  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_IO, _("The folder %s can't be made."), folder);
      return FALSE;
    }

  return bb_exchange_make_book (path, error);
}

static void
new_book_chosen_cb (GFile    *file,
                    gpointer  data)
{
  BbApplication *self = BB_APPLICATION (data);
  g_autofree char *path = g_file_get_path (file);
  g_autoptr (GError) error = NULL;

  if (path == NULL)
    return;
  if (create_book (path, &error))
    open_book (self, path);
  else
    show_refusal (self, path, error);
}

static void
open_book_chosen_cb (GFile    *file,
                     gpointer  data)
{
  g_autofree char *path = g_file_get_path (file);

  if (path != NULL)
    open_book (BB_APPLICATION (data), path);
}

static void
bb_application_activate (GApplication *application)
{
  BbApplication *self = BB_APPLICATION (application);
  g_autofree char *last = g_settings_get_string (self->settings, "last-book");
  g_autofree char *own = dup_own_book ();
  g_autoptr (GError) error = NULL;

  if (*last != '\0' && g_file_test (last, G_FILE_TEST_EXISTS))
    {
      open_book (self, last);
      return;
    }
  if (!g_file_test (own, G_FILE_TEST_EXISTS) && !create_book (own, &error))
    {
      show_refusal (self, own, error);
      return;
    }
  open_book (self, own);
}

static void
bb_application_open (GApplication  *application,
                     GFile        **files,
                     int            n_files,
                     const char    *hint)
{
  (void) hint;

  for (int i = 0; i < n_files; i++)
    {
      g_autofree char *path = g_file_get_path (files[i]);

      if (path != NULL)
        open_book (BB_APPLICATION (application), path);
    }
}

static void
apply_colour_scheme (BbApplication *self)
{
  g_autofree char *scheme = g_settings_get_string (self->settings, "colour-scheme");
  AdwColorScheme wanted = ADW_COLOR_SCHEME_DEFAULT;

  if (g_str_equal (scheme, "light"))
    wanted = ADW_COLOR_SCHEME_FORCE_LIGHT;
  else if (g_str_equal (scheme, "dark"))
    wanted = ADW_COLOR_SCHEME_FORCE_DARK;
  adw_style_manager_set_color_scheme (adw_style_manager_get_default (), wanted);
}

static void
new_book_action (GSimpleAction *action,
                 GVariant      *parameter,
                 gpointer       data)
{
  (void) action;
  (void) parameter;

  bb_compat_save_file (gtk_application_get_active_window (GTK_APPLICATION (data)), _("New Book"), _("shop.book"),
                       new_book_chosen_cb, data, NULL);
}

static void
open_book_action (GSimpleAction *action,
                  GVariant      *parameter,
                  gpointer       data)
{
  (void) action;
  (void) parameter;

  bb_compat_open_file (gtk_application_get_active_window (GTK_APPLICATION (data)), _("Open Book"), _("Books"),
                       "*.book", open_book_chosen_cb, data, NULL);
}

static void
about_action (GSimpleAction *action,
              GVariant      *parameter,
              gpointer       data)
{
  (void) action;
  (void) parameter;

  bb_compat_show_about (gtk_application_get_active_window (GTK_APPLICATION (data)), BB_APP_ID, "Blankbook", BB_VERSION,
                        _("The shop's book of recipes for printing on garments: what works on which blank, the proof "
                          "of it, and the numbers to repeat it."));
}

static void
close_windows (BbApplication *self)
{
  g_autoptr (GList) windows = g_list_copy (gtk_application_get_windows (GTK_APPLICATION (self)));

  for (GList *l = windows; l != NULL; l = l->next)
    gtk_window_close (l->data);
}

/* Closing, not killing: each window keeps what is half typed. */
static void
quit_action (GSimpleAction *action,
             GVariant      *parameter,
             gpointer       data)
{
  (void) action;
  (void) parameter;

  close_windows (BB_APPLICATION (data));
}

static void
add_accels (GtkApplication *application)
{
  gtk_application_set_accels_for_action (application, "app.quit", (const char *[]) { "<Control>q", NULL });
  gtk_application_set_accels_for_action (application, "app.open-book", (const char *[]) { "<Control>o", NULL });
  gtk_application_set_accels_for_action (application, "win.show-shortcuts",
                                         (const char *[]) { "<Control>question", "F1", NULL });
}

static void
apply_dark (BbApplication *self)
{
  GtkStyleProvider *provider = GTK_STYLE_PROVIDER (self->dark_style);

  if (adw_style_manager_get_dark (adw_style_manager_get_default ()))
    gtk_style_context_add_provider_for_display (gdk_display_get_default (), provider,
                                                GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  else
    gtk_style_context_remove_provider_for_display (gdk_display_get_default (), provider);
}

static void
load_style (BbApplication *self)
{
  g_autoptr (GtkCssProvider) style = gtk_css_provider_new ();

  gtk_css_provider_load_from_resource (style, RESOURCES "style.css");
  gtk_style_context_add_provider_for_display (gdk_display_get_default (), GTK_STYLE_PROVIDER (style),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  self->dark_style = gtk_css_provider_new ();
  gtk_css_provider_load_from_resource (self->dark_style, RESOURCES "style-dark.css");
  g_signal_connect_object (adw_style_manager_get_default (), "notify::dark", G_CALLBACK (apply_dark), self,
                           G_CONNECT_SWAPPED);
  apply_dark (self);
}

/*
 * A picture as large as the window is made for each frame. Once the C library has seen one freed it puts the next among
 * the small blocks, where those of a page that is being built take its place, and the picture after that needs more
 * memory again, which is not given back. Told where large begins, it keeps the two apart.
 */
static void
keep_large_blocks_apart (void)
{
#ifdef __GLIBC__
  mallopt (M_MMAP_THRESHOLD, LARGE_BLOCK);
  mallopt (M_TRIM_THRESHOLD, HEAP_TO_KEEP);
  mallopt (M_ARENA_MAX, MOST_HEAPS);
#endif
}

static void
bb_application_startup (GApplication *application)
{
  BbApplication *self = BB_APPLICATION (application);
  const GActionEntry entries[] = {
    { .name = "new-book", .activate = new_book_action },
    { .name = "open-book", .activate = open_book_action },
    { .name = "about", .activate = about_action },
    { .name = "quit", .activate = quit_action },
  };

  keep_large_blocks_apart ();
  adw_init ();
  /*
   * To read all the icon themes takes about as long as to make a window. GTK does so in a thread, but begins again when
   * it is given another place to look for icons, as it would be with a place for the program's resources. Its icons are
   * among GTK's own instead, where it looks in any case; its style has to be loaded here for that.
   */
  g_application_set_resource_base_path (application, NULL);
  G_APPLICATION_CLASS (bb_application_parent_class)->startup (application);
  load_style (self);

  self->settings = g_settings_new (BB_APP_ID);
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  add_accels (GTK_APPLICATION (self));
  g_signal_connect_object (self->settings, "changed::colour-scheme", G_CALLBACK (apply_colour_scheme), self,
                           G_CONNECT_SWAPPED);
  apply_colour_scheme (self);
}

static void
bb_application_finalize (GObject *object)
{
  g_clear_object (&BB_APPLICATION (object)->settings);
  g_clear_object (&BB_APPLICATION (object)->dark_style);

  G_OBJECT_CLASS (bb_application_parent_class)->finalize (object);
}

static void
bb_application_class_init (BbApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = bb_application_finalize;
  application_class->activate = bb_application_activate;
  application_class->open = bb_application_open;
  application_class->startup = bb_application_startup;
}

static void
bb_application_init (BbApplication *self)
{
  const GOptionEntry options[] = {
    { "version", 'v', 0, G_OPTION_ARG_NONE, NULL, N_("Show the version and exit"), NULL },
    { NULL, 0, 0, G_OPTION_ARG_NONE, NULL, NULL, NULL },
  };

  g_application_add_main_option_entries (G_APPLICATION (self), options);
}

/**
 * bb_application_new:
 *
 * Returns: (transfer full): the program
 */
BbApplication *
bb_application_new (void)
{
  return g_object_new (BB_TYPE_APPLICATION, "application-id", BB_APP_ID, "flags", G_APPLICATION_HANDLES_OPEN,
                       NULL);
}
