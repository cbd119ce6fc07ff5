/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-sign.h"

G_BEGIN_DECLS

/**
 * BbBadge:
 *
 * A sign and a word beside it, in a colour that the style sheet has for the class of its look.
 */
#define BB_TYPE_BADGE (bb_badge_get_type ())
G_DECLARE_DERIVABLE_TYPE (BbBadge, bb_badge, BB, BADGE, GtkBox)

struct _BbBadgeClass
{
  GtkBoxClass parent_class;
};

/* For subclasses. */
GtkLabel *bb_badge_get_label (BbBadge     *self);
void      bb_badge_set_look  (BbBadge     *self,
                              const char  *css_class,
                              BbSignShape  shape);

G_END_DECLS
