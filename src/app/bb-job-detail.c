/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-job-detail"

#include "bb-job-detail.h"

#include <glib/gi18n-lib.h>

#include "bb-job-head.h"
#include "bb-job-lines.h"
#include "bb-job-papers.h"
#include "bb-job-sheet-view.h"
#include "bb-moment.h"

struct _BbJobDetail
{
  AdwBin parent_instance;

  /* template */
  BbJobHead *head;
  GtkStack *stack;
  BbJobLines *lines;
  BbJobSheetView *sheet;
};

G_DEFINE_FINAL_TYPE (BbJobDetail, bb_job_detail, ADW_TYPE_BIN)

enum {
  SIGNAL_EDIT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
edit_cb (BbJobDetail *self,
         gpointer     line)
{
  g_signal_emit (self, signals[SIGNAL_EDIT], 0, line);
}

/**
 * bb_job_detail_new:
 *
 * Returns: (transfer floating): the detail of no job
 */
GtkWidget *
bb_job_detail_new (void)
{
  return g_object_new (BB_TYPE_JOB_DETAIL, NULL);
}

/**
 * bb_job_detail_show:
 * @self: a detail
 * @session: the session
 * @job: key of the job to show
 *
 * Shows a job; nothing, and says why, where it can't be read.
 */
void
bb_job_detail_show (BbJobDetail *self,
                    BbSession   *session,
                    gint64       job)
{
  g_autofree char *today = bb_dup_today ();
  g_autoptr (GError) error = NULL;
  g_autoptr (BbJobPapers) papers = NULL;

  g_return_if_fail (BB_IS_JOB_DETAIL (self));

  papers = bb_job_papers_load (bb_session_get_book (session), job, today, &error);
  /* Or a button would move the job on that was shown before. */
  gtk_widget_set_visible (GTK_WIDGET (self), papers != NULL);
  if (papers == NULL)
    {
      bb_session_report (session, error);
      return;
    }
  bb_job_head_show (self->head, session, papers->job);
  bb_job_lines_show (self->lines, session, papers);
  bb_job_sheet_view_show (self->sheet, session, papers);
}

/**
 * bb_job_detail_add_page:
 * @self: a detail
 * @page: (transfer floating): what else belongs to the job
 * @name: the page's name in the stack
 * @title: what a person reads, translated
 */
void
bb_job_detail_add_page (BbJobDetail *self,
                        GtkWidget   *page,
                        const char  *name,
                        const char  *title)
{
  g_return_if_fail (BB_IS_JOB_DETAIL (self));

  gtk_stack_add_titled (self->stack, page, name, title);
}

static void
bb_job_detail_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_job_detail_parent_class)->dispose (object);
}

static void
bb_job_detail_class_init (BbJobDetailClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_job_detail_dispose;

  /**
   * BbJobDetail::edit:
   * @line: the line to edit; a new one has no key
   */
  signals[SIGNAL_EDIT] = g_signal_new ("edit", BB_TYPE_JOB_DETAIL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, G_TYPE_POINTER);

  g_type_ensure (BB_TYPE_JOB_HEAD);
  g_type_ensure (BB_TYPE_JOB_LINES);
  g_type_ensure (BB_TYPE_JOB_SHEET_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-job-detail.ui");
  gtk_widget_class_bind_template_child (widget_class, BbJobDetail, head);
  gtk_widget_class_bind_template_child (widget_class, BbJobDetail, stack);
  gtk_widget_class_bind_template_child (widget_class, BbJobDetail, lines);
  gtk_widget_class_bind_template_child (widget_class, BbJobDetail, sheet);
  gtk_widget_class_bind_template_callback (widget_class, edit_cb);
}

static void
bb_job_detail_init (BbJobDetail *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
