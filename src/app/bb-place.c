/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-place"

#include "bb-place.h"

#include "bb-compat.h"

struct _BbPlace
{
  GtkWidget parent_instance;

  /* owned: its only child; NULL until the place is seen for the first time */
  BbRow *row;

  /* borrowed from the factory, which outlives what it makes */
  BbFilling *filling;

  /* %GTK_INVALID_LIST_POSITION where the place is in no list now */
  guint position;
  gboolean is_stale;
};

G_DEFINE_FINAL_TYPE (BbPlace, bb_place, GTK_TYPE_WIDGET)

/* The list's own item is what a screen reader stops at, and it would have no name. */
static void
name_item (BbPlace *self)
{
  GtkWidget *item = gtk_widget_get_parent (GTK_WIDGET (self));

  if (item != NULL)
    bb_compat_set_name (item, bb_row_get_title (self->row));
}

static void
fill (BbPlace *self)
{
  BbLineList *lines = self->filling->lines;
  gconstpointer record = bb_line_list_load (lines, self->position);

  self->is_stale = FALSE;
  if (self->row == NULL)
    {
      self->row = BB_ROW (bb_row_new ());
      gtk_widget_set_parent (GTK_WIDGET (self->row), GTK_WIDGET (self));
    }
  gtk_widget_set_visible (GTK_WIDGET (self->row), record != NULL);
  if (record == NULL)
    return;

  self->filling->fill (self->row, bb_line_list_get_session (lines), record);
  bb_row_set_withdrawn (self->row, bb_record_is_withdrawn (bb_line_list_get_line_table (lines), record));
  name_item (self);
}

/* A view maps what it makes before it knows where it will be, and gives a size only to what can be seen. */
static gboolean
is_seen (GtkWidget *widget)
{
  return gtk_widget_get_mapped (widget) && gtk_widget_get_width (widget) > 0;
}

static void
fill_if_seen (BbPlace *self)
{
  if (self->is_stale && self->position != GTK_INVALID_LIST_POSITION && is_seen (GTK_WIDGET (self)))
    fill (self);
}

static void
bb_place_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (bb_place_parent_class)->map (widget);
  fill_if_seen (BB_PLACE (widget));
}

static void
bb_place_measure (GtkWidget      *widget,
                  GtkOrientation  orientation,
                  int             for_size,
                  int            *minimum,
                  int            *natural,
                  int            *minimum_baseline,
                  int            *natural_baseline)
{
  BbPlace *self = BB_PLACE (widget);

  if (self->row != NULL && gtk_widget_should_layout (GTK_WIDGET (self->row)))
    {
      gtk_widget_measure (GTK_WIDGET (self->row), orientation, for_size, minimum, natural, minimum_baseline,
                          natural_baseline);
      return;
    }
  *minimum = orientation == GTK_ORIENTATION_VERTICAL ? self->filling->row_height : 0;
  *natural = *minimum;
}

static void
bb_place_size_allocate (GtkWidget *widget,
                        int        width,
                        int        height,
                        int        baseline)
{
  BbPlace *self = BB_PLACE (widget);
  int needed = 0;

  fill_if_seen (self);
  if (self->row == NULL || !gtk_widget_should_layout (GTK_WIDGET (self->row)))
    return;

  /* A row that has only just been filled may be higher than the place is yet. */
  gtk_widget_measure (GTK_WIDGET (self->row), GTK_ORIENTATION_VERTICAL, width, &needed, NULL, NULL, NULL);
  gtk_widget_allocate (GTK_WIDGET (self->row), width, MAX (height, needed), baseline, NULL);
  self->filling->row_height = needed;
}

static GtkSizeRequestMode
bb_place_get_request_mode (GtkWidget *widget)
{
  (void) widget;

  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
bb_place_dispose (GObject *object)
{
  BbPlace *self = BB_PLACE (object);

  if (self->row != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->row));
  self->row = NULL;

  G_OBJECT_CLASS (bb_place_parent_class)->dispose (object);
}

static void
bb_place_class_init (BbPlaceClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_place_dispose;
  widget_class->map = bb_place_map;
  widget_class->measure = bb_place_measure;
  widget_class->size_allocate = bb_place_size_allocate;
  widget_class->get_request_mode = bb_place_get_request_mode;
}

static void
bb_place_init (BbPlace *self)
{
  self->position = GTK_INVALID_LIST_POSITION;
}

/**
 * bb_place_new:
 * @filling: what the places of a list share; it has to live as long as they do
 *
 * Returns: (transfer floating): a place in no list
 */
GtkWidget *
bb_place_new (BbFilling *filling)
{
  BbPlace *self = NULL;

  g_return_val_if_fail (filling != NULL, NULL);

  self = g_object_new (BB_TYPE_PLACE, NULL);
  self->filling = filling;

  return GTK_WIDGET (self);
}

/**
 * bb_place_show:
 * @self: a place
 * @position: a position in the list
 *
 * Stands for that position from now on.
 */
void
bb_place_show (BbPlace *self,
               guint    position)
{
  g_return_if_fail (BB_IS_PLACE (self));

  self->position = position;
  bb_place_reload (self);
}

/**
 * bb_place_reload:
 * @self: a place
 *
 * The list may hold another record there now.
 */
void
bb_place_reload (BbPlace *self)
{
  g_return_if_fail (BB_IS_PLACE (self));

  self->is_stale = TRUE;
  fill_if_seen (self);
}

/**
 * bb_place_clear:
 * @self: a place
 *
 * Stands for no position until bb_place_show().
 */
void
bb_place_clear (BbPlace *self)
{
  g_return_if_fail (BB_IS_PLACE (self));

  self->position = GTK_INVALID_LIST_POSITION;
}
