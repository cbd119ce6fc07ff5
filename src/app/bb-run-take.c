/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-run-take"

#include "bb-run-take.h"

#include "bb-form.h"
#include "bb-job-papers.h"
#include "bb-moment.h"
#include "bb-run-actions.h"

struct _BbRunTake
{
  GtkBox parent_instance;

  /* The form for the next use; a new one once it is entered. */
  BbForm *form;

  gint64 run;
  guint n_entries;
  gboolean writing;

  /* owned */
  BbSession *session;
};

G_DEFINE_FINAL_TYPE (BbRunTake, bb_run_take, GTK_TYPE_BOX)

/* What a person pressed twice is entered once: until it is written, what was typed is still there. */
static void
written_cb (gpointer data)
{
  g_autoptr (BbRunTake) self = data;

  self->writing = FALSE;
}

static void
enter_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  BbRunTake *self = BB_RUN_TAKE (widget);
  g_autoptr (BbLotUse) use = NULL;

  (void) name;
  (void) parameter;

  if (self->form == NULL || self->writing)
    return;
  use = bb_form_dup_record (self->form, TRUE);
  if (use == NULL)
    {
      bb_form_focus_fault (self->form);
      return;
    }
  self->writing = TRUE;
  bb_run_use_lot (self->session, self->run, use, written_cb, g_object_ref (self));
}

/* The first container that the job's sheet takes this run's pretreat from, where nothing was taken yet. */
static void
propose (BbRunTake        *self,
         const BbRun      *run,
         const BbRevision *revision)
{
  BbBook *book = bb_session_get_book (self->session);
  g_autofree char *today = bb_dup_today ();
  g_autoptr (BbJobLine) line = bb_book_load (book, &bb_job_line_table, run->line, NULL);
  g_autoptr (BbJobPapers) papers = line != NULL ? bb_job_papers_load (book, line->job, today, NULL) : NULL;
  g_autoptr (BbLotUse) use = bb_lot_use_new ();

  for (guint i = 0; papers != NULL && use->lot == 0 && i < papers->sheet->mixes->len; i++)
    {
      const BbMixSheet *mix = &g_array_index (papers->sheet->mixes, BbMixSheet, i);

      if (mix->supply == revision->pretreat_product && mix->takes != NULL && mix->takes->len > 0)
        use->lot = g_array_index (mix->takes, BbTake, 0).lot;
    }
  if (use->lot != 0)
    bb_form_load (self->form, use);
}

static void
bb_run_take_dispose (GObject *object)
{
  BbRunTake *self = BB_RUN_TAKE (object);

  self->form = NULL;
  g_clear_object (&self->session);

  G_OBJECT_CLASS (bb_run_take_parent_class)->dispose (object);
}

static void
bb_run_take_class_init (BbRunTakeClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_run_take_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-run-take.ui");
  gtk_widget_class_install_action (widget_class, "take.enter", NULL, enter_action);
}

static void
bb_run_take_init (BbRunTake *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_run_take_show:
 * @self: what enters a use
 * @session: the session
 * @run: the run that takes
 * @revision: what it is made by
 * @n_entries: how often it took from a container so far
 *
 * Asks for the next use of a container, and proposes the first for a run that is under way.
 */
void
bb_run_take_show (BbRunTake        *self,
                  BbSession        *session,
                  const BbRun      *run,
                  const BbRevision *revision,
                  guint             n_entries)
{
  g_return_if_fail (BB_IS_RUN_TAKE (self) && BB_IS_SESSION (session) && run != NULL && revision != NULL);

  if (self->form != NULL && self->run == run->id && self->n_entries == n_entries)
    return;
  g_set_object (&self->session, session);
  self->run = run->id;
  self->n_entries = n_entries;
  if (self->form != NULL)
    gtk_box_remove (GTK_BOX (self), GTK_WIDGET (self->form));
  self->form = BB_FORM (bb_form_new_strip (session, &bb_lot_use_table));
  gtk_widget_set_hexpand (GTK_WIDGET (self->form), TRUE);
  gtk_box_prepend (GTK_BOX (self), GTK_WIDGET (self->form));
  if (n_entries == 0 && run->finished_at == NULL)
    propose (self, run, revision);
}
