/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-wash-page"

#include "bb-wash-page.h"

#include <glib/gi18n-lib.h>

#include "bb-proof-charts.h"
#include "bb-readings.h"
#include "bb-scans.h"
#include "bb-show.h"
#include "bb-verdict-badge.h"

struct _BbWashPage
{
  BbCataloguePage parent_instance;

  BbReadings *readings;
  BbProofCharts *charts;
  BbScans *scans;
};

G_DEFINE_FINAL_TYPE (BbWashPage, bb_wash_page, BB_TYPE_CATALOGUE_PAGE)

/* The recipe's name comes last, as it is long, and specimens of one recipe differ in colour and revision. */
static char *
describe (const BbWashLine *line)
{
  const BbRevision *revision = line->revision;
  const char *parts[4] = { NULL };
  guint n = 0;

  if (line->colourway != NULL)
    parts[n++] = line->colourway;
  if (revision != NULL)
    parts[n++] = revision->code;
  if (line->recipe != NULL)
    parts[n++] = line->recipe;

  return g_strjoinv (" · ", (GStrv) parts);
}

static GtkWidget *
ensure_badge (BbRow *row)
{
  if (bb_row_get_badge (row) == NULL)
    bb_row_set_badge (row, bb_verdict_badge_new ());

  return bb_row_get_badge (row);
}

static void
fill (BbRow         *row,
      BbSession     *session,
      gconstpointer  record)
{
  const BbWashLine *wash = record;
  const BbWashTest *test = wash->test;
  g_autofree char *description = describe (wash);

  (void) session;

  bb_row_set (row, test->code, "", description);
  bb_row_set_garment (row, wash->srgb, BB_SHADE_ANY);
  bb_verdict_badge_show_due (BB_VERDICT_BADGE (ensure_badge (row)), wash);
}

static char *
count (guint n)
{
  return g_strdup_printf (ngettext ("%u wash test", "%u wash tests", n), n);
}

static const BbCatalogueInfo info = {
  .finder = {
    .table = &bb_wash_test_table,
    .fill = fill,
    .title = N_("Wash tests"),
    .search_title = N_("Search wash tests"),
    .search_hint = N_("Specimen, recipe, colour…"),
    .count = count,
    .by_recipe = TRUE,
    .by_due = TRUE,
  },
  .add_title = N_("Add a Wash Test"),
  .icon_name = "blankbook-wash-symbolic",
  .empty_title = N_("No Wash Tests Yet"),
  .empty_text = N_("Print a specimen by a recipe, label it, and add it here. After its washes, grade it against the "
                   "grey scales: that is what a proven recipe rests on."),
  .has_labels = TRUE,
};

static void
bb_wash_page_chosen (BbCataloguePage *page,
                     gconstpointer    record)
{
  BbWashPage *self = BB_WASH_PAGE (page);
  const BbWashTest *test = record;
  g_autofree char *subtitle = NULL;

  bb_readings_show (self->readings, bb_page_get_session (BB_PAGE (self)), test->id);
  bb_proof_charts_show (self->charts, bb_page_get_session (BB_PAGE (self)), test->revision, test->id);
  bb_scans_show (self->scans, bb_page_get_session (BB_PAGE (self)), test->id);
  subtitle = bb_readings_dup_subject (self->readings);
  bb_catalogue_set_subtitle (bb_catalogue_page_get_catalogue (page), subtitle);
}

static void
edit_reading_cb (BbWashPage *self,
                 gpointer    reading)
{
  bb_catalogue_page_edit_part (BB_CATALOGUE_PAGE (self), &bb_reading_table, reading, "wash_test");
}

static void
bb_wash_page_build (BbCataloguePage *page,
                    BbCatalogue     *catalogue)
{
  BbWashPage *self = BB_WASH_PAGE (page);

  /* Below the readings: each goes above the one before. */
  self->charts = BB_PROOF_CHARTS (bb_proof_charts_new ());
  bb_catalogue_add_above (catalogue, GTK_WIDGET (self->charts));
  self->readings = BB_READINGS (bb_readings_new ());
  g_signal_connect_object (self->readings, "edit", G_CALLBACK (edit_reading_cb), self, G_CONNECT_SWAPPED);
  bb_catalogue_add_above (catalogue, GTK_WIDGET (self->readings));
  self->scans = BB_SCANS (bb_scans_new ());
  bb_catalogue_add_below (catalogue, GTK_WIDGET (self->scans));
}

static void
bb_wash_page_class_init (BbWashPageClass *klass)
{
  BbCataloguePageClass *page_class = BB_CATALOGUE_PAGE_CLASS (klass);

  page_class->info = &info;
  page_class->build = bb_wash_page_build;
  page_class->chosen = bb_wash_page_chosen;
}

static void
bb_wash_page_init (BbWashPage *self)
{
  (void) self;
}
