/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-refusal-window"

#include "bb-refusal-window.h"

#include <string.h>

struct _BbRefusalWindow
{
  AdwApplicationWindow parent_instance;

  /* template */
  AdwStatusPage *page;
};

G_DEFINE_FINAL_TYPE (BbRefusalWindow, bb_refusal_window, ADW_TYPE_APPLICATION_WINDOW)

static void
bb_refusal_window_class_init (BbRefusalWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-refusal-window.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRefusalWindow, page);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
bb_refusal_window_init (BbRefusalWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_refusal_window_new:
 * @application: the program
 *
 * Returns: (transfer none): a window that says nothing yet, not yet presented
 */
GtkWidget *
bb_refusal_window_new (GtkApplication *application)
{
  return g_object_new (BB_TYPE_REFUSAL_WINDOW, "application", application, NULL);
}

/**
 * bb_refusal_window_tell:
 * @self: a window
 * @path: the book that was asked for
 * @error: why it can't be had
 *
 * Says that in place of what it said before.
 */
void
bb_refusal_window_tell (BbRefusalWindow *self,
                        const char      *path,
                        const GError    *error)
{
  const size_t length = strlen (path);
  const char *why = error->message;
  g_autofree char *text = NULL;

  g_return_if_fail (BB_IS_REFUSAL_WINDOW (self));

  /* The message may name the book before it says why; here the two stand below each other. */
  if (strncmp (why, path, length) == 0 && g_str_has_prefix (why + length, ": "))
    why += length + strlen (": ");
  text = g_markup_printf_escaped ("%s\n\n%s", why, path);
  adw_status_page_set_description (self->page, text);
}
