/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-state-badge"

#include "bb-state-badge.h"

#include <glib/gi18n-lib.h>

struct _BbStateBadge
{
  BbBadge parent_instance;
};

G_DEFINE_FINAL_TYPE (BbStateBadge, bb_state_badge, BB_TYPE_BADGE)

static const struct {
  const char *css_name;
  BbSignShape shape;
} looks[] = {
  [BB_STATE_DRAFT] = { "draft", BB_SIGN_RING },
  [BB_STATE_ON_TRIAL] = { "on-trial", BB_SIGN_HALF },
  [BB_STATE_PROVEN] = { "proven", BB_SIGN_TICK },
  [BB_STATE_WITHDRAWN] = { "withdrawn", BB_SIGN_SLASH },
};

static void
bb_state_badge_class_init (BbStateBadgeClass *klass)
{
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "statebadge");
}

static void
bb_state_badge_init (BbStateBadge *self)
{
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
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
  g_return_if_fail ((guint) state < G_N_ELEMENTS (looks));

  bb_badge_set_look (BB_BADGE (self), looks[state].css_name, looks[state].shape);
  gtk_label_set_label (bb_badge_get_label (BB_BADGE (self)), bb_choices_get_title (&bb_state_choices, (int) state));
}
