/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-wash-report-private.h"

#include <glib/gi18n-lib.h>

static char *
describe_band (const BbSurvivalStep *step)
{
  /* Translators: the ends of an interval, in per cent. */
  return isnan (step->low) ? g_strdup ("–")
                           : g_strdup_printf (_("%.1f to %.1f %%"), step->low * 100.0, step->high * 100.0);
}

/**
 * _bb_wash_report_add_life:
 * @self: a report
 *
 * Adds the figures of the chart of survival, where a specimen failed.
 */
void
_bb_wash_report_add_life (const BbWashReport *self)
{
  const BbColumn columns[] = {
    { _("Cycles"), 1.0, TRUE }, { _("Specimens in the test"), 1.5, TRUE }, { _("Failed"), 1.0, TRUE },
    { _("Still good"), 1.2, TRUE }, { _("95 % band"), 1.6, TRUE },
  };
  const BbWashLifeOut *life = self->evidence->life;
  BbBlock *table = NULL;

  if (life == NULL || life->steps == NULL || life->steps->len == 0)
    return;

  table = bb_table_new (columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < life->steps->len; i++)
    {
      const BbSurvivalStep *step = &g_array_index (life->steps, BbSurvivalStep, i);
      g_autofree char *cycles = g_strdup_printf ("%.0f", step->cycles);
      g_autofree char *at_risk = g_strdup_printf ("%" G_GINT64_FORMAT, step->at_risk);
      g_autofree char *events = g_strdup_printf ("%" G_GINT64_FORMAT, step->events);
      g_autofree char *survival = g_strdup_printf ("%.1f %%", step->survival * 100.0);
      g_autofree char *band = describe_band (step);
      const char *cells[] = { cycles, at_risk, events, survival, band, NULL };

      bb_table_add (table, (GStrv) (gpointer) cells, NULL);
    }
  bb_document_take (self->document, bb_heading_new (_("Still good by cycles"), 2));
  bb_document_take (self->document, table);
}
