/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-jobs-page"

#include "bb-jobs-page.h"

#include <glib/gi18n-lib.h>

#include "bb-catalogue.h"
#include "bb-evidence-load.h"
#include "bb-job-card-fill.h"
#include "bb-job-detail.h"
#include "bb-run-panel.h"
#include "bb-show.h"
#include "bb-words.h"

struct _BbJobsPage
{
  BbPage parent_instance;

  /* template */
  BbCatalogue *catalogue;

  BbJobDetail *detail;
  BbRunPanel *runs;
};

G_DEFINE_FINAL_TYPE (BbJobsPage, bb_jobs_page, BB_TYPE_PAGE)

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
  },
  .add_title = N_("Add a Job"),
  .icon_name = "blankbook-jobs-symbolic",
  .empty_title = N_("No Jobs Yet"),
  .empty_text = N_("Take an order: who wants it and by when, then a line for each garment, colour and print size. The "
                   "page finds the recipe and says what the job takes."),
  .has_labels = TRUE,
};

static void
chosen_cb (BbJobsPage *self)
{
  BbSession *session = bb_page_get_session (BB_PAGE (self));
  const BbJob *job = bb_catalogue_get_chosen (self->catalogue);
  g_autofree char *customer = NULL;
  g_autofree char *subtitle = NULL;

  if (job == NULL || self->detail == NULL)
    return;

  bb_job_detail_show (self->detail, session, job->id);
  bb_run_panel_show (self->runs, session, job->id);
  customer = bb_show_name (session, &bb_customer_table, job->customer);
  subtitle = job->title != NULL ? g_strjoin (" · ", customer, job->title, NULL) : g_strdup (customer);
  bb_catalogue_set_subtitle (self->catalogue, subtitle);
}

static void
edit_line_cb (BbJobsPage *self,
              gpointer    line)
{
  bb_catalogue_edit (self->catalogue, &bb_job_line_table, bb_record_copy (&bb_job_line_table, line), NULL);
}

static void
bb_jobs_page_start (BbPage *page)
{
  BbJobsPage *self = BB_JOBS_PAGE (page);

  self->detail = BB_JOB_DETAIL (bb_job_detail_new ());
  g_signal_connect_object (self->detail, "edit", G_CALLBACK (edit_line_cb), self, G_CONNECT_SWAPPED);
  self->runs = BB_RUN_PANEL (bb_run_panel_new ());
  bb_job_detail_add_page (self->detail, GTK_WIDGET (self->runs), "runs", _("Runs"));
  bb_catalogue_add_above (self->catalogue, GTK_WIDGET (self->detail));
  bb_catalogue_start (self->catalogue, bb_page_get_session (page), &info);
}

static void
bb_jobs_page_refresh (BbPage *page)
{
  bb_catalogue_refresh (BB_JOBS_PAGE (page)->catalogue);
}

static void
bb_jobs_page_show_record (BbPage *page,
                          gint64  id)
{
  bb_catalogue_show (BB_JOBS_PAGE (page)->catalogue, id);
}

static void
bb_jobs_page_focus (BbPage *page)
{
  bb_catalogue_focus (BB_JOBS_PAGE (page)->catalogue);
}

static void
bb_jobs_page_add (BbPage *page)
{
  gtk_widget_activate_action (GTK_WIDGET (BB_JOBS_PAGE (page)->catalogue), "catalogue.add", NULL);
}

static void
bb_jobs_page_edit (BbPage *page)
{
  gtk_widget_activate_action (GTK_WIDGET (BB_JOBS_PAGE (page)->catalogue), "catalogue.edit", NULL);
}

static void
bb_jobs_page_dispose (GObject *object)
{
  BB_JOBS_PAGE (object)->detail = NULL;
  BB_JOBS_PAGE (object)->runs = NULL;
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_jobs_page_parent_class)->dispose (object);
}

static void
bb_jobs_page_class_init (BbJobsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  BbPageClass *page_class = BB_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_jobs_page_dispose;
  page_class->start = bb_jobs_page_start;
  page_class->refresh = bb_jobs_page_refresh;
  page_class->show_record = bb_jobs_page_show_record;
  page_class->focus = bb_jobs_page_focus;
  page_class->find = bb_jobs_page_focus;
  page_class->add = bb_jobs_page_add;
  page_class->edit = bb_jobs_page_edit;

  g_type_ensure (BB_TYPE_CATALOGUE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-jobs-page.ui");
  gtk_widget_class_bind_template_child (widget_class, BbJobsPage, catalogue);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
}

static void
bb_jobs_page_init (BbJobsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
