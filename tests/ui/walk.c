/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-walk"

#include "walk.h"

#define LONGEST_WAIT_MS 8000

typedef gboolean (*Match) (GtkWidget    *widget,
                           gconstpointer data);

static GtkWidget *
find (GtkWidget    *root,
      Match         match,
      gconstpointer data)
{
  if (!gtk_widget_get_mapped (root))
    return NULL;
  if (match (root, data))
    return root;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find (child, match, data);

      if (found != NULL)
        return found;
    }

  return NULL;
}

static gboolean
is_of_type (GtkWidget    *widget,
            gconstpointer data)
{
  return g_type_is_a (G_OBJECT_TYPE (widget), *(const GType *) data);
}

static gboolean
says (GtkWidget    *widget,
      gconstpointer data)
{
  return GTK_IS_LABEL (widget) && strstr (gtk_label_get_label (GTK_LABEL (widget)), data) != NULL;
}

static gboolean
is_row_titled (GtkWidget    *widget,
               gconstpointer data)
{
  return ADW_IS_PREFERENCES_ROW (widget) &&
         g_strcmp0 (adw_preferences_row_get_title (ADW_PREFERENCES_ROW (widget)), data) == 0;
}

GtkWidget *
walk_find_type (GtkWidget *root,
                GType      type)
{
  return find (root, is_of_type, &type);
}

GtkWidget *
walk_find_label (GtkWidget  *root,
                 const char *text)
{
  return find (root, says, text);
}

GtkWidget *
walk_find_row (GtkWidget  *root,
               const char *title)
{
  GtkWidget *row = find (root, is_row_titled, title);

  if (row == NULL)
    g_error ("No field is called “%s”.", title);

  return row;
}

void
walk_type (GtkWidget  *root,
           const char *title,
           const char *text)
{
  GtkWidget *entry = walk_find_type (walk_find_row (root, title), GTK_TYPE_ENTRY);

  g_assert_nonnull (entry);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

void
walk_choose (GtkWidget  *root,
             const char *title,
             guint       position)
{
  GtkWidget *drop_down = walk_find_type (walk_find_row (root, title), GTK_TYPE_DROP_DOWN);

  g_assert_nonnull (drop_down);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (drop_down), position);
}

void
walk_settle (guint milliseconds)
{
  const gint64 end = g_get_monotonic_time () + (gint64) milliseconds * 1000;

  while (g_get_monotonic_time () < end)
    if (!g_main_context_iteration (NULL, FALSE))
      g_usleep (2000);
}

void
walk_expect (GtkWidget  *root,
             const char *text)
{
  for (guint waited = 0; waited < LONGEST_WAIT_MS; waited += 20)
    {
      if (walk_find_label (root, text) != NULL)
        return;
      walk_settle (20);
    }

  g_error ("Nothing in the window says “%s”.", text);
}

void
walk_picture (GtkWidget  *window,
              const char *path)
{
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (window);
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  g_autoptr (GskRenderNode) node = NULL;
  g_autoptr (GdkTexture) texture = NULL;
  GskRenderer *renderer = gtk_native_get_renderer (GTK_NATIVE (window));

  /* A paintable shows what the widget was at its last frame: give it one. */
  gtk_widget_queue_draw (window);
  walk_settle (300);
  gdk_paintable_snapshot (paintable, snapshot, gtk_widget_get_width (window), gtk_widget_get_height (window));
  node = gtk_snapshot_free_to_node (snapshot);
  g_assert_nonnull (node);
  texture = gsk_renderer_render_texture (renderer, node, NULL);
  g_assert_true (gdk_texture_save_to_png (texture, path));
}
