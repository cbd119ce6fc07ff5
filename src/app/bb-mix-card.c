/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-mix-card"

#include "bb-mix-card.h"

#include <glib/gi18n-lib.h>

#include "bb-figure.h"
#include "bb-job-words.h"
#include "bb-rounding.h"
#include "bb-safety.h"
#include "bb-takes-view.h"

struct _BbMixCard
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *title_label;
  BbFigures *pour_box;
  GtkLabel *surplus_label;
  BbTakesView *takes;
  GtkLabel *safety_label;
};

G_DEFINE_FINAL_TYPE (BbMixCard, bb_mix_card, ADW_TYPE_BIN)

static void
add_pour (BbMixCard           *self,
          const char          *title,
          const BbUnitContext *units,
          double               grams,
          double               millilitres)
{
  g_autofree char *mass = bb_quantity_format (BB_QUANTITY_MASS, bb_round_for_scale (grams), units);
  g_autofree char *note = NULL;

  if (!isnan (millilitres))
    {
      g_autofree char *volume = bb_quantity_format_with_unit (BB_QUANTITY_VOLUME, bb_round_for_scale (millilitres),
                                                              units);

      note = g_strdup_printf (_("or %s"), volume);
    }
  bb_figure_set (bb_figure_add (self->pour_box, title), mass, bb_quantity_get_unit (BB_QUANTITY_MASS, units), note);
}

/**
 * bb_mix_card_new:
 * @session: the session
 * @mix: a mix of a job
 *
 * Returns: (transfer floating): a card that shows it
 */
GtkWidget *
bb_mix_card_new (BbSession        *session,
                 const BbMixSheet *mix)
{
  BbMixCard *self = g_object_new (BB_TYPE_MIX_CARD, NULL);
  const BbUnitContext *units = bb_session_get_units (session);
  g_autofree char *title = bb_words_of_mix (mix, units);
  g_autofree char *surplus = bb_words_of_surplus (mix, units);

  gtk_label_set_label (self->title_label, title);
  add_pour (self, _("Concentrate"), units, mix->concentrate_g, mix->concentrate_ml);
  add_pour (self, _("Water"), units, mix->water_g, mix->water_ml);
  add_pour (self, _("Makes"), units, mix->total_g, (double) NAN);
  gtk_label_set_label (self->surplus_label, surplus != NULL ? surplus : "");
  gtk_widget_set_visible (GTK_WIDGET (self->surplus_label), surplus != NULL);
  bb_takes_view_show (self->takes, session, mix);
  gtk_label_set_label (self->safety_label, _(bb_safety_find (BB_STATION_PRETREAT, 0)->brief));

  return GTK_WIDGET (self);
}

static void
bb_mix_card_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_mix_card_parent_class)->dispose (object);
}

static void
bb_mix_card_class_init (BbMixCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_mix_card_dispose;
  g_type_ensure (BB_TYPE_FIGURES);
  g_type_ensure (BB_TYPE_TAKES_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-mix-card.ui");
  gtk_widget_class_bind_template_child (widget_class, BbMixCard, title_label);
  gtk_widget_class_bind_template_child (widget_class, BbMixCard, pour_box);
  gtk_widget_class_bind_template_child (widget_class, BbMixCard, surplus_label);
  gtk_widget_class_bind_template_child (widget_class, BbMixCard, takes);
  gtk_widget_class_bind_template_child (widget_class, BbMixCard, safety_label);
}

static void
bb_mix_card_init (BbMixCard *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
