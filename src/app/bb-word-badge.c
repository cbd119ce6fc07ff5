/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-word-badge"

#include "bb-word-badge.h"

struct _BbWordBadge
{
  BbBadge parent_instance;
};

G_DEFINE_FINAL_TYPE (BbWordBadge, bb_word_badge, BB_TYPE_BADGE)

static const struct {
  const char *css_name;
  BbSignShape shape;
} looks[] = {
  [BB_TONE_PLAIN] = { "plain", BB_SIGN_RING },
  [BB_TONE_GOOD] = { "good", BB_SIGN_TICK },
  [BB_TONE_SOON] = { "soon", BB_SIGN_HALF },
  [BB_TONE_BAD] = { "bad", BB_SIGN_CROSS },
  [BB_TONE_GONE] = { "gone", BB_SIGN_SLASH },
};

static void
bb_word_badge_class_init (BbWordBadgeClass *klass)
{
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "wordbadge");
}

static void
bb_word_badge_init (BbWordBadge *self)
{
  gtk_label_set_xalign (bb_badge_get_label (BB_BADGE (self)), 0.0f);
  gtk_label_set_ellipsize (bb_badge_get_label (BB_BADGE (self)), PANGO_ELLIPSIZE_END);
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
  bb_word_badge_say (self, BB_TONE_PLAIN, "");
}

/**
 * bb_word_badge_new:
 *
 * Returns: (transfer floating): a badge that says nothing, and is not seen
 */
GtkWidget *
bb_word_badge_new (void)
{
  return g_object_new (BB_TYPE_WORD_BADGE, NULL);
}

/**
 * bb_word_badge_say:
 * @self: a badge
 * @tone: how urgent it is
 * @text: the word; an empty one hides the badge
 */
void
bb_word_badge_say (BbWordBadge *self,
                   BbTone       tone,
                   const char  *text)
{
  g_return_if_fail (BB_IS_WORD_BADGE (self) && text != NULL);
  g_return_if_fail ((guint) tone < G_N_ELEMENTS (looks));

  bb_badge_set_look (BB_BADGE (self), looks[tone].css_name, looks[tone].shape);
  gtk_label_set_label (bb_badge_get_label (BB_BADGE (self)), text);
  gtk_widget_set_visible (GTK_WIDGET (self), *text != '\0');
}
