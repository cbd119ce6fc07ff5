/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "app-helpers.h"

#include <glib/gstdio.h>

#include "bb-after-paint.h"
#include "bb-clean-close.h"
#include "crowd.h"
#include "store-helpers.h"

#define PATIENCE_US (30 * G_USEC_PER_SEC)

/* A test's files are gone with it, so the book that all start from is kept in memory. */
static GBytes *
get_crowd (void)
{
  static GBytes *crowd;
  g_autofree char *path = NULL;
  g_autofree char *contents = NULL;
  gsize length = 0;

  if (crowd == NULL)
    {
      path = helper_new_path ();
      crowd_make (path, MANY);
      g_assert_true (g_file_get_contents (path, &contents, &length, NULL));
      crowd = g_bytes_new_take (g_steal_pointer (&contents), length);
    }

  return crowd;
}

BbSession *
helper_open_session (const char *path)
{
  g_autoptr (GSettings) settings = g_settings_new ("io.blankbook.Blankbook");
  g_autoptr (GError) error = NULL;
  BbSession *session = bb_session_new (path, settings, &error);

  g_assert_no_error (error);

  return session;
}

BbSession *
helper_open_crowd (void)
{
  g_autofree char *path = helper_new_path ();
  g_autoptr (GError) error = NULL;
  GBytes *crowd = get_crowd ();

  g_file_set_contents_full (path, g_bytes_get_data (crowd, NULL), (gssize) g_bytes_get_size (crowd),
                            G_FILE_SET_CONTENTS_NONE, 0600, &error);
  g_assert_no_error (error);
  /* It is a copy of a sound book: to look at all of it, twice a session, is for other tests. */
  bb_clean_close_note (path);

  return helper_open_session (path);
}

void
helper_end_session (BbSession *session)
{
  bb_session_close (session);
  helper_finalize (session);
}

void
helper_wait_until (Condition condition,
                   gpointer  data)
{
  const gint64 start = g_get_monotonic_time ();

  while (!condition (data))
    {
      g_assert_cmpint (g_get_monotonic_time () - start, <, PATIENCE_US);
      if (!g_main_context_iteration (NULL, FALSE))
        g_usleep (1000);
    }
}

static gboolean
is_held_by_nobody_else (gpointer data)
{
  return G_OBJECT (data)->ref_count == 1;
}

/* Lets go of what nobody is to hold any more, once work that was begun for it has ended. */
void
helper_finalize (gpointer object)
{
  helper_wait_idle ();
  helper_wait_until (is_held_by_nobody_else, object);
  g_assert_finalize_object (object);
}

typedef struct {
  gint64 due;
  guint n_left;
} Drawing;

/* What waits for a rest in typing comes first, and is drawn then. */
static gboolean
tick_cb (GtkWidget     *widget,
         GdkFrameClock *clock,
         gpointer       data)
{
  Drawing *drawing = data;

  (void) clock;
  gtk_widget_queue_draw (widget);
  if (g_get_monotonic_time () < drawing->due)
    return G_SOURCE_CONTINUE;

  return --drawing->n_left > 0 ? G_SOURCE_CONTINUE : G_SOURCE_REMOVE;
}

static gboolean
is_drawn (gpointer data)
{
  return ((const Drawing *) data)->n_left == 0;
}

void
helper_wait_drawn (GtkWidget *widget)
{
  Drawing drawing = {
    .due = g_get_monotonic_time () + BB_REST_BETWEEN_KEYS_MS * G_TIME_SPAN_MILLISECOND,
    .n_left = 4,
  };

  gtk_widget_add_tick_callback (widget, tick_cb, &drawing, NULL);
  helper_wait_until (is_drawn, &drawing);
}

void
helper_wait_idle (void)
{
  while (g_main_context_iteration (NULL, FALSE))
    continue;
}

gpointer
helper_find_widget (GtkWidget *within,
                    GType      type)
{
  if (g_type_is_a (G_OBJECT_TYPE (within), type))
    return within;

  for (GtkWidget *child = gtk_widget_get_first_child (within); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      gpointer found = helper_find_widget (child, type);

      if (found != NULL)
        return found;
    }

  return NULL;
}
