/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-job-sheet-view"

#include "bb-job-sheet-view.h"

#include <glib/gi18n-lib.h>

#include "bb-children.h"
#include "bb-figure.h"
#include "bb-job-line-row.h"
#include "bb-job-words.h"
#include "bb-line-sheet-card.h"
#include "bb-mix-card.h"
#include "bb-moment.h"
#include "bb-words.h"

struct _BbJobSheetView
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *caution_label;
  GtkLabel *missing_label;
  BbFigures *totals;
  GtkBox *mixes;
  GtkBox *lines;

  /* in the box */
  BbFigure *garments;
  BbFigure *time;
  BbFigure *finish;
  BbFigure *cost;
  BbFigure *sheets;
};

G_DEFINE_FINAL_TYPE (BbJobSheetView, bb_job_sheet_view, ADW_TYPE_BIN)

static void
show_time (BbJobSheetView   *self,
           const BbJobSheet *sheet)
{
  g_autofree char *time = bb_words_of_time (sheet->time_s);
  g_autofree char *now = bb_dup_now ();
  g_autofree char *end = bb_job_sheet_dup_finish (sheet, now);
  g_autofree char *finish = bb_words_of_moment (end);
  g_autofree char *bottleneck = NULL;
  const gboolean is_known = sheet->time_s > 0;

  if (sheet->bottleneck != NULL)
    bottleneck = g_strdup_printf (_("%s sets the pace"), sheet->bottleneck);
  bb_figure_set (self->time, is_known ? time : NULL, "",
                 is_known ? bottleneck : _("name each machine, and enter its times on Equipment"));
  bb_figure_set (self->finish, is_known ? finish : NULL, "", is_known ? _("if it begins now, without a pause") : NULL);
}

static void
show_totals (BbJobSheetView   *self,
             BbSession        *session,
             const BbJobSheet *sheet)
{
  g_autofree char *garments = g_strdup_printf ("%" G_GINT64_FORMAT, sheet->garments);
  g_autofree char *spares = bb_words_of_spares (sheet->garments, sheet->spares);
  g_autofree char *sheets = g_strdup_printf ("%" G_GINT64_FORMAT, sheet->sheets);
  g_autofree char *each = bb_quantity_format_with_unit (BB_QUANTITY_MONEY, sheet->cost_per_garment,
                                                        bb_session_get_units (session));
  g_autofree char *cost_note = g_strdup_printf (_("%s for each garment delivered"), each);

  bb_figure_set (self->garments, garments, "", spares);
  bb_figure_set (self->sheets, sheet->sheets != BB_INTEGER_NONE ? sheets : NULL, "",
                 _("used up, for drying and curing"));
  bb_figure_set_field (self->cost, session, &bb_job_sheet_table, bb_table_find_field (&bb_job_sheet_table, "cost"),
                       sheet, isnan (sheet->cost_per_garment) ? NULL : cost_note);
  show_time (self, sheet);
}

/* Who mixes and prints by the sheet must not have to find the line first that should not be printed. */
static void
show_cautions (BbJobSheetView    *self,
               BbSession         *session,
               const BbJobPapers *papers)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < papers->lines->len; i++)
    {
      const BbSheetLine *line = &g_array_index (papers->lines, BbSheetLine, i);
      g_autofree char *caution = line->revision != NULL ? bb_job_line_row_dup_caution (session, line) : NULL;

      if (caution != NULL)
        g_string_append_printf (text, "%s%s · %s: %s", text->len > 0 ? "\n" : "", line->line->code,
                                line->revision->code, caution);
    }
  gtk_label_set_label (self->caution_label, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->caution_label), text->len > 0);
}

/**
 * bb_job_sheet_view_show:
 * @self: a sheet
 * @session: the session
 * @papers: the job to show
 */
void
bb_job_sheet_view_show (BbJobSheetView    *self,
                        BbSession         *session,
                        const BbJobPapers *papers)
{
  const BbJobSheet *sheet = NULL;

  g_return_if_fail (BB_IS_JOB_SHEET_VIEW (self) && papers != NULL);

  sheet = papers->sheet;
  show_totals (self, session, sheet);
  gtk_widget_set_visible (GTK_WIDGET (self->finish),
                          !bb_job_state_is_over (papers->job->state));
  show_cautions (self, session, papers);
  gtk_label_set_label (self->missing_label, papers->lines->len == 0
                         ? _("What the job takes stands here once it has a line.")
                         : _("Not everything can be computed yet: see what the lines below lack."));
  gtk_widget_set_visible (GTK_WIDGET (self->missing_label), papers->lines->len == 0 || sheet->whole != 1);

  bb_children_empty_box (self->mixes);
  for (guint i = 0; i < sheet->mixes->len; i++)
    gtk_box_append (self->mixes, bb_mix_card_new (session, &g_array_index (sheet->mixes, BbMixSheet, i)));
  bb_children_empty_box (self->lines);
  for (guint i = 0; i < sheet->lines->len; i++)
    gtk_box_append (self->lines, bb_line_sheet_card_new (session, &g_array_index (papers->lines, BbSheetLine, i),
                                                         &g_array_index (sheet->lines, BbLineSheet, i)));
}

static void
bb_job_sheet_view_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_job_sheet_view_parent_class)->dispose (object);
}

static void
bb_job_sheet_view_class_init (BbJobSheetViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_job_sheet_view_dispose;
  g_type_ensure (BB_TYPE_FIGURES);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-job-sheet-view.ui");
  gtk_widget_class_bind_template_child (widget_class, BbJobSheetView, caution_label);
  gtk_widget_class_bind_template_child (widget_class, BbJobSheetView, missing_label);
  gtk_widget_class_bind_template_child (widget_class, BbJobSheetView, totals);
  gtk_widget_class_bind_template_child (widget_class, BbJobSheetView, mixes);
  gtk_widget_class_bind_template_child (widget_class, BbJobSheetView, lines);
}

static void
bb_job_sheet_view_init (BbJobSheetView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));

  self->garments = bb_figure_add (self->totals, _("Garments to set out"));
  self->time = bb_figure_add (self->totals, _("Time in all"));
  self->finish = bb_figure_add (self->totals, _("Done at"));
  self->cost = bb_figure_add (self->totals, _("Cost in all"));
  self->sheets = bb_figure_add (self->totals, _("Cover sheets"));
}
