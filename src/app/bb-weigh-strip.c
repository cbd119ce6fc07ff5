/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-weigh-strip"

#include "bb-weigh-strip.h"

#include <glib/gi18n-lib.h>

#include "bb-form.h"
#include "bb-rounding.h"
#include "bb-run-words.h"
#include "bb-weigh-in.h"
#include "bb-weigh-scale.h"

struct _BbWeighStrip
{
  AdwBin parent_instance;

  /* template */
  AdwBin *form_bin;
  GtkBox *answer;
  GtkLabel *verdict_label;
  BbWeighScale *scale;
  GtkLabel *detail_label;

  /* owned */
  BbSession *session;

  BbForm *form;
  double target_g_per_m2;
  double box_area_m2;
};

G_DEFINE_FINAL_TYPE (BbWeighStrip, bb_weigh_strip, ADW_TYPE_BIN)

/* Common practice, no source. */
static const char *
describe_next (BbWeighVerdict verdict)
{
  switch (verdict)
    {
    case BB_WEIGH_LOW:
      return _("Unless the recipe says otherwise, spray what is missing before it dries, weigh again, and set the "
               "sprayer before the next garment.");
    case BB_WEIGH_HIGH:
      return _("Unless the recipe says otherwise, set this garment aside and don't print on it for the order; set the "
               "sprayer before the next one.");
    case BB_WEIGH_OK:
    default:
      return NULL;
    }
}

static void
show_words (BbWeighStrip       *self,
            const BbWeighInIn  *in,
            const BbWeighInOut *out)
{
  const BbUnitContext *units = bb_session_get_units (self->session);
  g_autofree char *laydown = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, out->laydown_g_per_m2, units);
  g_autofree char *applied = bb_quantity_format_with_unit (BB_QUANTITY_MASS, out->applied_g, units);
  g_autofree char *word = bb_words_of_weigh_in (out, units);
  g_autofree char *target = NULL;
  g_autofree char *told = NULL;
  g_autofree char *detail = NULL;
  const char *next = NULL;

  next = describe_next ((BbWeighVerdict) out->verdict);
  target = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, self->target_g_per_m2, units);
  told = g_strdup_printf (_("%s on the garment: %s of the %s that the recipe asks for."), applied, laydown, target);
  detail = next != NULL ? g_strjoin (" ", told, next, NULL) : g_steal_pointer (&told);
  if (out->scale_too_coarse == 1)
    {
      g_autofree char *more = g_strjoin (" ", detail, _("This scale is too coarse for the tolerance: half a division "
                                                        "is more than a quarter of it."), NULL);

      gtk_label_set_label (self->detail_label, more);
    }
  else
    gtk_label_set_label (self->detail_label, detail);
  gtk_label_set_label (self->verdict_label, word);
  bb_weigh_scale_set (self->scale, out->deviation_fraction, in->tolerance_fraction);
}

static void
show_nothing (BbWeighStrip *self,
              const char   *text)
{
  gtk_widget_set_visible (GTK_WIDGET (self->verdict_label), FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->scale), FALSE);
  gtk_label_set_label (self->detail_label, text);
}

/* Once the garment's own mass is known, so is what the scale has to show after spraying. */
static char *
describe_aim (BbWeighStrip *self)
{
  const BbUnitContext *units = bb_session_get_units (self->session);
  g_autoptr (BbWeighInIn) draft = bb_form_dup_draft (self->form);
  g_autofree char *low = NULL;
  g_autofree char *aim_text = NULL;
  g_autofree char *high = NULL;
  BbWeighAim aim;

  aim = bb_weigh_in_aim (draft);
  if (isnan (aim.low_g))
    return g_strdup (_("Weigh the garment before spraying, and again right after."));

  low = bb_quantity_format (BB_QUANTITY_MASS, bb_round_for_scale (aim.low_g), units);
  aim_text = bb_quantity_format_with_unit (BB_QUANTITY_MASS, bb_round_for_scale (aim.aim_g), units);
  high = bb_quantity_format_with_unit (BB_QUANTITY_MASS, bb_round_for_scale (aim.high_g), units);

  return g_strdup_printf (_("Wet, it should weigh %s. From %s to %s is good."), aim_text, low, high);
}

static void
update (BbWeighStrip *self)
{
  g_autoptr (BbWeighInIn) in = bb_form_dup_record (self->form, FALSE);
  g_autoptr (BbWeighInOut) out = bb_weigh_in_out_new ();
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < bb_weigh_verdict_choices.n_items; i++)
    gtk_widget_remove_css_class (GTK_WIDGET (self->answer), bb_weigh_verdict_choices.items[i].key);

  if (isnan (self->target_g_per_m2))
    {
      show_nothing (self, _("Once the size of the print and the laydown are known, a garment can be checked here by "
                            "its mass before and after spraying."));
      return;
    }
  if (in == NULL)
    {
      g_autofree char *aim = describe_aim (self);

      show_nothing (self, aim);
      return;
    }
  if (!bb_calculator_run (&bb_weigh_in_calculator, in, out, &error))
    {
      show_nothing (self, in->wet_g < in->tare_g ? _("The garment can't be lighter with pretreat than without.")
                                                 : error->message);
      return;
    }

  gtk_widget_add_css_class (GTK_WIDGET (self->answer),
                            bb_choices_get_key (&bb_weigh_verdict_choices, (int) out->verdict));
  gtk_widget_set_visible (GTK_WIDGET (self->verdict_label), TRUE);
  gtk_widget_set_visible (GTK_WIDGET (self->scale), TRUE);
  show_words (self, in, out);
}

static void
fix (BbWeighStrip *self)
{
  bb_form_fix (self->form, bb_table_find_field (&bb_weigh_in_in_table, "box_area_m2"));
  bb_form_fix (self->form, bb_table_find_field (&bb_weigh_in_in_table, "target_g_per_m2"));
}

/**
 * bb_weigh_strip_set_session:
 * @self: a strip
 * @session: the session
 */
void
bb_weigh_strip_set_session (BbWeighStrip *self,
                            BbSession    *session)
{
  g_return_if_fail (BB_IS_WEIGH_STRIP (self) && self->session == NULL);

  self->session = g_object_ref (session);
  self->form = BB_FORM (bb_form_new_strip (session, &bb_weigh_in_in_table));
  fix (self);
  adw_bin_set_child (self->form_bin, GTK_WIDGET (self->form));
  g_signal_connect_object (self->form, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "units-changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  update (self);
}

/**
 * bb_weigh_strip_set_target:
 * @self: a strip
 * @target_g_per_m2: the laydown that is aimed at; NaN where it is not known
 * @box_area_m2: area of the box that is sprayed
 *
 * What was weighed stays and is judged anew.
 */
void
bb_weigh_strip_set_target (BbWeighStrip *self,
                           double        target_g_per_m2,
                           double        box_area_m2)
{
  g_return_if_fail (BB_IS_WEIGH_STRIP (self) && self->form != NULL);

  self->target_g_per_m2 = target_g_per_m2;
  self->box_area_m2 = box_area_m2;
  bb_form_set_fixed (self->form, bb_table_find_field (&bb_weigh_in_in_table, "target_g_per_m2"), target_g_per_m2);
  bb_form_set_fixed (self->form, bb_table_find_field (&bb_weigh_in_in_table, "box_area_m2"), box_area_m2);
  update (self);
}

static void
bb_weigh_strip_dispose (GObject *object)
{
  BbWeighStrip *self = BB_WEIGH_STRIP (object);

  g_clear_object (&self->session);
  adw_bin_set_child (ADW_BIN (self), NULL);

  G_OBJECT_CLASS (bb_weigh_strip_parent_class)->dispose (object);
}

static void
bb_weigh_strip_class_init (BbWeighStripClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_weigh_strip_dispose;
  g_type_ensure (BB_TYPE_WEIGH_SCALE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-weigh-strip.ui");
  gtk_widget_class_bind_template_child (widget_class, BbWeighStrip, form_bin);
  gtk_widget_class_bind_template_child (widget_class, BbWeighStrip, answer);
  gtk_widget_class_bind_template_child (widget_class, BbWeighStrip, verdict_label);
  gtk_widget_class_bind_template_child (widget_class, BbWeighStrip, scale);
  gtk_widget_class_bind_template_child (widget_class, BbWeighStrip, detail_label);
}

static void
bb_weigh_strip_init (BbWeighStrip *self)
{
  self->target_g_per_m2 = (double) NAN;
  self->box_area_m2 = (double) NAN;
  gtk_widget_init_template (GTK_WIDGET (self));
}
