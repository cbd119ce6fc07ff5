/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-report-window"

#include "bb-report-window.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-document-view.h"
#include "bb-moment.h"
#include "bb-signal.h"
#include "bb-toasts.h"
#include "bb-wash-report.h"

struct _BbReportWindow
{
  AdwWindow parent_instance;

  /* template */
  AdwToastOverlay *toasts;
  GtkDropDown *revision_drop_down;
  GtkDropDown *specimen_drop_down;
  GtkEditable *customer_entry;
  GtkTextView *remark_view;
  GtkDropDown *paper_drop_down;
  GtkDropDown *units_drop_down;
  BbDocumentView *document;

  /* owned */
  BbSession *session;
  GPtrArray *revisions;
  GPtrArray *tests;
};

G_DEFINE_FINAL_TYPE (BbReportWindow, bb_report_window, ADW_TYPE_WINDOW)

/* What the report is made of: read on another thread, while the window goes on. */
typedef struct {
  BbWashReportAbout about;
  BbUnitContext units;
  char *today;
  char *customer;
  char *remark;
} Order;

static void
order_clear (gpointer data)
{
  Order *self = data;

  g_free (self->today);
  g_free (self->customer);
  g_free (self->remark);
}

static gpointer
make_report (BbBook    *book,
             gpointer   data,
             GError   **error)
{
  return bb_wash_report_new (book, &((const Order *) data)->about, error);
}

static char *
dup_remark (BbReportWindow *self)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (self->remark_view);
  GtkTextIter start;
  GtkTextIter end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);

  return g_strstrip (gtk_text_buffer_get_text (buffer, &start, &end, FALSE));
}

static const BbRevision *
get_revision (BbReportWindow *self)
{
  const guint position = gtk_drop_down_get_selected (self->revision_drop_down);

  return position < self->revisions->len ? self->revisions->pdata[position] : NULL;
}

/* The first line is for all of them. */
static const BbWashTest *
get_test (BbReportWindow *self)
{
  const guint position = gtk_drop_down_get_selected (self->specimen_drop_down);

  return position > 0 && position <= self->tests->len ? self->tests->pdata[position - 1] : NULL;
}

static Order *
make_order (BbReportWindow *self)
{
  Order *order = g_atomic_rc_box_new0 (Order);
  const BbWashTest *test = get_test (self);

  order->today = bb_dup_today ();
  order->customer = g_strstrip (g_strdup (gtk_editable_get_text (self->customer_entry)));
  order->remark = dup_remark (self);
  order->units = bb_session_copy_units (self->session);
  order->units.system = gtk_drop_down_get_selected (self->units_drop_down) == 1 ? BB_UNITS_US : BB_UNITS_METRIC;
  order->about = (BbWashReportAbout) {
    .revision = get_revision (self)->id, .wash_test = test != NULL ? test->id : 0, .today = order->today,
    .units = &order->units, .customer = order->customer, .remark = order->remark,
  };

  return order;
}

static void
show_report (BbReportWindow *self)
{
  const BbRevision *revision = get_revision (self);
  const BbWashTest *test = NULL;
  g_autoptr (BbDocumentSource) source = NULL;
  g_autofree char *name = NULL;

  if (revision == NULL)
    return;
  test = get_test (self);
  name = g_strdup_printf (_("wash-report-%s"), test != NULL ? test->code : revision->code);
  /* A code may have what a file's name can't. */
  g_strdelimit (name, G_DIR_SEPARATOR_S, '-');
  source = bb_document_source_new (self->session, make_report, make_order (self), order_clear,
                                   gtk_drop_down_get_selected (self->paper_drop_down) == 1 ? BB_PAPER_LETTER
                                                                                           : BB_PAPER_A4);
  bb_document_view_show (self->document, source, name);
}

static void
changed_cb (BbReportWindow *self)
{
  if (self->session != NULL)
    show_report (self);
}

static void
fill_tests (BbReportWindow *self,
            gint64          chosen)
{
  g_autoptr (GtkStringList) lines = gtk_string_list_new (NULL);
  const BbRevision *revision = get_revision (self);
  g_autoptr (GError) error = NULL;
  guint selected = 0;

  g_clear_pointer (&self->tests, g_ptr_array_unref);
  if (revision != NULL)
    self->tests = bb_book_load_referring (bb_session_get_book (self->session), &bb_wash_test_table,
                                          &bb_revision_table, revision->id, &error);
  if (error != NULL)
    bb_session_report (self->session, error);
  if (self->tests == NULL)
    self->tests = g_ptr_array_new ();

  gtk_string_list_append (lines, _("All specimens"));
  for (guint i = 0; i < self->tests->len; i++)
    {
      const BbWashTest *test = self->tests->pdata[i];

      gtk_string_list_append (lines, test->code);
      if (test->id == chosen)
        selected = i + 1;
    }
  g_signal_handlers_block_by_func (self->specimen_drop_down, BB_HANDLER (changed_cb), self);
  gtk_drop_down_set_model (self->specimen_drop_down, G_LIST_MODEL (lines));
  gtk_drop_down_set_selected (self->specimen_drop_down, selected);
  g_signal_handlers_unblock_by_func (self->specimen_drop_down, BB_HANDLER (changed_cb), self);
}

static void
revision_chosen_cb (BbReportWindow *self)
{
  if (self->session == NULL)
    return;
  fill_tests (self, 0);
  show_report (self);
}

/* In the order of their numbers. */
static void
fill_revisions (BbReportWindow *self,
                gint64          chosen)
{
  g_autoptr (GtkStringList) lines = gtk_string_list_new (NULL);
  guint selected = 0;

  for (guint i = 0; i < self->revisions->len; i++)
    {
      const BbRevision *revision = self->revisions->pdata[i];

      gtk_string_list_append (lines, revision->code);
      if (revision->id == chosen)
        selected = i;
    }
  g_signal_handlers_block_by_func (self->revision_drop_down, BB_HANDLER (revision_chosen_cb), self);
  gtk_drop_down_set_model (self->revision_drop_down, G_LIST_MODEL (lines));
  gtk_drop_down_set_selected (self->revision_drop_down, selected);
  g_signal_handlers_unblock_by_func (self->revision_drop_down, BB_HANDLER (revision_chosen_cb), self);
}

static gboolean
load_revisions (BbReportWindow *self,
                gint64          id,
                GError        **error)
{
  BbBook *book = bb_session_get_book (self->session);
  g_autoptr (BbRevision) revision = bb_book_load (book, &bb_revision_table, id, error);

  if (revision == NULL)
    return FALSE;
  self->revisions = bb_book_load_referring (book, &bb_revision_table, &bb_recipe_table, revision->recipe, error);
  if (self->revisions == NULL)
    return FALSE;
  bb_records_sort (&bb_revision_table, "number", self->revisions);

  return TRUE;
}

static void
say_cb (BbReportWindow *self,
        const char     *text)
{
  bb_toasts_say (self->toasts, text);
}

/**
 * bb_report_window_new:
 * @parent: (nullable): the window that asks
 * @session: the session
 * @revision: key of the revision to report on first
 * @wash_test: key of the specimen to report on first; 0 for all of them
 *
 * Returns: (transfer none) (nullable): a window, not yet presented; %NULL where the book could not be read, which is
 *   said
 */
GtkWidget *
bb_report_window_new (GtkWindow *parent,
                      BbSession *session,
                      gint64     revision,
                      gint64     wash_test)
{
  BbReportWindow *self = g_object_new (BB_TYPE_REPORT_WINDOW, "transient-for", parent, NULL);
  const gboolean is_us = bb_session_get_units (session)->system == BB_UNITS_US;
  g_autoptr (GError) error = NULL;

  gtk_drop_down_set_selected (self->paper_drop_down, is_us ? 1 : 0);
  gtk_drop_down_set_selected (self->units_drop_down, is_us ? 1 : 0);
  self->session = g_object_ref (session);
  if (!load_revisions (self, revision, &error))
    {
      bb_session_report (session, error);
      gtk_window_destroy (GTK_WINDOW (self));
      return NULL;
    }
  fill_revisions (self, revision);
  fill_tests (self, wash_test);
  show_report (self);

  return GTK_WIDGET (self);
}

static void
bb_report_window_dispose (GObject *object)
{
  BbReportWindow *self = BB_REPORT_WINDOW (object);

  g_clear_object (&self->session);
  g_clear_pointer (&self->revisions, g_ptr_array_unref);
  g_clear_pointer (&self->tests, g_ptr_array_unref);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_REPORT_WINDOW);

  G_OBJECT_CLASS (bb_report_window_parent_class)->dispose (object);
}

static void
bb_report_window_class_init (BbReportWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_report_window_dispose;
  g_type_ensure (BB_TYPE_DOCUMENT_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-report-window.ui");
  gtk_widget_class_bind_template_child (widget_class, BbReportWindow, toasts);
  gtk_widget_class_bind_template_child (widget_class, BbReportWindow, revision_drop_down);
  gtk_widget_class_bind_template_child (widget_class, BbReportWindow, specimen_drop_down);
  gtk_widget_class_bind_template_child (widget_class, BbReportWindow, customer_entry);
  gtk_widget_class_bind_template_child (widget_class, BbReportWindow, remark_view);
  gtk_widget_class_bind_template_child (widget_class, BbReportWindow, paper_drop_down);
  gtk_widget_class_bind_template_child (widget_class, BbReportWindow, units_drop_down);
  gtk_widget_class_bind_template_child (widget_class, BbReportWindow, document);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, revision_chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, say_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
bb_report_window_init (BbReportWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  bb_compat_set_name (GTK_WIDGET (self->revision_drop_down), _("Revision"));
  bb_compat_set_name (GTK_WIDGET (self->specimen_drop_down), _("Specimens"));
  bb_compat_set_name (GTK_WIDGET (self->paper_drop_down), _("Paper"));
  bb_compat_set_name (GTK_WIDGET (self->units_drop_down), _("Units"));
}
