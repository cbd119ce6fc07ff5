/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-readings"

#include "bb-readings.h"

#include <glib/gi18n-lib.h>

#include "bb-children.h"
#include "bb-compat.h"
#include "bb-due-load.h"
#include "bb-evidence-load.h"
#include "bb-moment.h"
#include "bb-plan-words.h"
#include "bb-show.h"
#include "bb-verdict-badge.h"
#include "bb-wash-evidence.h"

/* Most characters of a name in the table. */
#define NAME_WIDTH 16

/* And as many of it stay where there is little room. */
#define LEAST_NAME_WIDTH 4

struct _BbReadings
{
  GtkBox parent_instance;

  /* template */
  BbVerdictBadge *badge;
  GtkLabel *plan_label;
  GtkLabel *empty_label;
  GtkGrid *grid;

  /* owned */
  BbSession *session;
  BbWashLine *line;
};

G_DEFINE_FINAL_TYPE (BbReadings, bb_readings, GTK_TYPE_BOX)

enum {
  SIGNAL_EDIT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static const BbReading *
get_reading (BbReadings *self,
             guint       index)
{
  return &g_array_index (self->line->readings, BbReading, index);
}

static guint
get_n_readings (BbReadings *self)
{
  return self->line != NULL && self->line->readings != NULL ? self->line->readings->len : 0;
}

static BbReading *
make_next (BbReadings *self)
{
  g_autoptr (BbWashVerdictOut) verdict = bb_wash_verdict_out_new ();
  g_autoptr (BbWashDue) due = bb_wash_due_new ();
  g_autofree char *today = bb_dup_today ();

  /* Of what nobody can judge no stop is due: the person says after how many washes it is read. */
  bb_wash_line_judge (self->line, today, verdict, due, NULL);

  return bb_wash_line_dup_next_reading (self->line, due);
}

/* The next reading of a specimen is dated today and signed by whoever is at the bench. */
static void
add_action (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  BbReadings *self = BB_READINGS (widget);
  g_autoptr (BbReading) reading = NULL;

  (void) name;
  (void) parameter;

  if (self->line == NULL)
    return;
  reading = make_next (self);
  bb_session_fill_in (self->session, &bb_reading_table, reading);
  g_signal_emit (self, signals[SIGNAL_EDIT], 0, reading);
}

static void
edit_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbReadings *self = BB_READINGS (widget);

  (void) name;

  for (guint i = 0; i < get_n_readings (self); i++)
    if (get_reading (self, i)->id == g_variant_get_int64 (parameter))
      {
        g_signal_emit (self, signals[SIGNAL_EDIT], 0, get_reading (self, i));
        return;
      }
}

static void
open_recipe_action (GtkWidget  *widget,
                    const char *name,
                    GVariant   *parameter)
{
  BbReadings *self = BB_READINGS (widget);

  (void) name;
  (void) parameter;

  /* Not the one that counts now: the one it was printed by. */
  if (self->line != NULL)
    bb_session_show_for (self->session, "recipes", &bb_revision_table,
                         ((const BbWashTest *) self->line->test)->revision);
}

static void
open_plan_action (GtkWidget  *widget,
                  const char *name,
                  GVariant   *parameter)
{
  BbReadings *self = BB_READINGS (widget);

  (void) name;
  (void) parameter;

  if (self->line != NULL && self->line->plan != NULL)
    bb_session_show (self->session, "plans", ((const BbWashPlan *) self->line->plan)->id);
}

/* A plan that is withdrawn is in no list. */
static void
show_plan (BbReadings *self)
{
  g_autoptr (BbWashVerdictOut) verdict = bb_wash_verdict_out_new ();
  g_autoptr (BbWashDue) due = bb_wash_due_new ();
  g_autofree char *today = bb_dup_today ();
  g_autofree char *text = NULL;
  const BbWashPlan *plan = self->line->plan;

  /* Of what nobody can judge nothing is due. */
  if (!bb_wash_line_judge (self->line, today, verdict, due, NULL))
    due->state = BB_DUE_DONE;
  text = bb_plan_words_of_next (plan, due, bb_session_get_units (self->session));
  gtk_label_set_label (self->plan_label, text);
  gtk_label_set_label (self->empty_label,
                       plan != NULL ? _("Not read yet. Wash it to the plan, let it dry, and grade it against the grey "
                                        "scales in good light.")
                                    : _("Not read yet. Wash it by its method, let it dry, and grade it against the "
                                        "grey scales in good light."));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "readings.open-plan",
                                 plan != NULL && plan->withdrawn_at == NULL);
}

static GtkWidget *
make_label (const char *text,
            const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_yalign (GTK_LABEL (label), 0.5f);
  gtk_widget_add_css_class (label, css_class);

  return label;
}

static GtkWidget *
make_edit_button (const BbReading *reading)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("document-edit-symbolic");
  g_autofree char *label = g_strdup_printf (_("Correct the reading at wash %d"), (int) reading->cycles);

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (button, label);
  bb_compat_set_name (button, label);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "readings.edit");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "x", reading->id);

  return button;
}

/* Each reading has a row for its figures, and one for what is said of it. */
static int
get_row (guint i)
{
  return 2 * (int) i + 1;
}

/* What nobody has read takes no place. */
static gboolean
is_column (BbReadings    *self,
           const BbField *field)
{
  if (field->derived || field->owner || field->multiline)
    return FALSE;
  for (guint i = 0; i < get_n_readings (self); i++)
    if (bb_field_is_set (field, get_reading (self, i)))
      return TRUE;

  return FALSE;
}

static void
attach_column (BbReadings    *self,
               const BbField *field,
               int            column)
{
  gtk_grid_attach (self->grid, make_label (_(field->title), "dim-label"), column, 0, 1, 1);
  for (guint i = 0; i < get_n_readings (self); i++)
    {
      g_autofree char *text = bb_show_field (self->session, &bb_reading_table, field, get_reading (self, i));
      GtkWidget *label = make_label (*text != '\0' ? text : "–", "numeral");

      /* A name may be cut, a figure or a day may not. */
      if (field->kind == BB_KIND_REFERENCE)
        {
          gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
          gtk_label_set_max_width_chars (GTK_LABEL (label), NAME_WIDTH);
          gtk_label_set_width_chars (GTK_LABEL (label), MIN ((int) g_utf8_strlen (text, -1), LEAST_NAME_WIDTH));
          gtk_widget_set_tooltip_text (label, text);
        }
      gtk_grid_attach (self->grid, label, column, get_row (i), 1, 1);
    }
}

/* Sentences stand below the reading's figures, as wide as all of these. */
static void
attach_sentences (BbReadings *self,
                  guint       i,
                  int         n_columns)
{
  const BbReading *reading = get_reading (self, i);
  g_autofree char *dispute = bb_reading_describe_dispute (reading);
  g_autofree char *text = NULL;
  GtkWidget *label = NULL;

  if (dispute == NULL && reading->note == NULL)
    return;

  text = dispute != NULL ? g_strjoin ("\n", dispute, reading->note, NULL) : g_strdup (reading->note);
  label = make_label (text, "dim-label");
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_grid_attach (self->grid, label, 0, get_row (i) + 1, n_columns, 1);
}

static void
fill_grid (BbReadings *self)
{
  int column = 0;

  bb_children_empty_grid (self->grid);
  for (guint f = 0; f < bb_reading_table.n_fields; f++)
    if (is_column (self, &bb_reading_table.fields[f]))
      attach_column (self, &bb_reading_table.fields[f], column++);
  for (guint i = 0; i < get_n_readings (self); i++)
    {
      GtkWidget *button = make_edit_button (get_reading (self, i));

      gtk_widget_set_hexpand (button, TRUE);
      gtk_widget_set_halign (button, GTK_ALIGN_END);
      gtk_grid_attach (self->grid, button, column, get_row (i), 1, 1);
      attach_sentences (self, i, column + 1);
    }
}

/**
 * bb_readings_new:
 *
 * Returns: (transfer floating): the readings of no specimen
 */
GtkWidget *
bb_readings_new (void)
{
  return g_object_new (BB_TYPE_READINGS, NULL);
}

/**
 * bb_readings_show:
 * @self: the readings
 * @session: the session
 * @test: key of the specimen
 */
void
bb_readings_show (BbReadings *self,
                  BbSession  *session,
                  gint64      test)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) lines = NULL;

  g_return_if_fail (BB_IS_READINGS (self));

  g_set_object (&self->session, session);
  g_clear_pointer (&self->line, bb_wash_line_free);
  lines = bb_book_load_lines (bb_session_get_book (session), &bb_wash_test_table, &test, 1, &error);
  if (lines == NULL)
    bb_session_report (session, error);
  else if (lines->len > 0)
    {
      self->line = g_steal_pointer (&lines->pdata[0]);
      bb_verdict_badge_show_whole (self->badge, self->line);
      show_plan (self);
    }

  fill_grid (self);
  gtk_widget_set_visible (GTK_WIDGET (self->grid), get_n_readings (self) > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->empty_label), get_n_readings (self) == 0);
}

/**
 * bb_readings_dup_subject:
 * @self: the readings
 *
 * Returns: (transfer full): what the specimen is: recipe, revision and colour; empty where that is not known
 */
char *
bb_readings_dup_subject (BbReadings *self)
{
  const BbRevision *revision = NULL;
  g_autofree char *subject = NULL;

  g_return_val_if_fail (BB_IS_READINGS (self), NULL);

  if (self->line == NULL || self->line->recipe == NULL || self->line->revision == NULL)
    return g_strdup ("");

  revision = self->line->revision;
  /* Translators: a recipe and the number of its revision. */
  subject = g_strdup_printf (_("%s, revision %d"), self->line->recipe, (int) revision->number);

  return self->line->colourway != NULL ? g_strjoin (" · ", subject, self->line->colourway, NULL)
                                       : g_steal_pointer (&subject);
}

static void
bb_readings_dispose (GObject *object)
{
  BbReadings *self = BB_READINGS (object);

  g_clear_pointer (&self->line, bb_wash_line_free);
  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_READINGS);

  G_OBJECT_CLASS (bb_readings_parent_class)->dispose (object);
}

static void
bb_readings_class_init (BbReadingsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_readings_dispose;

  /**
   * BbReadings::edit:
   * @reading: the reading to edit; a new one has no key
   */
  signals[SIGNAL_EDIT] = g_signal_new ("edit", BB_TYPE_READINGS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, G_TYPE_POINTER);

  g_type_ensure (BB_TYPE_VERDICT_BADGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-readings.ui");
  gtk_widget_class_bind_template_child (widget_class, BbReadings, badge);
  gtk_widget_class_bind_template_child (widget_class, BbReadings, plan_label);
  gtk_widget_class_bind_template_child (widget_class, BbReadings, empty_label);
  gtk_widget_class_bind_template_child (widget_class, BbReadings, grid);
  gtk_widget_class_install_action (widget_class, "readings.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "readings.edit", "x", edit_action);
  gtk_widget_class_install_action (widget_class, "readings.open-recipe", NULL, open_recipe_action);
  gtk_widget_class_install_action (widget_class, "readings.open-plan", NULL, open_plan_action);
}

static void
bb_readings_init (BbReadings *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
