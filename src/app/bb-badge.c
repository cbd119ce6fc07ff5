/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-badge"

#include "bb-badge.h"

typedef struct {
  BbSign *sign;
  GtkLabel *label;

  /* of the look that it has; a constant of the subclass */
  const char *css_class;
} BbBadgePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (BbBadge, bb_badge, GTK_TYPE_BOX)

static void
bb_badge_class_init (BbBadgeClass *klass)
{
  (void) klass;
}

static void
bb_badge_init (BbBadge *self)
{
  BbBadgePrivate *priv = bb_badge_get_instance_private (self);

  priv->sign = BB_SIGN (bb_sign_new ());
  priv->label = GTK_LABEL (gtk_label_new (NULL));
  gtk_box_set_spacing (GTK_BOX (self), 6);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (priv->sign));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (priv->label));
}

/**
 * bb_badge_get_label:
 * @self: a badge
 *
 * Returns: (transfer none): what its word stands in
 */
GtkLabel *
bb_badge_get_label (BbBadge *self)
{
  BbBadgePrivate *priv = bb_badge_get_instance_private (self);

  g_return_val_if_fail (BB_IS_BADGE (self), NULL);

  return priv->label;
}

/**
 * bb_badge_set_look:
 * @self: a badge
 * @css_class: the style class of the look, a constant; it takes the place of the one before
 * @shape: the sign
 *
 * Gives it another look.
 */
void
bb_badge_set_look (BbBadge     *self,
                   const char  *css_class,
                   BbSignShape  shape)
{
  BbBadgePrivate *priv = bb_badge_get_instance_private (self);

  g_return_if_fail (BB_IS_BADGE (self) && css_class != NULL);

  if (priv->css_class != NULL)
    gtk_widget_remove_css_class (GTK_WIDGET (self), priv->css_class);
  gtk_widget_add_css_class (GTK_WIDGET (self), css_class);
  priv->css_class = css_class;
  bb_sign_set_shape (priv->sign, shape);
}
