/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-job-head"

#include "bb-job-head.h"

#include <glib/gi18n-lib.h>

#include "bb-book-jobs.h"
#include "bb-evidence-load.h"
#include "bb-job-badge.h"
#include "bb-job-sheet-window.h"
#include "bb-moment.h"
#include "bb-repeat-dialog.h"
#include "bb-words.h"

struct _BbJobHead
{
  AdwBin parent_instance;

  /* template */
  BbJobBadge *badge;
  GtkLabel *due_label;
  GtkButton *start_button;
  GtkButton *finish_button;
  GtkMenuButton *finish_menu;
  GtkPopover *finish_popover;
  GtkLabel *finish_label;
  GtkButton *cancel_button;
  GtkMenuButton *reopen_button;
  GtkPopover *reopen_popover;
  GtkLabel *reopen_label;

  /* owned; the job is the one that is shown, or NULL */
  BbSession *session;
  BbJob *job;
};

G_DEFINE_FINAL_TYPE (BbJobHead, bb_job_head, ADW_TYPE_BIN)

static void
start_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  BbJobHead *self = BB_JOB_HEAD (widget);

  (void) name;
  (void) parameter;

  bb_session_set_job_state (self->session, self->job->id, BB_JOB_RUNNING);
}

static void
finish_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  BbJobHead *self = BB_JOB_HEAD (widget);

  (void) name;
  (void) parameter;

  gtk_popover_popdown (self->finish_popover);
  bb_session_set_job_state (self->session, self->job->id, BB_JOB_DONE);
}

static void
keep_open_action (GtkWidget  *widget,
                  const char *name,
                  GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  gtk_popover_popdown (BB_JOB_HEAD (widget)->finish_popover);
}

static void
cancel_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  BbJobHead *self = BB_JOB_HEAD (widget);

  (void) name;
  (void) parameter;

  bb_session_withdraw (self->session, &bb_job_table, self->job->id, self->job->code);
}

/* A cancelled job goes back to where it was cancelled, a done one to work. */
static void
reopen_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  BbJobHead *self = BB_JOB_HEAD (widget);

  (void) name;
  (void) parameter;

  gtk_popover_popdown (self->reopen_popover);
  if (self->job->state == BB_JOB_CANCELLED)
    bb_session_restore (self->session, &bb_job_table, self->job->id);
  else
    bb_session_set_job_state (self->session, self->job->id, BB_JOB_RUNNING);
}

static void
repeat_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  BbJobHead *self = BB_JOB_HEAD (widget);

  (void) name;
  (void) parameter;

  bb_repeat_dialog_present (widget, self->session, self->job->id);
}

static void
print_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  BbJobHead *self = BB_JOB_HEAD (widget);
  GtkRoot *root = gtk_widget_get_root (widget);

  (void) name;
  (void) parameter;

  gtk_window_present (GTK_WINDOW (bb_job_sheet_window_new (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL,
                                                           self->session, self->job)));
}

static void
show_question (BbJobHead *self)
{
  g_autofree char *since = bb_words_of_day (self->job->since);
  g_autofree char *text = NULL;

  if (self->job->state == BB_JOB_DONE)
    /* Translators: the number of a job, and a day. */
    text = g_strdup_printf (_("Reopen %s only if it was never finished: it is running again then, and no longer done "
                              "since %s. To print the order once more, choose Repeat."), self->job->code, since);
  else
    /* Translators: the number of a job. */
    text = g_strdup_printf (_("Reopen %s to go on with it where it was cancelled. To print the order once more, "
                              "choose Repeat."), self->job->code);
  gtk_label_set_label (self->reopen_label, text);
}

/* What the job's lines still want. */
typedef struct {
  int garments;
  int rest;
  int running;
} Open;

static Open
find_open (BbJobHead *self)
{
  BbBook *book = bb_session_get_book (self->session);
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) ids = bb_book_list_job_lines (book, self->job->id, &error);
  g_autoptr (GPtrArray) lines = NULL;
  Open open = { 0, 0, 0 };

  if (ids != NULL)
    lines = bb_book_load_lines (book, &bb_job_line_table, (const gint64 *) (gpointer) ids->data, ids->len, &error);
  if (lines == NULL)
    bb_session_report (self->session, error);
  for (guint i = 0; lines != NULL && i < lines->len; i++)
    {
      const BbLineCard *line = lines->pdata[i];
      const gint64 good = line->good != BB_INTEGER_NONE ? line->good : 0;

      open.garments += (int) line->count;
      open.rest += (int) MAX (line->count - good, 0);
      open.running += (int) line->running;
    }

  return open;
}

/* Returns: (transfer full) (nullable): what would be left behind if the job were done now */
static char *
describe_open (const Open *open)
{
  g_autofree char *rest = NULL;
  g_autofree char *running = NULL;

  if (open->rest > 0)
    /* Translators: how many prints are wanted yet, and how many were ordered. */
    rest = g_strdup_printf (ngettext ("%d print of %d is not yet recorded as good.",
                                      "%d prints of %d are not yet recorded as good.", (gulong) open->rest),
                            open->rest, open->garments);
  if (open->running > 0)
    running = g_strdup_printf (ngettext ("%d run is under way: finish it under Runs.",
                                         "%d runs are under way: finish them under Runs.", (gulong) open->running),
                               open->running);
  if (rest != NULL && running != NULL)
    return g_strjoin (" ", rest, running, NULL);

  return rest != NULL ? g_steal_pointer (&rest) : g_steal_pointer (&running);
}

/* A job of which something is open is not closed at one click. */
static void
show_finish (BbJobHead *self)
{
  const gboolean is_running = self->job->state == BB_JOB_RUNNING;
  const Open open = is_running ? find_open (self) : (Open) { 0, 0, 0 };
  g_autofree char *text = describe_open (&open);

  gtk_widget_set_visible (GTK_WIDGET (self->finish_button), is_running && text == NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->finish_menu), is_running && text != NULL);
  gtk_label_set_label (self->finish_label, text != NULL ? text : "");
}

static void
show_buttons (BbJobHead *self,
              int        state)
{
  gtk_widget_set_visible (GTK_WIDGET (self->start_button), state == BB_JOB_PLANNED);
  show_finish (self);
  gtk_widget_set_visible (GTK_WIDGET (self->cancel_button), state == BB_JOB_PLANNED || state == BB_JOB_RUNNING);
  gtk_widget_set_visible (GTK_WIDGET (self->reopen_button), bb_job_state_is_over (state));
}

static char *
describe (const BbJob *job,
          const char  *today)
{
  g_autofree char *since = bb_words_of_day (job->since);
  g_autofree char *due = NULL;

  if (job->state == BB_JOB_DONE)
    /* Translators: a day, like 3 Feb 2025. */
    return g_strdup_printf (_("Since %s"), since);
  if (job->state == BB_JOB_CANCELLED)
    /* Translators: a day, like 3 Feb 2025. */
    return g_strdup_printf (_("Since %s. Nothing of it is lost."), since);
  due = bb_words_of_due (job->due_at, today);
  if (job->due_at != NULL)
    {
      g_autofree char *day = bb_words_of_day (job->due_at);

      if (!g_str_has_suffix (due, day))
        return g_strjoin (" · ", due, day, NULL);
    }

  return g_steal_pointer (&due);
}

/**
 * bb_job_head_show:
 * @self: a head
 * @session: the session
 * @job: the job to show
 */
void
bb_job_head_show (BbJobHead   *self,
                  BbSession   *session,
                  const BbJob *job)
{
  g_autofree char *today = bb_dup_today ();
  g_autofree char *text = describe (job, today);

  g_return_if_fail (BB_IS_JOB_HEAD (self));

  g_set_object (&self->session, session);
  bb_job_free (self->job);
  self->job = bb_record_copy (&bb_job_table, job);
  bb_job_badge_show (self->badge, job->state, bb_job_is_overdue (job->state, job->due_at, today));
  gtk_label_set_label (self->due_label, text);
  show_buttons (self, job->state);
  show_question (self);
}

static void
bb_job_head_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);
  g_clear_object (&BB_JOB_HEAD (object)->session);

  G_OBJECT_CLASS (bb_job_head_parent_class)->dispose (object);
}

static void
bb_job_head_finalize (GObject *object)
{
  bb_job_free (BB_JOB_HEAD (object)->job);

  G_OBJECT_CLASS (bb_job_head_parent_class)->finalize (object);
}

static void
bb_job_head_class_init (BbJobHeadClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_job_head_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_job_head_finalize;

  g_type_ensure (BB_TYPE_JOB_BADGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-job-head.ui");
  gtk_widget_class_bind_template_child (widget_class, BbJobHead, badge);
  gtk_widget_class_bind_template_child (widget_class, BbJobHead, due_label);
  gtk_widget_class_bind_template_child (widget_class, BbJobHead, start_button);
  gtk_widget_class_bind_template_child (widget_class, BbJobHead, finish_button);
  gtk_widget_class_bind_template_child (widget_class, BbJobHead, finish_menu);
  gtk_widget_class_bind_template_child (widget_class, BbJobHead, finish_popover);
  gtk_widget_class_bind_template_child (widget_class, BbJobHead, finish_label);
  gtk_widget_class_bind_template_child (widget_class, BbJobHead, cancel_button);
  gtk_widget_class_bind_template_child (widget_class, BbJobHead, reopen_button);
  gtk_widget_class_bind_template_child (widget_class, BbJobHead, reopen_popover);
  gtk_widget_class_bind_template_child (widget_class, BbJobHead, reopen_label);
  gtk_widget_class_install_action (widget_class, "job.start", NULL, start_action);
  gtk_widget_class_install_action (widget_class, "job.finish", NULL, finish_action);
  gtk_widget_class_install_action (widget_class, "job.keep-open", NULL, keep_open_action);
  gtk_widget_class_install_action (widget_class, "job.cancel", NULL, cancel_action);
  gtk_widget_class_install_action (widget_class, "job.reopen", NULL, reopen_action);
  gtk_widget_class_install_action (widget_class, "job.print", NULL, print_action);
  gtk_widget_class_install_action (widget_class, "job.repeat", NULL, repeat_action);
}

static void
bb_job_head_init (BbJobHead *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
