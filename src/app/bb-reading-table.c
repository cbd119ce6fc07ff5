/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-reading-table"

#include "bb-reading-table.h"

#include <glib/gi18n-lib.h>

#include "bb-add-button.h"
#include "bb-moment.h"
#include "bb-person-menu.h"
#include "bb-reading-grid.h"
#include "bb-session-due.h"
#include "bb-show.h"

/* Under this key what was entered is kept until it is saved or given up. */
#define KEPT_KEY "reading-table"

struct _BbReadingTable
{
  AdwWindow parent_instance;

  /* template */
  GtkLabel *hint_label;
  GtkBox *person_box;
  GtkDropDown *person_drop_down;
  GtkRevealer *fault_revealer;
  GtkLabel *fault_label;
  BbReadingGrid *grid;

  GtkWidget *add_button;

  /* owned */
  BbSession *session;
  GCancellable *loading;

  gboolean saving;
};

G_DEFINE_FINAL_TYPE (BbReadingTable, bb_reading_table, ADW_TYPE_WINDOW)

static void
changed_cb (BbReadingTable *self)
{
  g_autofree char *entered = bb_reading_grid_save (self->grid);

  gtk_revealer_set_reveal_child (self->fault_revealer, FALSE);
  bb_session_keep_form (self->session, KEPT_KEY, entered);
}

static char *
describe_hint (BbReadingTable *self,
               guint           n_left_out)
{
  const char *keys = _("Keys: 5 to 1 for whole grades, 9 to 6 for 4-5 to 1-2; 1, 2, 3 for none, slight, marked. "
                       "Rows without an entry are left alone.");
  g_autofree char *today = bb_dup_today ();
  g_autofree char *day = bb_show_date (today);
  /* Translators: a day. */
  g_autofree char *dated = g_strdup_printf (_("Dated %s."), day);
  g_autofree char *more = NULL;

  if (bb_reading_grid_get_n_rows (self->grid) == 0)
    return g_strdup (_("Nothing has to be graded now."));
  if (n_left_out > 0)
    more = g_strdup_printf (ngettext ("%u more waits, and comes once these are saved.",
                                      "%u more wait, and come once these are saved.", n_left_out), n_left_out);

  return g_strjoin (" ", keys, dated, more, NULL);
}

/* What was entered when the window went away comes back. */
static void
fill (BbReadingTable *self,
      GPtrArray      *lines)
{
  const guint n_left_out = bb_reading_grid_fill (self->grid, self->session, lines);
  g_autofree char *kept = bb_session_dup_form (self->session, KEPT_KEY);
  g_autofree char *hint = describe_hint (self, n_left_out);

  if (kept != NULL)
    bb_reading_grid_restore (self->grid, kept);
  gtk_label_set_label (self->hint_label, hint);
  bb_reading_grid_focus (self->grid);
}

static void
loaded_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (BbReadingTable) self = data;
  g_autoptr (GError) error = NULL;
  GPtrArray *lines = bb_session_load_due_finish (BB_SESSION (source), result, &error);

  if (lines == NULL)
    {
      bb_session_report (BB_SESSION (source), error);
      return;
    }
  fill (self, lines);
}

/* Shared with the writing thread; all are written or none. */
static gboolean
write_readings (BbBook    *book,
                gpointer   data,
                GError   **error)
{
  GPtrArray *readings = data;

  for (guint i = 0; i < readings->len; i++)
    if (!bb_book_save (book, &bb_reading_table, readings->pdata[i], error))
      return FALSE;

  return TRUE;
}

static void
show_fault (BbReadingTable *self,
            const char     *text)
{
  gtk_label_set_label (self->fault_label, text);
  gtk_revealer_set_reveal_child (self->fault_revealer, TRUE);
}

static void
saved_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (BbReadingTable) self = data;
  g_autoptr (GError) error = NULL;

  self->saving = FALSE;
  if (bb_session_write_finish (BB_SESSION (source), result, &error))
    {
      gtk_window_close (GTK_WINDOW (self));
      return;
    }
  /* What was entered is kept, also where the whole window is gone. */
  if (!gtk_widget_get_visible (GTK_WIDGET (self)))
    {
      bb_session_report (BB_SESSION (source), error);
      return;
    }
  show_fault (self, error->message);
}

/* Beside those who are named the menu offers nobody. */
static gboolean
has_people (BbReadingTable *self)
{
  return g_list_model_get_n_items (gtk_drop_down_get_model (self->person_drop_down)) > 1;
}

/* A grade is worth what its reader's eye is worth. */
static void
ask_for_person (BbReadingTable *self)
{
  if (has_people (self))
    {
      show_fault (self, _("Say first who graded these: choose the person above."));
      gtk_widget_grab_focus (GTK_WIDGET (self->person_drop_down));
    }
  else
    {
      show_fault (self, _("Say first who graded these: nobody is named in this book yet. Add yourself above."));
      gtk_widget_child_focus (self->add_button, GTK_DIR_TAB_FORWARD);
    }
}

static void
people_changed_cb (BbReadingTable *self)
{
  gtk_widget_set_visible (self->add_button, !has_people (self));
}

/* Whoever is added is at the bench, or would not add themselves. */
static void
person_added_cb (BbReadingTable *self,
                 gint64          id)
{
  gtk_revealer_set_reveal_child (self->fault_revealer, FALSE);
  bb_session_set_person (self->session, id);
}

/* Where nobody is named there is nobody to choose. */
static void
make_add_button (BbReadingTable *self)
{
  self->add_button = bb_add_button_new (self->session, &bb_person_table, _("Add a Person"));
  g_signal_connect_object (self->add_button, "added", G_CALLBACK (person_added_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->person_drop_down, "notify::model", G_CALLBACK (people_changed_cb), self,
                           G_CONNECT_SWAPPED);
  gtk_box_append (self->person_box, self->add_button);
  people_changed_cb (self);
}

static void
save_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbReadingTable *self = BB_READING_TABLE (widget);
  g_autofree char *problem = NULL;
  g_autoptr (GPtrArray) readings = NULL;

  (void) name;
  (void) parameter;

  if (self->saving)
    return;
  readings = bb_reading_grid_collect (self->grid, &problem);
  if (problem != NULL)
    {
      show_fault (self, problem);
      return;
    }
  if (readings->len == 0)
    {
      gtk_window_close (GTK_WINDOW (self));
      return;
    }
  if (bb_session_get_person (self->session) == 0)
    {
      ask_for_person (self);
      return;
    }
  self->saving = TRUE;
  bb_session_write_async (self->session, write_readings, g_steal_pointer (&readings),
                          (GDestroyNotify) g_ptr_array_unref, saved_cb, g_object_ref (self));
}

/* Not while it is being saved. Otherwise what was entered is saved by now, or given up. */
static gboolean
bb_reading_table_close_request (GtkWindow *window)
{
  BbReadingTable *self = BB_READING_TABLE (window);

  if (self->saving)
    return TRUE;
  bb_session_keep_form (self->session, KEPT_KEY, NULL);

  return GTK_WINDOW_CLASS (bb_reading_table_parent_class)->close_request (window);
}

static void
bb_reading_table_dispose (GObject *object)
{
  BbReadingTable *self = BB_READING_TABLE (object);

  if (self->loading != NULL)
    g_cancellable_cancel (self->loading);
  g_clear_object (&self->loading);
  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_READING_TABLE);

  G_OBJECT_CLASS (bb_reading_table_parent_class)->dispose (object);
}

static void
bb_reading_table_class_init (BbReadingTableClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_reading_table_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = bb_reading_table_close_request;

  g_type_ensure (BB_TYPE_READING_GRID);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-reading-table.ui");
  gtk_widget_class_bind_template_child (widget_class, BbReadingTable, hint_label);
  gtk_widget_class_bind_template_child (widget_class, BbReadingTable, person_box);
  gtk_widget_class_bind_template_child (widget_class, BbReadingTable, person_drop_down);
  gtk_widget_class_bind_template_child (widget_class, BbReadingTable, fault_revealer);
  gtk_widget_class_bind_template_child (widget_class, BbReadingTable, fault_label);
  gtk_widget_class_bind_template_child (widget_class, BbReadingTable, grid);
  gtk_widget_class_install_action (widget_class, "table.save", NULL, save_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_s, GDK_CONTROL_MASK, "table.save", NULL);
}

static void
bb_reading_table_init (BbReadingTable *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_object (self->grid, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
}

/**
 * bb_reading_table_new:
 * @parent: the window that asks
 * @session: the session
 *
 * Returns: (transfer none): a table, not yet presented, of what has to be graded now, what has waited longest first
 */
GtkWidget *
bb_reading_table_new (GtkWindow *parent,
                      BbSession *session)
{
  BbReadingTable *self = g_object_new (BB_TYPE_READING_TABLE, "transient-for", parent, NULL);

  self->session = g_object_ref (session);
  bb_person_menu_connect (self->person_drop_down, session);
  make_add_button (self);
  self->loading = g_cancellable_new ();
  bb_session_load_due_async (session, self->loading, loaded_cb, g_object_ref (self));

  return GTK_WIDGET (self);
}
