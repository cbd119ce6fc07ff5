/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-job-filter"

#include "bb-job-filter.h"

#include <glib/gi18n-lib.h>

#include "bb-book-jobs.h"
#include "bb-compat.h"
#include "bb-moment.h"
#include "bb-signal.h"

struct _BbJobFilter
{
  AdwBin parent_instance;

  /* template */
  GtkDropDown *drop_down;
};

G_DEFINE_FINAL_TYPE (BbJobFilter, bb_job_filter, ADW_TYPE_BIN)

enum {
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

#define STATE(state) (1u << (state))
#define OPEN (STATE (BB_JOB_PLANNED) | STATE (BB_JOB_RUNNING))
#define EVERY (OPEN | STATE (BB_JOB_DONE) | STATE (BB_JOB_CANCELLED))

/* In the order of the drop-down, whose first line is for all jobs as they were taken, the newest first. */
static const struct {
  guint states;
  gboolean is_overdue;
} wanted[] = {
  { 0, FALSE },
  { OPEN, FALSE },
  { OPEN, TRUE },
  { STATE (BB_JOB_PLANNED), FALSE },
  { STATE (BB_JOB_RUNNING), FALSE },
  { STATE (BB_JOB_DONE), FALSE },
  { STATE (BB_JOB_CANCELLED), FALSE },
  { EVERY, FALSE },
};

static guint
get_place (BbJobFilter *self)
{
  const guint place = gtk_drop_down_get_selected (self->drop_down);

  return place < G_N_ELEMENTS (wanted) ? place : 0;
}

static void
selected_cb (BbJobFilter *self)
{
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
bb_job_filter_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_job_filter_parent_class)->dispose (object);
}

static void
bb_job_filter_class_init (BbJobFilterClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_job_filter_dispose;

  /**
   * BbJobFilter::changed:
   *
   * Other jobs are wanted, or in another order.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_JOB_FILTER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-job-filter.ui");
  gtk_widget_class_bind_template_child (widget_class, BbJobFilter, drop_down);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
}

static void
bb_job_filter_init (BbJobFilter *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  bb_compat_set_name (GTK_WIDGET (self->drop_down), _("Which jobs"));
}

/**
 * bb_job_filter_find:
 * @self: a filter
 * @session: the session whose book has the jobs
 *
 * Returns: (transfer full) (nullable) (element-type gint64): keys of the jobs that are wanted, in the order in which
 *   they are; %NULL for all, the newest first, and where the book could not be read, which is said
 */
GArray *
bb_job_filter_find (BbJobFilter *self,
                    BbSession   *session)
{
  g_autofree char *today = bb_dup_today ();
  g_autoptr (GError) error = NULL;
  GArray *ids = NULL;
  guint place = 0;

  g_return_val_if_fail (BB_IS_JOB_FILTER (self) && BB_IS_SESSION (session), NULL);

  place = get_place (self);
  if (place == 0)
    return NULL;
  ids = bb_book_list_jobs_by_due (bb_session_get_book (session), wanted[place].states,
                                  wanted[place].is_overdue ? today : NULL, &error);
  if (ids == NULL)
    bb_session_report (session, error);

  return ids;
}

/**
 * bb_job_filter_is_set:
 * @self: a filter
 *
 * Returns: %TRUE if less than all jobs are wanted
 */
gboolean
bb_job_filter_is_set (BbJobFilter *self)
{
  g_return_val_if_fail (BB_IS_JOB_FILTER (self), FALSE);

  return get_place (self) != 0 && wanted[get_place (self)].states != EVERY;
}

/**
 * bb_job_filter_clear:
 * @self: a filter
 *
 * Lets everything through from now on, and says so to nobody.
 */
void
bb_job_filter_clear (BbJobFilter *self)
{
  g_return_if_fail (BB_IS_JOB_FILTER (self));

  g_signal_handlers_block_by_func (self->drop_down, BB_HANDLER (selected_cb), self);
  gtk_drop_down_set_selected (self->drop_down, 0);
  g_signal_handlers_unblock_by_func (self->drop_down, BB_HANDLER (selected_cb), self);
}
