/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-jobs-page"

#include "bb-jobs-page.h"

#include <glib/gi18n-lib.h>

#include "bb-evidence-load.h"
#include "bb-job-card-fill.h"
#include "bb-job-detail.h"
#include "bb-line-aside.h"
#include "bb-run-panel.h"
#include "bb-show.h"
#include "bb-words.h"

struct _BbJobsPage
{
  BbCataloguePage parent_instance;

  /* in the catalogue */
  BbJobDetail *detail;
  BbRunPanel *runs;
};

G_DEFINE_FINAL_TYPE (BbJobsPage, bb_jobs_page, BB_TYPE_CATALOGUE_PAGE)

static char *
count (guint n)
{
  return g_strdup_printf (ngettext ("%u job", "%u jobs", n), n);
}

static const BbCatalogueInfo info = {
  .finder = {
    .table = &bb_job_table,
    .fill = bb_job_card_fill,
    .title = N_("Jobs"),
    .search_title = N_("Search jobs"),
    .search_hint = N_("Number, customer, artwork, garment…"),
    .count = count,
    .by_state = TRUE,
  },
  .add_title = N_("Add a Job"),
  .icon_name = "blankbook-jobs-symbolic",
  .empty_title = N_("No Jobs Yet"),
  .empty_text = N_("Take an order: who wants it and by when, then a line for each garment, colour and print size. The "
                   "page finds the recipe and says what the job takes."),
  .has_labels = TRUE,
};

static void
bb_jobs_page_chosen (BbCataloguePage *page,
                     gconstpointer    record)
{
  BbSession *session = bb_page_get_session (BB_PAGE (page));
  const BbJob *job = record;
  g_autofree char *customer = bb_show_name (session, &bb_customer_table, job->customer);
  g_autofree char *subtitle = job->title != NULL ? g_strjoin (" · ", customer, job->title, NULL) : g_strdup (customer);

  bb_job_detail_show (BB_JOBS_PAGE (page)->detail, session, job->id);
  bb_run_panel_show (BB_JOBS_PAGE (page)->runs, session, job->id);
  bb_catalogue_set_fixed (bb_catalogue_page_get_catalogue (page), bb_job_state_is_over (job->state));
  bb_catalogue_set_subtitle (bb_catalogue_page_get_catalogue (page), subtitle);
}

static void
edit_line_cb (BbJobsPage *self,
              gpointer    line)
{
  bb_catalogue_edit (bb_catalogue_page_get_catalogue (BB_CATALOGUE_PAGE (self)), &bb_job_line_table,
                     bb_record_copy (&bb_job_line_table, line), NULL);
}

static void
bb_jobs_page_build (BbCataloguePage *page,
                    BbCatalogue     *catalogue)
{
  BbJobsPage *self = BB_JOBS_PAGE (page);

  self->detail = BB_JOB_DETAIL (bb_job_detail_new ());
  g_signal_connect_object (self->detail, "edit", G_CALLBACK (edit_line_cb), self, G_CONNECT_SWAPPED);
  self->runs = BB_RUN_PANEL (bb_run_panel_new ());
  bb_job_detail_add_page (self->detail, GTK_WIDGET (self->runs), "runs", _("Runs"));
  bb_catalogue_add_above (catalogue, GTK_WIDGET (self->detail));
  bb_catalogue_set_aside (catalogue, &bb_job_line_table, bb_line_aside_new);
}

static void
bb_jobs_page_class_init (BbJobsPageClass *klass)
{
  BbCataloguePageClass *page_class = BB_CATALOGUE_PAGE_CLASS (klass);

  page_class->info = &info;
  page_class->build = bb_jobs_page_build;
  page_class->chosen = bb_jobs_page_chosen;
}

static void
bb_jobs_page_init (BbJobsPage *self)
{
  (void) self;
}
