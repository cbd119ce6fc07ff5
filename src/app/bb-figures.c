/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-figures"

#include "bb-figures.h"

struct _BbFigures
{
  GtkWidget parent_instance;

  int least;
  int most;
  int column_spacing;
  int row_spacing;
};

G_DEFINE_FINAL_TYPE (BbFigures, bb_figures, GTK_TYPE_WIDGET)

enum {
  PROP_0,
  PROP_LEAST,
  PROP_MOST,
  PROP_COLUMN_SPACING,
  PROP_ROW_SPACING,
  N_PROPS
};

static GParamSpec *properties[N_PROPS];

static int
count (BbFigures *self)
{
  int n = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    n += gtk_widget_should_layout (child) ? 1 : 0;

  return n;
}

/* The widest of the figures. */
static void
measure_column (BbFigures *self,
                int       *minimum,
                int       *natural)
{
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (gtk_widget_should_layout (child))
      {
        int child_minimum = 0;
        int child_natural = 0;

        gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &child_minimum, &child_natural, NULL, NULL);
        *minimum = MAX (*minimum, child_minimum);
        *natural = MAX (*natural, child_natural);
      }
}

/* Rows as even as @n allows, of up to @fit; the last has one figure only where no number of columns avoids it. */
static int
balance (int n,
         int fit)
{
  const int rows = (n + fit - 1) / fit;
  const int even = (n + rows - 1) / rows;

  for (int columns = even; columns > 1; columns--)
    if (n % columns != 1)
      return columns;

  return even;
}

static int
get_column_width (BbFigures *self,
                  int        columns,
                  int        width)
{
  return MAX ((width - (columns - 1) * self->column_spacing) / columns, 1);
}

static int
span (int n,
      int size,
      int spacing)
{
  return n > 0 ? n * size + (n - 1) * spacing : 0;
}

static int
measure_height (GtkWidget *child,
                int        width)
{
  int minimum = 0;
  int child_minimum = 0;
  int child_natural = 0;

  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, NULL, NULL, NULL);
  gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, MAX (width, minimum), &child_minimum, &child_natural, NULL,
                      NULL);

  return child_natural;
}

/* Goes through the rows, and where @allocate says so puts the figures into their places. */
static int
lay_out (BbFigures *self,
         int        width,
         gboolean   allocate)
{
  const gboolean is_rtl = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
  const int columns = bb_figures_get_columns (self, width);
  const int column_width = get_column_width (self, columns, width);
  GtkAllocation place = { .width = column_width };
  int column = 0;
  int top = 0;
  int row_height = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      int height = 0;

      if (!gtk_widget_should_layout (child))
        continue;
      if (column == columns)
        {
          top += row_height + self->row_spacing;
          row_height = 0;
          column = 0;
        }
      height = measure_height (child, column_width);
      place.x = (is_rtl ? columns - 1 - column : column) * (column_width + self->column_spacing);
      place.y = top;
      place.height = height;
      if (allocate)
        gtk_widget_size_allocate (child, &place, -1);
      row_height = MAX (row_height, height);
      column++;
    }

  return top + row_height;
}

static GtkSizeRequestMode
bb_figures_get_request_mode (GtkWidget *widget)
{
  (void) widget;

  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
bb_figures_measure (GtkWidget      *widget,
                    GtkOrientation  orientation,
                    int             for_size,
                    int            *minimum,
                    int            *natural,
                    int            *minimum_baseline,
                    int            *natural_baseline)
{
  BbFigures *self = BB_FIGURES (widget);
  const int n = count (self);
  int column_minimum = 0;
  int column_natural = 0;

  measure_column (self, &column_minimum, &column_natural);
  *minimum = span (MIN (n, self->least), column_minimum, self->column_spacing);
  *natural = span (MIN (n, self->most), column_natural, self->column_spacing);
  if (orientation == GTK_ORIENTATION_VERTICAL)
    *minimum = *natural = n > 0 ? lay_out (self, for_size >= 0 ? for_size : *natural, FALSE) : 0;
  *minimum_baseline = *natural_baseline = -1;
}

static void
bb_figures_size_allocate (GtkWidget *widget,
                          int        width,
                          int        height,
                          int        baseline)
{
  (void) height;
  (void) baseline;

  lay_out (BB_FIGURES (widget), width, TRUE);
}

static int *
get_place (BbFigures *self,
           guint      property_id)
{
  switch (property_id)
    {
    case PROP_LEAST:
      return &self->least;
    case PROP_MOST:
      return &self->most;
    case PROP_COLUMN_SPACING:
      return &self->column_spacing;
    case PROP_ROW_SPACING:
      return &self->row_spacing;
    default:
      return NULL;
    }
}

static void
bb_figures_get_property (GObject    *object,
                         guint       property_id,
                         GValue     *value,
                         GParamSpec *pspec)
{
  const int *place = get_place (BB_FIGURES (object), property_id);

  if (place != NULL)
    g_value_set_int (value, *place);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
}

static void
bb_figures_set_property (GObject      *object,
                         guint         property_id,
                         const GValue *value,
                         GParamSpec   *pspec)
{
  int *place = get_place (BB_FIGURES (object), property_id);

  if (place == NULL)
    {
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
      return;
    }
  if (*place == g_value_get_int (value))
    return;
  *place = g_value_get_int (value);
  gtk_widget_queue_resize (GTK_WIDGET (object));
  g_object_notify_by_pspec (object, pspec);
}

static void
bb_figures_dispose (GObject *object)
{
  bb_figures_drop_from (BB_FIGURES (object), 0);

  G_OBJECT_CLASS (bb_figures_parent_class)->dispose (object);
}

static void
bb_figures_class_init (BbFiguresClass *klass)
{
  static const struct {
    guint id;
    const char *name;
    int least;
    int fallback;
  } numbers[] = {
    { PROP_LEAST, "least", 1, 2 },
    { PROP_MOST, "most", 1, 4 },
    { PROP_COLUMN_SPACING, "column-spacing", 0, 12 },
    { PROP_ROW_SPACING, "row-spacing", 0, 12 },
  };
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = bb_figures_dispose;
  object_class->get_property = bb_figures_get_property;
  object_class->set_property = bb_figures_set_property;
  widget_class->get_request_mode = bb_figures_get_request_mode;
  widget_class->measure = bb_figures_measure;
  widget_class->size_allocate = bb_figures_size_allocate;

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    properties[numbers[i].id] = g_param_spec_int (numbers[i].name, NULL, NULL, numbers[i].least, G_MAXINT16,
                                                  numbers[i].fallback,
                                                  G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS |
                                                  G_PARAM_CONSTRUCT);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  gtk_widget_class_set_css_name (widget_class, "figures");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
bb_figures_init (BbFigures *self)
{
  (void) self;
}

/**
 * bb_figures_append:
 * @self: figures
 * @figure: (transfer floating): one more, after the others
 */
void
bb_figures_append (BbFigures *self,
                   GtkWidget *figure)
{
  g_return_if_fail (BB_IS_FIGURES (self) && GTK_IS_WIDGET (figure));

  gtk_widget_set_parent (figure, GTK_WIDGET (self));
}

/**
 * bb_figures_get:
 * @self: figures
 * @place: counts from 0
 *
 * Returns: (transfer none) (nullable): the figure in that place; %NULL where there are fewer
 */
GtkWidget *
bb_figures_get (BbFigures *self,
                guint      place)
{
  GtkWidget *child = NULL;

  g_return_val_if_fail (BB_IS_FIGURES (self), NULL);

  child = gtk_widget_get_first_child (GTK_WIDGET (self));
  for (guint i = 0; i < place && child != NULL; i++)
    child = gtk_widget_get_next_sibling (child);

  return child;
}

/**
 * bb_figures_drop_from:
 * @self: figures
 * @place: counts from 0
 *
 * Lets go of the figure in that place and of all after it.
 */
void
bb_figures_drop_from (BbFigures *self,
                      guint      place)
{
  GtkWidget *child = NULL;

  g_return_if_fail (BB_IS_FIGURES (self));

  while ((child = bb_figures_get (self, place)) != NULL)
    gtk_widget_unparent (child);
}

/**
 * bb_figures_get_columns:
 * @self: figures
 * @width: a width in pixels
 *
 * Returns: how many stand beside each other within @width, at least 1
 */
int
bb_figures_get_columns (BbFigures *self,
                        int        width)
{
  int n = 0;
  int minimum = 0;
  int natural = 0;
  int fit = 0;

  g_return_val_if_fail (BB_IS_FIGURES (self), 1);

  n = count (self);
  if (n == 0)
    return 1;
  measure_column (self, &minimum, &natural);
  fit = (width + self->column_spacing) / MAX (natural + self->column_spacing, 1);

  return balance (n, CLAMP (fit, MIN (self->least, n), MIN (self->most, n)));
}
