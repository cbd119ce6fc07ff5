/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-scan-area"

#include "bb-scan-area.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* How long a key has to be still before a rectangle counts as at rest, in milliseconds. */
#define REST_MS 400
/* A key moves by this share of the picture's longer side. */
#define STEP_SHARE 100

struct _BbScanArea
{
  GtkWidget parent_instance;

  /* owned */
  GdkTexture *texture;
  int full_width;
  int full_height;

  BbScanPart part;
  GdkRectangle rectangles[BB_N_SCAN_PARTS];
  double anchor_x;
  double anchor_y;
  guint rest_id;
};

G_DEFINE_FINAL_TYPE (BbScanArea, bb_scan_area, GTK_TYPE_WIDGET)

enum {
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* Where the picture lies in the widget, and how many of its pixels one unit of the widget is. */
static double
get_scale (BbScanArea *self,
           double     *left,
           double     *top)
{
  const double width = gtk_widget_get_width (GTK_WIDGET (self));
  const double height = gtk_widget_get_height (GTK_WIDGET (self));
  const double scale = MIN (width / self->full_width, height / self->full_height);

  *left = (width - self->full_width * scale) / 2;
  *top = (height - self->full_height * scale) / 2;

  return scale;
}

static graphene_rect_t
to_widget (BbScanArea         *self,
           const GdkRectangle *rectangle)
{
  double left = 0;
  double top = 0;
  const double scale = get_scale (self, &left, &top);

  return GRAPHENE_RECT_INIT ((float) (left + rectangle->x * scale), (float) (top + rectangle->y * scale),
                             (float) (rectangle->width * scale), (float) (rectangle->height * scale));
}

static int
to_picture (double position,
            double start,
            double scale,
            int    length)
{
  return CLAMP ((int) floor ((position - start) / scale), 0, length - 1);
}

/* What a screen reader says of the area: the rectangle at hand, in words. */
static void
describe (BbScanArea *self)
{
  const GdkRectangle *r = &self->rectangles[self->part];
  g_autofree char *text = NULL;

  if (self->texture == NULL)
    text = g_strdup (_("No scan"));
  else if (r->width == 0)
    text = g_strdup (_("No rectangle yet. Drag one, or press Return and move it with the arrow keys."));
  else
    text = g_strdup_printf (_("Rectangle of %d × %d pixels, %d from the left and %d from the top. Arrow keys move it, "
                              "with Shift they change its size."),
                            r->width, r->height, r->x, r->y);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

static void
settle (BbScanArea *self)
{
  describe (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static gboolean
rested_cb (gpointer data)
{
  BbScanArea *self = data;

  self->rest_id = 0;
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);

  return G_SOURCE_REMOVE;
}

/* A click that trembles is no rectangle. */
static gboolean
is_drag (double dx,
         double dy)
{
  return fabs (dx) > 2 && fabs (dy) > 2;
}

static void
drag_begin_cb (BbScanArea *self,
               double      x,
               double      y)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
  self->anchor_x = x;
  self->anchor_y = y;
}

static void
drag_update_cb (BbScanArea *self,
                double      dx,
                double      dy)
{
  double left = 0;
  double top = 0;
  GdkRectangle *r = &self->rectangles[self->part];
  int x[2];
  int y[2];

  if (self->texture == NULL || !is_drag (dx, dy))
    return;

  for (int i = 0; i < 2; i++)
    {
      const double scale = get_scale (self, &left, &top);

      x[i] = to_picture (self->anchor_x + i * dx, left, scale, self->full_width);
      y[i] = to_picture (self->anchor_y + i * dy, top, scale, self->full_height);
    }
  *r = (GdkRectangle) { MIN (x[0], x[1]), MIN (y[0], y[1]), ABS (x[1] - x[0]) + 1, ABS (y[1] - y[0]) + 1 };
  settle (self);
}

static void
drag_end_cb (BbScanArea *self,
             double      dx,
             double      dy)
{
  if (self->texture == NULL || !is_drag (dx, dy))
    return;
  g_clear_handle_id (&self->rest_id, g_source_remove);
  rested_cb (self);
}

static void
set_in_the_middle (BbScanArea *self)
{
  self->rectangles[self->part] = (GdkRectangle) {
    self->full_width * 3 / 8, self->full_height * 3 / 8, MAX (1, self->full_width / 4), MAX (1, self->full_height / 4),
  };
}

/* The rectangle stays within the picture, and at least a pixel large. */
static void
move (BbScanArea *self,
      int         dx,
      int         dy,
      gboolean    sizing)
{
  GdkRectangle *r = &self->rectangles[self->part];

  if (sizing)
    {
      r->width = CLAMP (r->width + dx, 1, self->full_width - r->x);
      r->height = CLAMP (r->height + dy, 1, self->full_height - r->y);
    }
  else
    {
      r->x = CLAMP (r->x + dx, 0, self->full_width - r->width);
      r->y = CLAMP (r->y + dy, 0, self->full_height - r->height);
    }
}

/* Whether a key means something here, and what it did is to be shown. */
static gboolean
take_key (BbScanArea      *self,
          guint            key,
          GdkModifierType  state)
{
  const int step = MAX (1, MAX (self->full_width, self->full_height) / STEP_SHARE);
  const gboolean sizing = (state & GDK_SHIFT_MASK) != 0;
  GdkRectangle *r = &self->rectangles[self->part];

  if (r->width == 0)
    {
      if (key != GDK_KEY_Return && key != GDK_KEY_KP_Enter)
        return FALSE;
      set_in_the_middle (self);
    }
  else if (key == GDK_KEY_Left)
    move (self, -step, 0, sizing);
  else if (key == GDK_KEY_Right)
    move (self, step, 0, sizing);
  else if (key == GDK_KEY_Up)
    move (self, 0, -step, sizing);
  else if (key == GDK_KEY_Down)
    move (self, 0, step, sizing);
  else if (key == GDK_KEY_Delete && self->part == BB_SCAN_PART_PATCH)
    *r = (GdkRectangle) { 0 };
  else
    return FALSE;

  return TRUE;
}

static gboolean
key_pressed_cb (BbScanArea      *self,
                guint            key,
                guint            code,
                GdkModifierType  state)
{
  (void) code;

  if (self->texture == NULL || !take_key (self, key, state))
    return FALSE;

  settle (self);
  g_clear_handle_id (&self->rest_id, g_source_remove);
  self->rest_id = g_timeout_add (REST_MS, rested_cb, self);

  return TRUE;
}

/* A light line within a dark one is seen on any picture; the patch's is dashed. */
static void
draw_rectangle (BbScanArea *self,
                cairo_t    *cr,
                BbScanPart  part)
{
  const double dash[] = { 5, 4 };
  const graphene_rect_t r = to_widget (self, &self->rectangles[part]);
  const double widths[] = { self->part == part ? 4.5 : 3.0, self->part == part ? 2.0 : 1.0 };

  for (guint i = 0; i < 2; i++)
    {
      cairo_set_source_rgb (cr, i, i, i);
      cairo_set_line_width (cr, widths[i]);
      cairo_set_dash (cr, dash, part == BB_SCAN_PART_PATCH && i == 1 ? 2 : 0, 0);
      cairo_rectangle (cr, (double) r.origin.x, (double) r.origin.y, (double) r.size.width, (double) r.size.height);
      cairo_stroke (cr);
    }
}

static void
bb_scan_area_snapshot (GtkWidget   *widget,
                       GtkSnapshot *snapshot)
{
  BbScanArea *self = BB_SCAN_AREA (widget);
  const graphene_rect_t whole = GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (widget),
                                                    (float) gtk_widget_get_height (widget));
  GdkRectangle full = { 0, 0, self->full_width, self->full_height };
  graphene_rect_t place;
  cairo_t *cr = NULL;

  if (self->texture == NULL)
    return;

  place = to_widget (self, &full);
  gtk_snapshot_append_texture (snapshot, self->texture, &place);
  cr = gtk_snapshot_append_cairo (snapshot, &whole);
  for (guint part = 0; part < BB_N_SCAN_PARTS; part++)
    if (self->rectangles[part].width > 0)
      draw_rectangle (self, cr, part);
  cairo_destroy (cr);
}

static void
bb_scan_area_dispose (GObject *object)
{
  BbScanArea *self = BB_SCAN_AREA (object);

  g_clear_handle_id (&self->rest_id, g_source_remove);
  g_clear_object (&self->texture);

  G_OBJECT_CLASS (bb_scan_area_parent_class)->dispose (object);
}

static void
bb_scan_area_class_init (BbScanAreaClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_scan_area_dispose;
  widget_class->snapshot = bb_scan_area_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "scan");

  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_SCAN_AREA, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
}

static void
bb_scan_area_init (BbScanArea *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "crosshair");
}

/**
 * bb_scan_area_set_preview:
 * @self: the area
 * @preview: (nullable): a scan, small enough to be shown
 *
 * Shows a scan, without rectangles.
 */
void
bb_scan_area_set_preview (BbScanArea      *self,
                          const BbPreview *preview)
{
  g_return_if_fail (BB_IS_SCAN_AREA (self));

  g_clear_handle_id (&self->rest_id, g_source_remove);
  g_clear_object (&self->texture);
  memset (self->rectangles, 0, sizeof self->rectangles);
  if (preview != NULL)
    {
      self->texture = gdk_memory_texture_new ((int) preview->width, (int) preview->height, GDK_MEMORY_R8G8B8A8,
                                              preview->pixels, (gsize) preview->width * 4);
      self->full_width = (int) preview->full_width;
      self->full_height = (int) preview->full_height;
    }
  settle (self);
}

/**
 * bb_scan_area_set_part:
 * @self: the area
 * @part: whose rectangle is drawn and moved from now on
 */
void
bb_scan_area_set_part (BbScanArea *self,
                       BbScanPart  part)
{
  g_return_if_fail (BB_IS_SCAN_AREA (self) && part < BB_N_SCAN_PARTS);

  self->part = part;
  settle (self);
}

/**
 * bb_scan_area_set_rectangle:
 * @self: the area
 * @part: a part
 * @rectangle: its rectangle, in pixels of the picture
 *
 * Does not emit `changed`.
 */
void
bb_scan_area_set_rectangle (BbScanArea         *self,
                            BbScanPart          part,
                            const GdkRectangle *rectangle)
{
  g_return_if_fail (BB_IS_SCAN_AREA (self) && part < BB_N_SCAN_PARTS);

  self->rectangles[part] = *rectangle;
  settle (self);
}

/**
 * bb_scan_area_get_rectangle:
 * @self: the area
 * @part: a part
 *
 * Returns: its rectangle, in pixels of the picture
 */
GdkRectangle
bb_scan_area_get_rectangle (BbScanArea *self,
                            BbScanPart  part)
{
  const GdkRectangle none = { 0 };

  g_return_val_if_fail (BB_IS_SCAN_AREA (self) && part < BB_N_SCAN_PARTS, none);

  return self->rectangles[part];
}
