/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-mix-source"

#include "bb-mix-source.h"

#include <glib/gi18n-lib.h>

#include "bb-garment-band.h"
#include "bb-revision-menu.h"
#include "bb-state-badge.h"

struct _BbMixSource
{
  GtkBox parent_instance;

  /* template */
  BbGarmentBand *band;
  BbStateBadge *badge;
  GtkLabel *remark_label;

  /* owned; NULL without a recipe, and the colourway where the recipe is not for one */
  BbRecipe *recipe;
  BbColourway *colourway;

  BbState state;
};

G_DEFINE_FINAL_TYPE (BbMixSource, bb_mix_source, GTK_TYPE_BOX)

static void
forget (BbMixSource *self)
{
  g_clear_pointer (&self->recipe, bb_recipe_free);
  g_clear_pointer (&self->colourway, bb_colourway_free);
}

static void
show_garment (BbMixSource      *self,
              const BbRevision *revision)
{
  g_autofree char *text = g_strdup_printf (_("%s · Revision %d"), self->recipe->code, (int) revision->number);

  bb_garment_band_set_title (self->band, self->recipe->name, text);
  bb_garment_band_set_colour (self->band, self->colourway != NULL ? self->colourway->srgb : NULL,
                              (BbShade) self->recipe->shade);
}

/**
 * bb_mix_source_show:
 * @self: the source of a mix
 * @session: the session
 * @revision: (nullable): the revision that the figures were taken from, or %NULL for none
 */
void
bb_mix_source_show (BbMixSource      *self,
                    BbSession        *session,
                    const BbRevision *revision)
{
  BbBook *book = bb_session_get_book (session);

  g_return_if_fail (BB_IS_MIX_SOURCE (self));

  forget (self);
  gtk_widget_set_visible (GTK_WIDGET (self), revision != NULL);
  if (revision == NULL)
    return;

  self->recipe = bb_book_load (book, &bb_recipe_table, revision->recipe, NULL);
  self->state = bb_revision_menu_load_state (session, revision->id);
  if (self->recipe == NULL)
    return;
  if (self->recipe->colourway != 0)
    self->colourway = bb_book_load (book, &bb_colourway_table, self->recipe->colourway, NULL);
  show_garment (self, revision);
  bb_state_badge_set_state (self->badge, self->state);
}

/**
 * bb_mix_source_remark:
 * @self: the source of a mix
 * @text: how the figures stand to the recipe's
 *
 * Says it beside a proven recipe. Whoever mixes by one that is not proven has to know that before a whole order is
 * sprayed, and reads that instead.
 */
void
bb_mix_source_remark (BbMixSource *self,
                      const char  *text)
{
  g_return_if_fail (BB_IS_MIX_SOURCE (self) && text != NULL);

  switch (self->state)
    {
    case BB_STATE_WITHDRAWN:
      text = _("Withdrawn: ask the process lead before printing by it.");
      break;
    case BB_STATE_DRAFT:
    case BB_STATE_ON_TRIAL:
      text = _("Not proven: print and wash a specimen before a whole order.");
      break;
    case BB_STATE_PROVEN:
    default:
      break;
    }
  gtk_label_set_label (self->remark_label, text);
}

/**
 * bb_mix_source_get_recipe:
 * @self: the source of a mix
 *
 * Returns: (transfer none) (nullable): the recipe, or %NULL where the figures are typed without one
 */
const BbRecipe *
bb_mix_source_get_recipe (BbMixSource *self)
{
  g_return_val_if_fail (BB_IS_MIX_SOURCE (self), NULL);

  return self->recipe;
}

/**
 * bb_mix_source_get_colourway:
 * @self: the source of a mix
 *
 * Returns: (transfer none) (nullable): the one colour that the recipe is for, or %NULL where it is for several
 */
const BbColourway *
bb_mix_source_get_colourway (BbMixSource *self)
{
  g_return_val_if_fail (BB_IS_MIX_SOURCE (self), NULL);

  return self->colourway;
}

static void
bb_mix_source_dispose (GObject *object)
{
  forget (BB_MIX_SOURCE (object));
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_MIX_SOURCE);

  G_OBJECT_CLASS (bb_mix_source_parent_class)->dispose (object);
}

static void
bb_mix_source_class_init (BbMixSourceClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_mix_source_dispose;

  g_type_ensure (BB_TYPE_GARMENT_BAND);
  g_type_ensure (BB_TYPE_STATE_BADGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-mix-source.ui");
  gtk_widget_class_bind_template_child (widget_class, BbMixSource, band);
  gtk_widget_class_bind_template_child (widget_class, BbMixSource, badge);
  gtk_widget_class_bind_template_child (widget_class, BbMixSource, remark_label);
}

static void
bb_mix_source_init (BbMixSource *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
