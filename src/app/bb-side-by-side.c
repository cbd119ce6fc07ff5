/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-side-by-side"

#include "bb-side-by-side.h"

/* Between the two, beside or below each other. */
#define GAP 28

/* Less than this is too narrow for a form with its hints. */
#define LEAST_COLUMN 380

struct _BbSideBySide
{
  GtkWidget parent_instance;

  GtkWidget *first;
  GtkWidget *second;
};

G_DEFINE_FINAL_TYPE (BbSideBySide, bb_side_by_side, GTK_TYPE_WIDGET)

static int
get_minimum (GtkWidget *widget)
{
  int minimum = 0;

  gtk_widget_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, NULL, NULL, NULL);

  return minimum;
}

static int
get_height (GtkWidget *widget,
            int        width)
{
  int height = 0;

  gtk_widget_measure (widget, GTK_ORIENTATION_VERTICAL, MAX (width, get_minimum (widget)), NULL, &height, NULL, NULL);

  return height;
}

static int
get_column (int width)
{
  return (width - GAP) / 2;
}

static gboolean
is_beside (BbSideBySide *self,
           int           width)
{
  return get_column (width) >= MAX (LEAST_COLUMN, MAX (get_minimum (self->first), get_minimum (self->second)));
}

static GtkSizeRequestMode
bb_side_by_side_get_request_mode (GtkWidget *widget)
{
  (void) widget;

  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
bb_side_by_side_measure (GtkWidget      *widget,
                         GtkOrientation  orientation,
                         int             for_size,
                         int            *minimum,
                         int            *natural,
                         int            *minimum_baseline,
                         int            *natural_baseline)
{
  BbSideBySide *self = BB_SIDE_BY_SIDE (widget);
  const int least = MAX (get_minimum (self->first), get_minimum (self->second));

  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = least;
      *natural = 2 * MAX (LEAST_COLUMN, least) + GAP;
      return;
    }

  if (for_size < 0)
    for_size = 2 * MAX (LEAST_COLUMN, least) + GAP;
  if (is_beside (self, for_size))
    *minimum = MAX (get_height (self->first, get_column (for_size)), get_height (self->second, get_column (for_size)));
  else
    *minimum = get_height (self->first, for_size) + GAP + get_height (self->second, for_size);
  *natural = *minimum;
}

static void
bb_side_by_side_size_allocate (GtkWidget *widget,
                               int        width,
                               int        height,
                               int        baseline)
{
  BbSideBySide *self = BB_SIDE_BY_SIDE (widget);
  const int column = get_column (width);
  const gboolean is_rtl = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  GtkAllocation first = { 0, 0, column, height };
  GtkAllocation second = { width - column, 0, column, height };

  (void) baseline;

  if (is_beside (self, width))
    {
      gtk_widget_size_allocate (self->first, is_rtl ? &second : &first, -1);
      gtk_widget_size_allocate (self->second, is_rtl ? &first : &second, -1);
    }
  else
    {
      first.width = second.width = width;
      first.height = get_height (self->first, width);
      second.x = 0;
      second.y = first.height + GAP;
      second.height = height - second.y;
      gtk_widget_size_allocate (self->first, &first, -1);
      gtk_widget_size_allocate (self->second, &second, -1);
    }
}

static void
bb_side_by_side_dispose (GObject *object)
{
  BbSideBySide *self = BB_SIDE_BY_SIDE (object);

  g_clear_pointer (&self->first, gtk_widget_unparent);
  g_clear_pointer (&self->second, gtk_widget_unparent);

  G_OBJECT_CLASS (bb_side_by_side_parent_class)->dispose (object);
}

static void
bb_side_by_side_class_init (BbSideBySideClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_side_by_side_dispose;
  widget_class->get_request_mode = bb_side_by_side_get_request_mode;
  widget_class->measure = bb_side_by_side_measure;
  widget_class->size_allocate = bb_side_by_side_size_allocate;
}

static void
bb_side_by_side_init (BbSideBySide *self)
{
  (void) self;
}

/**
 * bb_side_by_side_new:
 * @first: (transfer floating): what stands on the side where a line of text begins, or above
 * @second: (transfer floating): the other one
 *
 * Returns: (transfer floating): the two
 */
GtkWidget *
bb_side_by_side_new (GtkWidget *first,
                     GtkWidget *second)
{
  BbSideBySide *self = g_object_new (BB_TYPE_SIDE_BY_SIDE, NULL);

  g_return_val_if_fail (GTK_IS_WIDGET (first) && GTK_IS_WIDGET (second), NULL);

  self->first = first;
  self->second = second;
  gtk_widget_set_parent (first, GTK_WIDGET (self));
  gtk_widget_set_parent (second, GTK_WIDGET (self));

  return GTK_WIDGET (self);
}
