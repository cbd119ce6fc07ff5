/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-bench"

#include "probe.h"

#include <stdio.h>
#include <stdlib.h>
#include <time.h>
#include <unistd.h>

/* Shorter than this is not worth a line. */
#define MOMENT_US 2000

typedef struct {
  GtkWidget *window;
  GListModel *items;
  guint changes;
} Probe;

/* GLib gives the function that waits no data. */
static gint64 woken;
static gint64 woken_cpu;

static gint64
get_cpu_time (clockid_t clock)
{
  struct timespec time;

  clock_gettime (clock, &time);

  return (gint64) time.tv_sec * G_USEC_PER_SEC + time.tv_nsec / 1000;
}

static int
wait_for_events (GPollFD *descriptors,
                 guint    n_descriptors,
                 int      timeout)
{
  const gint64 now = g_get_monotonic_time ();
  int ready = 0;

  if (woken != 0 && now - woken >= MOMENT_US)
    printf ("busy %" G_GINT64_FORMAT " %" G_GINT64_FORMAT " %" G_GINT64_FORMAT "\n", woken, now - woken,
            get_cpu_time (CLOCK_THREAD_CPUTIME_ID) - woken_cpu);
  ready = g_poll (descriptors, n_descriptors, timeout);
  woken = g_get_monotonic_time ();
  woken_cpu = get_cpu_time (CLOCK_THREAD_CPUTIME_ID);

  return ready;
}

/**
 * probe_start:
 *
 * To be called first of all.
 */
void
probe_start (void)
{
  setvbuf (stdout, NULL, _IOLBF, 0);
  printf ("pid %d\n", (int) getpid ());
  g_main_context_set_poll_func (NULL, wait_for_events);
}

static GtkWidget *
find_list (GtkWidget *widget)
{
  if (GTK_IS_LIST_VIEW (widget))
    return widget;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = gtk_widget_get_mapped (child) ? find_list (child) : NULL;

      if (found != NULL)
        return found;
    }

  return NULL;
}

static void
changed_cb (Probe *self)
{
  self->changes++;
}

/* Below the selection, and below what is shown of it. */
static GListModel *
find_source (GListModel *model)
{
  while (g_object_class_find_property (G_OBJECT_GET_CLASS (model), "model") != NULL)
    {
      g_autoptr (GListModel) source = NULL;

      g_object_get (model, "model", &source, NULL);
      if (source == NULL)
        break;
      model = source;
    }

  return model;
}

/* A list is watched once it is there with a model, as a page can be made late. */
static void
watch_items (Probe *self)
{
  GtkWidget *list = find_list (self->window);

  if (list == NULL || gtk_list_view_get_model (GTK_LIST_VIEW (list)) == NULL)
    return;

  self->items = find_source (G_LIST_MODEL (gtk_list_view_get_model (GTK_LIST_VIEW (list))));
  g_signal_connect_swapped (self->items, "reloaded", G_CALLBACK (changed_cb), self);
}

static void
after_paint_cb (Probe *self)
{
  const gint64 now = g_get_monotonic_time ();

  if (self->items == NULL)
    watch_items (self);
  printf ("frame %" G_GINT64_FORMAT " %" G_GINT64_FORMAT " %u %u\n", now, get_cpu_time (CLOCK_PROCESS_CPUTIME_ID),
          self->items != NULL ? g_list_model_get_n_items (self->items) : 0, self->changes);
}

static gboolean
close_cb (gpointer window)
{
  gtk_window_close (GTK_WINDOW (window));

  return G_SOURCE_REMOVE;
}

static void
realize_cb (GtkWidget *window,
            Probe     *self)
{
  const char *close_after_ms = g_getenv ("PROBE_CLOSE_AFTER_MS");

  if (close_after_ms != NULL)
    g_timeout_add ((guint) atoi (close_after_ms), close_cb, window);
  g_signal_connect_swapped (gtk_widget_get_frame_clock (window), "after-paint", G_CALLBACK (after_paint_cb), self);
}

/**
 * probe_watch:
 * @window: a window that is not realized yet, and lives as long as the program
 */
void
probe_watch (GtkWidget *window)
{
  Probe *self = g_new0 (Probe, 1);

  self->window = window;
  g_signal_connect_data (window, "realize", G_CALLBACK (realize_cb), self, (GClosureNotify) (void (*) (void)) g_free,
                         G_CONNECT_AFTER);
}
