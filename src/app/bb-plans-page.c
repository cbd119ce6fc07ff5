/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-plans-page"

#include "bb-plans-page.h"

#include <glib/gi18n-lib.h>

#include "bb-exchange.h"
#include "bb-history-view.h"
#include "bb-plan-view.h"
#include "bb-plan-words.h"

struct _BbPlansPage
{
  BbCataloguePage parent_instance;

  BbPlanView *view;
  BbHistoryView *history;
};

G_DEFINE_FINAL_TYPE (BbPlansPage, bb_plans_page, BB_TYPE_CATALOGUE_PAGE)

static void
fill (BbRow         *row,
      BbSession     *session,
      gconstpointer  record)
{
  const BbWashPlan *plan = record;
  g_autofree char *description = bb_plan_words_of_method (plan, bb_session_get_units (session));

  bb_row_set (row, plan->name, plan->code, description);
}

static char *
count (guint n)
{
  return g_strdup_printf (ngettext ("%u wash plan", "%u wash plans", n), n);
}

static const BbCatalogueInfo info = {
  .finder = {
    .table = &bb_wash_plan_table,
    .fill = fill,
    .title = N_("Wash plans"),
    .search_title = N_("Search wash plans"),
    .search_hint = N_("Standard, procedure, drying…"),
    .count = count,
  },
  .add_title = N_("Add a Wash Plan"),
  .other_title = N_("Add the Published Methods"),
  .other_action = "plans.add-published",
  .icon_name = "blankbook-plans-symbolic",
  .empty_title = N_("No Wash Plans Yet"),
  .empty_text = N_("A plan says how a specimen is washed and dried, and after how many washes it is graded. Add the "
                   "published methods, of which this program knows parameters, or how the shop itself washes."),
};

static gboolean
write_published (BbBook   *book,
                 gpointer  data,
                 GError  **error)
{
  return bb_exchange_add_plans (book, data, error);
}

static void
published_added_cb (GObject      *source,
                    GAsyncResult *result,
                    gpointer      data)
{
  BbSession *session = BB_SESSION (source);
  const guint n_added = ((const BbImported *) data)->n_added;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;

  if (!bb_session_write_finish (session, result, &error))
    bb_session_report (session, error);
  else
    {
      if (n_added > 0)
        text = g_strdup_printf (ngettext ("%u wash plan was added.", "%u wash plans were added.", n_added), n_added);
      else
        text = g_strdup (_("All of them are in the book already. What was withdrawn stays withdrawn."));
      bb_session_say (session, text);
    }
  g_atomic_rc_box_release (data);
}

static void
add_published_action (GtkWidget  *widget,
                      const char *name,
                      GVariant   *parameter)
{
  BbImported *imported = g_atomic_rc_box_new0 (BbImported);

  (void) name;
  (void) parameter;

  bb_session_write_async (bb_page_get_session (BB_PAGE (widget)), write_published,
                          g_atomic_rc_box_acquire (imported), g_atomic_rc_box_release, published_added_cb, imported);
}

static void
copy_cb (BbPlansPage *self,
         gpointer     own)
{
  bb_catalogue_edit (bb_catalogue_page_get_catalogue (BB_CATALOGUE_PAGE (self)), &bb_wash_plan_table,
                     bb_record_copy (&bb_wash_plan_table, own), NULL);
}

static void
bb_plans_page_chosen (BbCataloguePage *page,
                      gconstpointer    record)
{
  BbPlansPage *self = BB_PLANS_PAGE (page);
  BbSession *session = bb_page_get_session (BB_PAGE (page));
  const BbWashPlan *plan = record;

  bb_plan_view_show (self->view, session, plan);
  bb_history_view_show (self->history, session, &bb_wash_plan_table, plan->id);
}

static void
bb_plans_page_build (BbCataloguePage *page,
                     BbCatalogue     *catalogue)
{
  BbPlansPage *self = BB_PLANS_PAGE (page);

  self->view = BB_PLAN_VIEW (bb_plan_view_new ());
  g_signal_connect_object (self->view, "copy", G_CALLBACK (copy_cb), self, G_CONNECT_SWAPPED);
  bb_catalogue_add_above (catalogue, GTK_WIDGET (self->view));
  self->history = BB_HISTORY_VIEW (bb_history_view_new ());
  bb_catalogue_add_below (catalogue, GTK_WIDGET (self->history));
}

static void
bb_plans_page_class_init (BbPlansPageClass *klass)
{
  BbCataloguePageClass *page_class = BB_CATALOGUE_PAGE_CLASS (klass);

  page_class->info = &info;
  page_class->build = bb_plans_page_build;
  page_class->chosen = bb_plans_page_chosen;
  gtk_widget_class_install_action (GTK_WIDGET_CLASS (klass), "plans.add-published", NULL, add_published_action);
}

static void
bb_plans_page_init (BbPlansPage *self)
{
  (void) self;
}
