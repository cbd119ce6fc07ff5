/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-station-view"

#include "bb-station-view.h"

#include <glib/gi18n-lib.h>

#include "bb-advice-list.h"
#include "bb-advice.h"
#include "bb-compat.h"
#include "bb-figure.h"
#include "bb-hazard-line.h"
#include "bb-safety.h"
#include "bb-show.h"
#include "bb-text-box.h"

/* The chain's line runs down the gutter that the style sheet leaves as padding: left of the content, and below it. */
#define LINE_X -21.0f
#define DOT_Y 10.0f
#define DOT_RADIUS 6.0f
#define PADDING_TOP 2.0f
#define PADDING_BOTTOM 20.0f

struct _BbStationView
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *title_label;
  GtkLabel *summary_label;
  BbFigures *figures;
  BbAdviceList *advice;
  GtkLabel *safety_label;
  BbHazardLine *hazards;

  BbStation station;
  gboolean differs;
};

G_DEFINE_FINAL_TYPE (BbStationView, bb_station_view, ADW_TYPE_BIN)

static void
draw_line (BbStationView *self,
           GtkSnapshot   *snapshot,
           const GdkRGBA *colour)
{
  const float height = (float) gtk_widget_get_height (GTK_WIDGET (self));
  const float top = self->station == BB_STATION_PRETREAT ? DOT_Y : -PADDING_TOP;
  const float bottom = self->station == BB_STATION_PROOF ? DOT_Y : height + PADDING_BOTTOM;

  gtk_snapshot_append_color (snapshot, colour, &GRAPHENE_RECT_INIT (LINE_X - 1, top, 2, bottom - top));
}

/* A full dot is a station as before; a square says that something differs here. */
static void
draw_dot (BbStationView *self,
          GtkSnapshot   *snapshot,
          const GdkRGBA *colour)
{
  graphene_rect_t rect = GRAPHENE_RECT_INIT (LINE_X - DOT_RADIUS, DOT_Y - DOT_RADIUS, 2 * DOT_RADIUS, 2 * DOT_RADIUS);
  GskRoundedRect outline;

  gsk_rounded_rect_init_from_rect (&outline, &rect, self->differs ? 1 : DOT_RADIUS);
  gtk_snapshot_push_rounded_clip (snapshot, &outline);
  gtk_snapshot_append_color (snapshot, colour, &rect);
  gtk_snapshot_pop (snapshot);
}

static void
bb_station_view_snapshot (GtkWidget   *widget,
                          GtkSnapshot *snapshot)
{
  BbStationView *self = BB_STATION_VIEW (widget);
  GdkRGBA colour;
  GdkRGBA faint;

  bb_compat_get_color (widget, &colour);
  faint = colour;
  faint.alpha = 0.25f;
  colour.alpha = self->differs ? 1.0f : 0.65f;
  draw_line (self, snapshot, &faint);
  draw_dot (self, snapshot, &colour);

  GTK_WIDGET_CLASS (bb_station_view_parent_class)->snapshot (widget, snapshot);
}

static void
bb_station_view_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_station_view_parent_class)->dispose (object);
}

static void
bb_station_view_class_init (BbStationViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_station_view_dispose;
  widget_class->snapshot = bb_station_view_snapshot;
  g_type_ensure (BB_TYPE_ADVICE_LIST);
  g_type_ensure (BB_TYPE_FIGURES);
  g_type_ensure (BB_TYPE_HAZARD_LINE);
  g_type_ensure (BB_TYPE_TEXT_BOX);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-station-view.ui");
  gtk_widget_class_bind_template_child (widget_class, BbStationView, title_label);
  gtk_widget_class_bind_template_child (widget_class, BbStationView, summary_label);
  gtk_widget_class_bind_template_child (widget_class, BbStationView, figures);
  gtk_widget_class_bind_template_child (widget_class, BbStationView, advice);
  gtk_widget_class_bind_template_child (widget_class, BbStationView, safety_label);
  gtk_widget_class_bind_template_child (widget_class, BbStationView, hazards);
}

static void
bb_station_view_init (BbStationView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
show_safety (BbStationView *self)
{
  GString *text = g_string_new (NULL);
  const BbSafetyNote *note = NULL;

  for (guint i = 0; (note = bb_safety_find (self->station, i)) != NULL; i++)
    {
      if (i > 0)
        g_string_append_c (text, '\n');
      g_string_append (text, _(note->brief));
    }
  gtk_label_set_label (self->safety_label, text->str);
  g_string_free (text, TRUE);
}

/**
 * bb_station_view_new:
 * @station: which station
 *
 * Returns: (transfer floating): the station without settings
 */
GtkWidget *
bb_station_view_new (BbStation station)
{
  BbStationView *self = g_object_new (BB_TYPE_STATION_VIEW, NULL);

  self->station = station;
  gtk_label_set_label (self->title_label, bb_station_get_title (station));
  show_safety (self);

  return GTK_WIDGET (self);
}

/* Numbers are figures; what is a word or a name goes into the line beside the station's title. */
static gboolean
is_figure (const BbField *field)
{
  return field->kind == BB_KIND_NUMBER || field->kind == BB_KIND_INTEGER ||
         (field->kind == BB_KIND_CHOICE && field->choices == &bb_grade_choices);
}

/* Of the dilution: parts of what. It says so below the figure, and needs no word of its own. */
static gboolean
is_basis (const BbField *field)
{
  return field->choices == &bb_basis_choices;
}

/* "None" alone says nothing. */
static gboolean
needs_title (const BbField *field)
{
  return field->choices == &bb_crack_choices;
}

static char *
describe_before (BbSession        *session,
                 const BbField    *field,
                 const BbRevision *before)
{
  g_autofree char *value = bb_show_field (session, &bb_revision_table, field, before);

  return *value != '\0' ? g_strdup_printf (_("was %s"), value) : g_strdup (_("new"));
}

static gboolean
differs (const BbField    *field,
         const BbRevision *revision,
         const BbRevision *before)
{
  const BbField *second = NULL;

  if (before == NULL)
    return FALSE;
  if (!bb_field_equal (field, revision, before))
    return TRUE;
  if (field->parts_with == NULL)
    return FALSE;
  second = bb_table_find_field (&bb_revision_table, field->parts_with);

  return !bb_field_equal (second, revision, before);
}

static gboolean
is_undiluted (const BbField    *field,
              const BbRevision *revision)
{
  return field->parts_with != NULL && bb_field_is_set (field, revision) && revision->pretreat_parts_water <= 0;
}

/* Which part is water, and what the parts are measured by: neither matters where there is no water. */
static const char *
find_basis (const BbField    *field,
            const BbRevision *revision)
{
  if (field->parts_with == NULL || is_undiluted (field, revision) || revision->pretreat_basis == BB_CHOICE_NONE)
    return NULL;

  return revision->pretreat_basis == BB_BASIS_MASS ? _("concentrate to water, by mass")
                                                   : _("concentrate to water, by volume");
}

static char *
describe_note (BbSession        *session,
               const BbField    *field,
               const BbRevision *revision,
               const BbRevision *before)
{
  const char *basis = find_basis (field, revision);
  g_autofree char *was = before != NULL ? describe_before (session, field, before) : NULL;

  if (basis != NULL && was != NULL)
    return g_strjoin (" · ", basis, was, NULL);

  return was != NULL ? g_steal_pointer (&was) : g_strdup (basis);
}

/* To make a figure anew takes longer than all else that is done to show one, and a chain has many. */
static BbFigure *
ensure_figure (BbStationView *self,
               guint          place,
               const char    *title)
{
  GtkWidget *figure = bb_figures_get (self->figures, place);

  if (figure == NULL)
    return bb_figure_add (self->figures, title);
  bb_figure_set_title (BB_FIGURE (figure), title);

  return BB_FIGURE (figure);
}

static void
show_figure (BbStationView    *self,
             guint             place,
             BbSession        *session,
             const BbField    *field,
             const BbRevision *revision,
             const BbRevision *before)
{
  BbFigure *figure = ensure_figure (self, place, _(field->title));
  g_autofree char *note = NULL;
  gboolean marked = differs (field, revision, before);

  note = describe_note (session, field, revision, marked ? before : NULL);
  bb_figure_set_field (figure, session, &bb_revision_table, field, revision, note);
  bb_figure_mark (figure, marked);
}

static void
add_words (GString          *words,
           BbSession        *session,
           const BbField    *field,
           const BbRevision *revision,
           const BbRevision *before)
{
  g_autofree char *value = bb_show_field (session, &bb_revision_table, field, revision);

  if (*value == '\0' && !differs (field, revision, before))
    return;
  if (words->len > 0)
    g_string_append (words, " · ");
  if (needs_title (field))
    g_string_append_printf (words, "%s: ", _(field->title));
  g_string_append (words, *value != '\0' ? value : "–");
  if (differs (field, revision, before))
    {
      g_autofree char *note = describe_before (session, field, before);

      g_string_append_printf (words, " (%s)", note);
    }
}

/**
 * bb_station_view_advise:
 * @self: a station
 * @advice: (element-type BbAdvice): what a person should know of a revision's settings
 *
 * Shows what of it is about this station.
 */
void
bb_station_view_advise (BbStationView   *self,
                        const GPtrArray *advice)
{
  guint n_here = 0;

  g_return_if_fail (BB_IS_STATION_VIEW (self) && advice != NULL);

  bb_advice_list_clear (self->advice);
  for (guint i = 0; i < advice->len; i++)
    {
      const BbAdvice *one = advice->pdata[i];

      if (one->field->station != self->station)
        continue;
      bb_advice_list_add_warning (self->advice, one->text);
      n_here++;
    }
  gtk_widget_set_visible (GTK_WIDGET (self->advice), n_here > 0);
}

/**
 * bb_station_view_show:
 * @self: a station
 * @session: the session
 * @revision: the revision to show
 * @before: (nullable): the revision to compare it with
 *
 * Shows the settings of this station, with what differs from @before marked by a square and in words.
 */
void
bb_station_view_show (BbStationView    *self,
                      BbSession        *session,
                      const BbRevision *revision,
                      const BbRevision *before)
{
  GString *words = g_string_new (NULL);
  guint n_figures = 0;

  g_return_if_fail (BB_IS_STATION_VIEW (self) && revision != NULL);

  self->differs = FALSE;

  for (guint i = 0; i < bb_revision_table.n_fields; i++)
    {
      const BbField *field = &bb_revision_table.fields[i];

      if (field->station != self->station || bb_table_is_second_part (&bb_revision_table, field))
        continue;
      self->differs = self->differs || differs (field, revision, before);
      if (is_basis (field) && !differs (field, revision, before))
        continue;
      if (!is_figure (field))
        add_words (words, session, field, revision, before);
      else if (bb_field_is_set (field, revision) || differs (field, revision, before))
        show_figure (self, n_figures++, session, field, revision, before);
    }
  bb_figures_drop_from (self->figures, n_figures);

  if (self->station == BB_STATION_PRETREAT)
    bb_hazard_line_show (self->hazards, session,
                         revision->pretreat_method != BB_PRETREAT_NONE ? revision->pretreat_product : 0);
  gtk_label_set_label (self->summary_label, words->str);
  gtk_widget_set_visible (GTK_WIDGET (self->figures), n_figures > 0);
  if (self->differs)
    gtk_widget_add_css_class (GTK_WIDGET (self), "differs");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "differs");
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_string_free (words, TRUE);
}
