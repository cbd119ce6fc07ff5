/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-artwork-facts"

#include "bb-artwork-facts.h"

#include <glib/gi18n-lib.h>

#include "bb-advice-list.h"
#include "bb-coverage-bars.h"
#include "bb-figure.h"
#include "bb-show.h"

struct _BbArtworkFacts
{
  AdwBin parent_instance;

  /* template */
  BbFigures *figure_box;
  GtkLabel *mode_label;
  BbAdviceList *reasons;
  GtkLabel *difference_label;
  GtkLabel *good_label;
  BbAdviceList *warnings;
  BbCoverageBars *bars;

  /* in the box */
  BbFigure *size;
  BbFigure *resolution;
};

G_DEFINE_FINAL_TYPE (BbArtworkFacts, bb_artwork_facts, ADW_TYPE_BIN)

static void
show_size (BbArtworkFacts      *self,
           const BbUnitContext *units,
           const BbArtworkIn   *in,
           const BbArtworkOut  *out,
           const BbRectangle   *art)
{
  g_autofree char *whole = bb_show_size (units, in->print_width_mm, out->print_height_mm);
  g_autofree char *width = bb_quantity_format (BB_QUANTITY_LENGTH, art->width_mm, units);
  g_autofree char *height = bb_quantity_format (BB_QUANTITY_LENGTH, art->height_mm, units);
  g_autofree char *value = g_strdup_printf ("%s × %s", width, height);
  g_autofree char *note = g_strdup_printf (_("whole picture %s"), whole);

  bb_figure_set (self->size, value, bb_quantity_get_unit (BB_QUANTITY_LENGTH, units), note);
}

static void
show_resolution (BbArtworkFacts      *self,
                 const BbUnitContext *units,
                 const BbArtworkOut  *out)
{
  g_autofree char *ppi = g_strdup_printf ("%.0f", out->ppi);
  g_autofree char *enlargement = NULL;
  g_autofree char *note = NULL;

  if (!isnan (out->enlargement))
    {
      enlargement = bb_quantity_format_with_unit (BB_QUANTITY_FRACTION, out->enlargement, units);
      note = g_strdup_printf (_("at %s of the file's own size"), enlargement);
    }
  /* Translators: the unit of a resolution: pixels in each inch. */
  bb_figure_set (self->resolution, ppi, _("pixels/in"), note);
}

static void
show_warnings (BbArtworkFacts     *self,
               const BbArtworkOut *out)
{
  bb_advice_list_clear (self->warnings);
  for (char **key = out->warnings; *key != NULL; key++)
    {
      const int warning = bb_choices_find (&bb_artwork_warning_choices, *key);

      bb_advice_list_add_warning (self->warnings, bb_choices_get_title (&bb_artwork_warning_choices, warning));
    }
  gtk_widget_set_visible (GTK_WIDGET (self->warnings), *out->warnings != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->good_label), *out->warnings == NULL);
}

/**
 * bb_artwork_facts_show:
 * @self: the facts
 * @units: how numbers are shown
 * @in: how the picture is placed
 * @out: what bb_artwork_fill() made of it
 * @coverage: how much each ink covers
 * @art: (nullable): what is visible of it; %NULL where its size is not known, or nothing is visible
 */
void
bb_artwork_facts_show (BbArtworkFacts      *self,
                       const BbUnitContext *units,
                       const BbArtworkIn   *in,
                       const BbArtworkOut  *out,
                       const BbCoverage    *coverage,
                       const BbRectangle   *art)
{
  g_return_if_fail (BB_IS_ARTWORK_FACTS (self));

  if (art != NULL)
    {
      show_size (self, units, in, out, art);
      show_resolution (self, units, out);
    }
  else
    {
      bb_figure_set (self->size, NULL, "", out->art_box != NULL ? _("give the print's width") : NULL);
      bb_figure_set (self->resolution, NULL, "", NULL);
    }
  show_warnings (self, out);
  bb_coverage_bars_set (self->bars, units, coverage, art != NULL);
}

/**
 * bb_artwork_facts_show_advice:
 * @self: the facts
 * @advice: the print mode that is advised, and why
 * @recipe_mode: the recipe's #BbPrintMode, or %BB_CHOICE_NONE
 */
void
bb_artwork_facts_show_advice (BbArtworkFacts       *self,
                              const BbPrintModeOut *advice,
                              int                   recipe_mode)
{
  const char *advised = bb_choices_get_title (&bb_print_mode_choices, advice->mode);
  const gboolean differs = recipe_mode != BB_CHOICE_NONE && recipe_mode != advice->mode;
  g_autofree char *difference = NULL;

  g_return_if_fail (BB_IS_ARTWORK_FACTS (self));

  gtk_label_set_label (self->mode_label, advised);
  bb_advice_list_clear (self->reasons);
  for (char **key = advice->reasons; *key != NULL; key++)
    {
      const int reason = bb_choices_find (&bb_mode_reason_choices, *key);

      /* Of soft edges the warnings tell. */
      if (reason != BB_MODE_REASON_SOFT_EDGES)
        bb_advice_list_add_reason (self->reasons, bb_choices_get_title (&bb_mode_reason_choices, reason));
    }

  if (differs)
    /* Translators: two print modes. */
    difference = g_strdup_printf (_("The recipe prints as “%s”; for this garment and artwork “%s” is advised."),
                                  bb_choices_get_title (&bb_print_mode_choices, recipe_mode), advised);
  gtk_label_set_label (self->difference_label, differs ? difference : "");
  gtk_widget_set_visible (GTK_WIDGET (self->difference_label), differs);
}

static void
bb_artwork_facts_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_artwork_facts_parent_class)->dispose (object);
}

static void
bb_artwork_facts_class_init (BbArtworkFactsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_artwork_facts_dispose;
  g_type_ensure (BB_TYPE_ADVICE_LIST);
  g_type_ensure (BB_TYPE_COVERAGE_BARS);
  g_type_ensure (BB_TYPE_FIGURES);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-artwork-facts.ui");
  gtk_widget_class_bind_template_child (widget_class, BbArtworkFacts, figure_box);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkFacts, mode_label);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkFacts, reasons);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkFacts, difference_label);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkFacts, good_label);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkFacts, warnings);
  gtk_widget_class_bind_template_child (widget_class, BbArtworkFacts, bars);
}

static void
bb_artwork_facts_init (BbArtworkFacts *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));

  self->size = bb_figure_add (self->figure_box, _("Art"));
  self->resolution = bb_figure_add (self->figure_box, _("Resolution"));
}
