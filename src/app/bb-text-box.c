/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-text-box"

#include "bb-text-box.h"

struct _BbTextBox
{
  GtkWidget parent_instance;

  GtkOrientation orientation;
  int spacing;
};

G_DEFINE_FINAL_TYPE_WITH_CODE (BbTextBox, bb_text_box, GTK_TYPE_WIDGET,
                               G_IMPLEMENT_INTERFACE (GTK_TYPE_ORIENTABLE, NULL))

enum {
  PROP_0,
  PROP_SPACING,
  N_PROPS,
  PROP_ORIENTATION = N_PROPS,
};

static GParamSpec *properties[N_PROPS];

static GtkWidget *
skip_hidden (GtkWidget *child)
{
  while (child != NULL && !gtk_widget_should_layout (child))
    child = gtk_widget_get_next_sibling (child);

  return child;
}

static GtkWidget *
get_first (BbTextBox *self)
{
  return skip_hidden (gtk_widget_get_first_child (GTK_WIDGET (self)));
}

static GtkWidget *
get_next (GtkWidget *child)
{
  return skip_hidden (gtk_widget_get_next_sibling (child));
}

static void
measure_width (BbTextBox *self,
               int       *minimum,
               int       *natural)
{
  const gboolean beside = self->orientation == GTK_ORIENTATION_HORIZONTAL;
  int gap = 0;

  for (GtkWidget *child = get_first (self); child != NULL; child = get_next (child))
    {
      int child_minimum = 0;
      int child_natural = 0;

      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &child_minimum, &child_natural, NULL, NULL);
      *minimum = beside ? *minimum + gap + child_minimum : MAX (*minimum, child_minimum);
      *natural = beside ? *natural + gap + child_natural : MAX (*natural, child_natural);
      gap = self->spacing;
    }
}

/* Each gets what it needs, then what it would like as far as that goes, and what is left goes to those that expand. */
static GArray *
share_width (BbTextBox *self,
             int        width)
{
  GArray *sizes = g_array_new (FALSE, TRUE, sizeof (GtkRequestedSize));
  guint n_expanding = 0;

  for (GtkWidget *child = get_first (self); child != NULL; child = get_next (child))
    {
      GtkRequestedSize size = { .data = child };

      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &size.minimum_size, &size.natural_size, NULL, NULL);
      width -= size.minimum_size + (sizes->len > 0 ? self->spacing : 0);
      n_expanding += gtk_widget_compute_expand (child, GTK_ORIENTATION_HORIZONTAL) ? 1 : 0;
      g_array_append_val (sizes, size);
    }
  width = gtk_distribute_natural_allocation (MAX (width, 0), sizes->len, (GtkRequestedSize *) (void *) sizes->data);

  for (guint i = 0; i < sizes->len && n_expanding > 0; i++)
    {
      GtkRequestedSize *size = &g_array_index (sizes, GtkRequestedSize, i);

      if (gtk_widget_compute_expand (size->data, GTK_ORIENTATION_HORIZONTAL))
        {
          const int share = width / (int) n_expanding--;

          size->minimum_size += share;
          width -= share;
        }
    }

  return sizes;
}

/* What rises above the baseline and hangs below it, and what stands on none. */
typedef struct {
  int above;
  int below;
  int other;
} Line;

static void
line_add (Line *self,
          int   height,
          int   baseline)
{
  if (baseline < 0)
    {
      self->other = MAX (self->other, height);
      return;
    }
  self->above = MAX (self->above, baseline);
  self->below = MAX (self->below, height - baseline);
}

static int
line_get_height (const Line *self)
{
  return MAX (self->other, self->above + self->below);
}

/* The text stands in the middle where something beside it is higher. */
static int
line_get_baseline (const Line *self,
                   int         height)
{
  const int room = height - self->above - self->below;

  return self->above + self->below > 0 ? self->above + MAX (room, 0) / 2 : -1;
}

static void
measure_beside (BbTextBox *self,
                int        width,
                int       *minimum,
                int       *natural,
                int       *minimum_baseline,
                int       *natural_baseline)
{
  g_autoptr (GArray) sizes = share_width (self, width);
  Line least = { 0 };
  Line liked = { 0 };

  for (guint i = 0; i < sizes->len; i++)
    {
      const GtkRequestedSize *size = &g_array_index (sizes, GtkRequestedSize, i);
      int child_minimum = 0;
      int child_natural = 0;
      int child_minimum_baseline = -1;
      int child_natural_baseline = -1;

      gtk_widget_measure (size->data, GTK_ORIENTATION_VERTICAL, size->minimum_size, &child_minimum, &child_natural,
                          &child_minimum_baseline, &child_natural_baseline);
      line_add (&least, child_minimum, child_minimum_baseline);
      line_add (&liked, child_natural, child_natural_baseline);
    }

  *minimum = line_get_height (&least);
  *natural = line_get_height (&liked);
  *minimum_baseline = line_get_baseline (&least, *minimum);
  *natural_baseline = line_get_baseline (&liked, *natural);
}

static void
measure_below (BbTextBox *self,
               int        width,
               int       *minimum,
               int       *natural)
{
  int gap = 0;

  for (GtkWidget *child = get_first (self); child != NULL; child = get_next (child))
    {
      int child_minimum = 0;
      int child_natural = 0;

      gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, width, &child_minimum, &child_natural, NULL, NULL);
      *minimum += gap + child_minimum;
      *natural += gap + child_natural;
      gap = self->spacing;
    }
}

static void
bb_text_box_measure (GtkWidget      *widget,
                     GtkOrientation  orientation,
                     int             for_size,
                     int            *minimum,
                     int            *natural,
                     int            *minimum_baseline,
                     int            *natural_baseline)
{
  BbTextBox *self = BB_TEXT_BOX (widget);
  int least_width = 0;
  int width = 0;

  *minimum = 0;
  *natural = 0;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      measure_width (self, minimum, natural);
      return;
    }

  measure_width (self, &least_width, &width);
  width = for_size >= 0 ? MAX (for_size, least_width) : width;
  if (self->orientation == GTK_ORIENTATION_HORIZONTAL)
    measure_beside (self, width, minimum, natural, minimum_baseline, natural_baseline);
  else
    measure_below (self, width, minimum, natural);
}

static void
place (GtkWidget *child,
       int        x,
       int        y,
       int        width,
       int        height,
       int        baseline)
{
  gtk_widget_allocate (child, width, height, baseline, gsk_transform_translate (NULL, &GRAPHENE_POINT_INIT (
                         (float) x, (float) y)));
}

static void
allocate_beside (BbTextBox *self,
                 int        width,
                 int        height,
                 int        baseline)
{
  const gboolean rtl = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
  g_autoptr (GArray) sizes = share_width (self, width);
  int x = 0;

  if (baseline < 0)
    {
      int minimum = 0;
      int natural = 0;
      int natural_baseline = -1;

      measure_beside (self, width, &minimum, &natural, &baseline, &natural_baseline);
      if (baseline >= 0)
        baseline += MAX (height - minimum, 0) / 2;
    }
  for (guint i = 0; i < sizes->len; i++)
    {
      const GtkRequestedSize *size = &g_array_index (sizes, GtkRequestedSize, i);

      place (size->data, rtl ? width - x - size->minimum_size : x, 0, size->minimum_size, height, baseline);
      x += size->minimum_size + self->spacing;
    }
}

/* Nothing here is higher than it has to be, so that what is left stays empty below, or goes to what expands. */
static void
allocate_below (BbTextBox *self,
                int        width,
                int        height)
{
  GtkWidget *expanding = NULL;
  int minimum = 0;
  int natural = 0;
  int y = 0;

  measure_below (self, width, &minimum, &natural);
  for (GtkWidget *child = get_first (self); child != NULL; child = get_next (child))
    if (gtk_widget_compute_expand (child, GTK_ORIENTATION_VERTICAL))
      expanding = child;

  for (GtkWidget *child = get_first (self); child != NULL; child = get_next (child))
    {
      int child_height = 0;

      gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, width, &child_height, NULL, NULL, NULL);
      if (child == expanding)
        child_height += MAX (height - minimum, 0);
      place (child, 0, y, width, child_height, -1);
      y += child_height + self->spacing;
    }
}

static void
bb_text_box_size_allocate (GtkWidget *widget,
                           int        width,
                           int        height,
                           int        baseline)
{
  BbTextBox *self = BB_TEXT_BOX (widget);

  if (self->orientation == GTK_ORIENTATION_HORIZONTAL)
    allocate_beside (self, width, height, baseline);
  else
    allocate_below (self, width, height);
}

static GtkSizeRequestMode
bb_text_box_get_request_mode (GtkWidget *widget)
{
  (void) widget;

  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
bb_text_box_compute_expand (GtkWidget *widget,
                            gboolean  *horizontal,
                            gboolean  *vertical)
{
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      *horizontal = *horizontal || gtk_widget_compute_expand (child, GTK_ORIENTATION_HORIZONTAL);
      *vertical = *vertical || gtk_widget_compute_expand (child, GTK_ORIENTATION_VERTICAL);
    }
}

static void
bb_text_box_get_property (GObject    *object,
                          guint       id,
                          GValue     *value,
                          GParamSpec *pspec)
{
  BbTextBox *self = BB_TEXT_BOX (object);

  if (id == PROP_ORIENTATION)
    g_value_set_enum (value, self->orientation);
  else if (id == PROP_SPACING)
    g_value_set_int (value, self->spacing);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
bb_text_box_set_property (GObject      *object,
                          guint         id,
                          const GValue *value,
                          GParamSpec   *pspec)
{
  BbTextBox *self = BB_TEXT_BOX (object);

  if (id == PROP_ORIENTATION)
    self->orientation = g_value_get_enum (value);
  else if (id == PROP_SPACING)
    self->spacing = g_value_get_int (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);

  gtk_widget_queue_resize (GTK_WIDGET (self));
}

static void
bb_text_box_dispose (GObject *object)
{
  GtkWidget *child = NULL;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (bb_text_box_parent_class)->dispose (object);
}

static void
bb_text_box_class_init (BbTextBoxClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = bb_text_box_get_property;
  object_class->set_property = bb_text_box_set_property;
  object_class->dispose = bb_text_box_dispose;
  widget_class->measure = bb_text_box_measure;
  widget_class->size_allocate = bb_text_box_size_allocate;
  widget_class->get_request_mode = bb_text_box_get_request_mode;
  widget_class->compute_expand = bb_text_box_compute_expand;

  properties[PROP_SPACING] = g_param_spec_int ("spacing", NULL, NULL, 0, G_MAXINT16, 0,
                                               G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  g_object_class_override_property (object_class, PROP_ORIENTATION, "orientation");
  gtk_widget_class_set_css_name (widget_class, "box");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
bb_text_box_init (BbTextBox *self)
{
  self->orientation = GTK_ORIENTATION_HORIZONTAL;
}
