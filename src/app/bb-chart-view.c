/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-chart-view"

#include "bb-chart-view.h"

#include <glib/gi18n-lib.h>

#include "bb-chart-menu.h"
#include "bb-compat.h"

#define LEAST_WIDTH 280
#define LEAST_HEIGHT 300

struct _BbChartView
{
  GtkWidget parent_instance;

  /* Owned. */
  BbChart *chart;
  GtkWidget *menu;
  GtkWidget *button;

  BbChartSpot spot;
};

G_DEFINE_FINAL_TYPE (BbChartView, bb_chart_view, GTK_TYPE_WIDGET)

enum { SIGNAL_SAY, N_SIGNALS };
static guint signals[N_SIGNALS];

static const BbChartStyle *
get_style (void)
{
  return adw_style_manager_get_dark (adw_style_manager_get_default ()) ? &bb_chart_style_dark : &bb_chart_style_light;
}

/* What a screen reader hears: the point that is looked at, or what the chart is. */
static void
update_label (BbChartView *self)
{
  g_autofree char *spot = self->chart != NULL ? bb_chart_describe_spot (self->chart, &self->spot) : NULL;
  const char *title = self->chart != NULL && self->chart->title != NULL ? self->chart->title : _("Chart");

  bb_compat_set_name (GTK_WIDGET (self), spot != NULL ? spot : title);
}

static void
set_spot (BbChartView *self,
          BbChartSpot  spot)
{
  if (spot.layer == self->spot.layer && spot.point == self->spot.point)
    return;
  self->spot = spot;
  update_label (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static gboolean
step_cb (GtkWidget *widget,
         GVariant  *args,
         gpointer   data)
{
  BbChartView *self = BB_CHART_VIEW (widget);
  BbChartSpot spot = self->spot;

  (void) data;
  if (self->chart == NULL)
    return FALSE;
  if (bb_chart_step (self->chart, (BbChartStep) g_variant_get_int32 (args), &spot))
    set_spot (self, spot);

  /* At the end of a series too, so that the focus stays: it leaves by Tab. */
  return TRUE;
}

static gboolean
escape_cb (GtkWidget *widget,
           GVariant  *args,
           gpointer   data)
{
  BbChartView *self = BB_CHART_VIEW (widget);

  (void) args;
  (void) data;
  if (self->spot.layer < 0)
    return FALSE;
  set_spot (self, BB_CHART_NO_SPOT);

  return TRUE;
}

static gboolean
find_spot (BbChartView *self,
           double       x,
           double       y,
           BbChartSpot *spot)
{
  return self->chart != NULL &&
         bb_chart_find_spot (self->chart, gtk_widget_get_width (GTK_WIDGET (self)),
                             gtk_widget_get_height (GTK_WIDGET (self)), get_style (), x, y, spot);
}

static void
motion_cb (BbChartView *self,
           double       x,
           double       y)
{
  BbChartSpot spot = BB_CHART_NO_SPOT;

  find_spot (self, x, y, &spot);
  set_spot (self, spot);
}

static void
leave_cb (BbChartView *self)
{
  set_spot (self, BB_CHART_NO_SPOT);
}

static void
pressed_cb (BbChartView *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

/* A page has several charts, and a menu of four lines is some thirty widgets: made when it is asked for. */
static void
ensure_menu (BbChartView *self)
{
  if (self->menu != NULL)
    return;
  self->menu = bb_chart_menu_new ();
  gtk_widget_set_parent (self->menu, GTK_WIDGET (self));
}

static void
pop_up (BbChartView        *self,
        const GdkRectangle *at)
{
  ensure_menu (self);
  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu), at);
  gtk_popover_popup (GTK_POPOVER (self->menu));
}

static void
menu_pressed_cb (BbChartView *self,
                 int          n_press,
                 double       x,
                 double       y)
{
  (void) n_press;
  pop_up (self, &(GdkRectangle) { (int) x, (int) y, 1, 1 });
}

static gboolean
menu_cb (GtkWidget *widget,
         GVariant  *args,
         gpointer   data)
{
  (void) args;
  (void) data;
  pop_up (BB_CHART_VIEW (widget), &(GdkRectangle) { gtk_widget_get_width (widget) / 2,
                                                    gtk_widget_get_height (widget) / 2, 1, 1 });

  return TRUE;
}

static void
bb_chart_view_snapshot (GtkWidget   *widget,
                        GtkSnapshot *snapshot)
{
  BbChartView *self = BB_CHART_VIEW (widget);
  float width = (float) gtk_widget_get_width (widget);
  float height = (float) gtk_widget_get_height (widget);
  cairo_t *cr = NULL;

  if (self->chart == NULL || width < 1 || height < 1)
    return;

  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));
  bb_chart_draw (self->chart, cr, (double) width, (double) height, get_style (), &self->spot);
  cairo_destroy (cr);
  gtk_widget_snapshot_child (widget, self->button, snapshot);
}

static void
bb_chart_view_measure (GtkWidget      *widget,
                       GtkOrientation  orientation,
                       int             for_size,
                       int            *minimum,
                       int            *natural,
                       int            *minimum_baseline,
                       int            *natural_baseline)
{
  (void) widget;
  (void) for_size;
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? LEAST_WIDTH : LEAST_HEIGHT;
  *natural = *minimum * 3 / 2;
  *minimum_baseline = -1;
  *natural_baseline = -1;
}

/* The button stands in the corner where no word of a chart stands. */
static void
bb_chart_view_size_allocate (GtkWidget *widget,
                             int        width,
                             int        height,
                             int        baseline)
{
  BbChartView *self = BB_CHART_VIEW (widget);
  const gboolean to_left = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  GtkRequisition size;
  GtkAllocation corner = { 0, 0, 0, 0 };

  (void) height;
  (void) baseline;
  gtk_widget_get_preferred_size (self->button, &size, NULL);
  corner.x = to_left ? 0 : width - size.width;
  corner.width = size.width;
  corner.height = size.height;
  gtk_widget_size_allocate (self->button, &corner, -1);
  if (self->menu != NULL)
    gtk_popover_present (GTK_POPOVER (self->menu));
}

static void
bb_chart_view_dispose (GObject *object)
{
  BbChartView *self = BB_CHART_VIEW (object);

  g_clear_pointer (&self->menu, gtk_widget_unparent);
  g_clear_pointer (&self->button, gtk_widget_unparent);
  g_clear_pointer (&self->chart, bb_chart_unref);

  G_OBJECT_CLASS (bb_chart_view_parent_class)->dispose (object);
}

static void
add_step (GtkWidgetClass *klass,
          guint           key,
          guint           keypad_key,
          BbChartStep     step)
{
  gtk_widget_class_add_binding (klass, key, 0, step_cb, "i", (int) step);
  gtk_widget_class_add_binding (klass, keypad_key, 0, step_cb, "i", (int) step);
}

static void
bb_chart_view_class_init (BbChartViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_chart_view_dispose;
  widget_class->snapshot = bb_chart_view_snapshot;
  widget_class->measure = bb_chart_view_measure;
  widget_class->size_allocate = bb_chart_view_size_allocate;

  signals[SIGNAL_SAY] = g_signal_new ("say", BB_TYPE_CHART_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                      G_TYPE_STRING);

  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "chart");
  bb_chart_menu_install (widget_class);
  add_step (widget_class, GDK_KEY_Right, GDK_KEY_KP_Right, BB_CHART_NEXT);
  add_step (widget_class, GDK_KEY_Left, GDK_KEY_KP_Left, BB_CHART_PREVIOUS);
  add_step (widget_class, GDK_KEY_Down, GDK_KEY_KP_Down, BB_CHART_NEXT_SERIES);
  add_step (widget_class, GDK_KEY_Up, GDK_KEY_KP_Up, BB_CHART_PREVIOUS_SERIES);
  add_step (widget_class, GDK_KEY_Home, GDK_KEY_KP_Home, BB_CHART_FIRST);
  add_step (widget_class, GDK_KEY_End, GDK_KEY_KP_End, BB_CHART_LAST);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, escape_cb, NULL);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Menu, 0, menu_cb, NULL);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_F10, GDK_SHIFT_MASK, menu_cb, NULL);
}

static void
bb_chart_view_init (BbChartView *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkGesture *press = gtk_gesture_click_new ();
  GtkGesture *menu_press = gtk_gesture_click_new ();

  self->spot = BB_CHART_NO_SPOT;
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  self->button = bb_chart_menu_new_button ();
  gtk_widget_set_parent (self->button, GTK_WIDGET (self));
  update_label (self);

  g_signal_connect_swapped (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  g_signal_connect_swapped (press, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (press));
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (menu_press), GDK_BUTTON_SECONDARY);
  g_signal_connect_swapped (menu_press, "pressed", G_CALLBACK (menu_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (menu_press));
  g_signal_connect_object (adw_style_manager_get_default (), "notify::dark", G_CALLBACK (gtk_widget_queue_draw), self,
                           G_CONNECT_SWAPPED);
}

/**
 * bb_chart_view_new:
 *
 * Returns: (transfer floating): a view without a chart
 */
GtkWidget *
bb_chart_view_new (void)
{
  return g_object_new (BB_TYPE_CHART_VIEW, NULL);
}

/**
 * bb_chart_view_set_chart:
 * @self: a view
 * @chart: (transfer full) (nullable): a chart, which does not change any more
 *
 * Shows another chart.
 */
void
bb_chart_view_set_chart (BbChartView *self,
                         BbChart     *chart)
{
  g_autofree char *description = chart != NULL ? bb_chart_describe (chart) : NULL;

  g_return_if_fail (BB_IS_CHART_VIEW (self));

  g_clear_pointer (&self->chart, bb_chart_unref);
  self->chart = chart;
  self->spot = BB_CHART_NO_SPOT;
  update_label (self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  description != NULL ? description : "", -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * bb_chart_view_get_chart:
 * @self: a view
 *
 * Returns: (transfer none) (nullable): the chart that it shows
 */
BbChart *
bb_chart_view_get_chart (BbChartView *self)
{
  g_return_val_if_fail (BB_IS_CHART_VIEW (self), NULL);

  return self->chart;
}
