/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-date-button"

#include "bb-date-button.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-signal.h"

static void
day_selected_cb (GtkCalendar *calendar,
                 GtkEditable *editable)
{
  g_autoptr (GDateTime) day = gtk_calendar_get_date (calendar);
  g_autofree char *text = g_date_time_format (day, "%Y-%m-%d");

  gtk_editable_set_text (editable, text);
}

/* The calendar opens at the day that is typed, or today. */
static void
shown_cb (GtkCalendar *calendar,
          GtkEditable *editable)
{
  g_autoptr (GTimeZone) zone = g_time_zone_new_local ();
  g_autofree char *text = g_strconcat (gtk_editable_get_text (editable), "T12:00:00", NULL);
  g_autoptr (GDateTime) typed = g_date_time_new_from_iso8601 (text, zone);
  g_autoptr (GDateTime) day = typed != NULL ? g_date_time_ref (typed) : g_date_time_new_now (zone);

  g_signal_handlers_block_by_func (calendar, BB_HANDLER (day_selected_cb), editable);
  gtk_calendar_select_day (calendar, day);
  g_signal_handlers_unblock_by_func (calendar, BB_HANDLER (day_selected_cb), editable);
}

/**
 * bb_date_button_new:
 * @editable: where a day is typed, as `YYYY-MM-DD`
 *
 * Returns: (transfer floating): a button that opens a calendar, whose day goes into @editable
 */
GtkWidget *
bb_date_button_new (GtkEditable *editable)
{
  GtkWidget *button = gtk_menu_button_new ();
  GtkWidget *popover = gtk_popover_new ();
  GtkWidget *calendar = gtk_calendar_new ();

  g_return_val_if_fail (GTK_IS_EDITABLE (editable), NULL);

  g_signal_connect_object (calendar, "day-selected", G_CALLBACK (day_selected_cb), editable, 0);
  g_signal_connect_object (calendar, "map", G_CALLBACK (shown_cb), editable, 0);
  gtk_popover_set_child (GTK_POPOVER (popover), calendar);
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (button), popover);
  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (button), "x-office-calendar-symbolic");
  gtk_widget_set_tooltip_text (button, _("Choose a day"));
  bb_compat_set_name (button, _("Choose a day"));
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (button, "flat");

  return button;
}
