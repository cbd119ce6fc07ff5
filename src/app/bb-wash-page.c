/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-wash-page"

#include "bb-wash-page.h"

#include <glib/gi18n-lib.h>

#include "bb-catalogue.h"
#include "bb-proof-charts.h"
#include "bb-readings.h"
#include "bb-scans.h"
#include "bb-show.h"
#include "bb-verdict-badge.h"

struct _BbWashPage
{
  BbPage parent_instance;

  /* template */
  BbCatalogue *catalogue;

  BbReadings *readings;
  BbProofCharts *charts;
  BbScans *scans;
};

G_DEFINE_FINAL_TYPE (BbWashPage, bb_wash_page, BB_TYPE_PAGE)

/* The colour first: the recipe's name is long, and specimens of one recipe differ in it. */
static char *
describe (const BbWashLine *line)
{
  const char *recipe = line->recipe != NULL ? line->recipe : "";

  return line->colourway != NULL ? g_strjoin (" · ", line->colourway, recipe, NULL) : g_strdup (recipe);
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
  const BbRevision *revision = wash->revision;
  g_autofree char *description = describe (wash);

  (void) session;

  bb_row_set (row, test->code, revision != NULL ? revision->code : "", description);
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
};

static void
chosen_cb (BbWashPage *self)
{
  const BbWashTest *test = bb_catalogue_get_chosen (self->catalogue);

  g_autofree char *subtitle = NULL;

  if (test == NULL || self->readings == NULL)
    return;

  bb_readings_show (self->readings, bb_page_get_session (BB_PAGE (self)), test->id);
  bb_proof_charts_show (self->charts, bb_page_get_session (BB_PAGE (self)), test->revision, test->id);
  bb_scans_show (self->scans, bb_page_get_session (BB_PAGE (self)), test->id);
  subtitle = bb_readings_dup_subject (self->readings);
  bb_catalogue_set_subtitle (self->catalogue, subtitle);
}

static void
edit_reading_cb (BbWashPage *self,
                 gpointer    reading)
{
  bb_catalogue_edit (self->catalogue, &bb_reading_table, bb_record_copy (&bb_reading_table, reading),
                     bb_table_find_field (&bb_reading_table, "wash_test"));
}

static void
bb_wash_page_start (BbPage *page)
{
  BbWashPage *self = BB_WASH_PAGE (page);

  /* Below the readings: each goes above the one before. */
  self->charts = BB_PROOF_CHARTS (bb_proof_charts_new ());
  bb_catalogue_add_above (self->catalogue, GTK_WIDGET (self->charts));
  self->readings = BB_READINGS (bb_readings_new ());
  g_signal_connect_object (self->readings, "edit", G_CALLBACK (edit_reading_cb), self, G_CONNECT_SWAPPED);
  bb_catalogue_add_above (self->catalogue, GTK_WIDGET (self->readings));
  self->scans = BB_SCANS (bb_scans_new ());
  bb_catalogue_add_below (self->catalogue, GTK_WIDGET (self->scans));
  bb_catalogue_start (self->catalogue, bb_page_get_session (page), &info);
}

static void
bb_wash_page_refresh (BbPage *page)
{
  bb_catalogue_refresh (BB_WASH_PAGE (page)->catalogue);
}

static void
bb_wash_page_show_record (BbPage *page,
                          gint64  id)
{
  bb_catalogue_show (BB_WASH_PAGE (page)->catalogue, id);
}

static void
bb_wash_page_focus (BbPage *page)
{
  bb_catalogue_focus (BB_WASH_PAGE (page)->catalogue);
}

static void
bb_wash_page_add (BbPage *page)
{
  gtk_widget_activate_action (GTK_WIDGET (BB_WASH_PAGE (page)->catalogue), "catalogue.add", NULL);
}

static void
bb_wash_page_edit (BbPage *page)
{
  gtk_widget_activate_action (GTK_WIDGET (BB_WASH_PAGE (page)->catalogue), "catalogue.edit", NULL);
}

static void
bb_wash_page_dispose (GObject *object)
{
  BB_WASH_PAGE (object)->readings = NULL;
  BB_WASH_PAGE (object)->charts = NULL;
  BB_WASH_PAGE (object)->scans = NULL;
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_wash_page_parent_class)->dispose (object);
}

static void
bb_wash_page_class_init (BbWashPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  BbPageClass *page_class = BB_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_wash_page_dispose;
  page_class->start = bb_wash_page_start;
  page_class->refresh = bb_wash_page_refresh;
  page_class->show_record = bb_wash_page_show_record;
  page_class->focus = bb_wash_page_focus;
  page_class->find = bb_wash_page_focus;
  page_class->add = bb_wash_page_add;
  page_class->edit = bb_wash_page_edit;

  g_type_ensure (BB_TYPE_CATALOGUE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-wash-page.ui");
  gtk_widget_class_bind_template_child (widget_class, BbWashPage, catalogue);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
}

static void
bb_wash_page_init (BbWashPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
