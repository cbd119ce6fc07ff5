/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-job-badge"

#include "bb-job-badge.h"

#include <glib/gi18n-lib.h>

#include "bb-sign.h"

struct _BbJobBadge
{
  GtkBox parent_instance;

  BbSign *sign;
  GtkLabel *label;
  const char *css_name;
};

G_DEFINE_FINAL_TYPE (BbJobBadge, bb_job_badge, GTK_TYPE_BOX)

static const struct {
  const char *css_name;
  BbSignShape shape;
} looks[] = {
  [BB_JOB_PLANNED] = { "planned", BB_SIGN_RING },
  [BB_JOB_RUNNING] = { "running", BB_SIGN_HALF },
  [BB_JOB_DONE] = { "done", BB_SIGN_TICK },
  [BB_JOB_CANCELLED] = { "cancelled", BB_SIGN_SLASH },
};

static void
bb_job_badge_class_init (BbJobBadgeClass *klass)
{
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "jobbadge");
}

static void
bb_job_badge_init (BbJobBadge *self)
{
  self->sign = BB_SIGN (bb_sign_new ());
  self->label = GTK_LABEL (gtk_label_new (NULL));
  gtk_box_set_spacing (GTK_BOX (self), 6);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->sign));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->label));
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
  bb_job_badge_show (self, BB_JOB_PLANNED, FALSE);
}

/**
 * bb_job_badge_new:
 *
 * Returns: (transfer floating): a badge that says planned
 */
GtkWidget *
bb_job_badge_new (void)
{
  return g_object_new (BB_TYPE_JOB_BADGE, NULL);
}

/**
 * bb_job_badge_show:
 * @self: a badge
 * @state: a #BbJobState
 * @overdue: whether the job should be ready by now
 */
void
bb_job_badge_show (BbJobBadge *self,
                   int         state,
                   gboolean    overdue)
{
  const char *css_name = NULL;
  const char *word = NULL;

  g_return_if_fail (BB_IS_JOB_BADGE (self) && state >= 0 && (guint) state < G_N_ELEMENTS (looks));

  css_name = overdue ? "overdue" : looks[state].css_name;
  word = !overdue ? bb_choices_get_title (&bb_job_state_choices, state)
                  : state == BB_JOB_RUNNING ? _("Running, overdue") : _("Planned, overdue");
  if (self->css_name != NULL)
    gtk_widget_remove_css_class (GTK_WIDGET (self), self->css_name);
  gtk_widget_add_css_class (GTK_WIDGET (self), css_name);
  self->css_name = css_name;
  bb_sign_set_shape (self->sign, overdue ? BB_SIGN_CROSS : looks[state].shape);
  gtk_label_set_label (self->label, word);
}
