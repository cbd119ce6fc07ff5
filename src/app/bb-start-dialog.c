/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-start-dialog"

#include "bb-start-dialog.h"

#include <glib/gi18n-lib.h>

#include "bb-evidence-load.h"
#include "bb-form.h"
#include "bb-job-papers.h"
#include "bb-job-words.h"
#include "bb-moment.h"
#include "bb-run-actions.h"
#include "bb-run-words.h"

struct _BbStartDialog
{
  AdwWindow parent_instance;

  /* template */
  GtkLabel *title_label;
  GtkLabel *rest_label;
  GtkBox *form_box;
  GtkLabel *person_label;
  GtkLabel *machine_label;
  GtkLabel *due_label;
  GtkLabel *takes_label;

  BbForm *form;

  /* owned */
  BbSession *session;
  BbJobPapers *papers;

  /* in the papers */
  const BbSheetLine *line;
};

G_DEFINE_FINAL_TYPE (BbStartDialog, bb_start_dialog, ADW_TYPE_WINDOW)

static void
show_text (GtkLabel   *label,
           const char *text)
{
  gtk_label_set_label (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL && *text != '\0');
}

/* A shop that has entered nobody can't name anybody. */
static gboolean
lacks_person (BbStartDialog *self,
              const BbRun   *run)
{
  g_autoptr (GPtrArray) people = NULL;

  if (run->person != 0)
    return FALSE;
  people = bb_book_load_all (bb_session_get_book (self->session), &bb_person_table, FALSE, NULL);

  return people != NULL && people->len > 0;
}

static void
show_due (BbStartDialog *self,
          const BbRun   *run)
{
  const gint64 machines[] = { run->sprayer, run->dryer, run->printer, run->curer };
  g_autofree char *today = bb_dup_today ();
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (machines); i++)
    {
      g_autoptr (BbEquipment) machine = NULL;

      if (machines[i] == 0 || (i == 3 && machines[3] == machines[1]))
        continue;
      machine = bb_book_load (bb_session_get_book (self->session), &bb_equipment_table, machines[i], NULL);
      if (machine == NULL || !bb_equipment_is_due (machine, today))
        continue;
      if (text->len > 0)
        g_string_append_c (text, '\n');
      /* Translators: a machine. */
      g_string_append_printf (text, _("%s: calibration is due. See to it first, or know what it may cost."),
                              machine->name);
    }
  show_text (self->due_label, text->str);
}

static void
changed_cb (BbStartDialog *self)
{
  g_autoptr (BbRun) run = bb_form_dup_draft (self->form);
  g_autofree char *unnamed = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->person_label), lacks_person (self, run));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "start.run", !lacks_person (self, run));
  unnamed = bb_words_of_unnamed_machines (self->line, run);
  show_text (self->machine_label, unnamed);
  show_due (self, run);
}

static void
run_action (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  BbStartDialog *self = BB_START_DIALOG (widget);
  g_autoptr (BbRun) run = bb_form_dup_record (self->form, TRUE);

  (void) name;
  (void) parameter;

  if (run == NULL)
    {
      bb_form_focus_fault (self->form);
      return;
    }
  /* The moment is that of the start, not that at which the question was opened. */
  g_clear_pointer (&run->started_at, g_free);
  bb_run_start (self->session, run);
  gtk_window_close (GTK_WINDOW (self));
}

/* Of a run that has yet to begin only this much can be said. */
static void
make_form (BbStartDialog *self,
           const BbRun   *run)
{
  self->form = BB_FORM (bb_form_new (self->session, &bb_run_table));
  for (guint i = 0; i < bb_run_table.n_fields; i++)
    {
      const BbField *field = &bb_run_table.fields[i];

      if (!field->derived && (field->target == NULL || field->owner))
        bb_form_fix (self->form, field);
    }
  bb_form_load (self->form, run);
  gtk_box_append (self->form_box, GTK_WIDGET (self->form));
  g_signal_connect_object (self->form, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
}

static void
show_takes (BbStartDialog *self)
{
  const BbJobSheet *sheet = self->papers->sheet;
  const BbSheetLine *line = self->line;
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; line->revision != NULL && i < sheet->mixes->len; i++)
    {
      const BbMixSheet *mix = &g_array_index (sheet->mixes, BbMixSheet, i);

      for (guint t = 0; mix->supply == line->revision->pretreat_product && mix->takes != NULL && t < mix->takes->len;
           t++)
        {
          g_autofree char *take = bb_words_of_take (&g_array_index (mix->takes, BbTake, t),
                                                    bb_session_get_units (self->session));

          g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", take);
        }
    }
  show_text (self->takes_label, text->str);
}

static gboolean
load (BbStartDialog  *self,
      gint64          job,
      gint64          id,
      GError        **error)
{
  BbBook *book = bb_session_get_book (self->session);
  g_autofree char *today = bb_dup_today ();
  g_autoptr (GPtrArray) cards = NULL;
  g_autoptr (BbRun) run = bb_run_new ();
  g_autofree char *title = NULL;
  g_autofree char *rest = NULL;

  self->papers = bb_job_papers_load (book, job, today, error);
  if (self->papers != NULL)
    cards = bb_book_load_lines (book, &bb_job_line_table, &id, 1, error);
  if (cards == NULL || cards->len == 0)
    return FALSE;
  run->line = id;
  run->person = bb_session_get_person (self->session);
  run->started_at = g_strdup (today);
  self->line = bb_job_papers_propose_run (self->papers, book, run, error);
  if (self->line == NULL)
    return FALSE;

  /* Translators: the code of a line of a job, and that of a revision. */
  title = g_strdup_printf (_("A run of line %s by %s"), self->line->line->code,
                           self->line->revision != NULL ? self->line->revision->code : "");
  rest = bb_words_of_rest (cards->pdata[0]);
  gtk_label_set_label (self->title_label, title);
  gtk_label_set_label (self->rest_label, rest);
  make_form (self, run);
  show_takes (self);

  return TRUE;
}

static void
bb_start_dialog_dispose (GObject *object)
{
  BbStartDialog *self = BB_START_DIALOG (object);

  g_clear_object (&self->session);
  g_clear_pointer (&self->papers, bb_job_papers_free);
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_START_DIALOG);

  G_OBJECT_CLASS (bb_start_dialog_parent_class)->dispose (object);
}

static void
bb_start_dialog_class_init (BbStartDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_start_dialog_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-start-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, BbStartDialog, title_label);
  gtk_widget_class_bind_template_child (widget_class, BbStartDialog, rest_label);
  gtk_widget_class_bind_template_child (widget_class, BbStartDialog, form_box);
  gtk_widget_class_bind_template_child (widget_class, BbStartDialog, person_label);
  gtk_widget_class_bind_template_child (widget_class, BbStartDialog, machine_label);
  gtk_widget_class_bind_template_child (widget_class, BbStartDialog, due_label);
  gtk_widget_class_bind_template_child (widget_class, BbStartDialog, takes_label);
  gtk_widget_class_install_action (widget_class, "start.run", NULL, run_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
bb_start_dialog_init (BbStartDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_start_dialog_present:
 * @parent: the widget that asks
 * @session: the session
 * @job: key of a job
 * @line: key of a line of it
 *
 * Asks what a run needs to be told before it begins, and begins it.
 */
void
bb_start_dialog_present (GtkWidget *parent,
                      BbSession *session,
                      gint64     job,
                      gint64     line)
{
  GtkRoot *root = gtk_widget_get_root (parent);
  BbStartDialog *self = g_object_new (BB_TYPE_START_DIALOG, "transient-for", GTK_IS_WINDOW (root) ? root : NULL, NULL);
  g_autoptr (GError) error = NULL;

  self->session = g_object_ref (session);
  if (load (self, job, line, &error))
    {
      gtk_window_present (GTK_WINDOW (self));
      return;
    }
  if (error != NULL)
    bb_session_report (session, error);
  gtk_window_destroy (GTK_WINDOW (self));
}
