/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-run-panel"

#include "bb-run-panel.h"

#include <glib/gi18n-lib.h>

#include "bb-book-jobs.h"
#include "bb-children.h"
#include "bb-compat.h"
#include "bb-run-view.h"
#include "bb-run-words.h"
#include "bb-start-dialog.h"
#include "bb-trace.h"

struct _BbRunPanel
{
  GtkBox parent_instance;

  /* template */
  GtkListBox *lines;
  GtkLabel *empty_label;
  GtkBox *runs;

  /* owned */
  BbSession *session;

  gint64 job;
  GHashTable *views;
};

G_DEFINE_FINAL_TYPE (BbRunPanel, bb_run_panel, GTK_TYPE_BOX)

static void
start_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  BbRunPanel *self = BB_RUN_PANEL (widget);

  (void) name;

  bb_start_dialog_present (widget, self->session, self->job, g_variant_get_int64 (parameter));
}

static GtkWidget *
make_line (const BbLineCard *line,
           gboolean          is_over)
{
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *button = gtk_button_new_with_label (_("Start a Run…"));
  g_autofree char *progress = bb_words_of_progress (line);
  g_autofree char *title = g_strjoin (" · ", line->code, line->blank, line->colourway, NULL);
  g_autofree char *subtitle = *line->revision != '\0' ? g_strjoin (" · ", line->revision, progress, NULL)
                                                      : g_strjoin (" · ", _("No recipe yet"), progress, NULL);
  /* Translators: the code of a line of a job. */
  g_autofree char *label = g_strdup_printf (_("Start a run of line %s"), line->code);
  g_autofree char *plain_title = g_markup_escape_text (title, -1);
  g_autofree char *plain_subtitle = g_markup_escape_text (subtitle, -1);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), plain_title);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), plain_subtitle);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_set_sensitive (button, *line->revision != '\0');
  gtk_widget_set_visible (button, !is_over);
  bb_compat_set_name (button, label);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "x", line->id);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "runs.start");
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), button);

  return row;
}

static void
fill_lines (BbRunPanel      *self,
            const GPtrArray *lines,
            gboolean         is_over)
{
  bb_compat_empty_list (self->lines);
  for (guint i = 0; i < lines->len; i++)
    gtk_list_box_append (self->lines, make_line (lines->pdata[i], is_over));
  gtk_widget_set_visible (GTK_WIDGET (self->lines), lines->len > 0);
}

/* A run keeps its view, with what is typed in it, as long as it is there. */
static void
fill_runs (BbRunPanel   *self,
           const GArray *runs)
{
  GtkWidget *before = NULL;
  GHashTableIter iter;
  gpointer view = NULL;

  g_hash_table_iter_init (&iter, self->views);
  while (g_hash_table_iter_next (&iter, NULL, &view))
    gtk_widget_set_visible (view, FALSE);

  for (guint i = 0; i < runs->len; i++)
    {
      const gint64 id = g_array_index (runs, gint64, i);

      view = g_hash_table_lookup (self->views, &id);
      if (view == NULL)
        {
          view = bb_run_view_new ();
          g_hash_table_insert (self->views, g_memdup2 (&id, sizeof id), view);
          gtk_box_append (self->runs, view);
        }
      gtk_box_reorder_child_after (self->runs, view, before);
      gtk_widget_set_visible (view, TRUE);
      bb_run_view_show (view, self->session, id);
      before = view;
    }
  gtk_widget_set_visible (GTK_WIDGET (self->empty_label), runs->len == 0);
}

static void
drop_views (BbRunPanel *self)
{
  g_hash_table_remove_all (self->views);
  bb_children_empty_box (self->runs);
}

static GPtrArray *
load_lines (BbBook  *book,
            gint64   job,
            GError **error)
{
  g_autoptr (GArray) ids = bb_book_list_job_lines (book, job, error);

  return ids != NULL ? bb_book_load_lines (book, &bb_job_line_table, (const gint64 *) (gpointer) ids->data, ids->len,
                                           error)
                     : NULL;
}

/**
 * bb_run_panel_new:
 *
 * Returns: (transfer floating): the runs of no job
 */
GtkWidget *
bb_run_panel_new (void)
{
  return g_object_new (BB_TYPE_RUN_PANEL, NULL);
}

/**
 * bb_run_panel_show:
 * @self: the runs
 * @session: the session
 * @job: key of the job whose runs to show
 */
void
bb_run_panel_show (BbRunPanel *self,
                   BbSession  *session,
                   gint64      job)
{
  BbBook *book = bb_session_get_book (session);
  g_autoptr (GError) error = NULL;
  g_autoptr (BbJob) record = NULL;
  g_autoptr (GPtrArray) lines = NULL;
  g_autoptr (GArray) runs = NULL;

  g_return_if_fail (BB_IS_RUN_PANEL (self));

  g_set_object (&self->session, session);
  if (self->job != job)
    drop_views (self);
  self->job = job;
  record = bb_book_load (book, &bb_job_table, job, &error);
  lines = record != NULL ? load_lines (book, job, &error) : NULL;
  runs = lines != NULL ? bb_book_trace_runs (book, &bb_job_table, job, &error) : NULL;
  if (runs == NULL)
    {
      bb_session_report (session, error);
      return;
    }
  fill_lines (self, lines, bb_job_state_is_over (record->state));
  fill_runs (self, runs);
}

static void
bb_run_panel_dispose (GObject *object)
{
  BbRunPanel *self = BB_RUN_PANEL (object);

  g_clear_pointer (&self->views, g_hash_table_unref);
  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_RUN_PANEL);

  G_OBJECT_CLASS (bb_run_panel_parent_class)->dispose (object);
}

static void
bb_run_panel_class_init (BbRunPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_run_panel_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-run-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRunPanel, lines);
  gtk_widget_class_bind_template_child (widget_class, BbRunPanel, empty_label);
  gtk_widget_class_bind_template_child (widget_class, BbRunPanel, runs);
  gtk_widget_class_install_action (widget_class, "runs.start", "x", start_action);
}

static void
bb_run_panel_init (BbRunPanel *self)
{
  self->views = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  gtk_widget_init_template (GTK_WIDGET (self));
}
