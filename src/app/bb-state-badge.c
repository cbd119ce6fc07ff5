/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-state-badge"

#include "bb-state-badge.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"

#define SHAPE 14
#define GAP 6

struct _BbStateBadge
{
  GtkWidget parent_instance;

  GtkLabel *label;
  BbState state;
};

G_DEFINE_FINAL_TYPE (BbStateBadge, bb_state_badge, GTK_TYPE_WIDGET)

static const char * const css_names[] = { "draft", "on-trial", "proven", "withdrawn" };

static void
draw_shape (cairo_t *cr,
            BbState  state)
{
  const double centre = SHAPE / 2.0;
  const double radius = SHAPE / 2.0 - 1.5;

  cairo_set_line_width (cr, 1.6);
  cairo_arc (cr, centre, centre, radius, 0, 2 * G_PI);
  switch (state)
    {
    case BB_STATE_ON_TRIAL:
      cairo_stroke (cr);
      cairo_arc (cr, centre, centre, radius, G_PI / 2, 3 * G_PI / 2);
      cairo_fill (cr);
      break;
    case BB_STATE_PROVEN:
      cairo_fill (cr);
      cairo_set_operator (cr, CAIRO_OPERATOR_CLEAR);
      cairo_move_to (cr, centre - 3, centre);
      cairo_line_to (cr, centre - 0.8, centre + 2.4);
      cairo_line_to (cr, centre + 3.2, centre - 2.4);
      cairo_stroke (cr);
      break;
    case BB_STATE_WITHDRAWN:
      cairo_move_to (cr, centre - 4, centre + 4);
      cairo_line_to (cr, centre + 4, centre - 4);
      cairo_stroke (cr);
      break;
    case BB_STATE_DRAFT:
    default:
      cairo_stroke (cr);
      break;
    }
}

static void
bb_state_badge_snapshot (GtkWidget   *widget,
                         GtkSnapshot *snapshot)
{
  BbStateBadge *self = BB_STATE_BADGE (widget);
  const float top = ((float) gtk_widget_get_height (widget) - SHAPE) / 2.0f;
  GdkRGBA colour;
  cairo_t *cr = NULL;

  bb_compat_get_color (widget, &colour);
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, top, SHAPE, SHAPE));
  cairo_translate (cr, 0, (double) top);
  gdk_cairo_set_source_rgba (cr, &colour);
  draw_shape (cr, self->state);
  cairo_destroy (cr);

  gtk_widget_snapshot_child (widget, GTK_WIDGET (self->label), snapshot);
}

static void
bb_state_badge_measure (GtkWidget      *widget,
                        GtkOrientation  orientation,
                        int             for_size,
                        int            *minimum,
                        int            *natural,
                        int            *minimum_baseline,
                        int            *natural_baseline)
{
  BbStateBadge *self = BB_STATE_BADGE (widget);

  gtk_widget_measure (GTK_WIDGET (self->label), orientation, for_size, minimum, natural, minimum_baseline,
                      natural_baseline);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum += SHAPE + GAP;
      *natural += SHAPE + GAP;
    }
}

static void
bb_state_badge_size_allocate (GtkWidget *widget,
                              int        width,
                              int        height,
                              int        baseline)
{
  BbStateBadge *self = BB_STATE_BADGE (widget);

  gtk_widget_size_allocate (GTK_WIDGET (self->label),
                            &(GtkAllocation) { SHAPE + GAP, 0, width - SHAPE - GAP, height }, baseline);
}

static void
bb_state_badge_dispose (GObject *object)
{
  BbStateBadge *self = BB_STATE_BADGE (object);

  if (self->label != NULL)
    gtk_widget_unparent (GTK_WIDGET (g_steal_pointer (&self->label)));

  G_OBJECT_CLASS (bb_state_badge_parent_class)->dispose (object);
}

static void
bb_state_badge_class_init (BbStateBadgeClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_state_badge_dispose;
  widget_class->snapshot = bb_state_badge_snapshot;
  widget_class->measure = bb_state_badge_measure;
  widget_class->size_allocate = bb_state_badge_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "statebadge");
}

static void
bb_state_badge_init (BbStateBadge *self)
{
  self->label = GTK_LABEL (gtk_label_new (NULL));
  gtk_widget_set_parent (GTK_WIDGET (self->label), GTK_WIDGET (self));
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
  self->state = BB_STATE_WITHDRAWN;
  bb_state_badge_set_state (self, BB_STATE_DRAFT);
}

/**
 * bb_state_badge_new:
 *
 * Returns: (transfer floating): a badge that says draft
 */
GtkWidget *
bb_state_badge_new (void)
{
  return g_object_new (BB_TYPE_STATE_BADGE, NULL);
}

/**
 * bb_state_badge_set_state:
 * @self: a badge
 * @state: the state to say
 */
void
bb_state_badge_set_state (BbStateBadge *self,
                          BbState       state)
{
  g_return_if_fail (BB_IS_STATE_BADGE (self));
  g_return_if_fail ((guint) state < G_N_ELEMENTS (css_names));

  gtk_widget_remove_css_class (GTK_WIDGET (self), css_names[self->state]);
  gtk_widget_add_css_class (GTK_WIDGET (self), css_names[state]);
  self->state = state;
  gtk_label_set_label (self->label, bb_choices_get_title (&bb_state_choices, (int) state));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
