/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-job-lines"

#include "bb-job-lines.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-gone-list.h"
#include "bb-job-line-row.h"
#include "bb-show.h"

struct _BbJobLines
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *empty_label;
  GtkListBox *list;
  GtkButton *add_button;
  BbGoneList *gone;

  /* owned: copies of the lines that are shown */
  BbSession *session;
  GPtrArray *lines;

  gint64 job;
};

G_DEFINE_FINAL_TYPE (BbJobLines, bb_job_lines, GTK_TYPE_BOX)

enum {
  SIGNAL_EDIT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static const BbJobLine *
find_line (BbJobLines *self,
           gint64      id)
{
  for (guint i = 0; i < self->lines->len; i++)
    if (((const BbJobLine *) self->lines->pdata[i])->id == id)
      return self->lines->pdata[i];

  return NULL;
}

/* The next line of an order is mostly of the same garment: what differs is typed. */
static void
add_action (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  BbJobLines *self = BB_JOB_LINES (widget);
  g_autoptr (BbJobLine) line = bb_job_line_new ();

  (void) name;
  (void) parameter;

  line->job = self->job;
  if (self->lines->len > 0)
    line->colourway = ((const BbJobLine *) self->lines->pdata[self->lines->len - 1])->colourway;
  g_signal_emit (self, signals[SIGNAL_EDIT], 0, line);
}

static void
edit_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbJobLines *self = BB_JOB_LINES (widget);
  const BbJobLine *line = find_line (self, g_variant_get_int64 (parameter));

  (void) name;

  if (line != NULL)
    g_signal_emit (self, signals[SIGNAL_EDIT], 0, line);
}

static void
strike_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  BbJobLines *self = BB_JOB_LINES (widget);
  const BbJobLine *line = find_line (self, g_variant_get_int64 (parameter));

  (void) name;

  if (line != NULL)
    bb_session_withdraw (self->session, &bb_job_line_table, line->id, line->code);
}

static void
open_recipe_action (GtkWidget  *widget,
                    const char *name,
                    GVariant   *parameter)
{
  (void) name;

  bb_session_show (BB_JOB_LINES (widget)->session, "recipes", g_variant_get_int64 (parameter));
}

static GtkWidget *
make_row (BbSession         *session,
          const BbSheetLine *line,
          gboolean           is_fixed)
{
  GtkWidget *row = gtk_list_box_row_new ();
  g_autofree char *title = bb_job_line_row_dup_title (session, line);

  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), bb_job_line_row_new (session, line, is_fixed));
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  bb_compat_set_name (row, title);

  return row;
}

static char *
count_gone (guint n)
{
  return g_strdup_printf (ngettext ("%u line that is struck off", "%u lines that are struck off", n), n);
}

static char *
describe_gone (BbSession     *session,
               gconstpointer  record)
{
  const BbJobLine *line = record;
  g_autofree char *garment = bb_show_name (session, &bb_colourway_table, line->colourway);

  return g_strjoin (" · ", line->code, garment, line->size, NULL);
}

static const BbGoneInfo gone_info = { &bb_job_line_table, count_gone, describe_gone };

/**
 * bb_job_lines_show:
 * @self: the lines
 * @session: the session
 * @papers: the job whose lines to show
 *
 * The lines of a job that is done or cancelled are the record of what was ordered: they are not to be edited.
 */
void
bb_job_lines_show (BbJobLines        *self,
                   BbSession         *session,
                   const BbJobPapers *papers)
{
  gboolean is_fixed = FALSE;

  g_return_if_fail (BB_IS_JOB_LINES (self) && papers != NULL);

  is_fixed = bb_job_state_is_over (papers->job->state);
  g_set_object (&self->session, session);
  self->job = papers->job->id;
  g_ptr_array_set_size (self->lines, 0);
  bb_compat_empty_list (self->list);

  for (guint i = 0; i < papers->lines->len; i++)
    {
      const BbSheetLine *line = &g_array_index (papers->lines, BbSheetLine, i);

      g_ptr_array_add (self->lines, bb_record_copy (&bb_job_line_table, line->line));
      gtk_list_box_append (self->list, make_row (session, line, is_fixed));
    }
  bb_gone_list_show (self->gone, session, &gone_info, &bb_job_table, self->job, is_fixed);
  gtk_widget_set_visible (GTK_WIDGET (self->list), self->lines->len > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->empty_label), self->lines->len == 0);
  gtk_widget_set_visible (GTK_WIDGET (self->add_button), !is_fixed);
}

static void
bb_job_lines_dispose (GObject *object)
{
  BbJobLines *self = BB_JOB_LINES (object);

  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_JOB_LINES);

  G_OBJECT_CLASS (bb_job_lines_parent_class)->dispose (object);
}

static void
bb_job_lines_finalize (GObject *object)
{
  g_ptr_array_unref (BB_JOB_LINES (object)->lines);

  G_OBJECT_CLASS (bb_job_lines_parent_class)->finalize (object);
}

static void
bb_job_lines_class_init (BbJobLinesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_job_lines_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_job_lines_finalize;

  /**
   * BbJobLines::edit:
   * @line: the line to edit; a new one has no key
   */
  signals[SIGNAL_EDIT] = g_signal_new ("edit", BB_TYPE_JOB_LINES, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, G_TYPE_POINTER);

  g_type_ensure (BB_TYPE_GONE_LIST);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-job-lines.ui");
  gtk_widget_class_bind_template_child (widget_class, BbJobLines, empty_label);
  gtk_widget_class_bind_template_child (widget_class, BbJobLines, list);
  gtk_widget_class_bind_template_child (widget_class, BbJobLines, add_button);
  gtk_widget_class_bind_template_child (widget_class, BbJobLines, gone);
  gtk_widget_class_install_action (widget_class, "lines.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "lines.edit", "x", edit_action);
  gtk_widget_class_install_action (widget_class, "lines.strike", "x", strike_action);
  gtk_widget_class_install_action (widget_class, "lines.open-recipe", "x", open_recipe_action);
}

static void
bb_job_lines_init (BbJobLines *self)
{
  self->lines = g_ptr_array_new_with_free_func (bb_job_line_table.free_record);
  gtk_widget_init_template (GTK_WIDGET (self));
}
