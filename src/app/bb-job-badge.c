/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-job-badge"

#include "bb-job-badge.h"

#include <glib/gi18n-lib.h>

struct _BbJobBadge
{
  BbBadge parent_instance;
};

G_DEFINE_FINAL_TYPE (BbJobBadge, bb_job_badge, BB_TYPE_BADGE)

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
  const char *word = NULL;

  g_return_if_fail (BB_IS_JOB_BADGE (self) && state >= 0 && (guint) state < G_N_ELEMENTS (looks));

  word = !overdue ? bb_choices_get_title (&bb_job_state_choices, state)
                  : state == BB_JOB_RUNNING ? _("Running, overdue") : _("Planned, overdue");
  bb_badge_set_look (BB_BADGE (self), overdue ? "overdue" : looks[state].css_name,
                     overdue ? BB_SIGN_CROSS : looks[state].shape);
  gtk_label_set_label (bb_badge_get_label (BB_BADGE (self)), word);
}
