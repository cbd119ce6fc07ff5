/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-line-sheet-card"

#include "bb-line-sheet-card.h"

#include <glib/gi18n-lib.h>

#include "bb-figure.h"
#include "bb-job-line-row.h"
#include "bb-job-words.h"
#include "bb-rounding.h"
#include "bb-words.h"

struct _BbLineSheetCard
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *title_label;
  GtkLabel *missing_label;
  GtkLabel *caution_label;
  BbFigures *figures;
  GtkBox *safety_box;
  GtkLabel *safety_label;
};

G_DEFINE_FINAL_TYPE (BbLineSheetCard, bb_line_sheet_card, ADW_TYPE_BIN)

static void
add_mass (BbLineSheetCard     *self,
          const char          *title,
          const BbUnitContext *units,
          double               grams,
          const char          *note)
{
  g_autofree char *value = NULL;

  if (!isnan (grams))
    value = bb_quantity_format (BB_QUANTITY_MASS, bb_round_for_scale (grams), units);
  bb_figure_set (bb_figure_add (self->figures, title), value, bb_quantity_get_unit (BB_QUANTITY_MASS, units), note);
}

static void
add_box (BbLineSheetCard     *self,
         const BbUnitContext *units,
         const BbLineSheet   *sheet)
{
  g_autofree char *width = bb_quantity_format (BB_QUANTITY_LENGTH, sheet->box_width_mm, units);
  g_autofree char *height = bb_quantity_format (BB_QUANTITY_LENGTH, sheet->box_height_mm, units);
  g_autofree char *value = g_strdup_printf ("%s × %s", width, height);

  bb_figure_set (bb_figure_add (self->figures, _("Box")), value, bb_quantity_get_unit (BB_QUANTITY_LENGTH, units),
                 sheet->clipped == 1 ? _("the margin is cut to the sprayer's reach") : NULL);
}

static void
add_pretreat (BbLineSheetCard     *self,
              const BbUnitContext *units,
              const BbSheetLine   *line,
              const BbLineSheet   *sheet)
{
  g_autofree char *laydown = NULL;
  g_autofree char *used = NULL;
  g_autofree char *leaves = NULL;

  if (line->revision->pretreat_method == BB_PRETREAT_NONE)
    return;
  add_box (self, units, sheet);
  laydown = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, line->revision->pretreat_laydown_g_per_m2, units);
  add_mass (self, _("On each garment"), units, sheet->wet_g, laydown);
  used = bb_quantity_format_with_unit (BB_QUANTITY_MASS, bb_round_for_scale (sheet->used_g), units);
  leaves = g_strdup_printf (_("%s leave the nozzles for each"), used);
  add_mass (self, _("Pretreat in all"), units, sheet->needed_g, leaves);
}

static void
add_counts (BbLineSheetCard     *self,
            BbSession           *session,
            const BbSheetLine   *line,
            const BbLineSheet   *sheet)
{
  g_autofree char *garments = g_strdup_printf ("%" G_GINT64_FORMAT, sheet->garments);
  g_autofree char *spares = bb_words_of_spares (sheet->garments, sheet->spares);
  g_autofree char *time = NULL;
  g_autofree char *bottleneck = NULL;

  bb_figure_set (bb_figure_add (self->figures, _("Garments")), garments, "",
                 line->line->same_garments == 1 ? _("those of another line, a second time") : spares);
  if (sheet->missing != NULL)
    return;
  add_pretreat (self, bb_session_get_units (session), line, sheet);
  time = bb_words_of_time (sheet->time_s);
  if (sheet->bottleneck != NULL)
    bottleneck = g_strdup_printf (_("%s sets the pace"), sheet->bottleneck);
  bb_figure_set (bb_figure_add (self->figures, _("Time")), time, "", bottleneck);
  bb_figure_set_field (bb_figure_add (self->figures, _("Cost")), session, &bb_line_sheet_table,
                       bb_table_find_field (&bb_line_sheet_table, "cost"), sheet, NULL);
  bb_figure_set_field (bb_figure_add (self->figures, _("Cost per garment")), session, &bb_line_sheet_table,
                       bb_table_find_field (&bb_line_sheet_table, "cost_per_garment"), sheet, NULL);
}

static void
show_cautions (BbLineSheetCard   *self,
               BbSession         *session,
               const BbSheetLine *line)
{
  g_autofree char *caution = bb_job_line_row_dup_caution (session, line);
  g_autoptr (GPtrArray) steps = NULL;
  g_autofree char *text = NULL;

  gtk_label_set_label (self->caution_label, caution != NULL ? caution : "");
  gtk_widget_set_visible (GTK_WIDGET (self->caution_label), caution != NULL && line->revision != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->safety_box), line->revision != NULL);
  if (line->revision == NULL)
    return;
  steps = bb_words_of_step_cautions (line->revision);
  g_ptr_array_add (steps, NULL);
  text = g_strjoinv ("\n", (char **) steps->pdata);
  gtk_label_set_label (self->safety_label, text);
}

/**
 * bb_line_sheet_card_new:
 * @session: the session
 * @line: a line of a job
 * @sheet: what it takes
 *
 * Returns: (transfer floating): a card that shows it
 */
GtkWidget *
bb_line_sheet_card_new (BbSession         *session,
                        const BbSheetLine *line,
                        const BbLineSheet *sheet)
{
  BbLineSheetCard *self = g_object_new (BB_TYPE_LINE_SHEET_CARD, NULL);
  g_autofree char *garment = bb_job_line_row_dup_title (session, line);
  g_autofree char *title = g_strdup_printf ("%s · %s", sheet->code, garment);

  gtk_label_set_label (self->title_label, title);
  gtk_label_set_label (self->missing_label, sheet->missing != NULL ? sheet->missing : "");
  gtk_widget_set_visible (GTK_WIDGET (self->missing_label), sheet->missing != NULL);
  add_counts (self, session, line, sheet);
  show_cautions (self, session, line);

  return GTK_WIDGET (self);
}

static void
bb_line_sheet_card_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_line_sheet_card_parent_class)->dispose (object);
}

static void
bb_line_sheet_card_class_init (BbLineSheetCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_line_sheet_card_dispose;
  g_type_ensure (BB_TYPE_FIGURES);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-line-sheet-card.ui");
  gtk_widget_class_bind_template_child (widget_class, BbLineSheetCard, title_label);
  gtk_widget_class_bind_template_child (widget_class, BbLineSheetCard, missing_label);
  gtk_widget_class_bind_template_child (widget_class, BbLineSheetCard, caution_label);
  gtk_widget_class_bind_template_child (widget_class, BbLineSheetCard, figures);
  gtk_widget_class_bind_template_child (widget_class, BbLineSheetCard, safety_box);
  gtk_widget_class_bind_template_child (widget_class, BbLineSheetCard, safety_label);
}

static void
bb_line_sheet_card_init (BbLineSheetCard *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
