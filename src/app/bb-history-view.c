/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-history-view"

#include "bb-history-view.h"

#include <glib/gi18n-lib.h>

#include "bb-book-jobs.h"
#include "bb-children.h"
#include "bb-history.h"
#include "bb-show.h"

/* More than a screen is not read. */
#define MOST_LINES 12

struct _BbHistoryView
{
  GtkBox parent_instance;

  /* template */
  GtkGrid *grid;
};

G_DEFINE_FINAL_TYPE (BbHistoryView, bb_history_view, GTK_TYPE_BOX)

static GtkWidget *
make_label (const char *text,
            gboolean    is_aside)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_yalign (GTK_LABEL (label), 0.0f);
  if (is_aside)
    gtk_widget_add_css_class (label, "dim-label");

  return label;
}

/* The fields that differ, each as it stands from then on. */
static char *
describe_changes (BbSession     *session,
                  const BbTable *table,
                  gconstpointer  before,
                  gconstpointer  after)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];
      g_autofree char *old = field->derived ? NULL : bb_show_field (session, table, field, before);
      g_autofree char *new = field->derived ? NULL : bb_show_field (session, table, field, after);

      if (g_strcmp0 (old, new) == 0)
        continue;
      g_string_append (text, text->len > 0 ? "; " : "");
      /* Translators: a field of a record, and what it says now. */
      g_string_append_printf (text, _("%s: %s"), _(field->title), *new != '\0' ? new : _("nothing"));
    }

  return text->len > 0 ? g_string_free (g_steal_pointer (&text), FALSE) : NULL;
}

static char *
describe (BbSession     *session,
          const BbTable *table,
          const BbEvent *event,
          gconstpointer  before,
          gconstpointer  after)
{
  char *changes = NULL;

  if (event->deed == BB_DEED_CHANGED && before != NULL && after != NULL)
    changes = describe_changes (session, table, before, after);

  return changes != NULL ? changes : g_strdup (bb_choices_get_title (&bb_deed_choices, event->deed));
}

static void
attach (BbHistoryView *self,
        BbSession     *session,
        const BbEvent *event,
        const char    *what,
        int            row)
{
  g_autofree char *day = bb_show_date (event->at);
  g_autofree char *who = bb_show_name (session, &bb_person_table, event->person);
  GtkWidget *label = make_label (what, FALSE);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_grid_attach (self->grid, make_label (day, TRUE), 0, row, 1, 1);
  gtk_grid_attach (self->grid, label, 1, row, 1, 1);
  gtk_grid_attach (self->grid, make_label (who, TRUE), 2, row, 1, 1);
}

static void
bb_history_view_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_HISTORY_VIEW);

  G_OBJECT_CLASS (bb_history_view_parent_class)->dispose (object);
}

static void
bb_history_view_class_init (BbHistoryViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_history_view_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-history-view.ui");
  gtk_widget_class_bind_template_child (widget_class, BbHistoryView, grid);
}

static void
bb_history_view_init (BbHistoryView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_history_view_new:
 *
 * Returns: (transfer floating): the history of nothing
 */
GtkWidget *
bb_history_view_new (void)
{
  return g_object_new (BB_TYPE_HISTORY_VIEW, NULL);
}

/**
 * bb_history_view_show:
 * @self: a view
 * @session: the session
 * @table: the table of a record, which refers to no other
 * @id: its key
 */
void
bb_history_view_show (BbHistoryView *self,
                      BbSession     *session,
                      const BbTable *table,
                      gint64         id)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) events = NULL;
  gpointer after = NULL;

  g_return_if_fail (BB_IS_HISTORY_VIEW (self) && BB_IS_SESSION (session));

  bb_children_empty_grid (self->grid);
  events = bb_book_load_events (bb_session_get_book (session), table, id, &error);
  if (events == NULL)
    {
      bb_session_report (session, error);
      return;
    }

  for (guint i = events->len; i > 0 && events->len - i < MOST_LINES; i--)
    {
      const BbEvent *event = events->pdata[i - 1];
      const BbEvent *earlier = i > 1 ? events->pdata[i - 2] : NULL;
      gpointer before = earlier != NULL ? bb_history_dup_record (table, earlier->detail) : NULL;
      g_autofree char *what = NULL;

      if (after == NULL)
        after = bb_history_dup_record (table, event->detail);
      what = describe (session, table, event, before, after);
      attach (self, session, event, what, (int) (events->len - i));
      bb_record_free (table, after);
      after = before;
    }
  bb_record_free (table, after);
  gtk_widget_set_visible (GTK_WIDGET (self), events->len > 0);
}
