/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-plan-view"

#include "bb-plan-view.h"

#include "bb-plan-words.h"
#include "bb-wash.h"
#include "bb-word-badge.h"

struct _BbPlanView
{
  GtkBox parent_instance;

  /* template */
  BbWordBadge *badge;
  GtkLabel *source_label;
  GtkLabel *use_label;

  /* owned; none before one is shown */
  BbWashPlan *plan;
};

G_DEFINE_FINAL_TYPE (BbPlanView, bb_plan_view, GTK_TYPE_BOX)

enum {
  SIGNAL_COPY,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
copy_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbPlanView *self = BB_PLAN_VIEW (widget);
  g_autoptr (BbWashPlan) own = NULL;

  (void) name;
  (void) parameter;

  if (self->plan == NULL)
    return;
  own = bb_wash_plan_dup_as_own (self->plan);
  g_signal_emit (self, signals[SIGNAL_COPY], 0, own);
}

static void
bb_plan_view_dispose (GObject *object)
{
  g_clear_pointer (&BB_PLAN_VIEW (object)->plan, bb_wash_plan_free);
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_PLAN_VIEW);

  G_OBJECT_CLASS (bb_plan_view_parent_class)->dispose (object);
}

static void
bb_plan_view_class_init (BbPlanViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_plan_view_dispose;

  /**
   * BbPlanView::copy:
   * @own: a new plan of the shop's own, that washes as the one that is shown
   */
  signals[SIGNAL_COPY] = g_signal_new ("copy", BB_TYPE_PLAN_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, G_TYPE_POINTER);

  g_type_ensure (BB_TYPE_WORD_BADGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-plan-view.ui");
  gtk_widget_class_bind_template_child (widget_class, BbPlanView, badge);
  gtk_widget_class_bind_template_child (widget_class, BbPlanView, source_label);
  gtk_widget_class_bind_template_child (widget_class, BbPlanView, use_label);
  gtk_widget_class_install_action (widget_class, "plan.copy", NULL, copy_action);
}

static void
bb_plan_view_init (BbPlanView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_plan_view_new:
 *
 * Returns: (transfer floating): what stands behind no plan
 */
GtkWidget *
bb_plan_view_new (void)
{
  return g_object_new (BB_TYPE_PLAN_VIEW, NULL);
}

static BbTone
get_tone (const BbWashPlan *plan)
{
  switch ((BbPlanOrigin) plan->origin)
    {
    case BB_PLAN_ORIGIN_STANDARD:
      return BB_TONE_GOOD;
    case BB_PLAN_ORIGIN_PART:
    case BB_PLAN_ORIGIN_MEMORY:
      return BB_TONE_SOON;
    case BB_PLAN_ORIGIN_SHOP:
    default:
      return BB_TONE_PLAIN;
    }
}

/**
 * bb_plan_view_show:
 * @self: a view
 * @session: the session
 * @plan: a wash plan of the book
 *
 * Shows what stands behind a plan.
 */
void
bb_plan_view_show (BbPlanView       *self,
                   BbSession        *session,
                   const BbWashPlan *plan)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *source = NULL;
  g_autofree char *use = NULL;
  gint64 n_specimens = 0;

  g_return_if_fail (BB_IS_PLAN_VIEW (self) && BB_IS_SESSION (session) && plan != NULL);

  /* What can be copied is always the plan that is shown, also where its specimens can't be counted. */
  bb_wash_plan_free (self->plan);
  self->plan = bb_record_copy (&bb_wash_plan_table, plan);
  n_specimens = bb_book_count_referring (bb_session_get_book (session), &bb_wash_test_table, &bb_wash_plan_table,
                                         plan->id, &error);
  if (n_specimens < 0)
    {
      bb_session_report (session, error);
      return;
    }
  source = bb_plan_words_of_source (plan);
  use = bb_plan_words_of_use (plan, n_specimens);
  bb_word_badge_say (self->badge, get_tone (plan), bb_choices_get_title (&bb_plan_origin_choices, plan->origin));
  gtk_label_set_label (self->source_label, source);
  gtk_label_set_label (self->use_label, use);
}
