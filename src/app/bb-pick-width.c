/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-pick-width"

#include "bb-pick-width.h"

/* Least characters in the button. */
#define LEAST_WIDTH 14

/* Characters of a line in the list, from which on it is cut. */
#define LIST_WIDTH 60

static void
setup_item_cb (GtkSignalListItemFactory *factory,
               GtkListItem              *list_item,
               gpointer                  data)
{
  GtkWidget *label = gtk_label_new (NULL);

  (void) factory;

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  if (GPOINTER_TO_INT (data) > 0)
    {
      gtk_label_set_width_chars (GTK_LABEL (label), MIN (LEAST_WIDTH, GPOINTER_TO_INT (data)));
      gtk_label_set_max_width_chars (GTK_LABEL (label), GPOINTER_TO_INT (data));
    }
  gtk_list_item_set_child (list_item, label);
}

static void
bind_item_cb (GtkSignalListItemFactory *factory,
              GtkListItem              *list_item,
              gpointer                  data)
{
  GtkStringObject *string = gtk_list_item_get_item (list_item);
  GtkWidget *label = gtk_list_item_get_child (list_item);
  const char *text = gtk_string_object_get_string (string);

  (void) factory;

  gtk_label_set_label (GTK_LABEL (label), text);
  /* A list is as wide as its names have to be, not as its button is. */
  if (GPOINTER_TO_INT (data) == 0)
    gtk_label_set_width_chars (GTK_LABEL (label), (int) MIN (g_utf8_strlen (text, -1), LIST_WIDTH));
  gtk_widget_set_tooltip_text (label, text);
}

static GtkListItemFactory *
make_factory (int width)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_item_cb), GINT_TO_POINTER (width));
  g_signal_connect (factory, "bind", G_CALLBACK (bind_item_cb), GINT_TO_POINTER (width));

  return factory;
}

/**
 * bb_pick_set_width:
 * @drop_down: a drop-down of a #GtkStringList
 * @width: most characters in the button
 *
 * Lets long names not widen what is around: they are cut in the button and whole in the list.
 */
void
bb_pick_set_width (GtkDropDown *drop_down,
                   int          width)
{
  g_autoptr (GtkListItemFactory) button = make_factory (width);
  g_autoptr (GtkListItemFactory) list = make_factory (0);
  g_autoptr (GtkExpression) expression = gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL, "string");

  g_return_if_fail (GTK_IS_DROP_DOWN (drop_down) && width > 0);

  /* With an expression GTK 4.18 puts its own factory back, which cuts nothing: ours come after it. */
  gtk_drop_down_set_expression (drop_down, expression);
  gtk_drop_down_set_factory (drop_down, button);
  gtk_drop_down_set_list_factory (drop_down, list);
}
