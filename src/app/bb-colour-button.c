/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-colour-button"

#include "bb-colour-button.h"

#include <glib/gi18n-lib.h>

#include "bb-blank.h"
#include "bb-compat.h"
#include "bb-swatch.h"

#define SWATCH_SIZE 22

static void
changed_cb (BbSwatch    *swatch,
            GtkEditable *editable)
{
  bb_swatch_set_srgb (swatch, gtk_editable_get_text (editable));
}

static void
chosen_cb (const GdkRGBA *colour,
           gpointer       data)
{
  g_autofree char *text = bb_srgb_format ((double) colour->red, (double) colour->green, (double) colour->blue);

  gtk_editable_set_text (GTK_EDITABLE (data), text);
}

static void
clicked_cb (GtkWidget   *button,
            GtkEditable *editable)
{
  GdkRGBA colour = { 0.5f, 0.5f, 0.5f, 1.0f };

  gdk_rgba_parse (&colour, gtk_editable_get_text (editable));
  bb_compat_choose_colour (GTK_WINDOW (gtk_widget_get_root (button)), _("Garment's Colour"), &colour, chosen_cb,
                           G_OBJECT (editable));
}

/**
 * bb_colour_button_new:
 * @editable: where a colour is typed, as `#rrggbb`
 *
 * Returns: (transfer floating): a button that shows the colour and lets it be chosen by eye
 */
GtkWidget *
bb_colour_button_new (GtkEditable *editable)
{
  GtkWidget *button = gtk_button_new ();
  GtkWidget *swatch = bb_swatch_new (SWATCH_SIZE);

  g_return_val_if_fail (GTK_IS_EDITABLE (editable), NULL);

  g_signal_connect_object (editable, "changed", G_CALLBACK (changed_cb), swatch, G_CONNECT_SWAPPED);
  g_signal_connect_object (button, "clicked", G_CALLBACK (clicked_cb), editable, 0);
  gtk_button_set_child (GTK_BUTTON (button), swatch);
  gtk_widget_set_tooltip_text (button, _("Choose a colour"));
  bb_compat_set_name (button, _("Choose a colour"));
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);

  return button;
}
