/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-repeat-dialog"

#include "bb-repeat-dialog.h"

#include <glib/gi18n-lib.h>

#include "bb-moment.h"
#include "bb-repeat-card.h"
#include "bb-repeat-load.h"
#include "bb-show.h"
#include "bb-trace.h"

struct _BbRepeatDialog
{
  AdwWindow parent_instance;

  /* template */
  GtkLabel *title_label;
  GtkLabel *missing_label;
  GtkBox *lines;

  /* owned */
  BbSession *session;

  gint64 job;
  gboolean writing;
};

G_DEFINE_FINAL_TYPE (BbRepeatDialog, bb_repeat_dialog, ADW_TYPE_WINDOW)

/* Shared with the writing thread, which gives the new job its key; read here only after it is done. */
typedef struct {
  BbRepeatDialog *dialog;
  gint64 job;
  char *day;
  GArray *choices;
  gint64 repeated;
} Repeating;

static void
repeating_clear (gpointer data)
{
  Repeating *self = data;

  g_free (self->day);
  g_array_unref (self->choices);
}

static void
repeating_release (gpointer data)
{
  g_atomic_rc_box_release_full (data, repeating_clear);
}

static gboolean
write_job (BbBook   *book,
           gpointer  data,
           GError  **error)
{
  Repeating *self = data;

  return bb_book_repeat_job (book, self->job, self->day, (const BbRepeatLine *) (gpointer) self->choices->data,
                             self->choices->len, &self->repeated, error);
}

static void
written_cb (GObject      *source,
            GAsyncResult *result,
            gpointer      data)
{
  BbSession *session = BB_SESSION (source);
  Repeating *repeating = data;
  g_autoptr (BbRepeatDialog) self = repeating->dialog;
  g_autoptr (GError) error = NULL;

  self->writing = FALSE;
  if (bb_session_write_finish (session, result, &error))
    {
      gtk_window_close (GTK_WINDOW (self));
      bb_session_show (session, "jobs", repeating->repeated);
    }
  else
    bb_session_report (session, error);
  repeating_release (repeating);
}

static void
open_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbRepeatDialog *self = BB_REPEAT_DIALOG (widget);
  Repeating *repeating = NULL;

  (void) name;
  (void) parameter;

  if (self->writing || self->session == NULL)
    return;
  repeating = g_atomic_rc_box_new0 (Repeating);
  repeating->dialog = g_object_ref (self);
  repeating->job = self->job;
  repeating->day = bb_dup_today ();
  repeating->choices = g_array_new (FALSE, FALSE, sizeof (BbRepeatLine));
  for (GtkWidget *line = gtk_widget_get_first_child (GTK_WIDGET (self->lines)); line != NULL;
       line = gtk_widget_get_next_sibling (line))
    {
      BbRepeatLine choice = bb_repeat_card_get_choice (BB_REPEAT_CARD (line));

      g_array_append_val (repeating->choices, choice);
    }
  self->writing = TRUE;
  bb_session_write_async (self->session, write_job, g_atomic_rc_box_acquire (repeating), repeating_release, written_cb,
                          repeating);
}

/* The job can be opened once it is said how to print each line. */
static void
changed_cb (BbRepeatDialog *self)
{
  gboolean is_whole = TRUE;

  for (GtkWidget *line = gtk_widget_get_first_child (GTK_WIDGET (self->lines)); line != NULL;
       line = gtk_widget_get_next_sibling (line))
    is_whole = is_whole && bb_repeat_card_get_choice (BB_REPEAT_CARD (line)).line != 0;
  gtk_widget_set_visible (GTK_WIDGET (self->missing_label), !is_whole);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "repeat.open", is_whole);
}

static gboolean
load (BbRepeatDialog *self,
      GError        **error)
{
  BbBook *book = bb_session_get_book (self->session);
  g_autofree char *today = bb_dup_today ();
  g_autoptr (BbJob) job = bb_book_load (book, &bb_job_table, self->job, error);
  g_autoptr (GPtrArray) parts = NULL;
  g_autofree char *customer = NULL;
  g_autofree char *title = NULL;

  if (job != NULL)
    parts = bb_repeat_load (book, self->job, today, bb_session_get_units (self->session), error);
  if (parts == NULL)
    return FALSE;

  customer = bb_show_name (self->session, &bb_customer_table, job->customer);
  /* Translators: the number of a job, and the customer. */
  title = g_strdup_printf (_("Job %s for %s, once more"), job->code, customer);
  gtk_label_set_label (self->title_label, title);
  for (guint i = 0; i < parts->len; i++)
    {
      GtkWidget *card = bb_repeat_card_new (parts->pdata[i]);

      g_signal_connect_object (card, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
      gtk_box_append (self->lines, card);
    }
  changed_cb (self);

  return TRUE;
}

static void
bb_repeat_dialog_dispose (GObject *object)
{
  BbRepeatDialog *self = BB_REPEAT_DIALOG (object);

  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_REPEAT_DIALOG);

  G_OBJECT_CLASS (bb_repeat_dialog_parent_class)->dispose (object);
}

static void
bb_repeat_dialog_class_init (BbRepeatDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_repeat_dialog_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-repeat-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRepeatDialog, title_label);
  gtk_widget_class_bind_template_child (widget_class, BbRepeatDialog, missing_label);
  gtk_widget_class_bind_template_child (widget_class, BbRepeatDialog, lines);
  gtk_widget_class_install_action (widget_class, "repeat.open", NULL, open_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
bb_repeat_dialog_init (BbRepeatDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_repeat_dialog_present:
 * @parent: the widget that asks
 * @session: the session
 * @job_id: key of the job to repeat
 *
 * Asks how a job shall be repeated, and shows the new one once it is opened.
 */
void
bb_repeat_dialog_present (GtkWidget *parent,
                          BbSession *session,
                          gint64     job_id)
{
  GtkRoot *root = gtk_widget_get_root (parent);
  BbRepeatDialog *self = g_object_new (BB_TYPE_REPEAT_DIALOG, "transient-for", GTK_IS_WINDOW (root) ? root : NULL,
                                       NULL);
  g_autoptr (GError) error = NULL;

  self->session = g_object_ref (session);
  self->job = job_id;
  if (load (self, &error))
    {
      gtk_window_present (GTK_WINDOW (self));
      return;
    }
  bb_session_report (session, error);
  gtk_window_destroy (GTK_WINDOW (self));
}
