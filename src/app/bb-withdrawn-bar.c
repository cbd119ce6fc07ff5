/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-withdrawn-bar"

#include "bb-withdrawn-bar.h"

#include <glib/gi18n-lib.h>

#include "bb-book-jobs.h"
#include "bb-show.h"
#include "bb-word-badge.h"

struct _BbWithdrawnBar
{
  AdwBin parent_instance;

  /* template */
  BbWordBadge *badge;
  GtkLabel *label;

  /* owned */
  BbSession *session;

  const BbTable *table;
  gint64 id;
};

G_DEFINE_FINAL_TYPE (BbWithdrawnBar, bb_withdrawn_bar, ADW_TYPE_BIN)

static void
take_back_cb (BbWithdrawnBar *self)
{
  bb_session_restore (self->session, self->table, self->id);
}

/* Who withdrew it last; an empty text where nobody was named. */
static char *
find_person (BbWithdrawnBar *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) events = bb_book_load_events (bb_session_get_book (self->session), self->table, self->id,
                                                      &error);

  if (events == NULL)
    bb_session_report (self->session, error);
  for (guint i = events != NULL ? events->len : 0; i > 0; i--)
    {
      const BbEvent *event = events->pdata[i - 1];

      if (event->deed == BB_DEED_WITHDRAWN)
        return bb_show_name (self->session, &bb_person_table, event->person);
    }

  return g_strdup ("");
}

/**
 * bb_withdrawn_bar_show:
 * @self: a bar
 * @session: the session
 * @table: the record's table
 * @record: (nullable): a record; %NULL for none
 */
void
bb_withdrawn_bar_show (BbWithdrawnBar *self,
                       BbSession      *session,
                       const BbTable  *table,
                       gconstpointer   record)
{
  const gboolean withdrawn = record != NULL && bb_record_is_withdrawn (table, record);
  g_autofree char *day = NULL;
  g_autofree char *person = NULL;
  g_autofree char *text = NULL;

  g_return_if_fail (BB_IS_WITHDRAWN_BAR (self) && BB_IS_SESSION (session));

  gtk_widget_set_visible (GTK_WIDGET (self), withdrawn);
  if (!withdrawn)
    return;
  g_set_object (&self->session, session);
  self->table = table;
  self->id = bb_record_get_key (table, record);
  day = bb_show_date (bb_field_get_text (bb_table_find_field (table, "withdrawn_at"), record));
  person = find_person (self);
  /* Translators: a day, and who did it then. */
  text = *person != '\0' ? g_strdup_printf (_("Since %s, by %s. It is offered nowhere until it is taken back."), day,
                                            person)
                         /* Translators: a day. */
                         : g_strdup_printf (_("Since %s. It is offered nowhere until it is taken back."), day);
  bb_word_badge_say (self->badge, BB_TONE_GONE, _("Withdrawn"));
  gtk_label_set_label (self->label, text);
}

static void
bb_withdrawn_bar_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);
  g_clear_object (&BB_WITHDRAWN_BAR (object)->session);

  G_OBJECT_CLASS (bb_withdrawn_bar_parent_class)->dispose (object);
}

static void
bb_withdrawn_bar_class_init (BbWithdrawnBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_withdrawn_bar_dispose;
  g_type_ensure (BB_TYPE_WORD_BADGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-withdrawn-bar.ui");
  gtk_widget_class_bind_template_child (widget_class, BbWithdrawnBar, badge);
  gtk_widget_class_bind_template_child (widget_class, BbWithdrawnBar, label);
  gtk_widget_class_bind_template_callback (widget_class, take_back_cb);
}

static void
bb_withdrawn_bar_init (BbWithdrawnBar *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
