/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-gone-list"

#include "bb-gone-list.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-show.h"

struct _BbGoneList
{
  AdwBin parent_instance;

  /* template */
  GtkExpander *expander;
  GtkListBox *list;

  /* owned */
  BbSession *session;

  const BbGoneInfo *info;
  gint64 owner;
};

G_DEFINE_FINAL_TYPE (BbGoneList, bb_gone_list, ADW_TYPE_BIN)

static void
put_back_action (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  BbGoneList *self = BB_GONE_LIST (widget);

  (void) name;

  bb_session_restore (self->session, self->info->table, g_variant_get_int64 (parameter));
}

static GtkWidget *
make_button (gint64      id,
             const char *title)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (_("_Put Back"));
  /* Translators: a part of something, like a container. */
  g_autofree char *name = g_strdup_printf (_("Put %s back"), title);

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "gone.put-back");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "x", id);
  gtk_widget_set_tooltip_text (button, name);

  return button;
}

static GtkWidget *
make_row (BbGoneList    *self,
          gconstpointer  record,
          gboolean       is_fixed)
{
  const BbField *withdrawn_at = bb_table_find_field (self->info->table, "withdrawn_at");
  const gint64 id = bb_record_get_key (self->info->table, record);
  GtkWidget *row = adw_action_row_new ();
  g_autofree char *title = self->info->title (self->session, record);
  g_autofree char *day = bb_show_date (bb_field_get_text (withdrawn_at, record));
  g_autofree char *since = g_strdup_printf (_("Since %s"), day);

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), since);
  if (!is_fixed)
    adw_action_row_add_suffix (ADW_ACTION_ROW (row), make_button (id, title));
  g_object_set_data_full (G_OBJECT (row), "id", g_memdup2 (&id, sizeof id), g_free);

  return row;
}

/**
 * bb_gone_list_show:
 * @self: a list
 * @session: the session
 * @info: what it holds
 * @owner: the table of what they belonged to
 * @id: the key of what they belonged to
 * @is_fixed: whether nothing is to be put back
 */
void
bb_gone_list_show (BbGoneList       *self,
                   BbSession        *session,
                   const BbGoneInfo *info,
                   const BbTable    *owner,
                   gint64            id,
                   gboolean          is_fixed)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) records = bb_book_load_referring (bb_session_get_book (session), info->table, owner, id,
                                                          &error);
  g_autofree char *label = NULL;
  guint n = 0;

  g_return_if_fail (BB_IS_GONE_LIST (self));

  if (records == NULL)
    bb_session_report (session, error);
  g_set_object (&self->session, session);
  self->info = info;
  if (self->owner != id)
    gtk_expander_set_expanded (self->expander, FALSE);
  self->owner = id;
  bb_compat_empty_list (self->list);
  for (guint i = records != NULL ? records->len : 0; i > 0; i--)
    if (bb_record_is_withdrawn (info->table, records->pdata[i - 1]))
      {
        gtk_list_box_append (self->list, make_row (self, records->pdata[i - 1], is_fixed));
        n++;
      }
  label = info->count (n);
  gtk_expander_set_label (self->expander, label);
  bb_compat_set_name (GTK_WIDGET (self->expander), label);
  gtk_widget_set_visible (GTK_WIDGET (self), n > 0);
}

/**
 * bb_gone_list_focus:
 * @self: a list
 * @id: the key of one of them
 *
 * Unfolds the list and puts the keyboard on its row, which scrolls to it.
 *
 * Returns: %FALSE where it is not there
 */
gboolean
bb_gone_list_focus (BbGoneList *self,
                    gint64      id)
{
  GtkListBoxRow *row = NULL;

  g_return_val_if_fail (BB_IS_GONE_LIST (self), FALSE);

  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->list, i)) != NULL; i++)
    if (*(const gint64 *) g_object_get_data (G_OBJECT (row), "id") == id)
      {
        gtk_expander_set_expanded (self->expander, TRUE);
        return gtk_widget_grab_focus (GTK_WIDGET (row));
      }

  return FALSE;
}

static void
bb_gone_list_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);
  g_clear_object (&BB_GONE_LIST (object)->session);

  G_OBJECT_CLASS (bb_gone_list_parent_class)->dispose (object);
}

static void
bb_gone_list_class_init (BbGoneListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_gone_list_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-gone-list.ui");
  gtk_widget_class_bind_template_child (widget_class, BbGoneList, expander);
  gtk_widget_class_bind_template_child (widget_class, BbGoneList, list);
  gtk_widget_class_install_action (widget_class, "gone.put-back", "x", put_back_action);
}

static void
bb_gone_list_init (BbGoneList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
