/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-chart-menu"

#include "bb-chart-menu.h"

#include <glib/gi18n-lib.h>

#include "bb-chart-keep.h"
#include "bb-chart-view.h"
#include "bb-compat.h"
#include "bb-save.h"

/* What a file is being named for. */
typedef struct {
  GtkWidget *view;
  BbChart *chart;
  gboolean as_pdf;
} Saving;

static void
saving_free (gpointer data)
{
  Saving *self = data;

  g_clear_object (&self->view);
  g_clear_pointer (&self->chart, bb_chart_unref);
  g_free (self);
}

static void
saved_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (GtkWidget) view = data;
  g_autofree char *text = bb_save_run_finish (result);

  (void) source;
  g_signal_emit_by_name (view, "say", text);
}

static void
copied_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autofree char *text = bb_chart_copy_finish (result);

  (void) data;
  g_signal_emit_by_name (source, "say", text);
}

static void
file_named_cb (GFile    *file,
               gpointer  data)
{
  const Saving *asked = data;

  bb_chart_save_async (asked->chart, file, asked->as_pdf, saved_cb, g_object_ref (asked->view));
}

static void
save_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbChart *chart = bb_chart_view_get_chart (BB_CHART_VIEW (widget));
  Saving *asked = NULL;

  (void) parameter;
  if (chart == NULL)
    return;
  asked = g_new0 (Saving, 1);
  asked->view = g_object_ref (widget);
  asked->chart = bb_chart_ref (chart);
  asked->as_pdf = g_str_has_suffix (name, "pdf");
  bb_save_ask (widget, _("Save Chart"), asked->as_pdf ? _("chart.pdf") : _("chart.png"), file_named_cb, asked,
               saving_free);
}

static void
copy_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbChart *chart = bb_chart_view_get_chart (BB_CHART_VIEW (widget));
  g_autofree char *text = chart != NULL ? bb_chart_describe (chart) : NULL;

  (void) name;
  (void) parameter;
  if (text != NULL)
    gdk_clipboard_set_text (gtk_widget_get_clipboard (widget), text);
}

static void
copy_picture_action (GtkWidget  *widget,
                     const char *name,
                     GVariant   *parameter)
{
  BbChart *chart = bb_chart_view_get_chart (BB_CHART_VIEW (widget));

  (void) name;
  (void) parameter;
  if (chart != NULL)
    bb_chart_copy_async (widget, chart, copied_cb, NULL);
}

/**
 * bb_chart_menu_install:
 * @klass: the class of chart views
 *
 * Gives them the actions of the menu. What a person has to be told goes out as the view's signal `say`.
 */
void
bb_chart_menu_install (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "chart.save-png", NULL, save_action);
  gtk_widget_class_install_action (klass, "chart.save-pdf", NULL, save_action);
  gtk_widget_class_install_action (klass, "chart.copy", NULL, copy_action);
  gtk_widget_class_install_action (klass, "chart.copy-picture", NULL, copy_picture_action);
}

static GMenuModel *
make_menu (void)
{
  GMenu *menu = g_menu_new ();

  g_menu_append (menu, _("Save as Picture (PNG)…"), "chart.save-png");
  g_menu_append (menu, _("Save as PDF…"), "chart.save-pdf");
  g_menu_append (menu, _("Copy as Picture"), "chart.copy-picture");
  g_menu_append (menu, _("Copy What It Tells"), "chart.copy");

  return G_MENU_MODEL (menu);
}

/**
 * bb_chart_menu_new:
 *
 * Returns: (transfer floating): the menu, to be opened where the pointer or the keyboard is
 */
GtkWidget *
bb_chart_menu_new (void)
{
  g_autoptr (GMenuModel) model = make_menu ();
  GtkWidget *menu = gtk_popover_menu_new_from_model (model);

  gtk_popover_set_has_arrow (GTK_POPOVER (menu), FALSE);
  gtk_widget_set_halign (menu, GTK_ALIGN_START);

  return menu;
}

static void
button_popup_cb (GtkMenuButton *button,
                 gpointer       data)
{
  g_autoptr (GMenuModel) menu = NULL;

  (void) data;
  if (gtk_menu_button_get_popover (button) != NULL)
    return;
  menu = make_menu ();
  gtk_menu_button_set_menu_model (button, menu);
}

/**
 * bb_chart_menu_new_button:
 *
 * Returns: (transfer floating): a button that opens the menu, and has none before
 */
GtkWidget *
bb_chart_menu_new_button (void)
{
  GtkWidget *button = gtk_menu_button_new ();

  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (button), "view-more-symbolic");
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (button), button_popup_cb, NULL, NULL);
  gtk_menu_button_set_has_frame (GTK_MENU_BUTTON (button), FALSE);
  gtk_widget_set_tooltip_text (button, _("Save or copy this chart"));
  bb_compat_set_name (button, _("Save or copy this chart"));

  return button;
}
