/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-list-line"

#include "bb-list-line.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-compat.h"

struct _BbListLine
{
  GtkListBoxRow parent_instance;

  const BbTable *table;

  /* owned; the editors are children, in the order of the table's fields */
  BbSession *session;
  GPtrArray *editors;
};

G_DEFINE_FINAL_TYPE (BbListLine, bb_list_line, GTK_TYPE_LIST_BOX_ROW)

enum {
  SIGNAL_CHANGED,
  SIGNAL_UNWANTED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
editor_changed_cb (BbListLine *self)
{
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
remove_clicked_cb (BbListLine *self)
{
  g_signal_emit (self, signals[SIGNAL_UNWANTED], 0);
}

static GtkWidget *
make_remove_button (BbListLine *self)
{
  GtkWidget *remove = gtk_button_new_from_icon_name ("list-remove-symbolic");

  gtk_widget_set_tooltip_text (remove, _("Take this line away"));
  bb_compat_set_name (remove, _("Take this line away"));
  gtk_widget_set_valign (remove, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (remove, "flat");
  g_signal_connect_object (remove, "clicked", G_CALLBACK (remove_clicked_cb), self, G_CONNECT_SWAPPED);

  return remove;
}

static void
bb_list_line_finalize (GObject *object)
{
  g_ptr_array_unref (BB_LIST_LINE (object)->editors);
  g_clear_object (&BB_LIST_LINE (object)->session);

  G_OBJECT_CLASS (bb_list_line_parent_class)->finalize (object);
}

static void
bb_list_line_class_init (BbListLineClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bb_list_line_finalize;

  /**
   * BbListLine::changed:
   *
   * The person typed or chose something else in it.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_LIST_LINE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);

  /**
   * BbListLine::unwanted:
   *
   * The person wants it taken away.
   */
  signals[SIGNAL_UNWANTED] = g_signal_new ("unwanted", BB_TYPE_LIST_LINE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                           G_TYPE_NONE, 0);
}

static void
bb_list_line_init (BbListLine *self)
{
  self->editors = g_ptr_array_new ();
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (self), FALSE);
  gtk_widget_set_focusable (GTK_WIDGET (self), FALSE);
}

/**
 * bb_list_line_new:
 * @session: the session
 * @table: the table of the list's structs
 * @columns: (element-type GtkSizeGroup): what the lines of a list have in common: one for each field, and one for
 *   what stands behind them
 * @item: (nullable): what to show in it
 *
 * Returns: (transfer floating): a line
 */
GtkWidget *
bb_list_line_new (BbSession     *session,
                  const BbTable *table,
                  GPtrArray     *columns,
                  gconstpointer  item)
{
  BbListLine *self = NULL;
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  GtkWidget *hints = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *remove = NULL;

  g_return_val_if_fail (BB_IS_SESSION (session) && table != NULL && columns->len == table->n_fields + 1, NULL);

  self = g_object_new (BB_TYPE_LIST_LINE, NULL);
  self->session = g_object_ref (session);
  self->table = table;
  for (guint i = 0; i < table->n_fields; i++)
    {
      BbFieldRow *editor = bb_field_row_new (session, table, &table->fields[i]);

      if (item != NULL)
        bb_field_row_load (editor, item);
      bb_field_row_set_compact (editor, GTK_BOX (hints));
      gtk_size_group_add_widget (columns->pdata[i], GTK_WIDGET (editor));
      g_signal_connect_object (editor, "changed", G_CALLBACK (editor_changed_cb), self, G_CONNECT_SWAPPED);
      g_ptr_array_add (self->editors, editor);
      gtk_box_append (GTK_BOX (box), GTK_WIDGET (editor));
    }
  remove = make_remove_button (self);
  gtk_size_group_add_widget (columns->pdata[table->n_fields], remove);
  gtk_box_append (GTK_BOX (box), remove);
  gtk_box_append (GTK_BOX (line), box);
  gtk_box_append (GTK_BOX (line), hints);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (self), line);

  return GTK_WIDGET (self);
}

/**
 * bb_list_line_store:
 * @self: a line
 * @item: a struct of the list
 * @message: (out) (transfer full): what is wrong with what was typed first, where it can't be read
 *
 * Returns: %FALSE if something that was typed can't be read; its value is then empty
 */
gboolean
bb_list_line_store (BbListLine  *self,
                    gpointer     item,
                    char       **message)
{
  gboolean understood = TRUE;

  for (guint e = 0; e < self->editors->len; e++)
    {
      g_autofree char *text = NULL;

      if (!bb_field_row_store (self->editors->pdata[e], item, &text) && understood)
        {
          *message = g_steal_pointer (&text);
          understood = FALSE;
        }
    }

  return understood;
}

/* Returns: (transfer full) (nullable): what is wrong with what one editor holds */
static char *
dup_fault (BbListLine *self,
           BbFieldRow *editor,
           gpointer    item)
{
  char *message = NULL;
  BbProblem problem;

  if (bb_field_row_store (editor, item, &message) &&
      bb_field_find_problem (bb_field_row_get_field (editor), item, &problem))
    message = bb_problem_to_text (&problem, bb_session_get_units (self->session));

  return message;
}

static void
complain (BbFieldRow *editor,
          const char *message,
          gboolean    even_if_untouched)
{
  if (even_if_untouched || bb_field_row_is_touched (editor))
    bb_field_row_set_message (editor, message);
}

/* The rule between the fields, which names the one that it speaks of. */
static gboolean
judge_whole (BbListLine    *self,
             gconstpointer  item,
             gboolean       even_if_untouched)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = NULL;
  g_autofree char *sentence = NULL;
  BbFieldRow *editor = NULL;

  if (self->table->check == NULL || self->table->check (item, &error))
    return TRUE;
  sentence = bb_text_to_sentence (bb_fault_split (error->message, &path));
  editor = path != NULL ? bb_list_line_find (self, path) : NULL;
  complain (editor != NULL ? editor : self->editors->pdata[0], sentence, even_if_untouched);

  return FALSE;
}

/**
 * bb_list_line_judge:
 * @self: a line
 * @even_if_untouched: whether to speak of what the person has not come to yet
 *
 * Says what is wrong at each editor.
 *
 * Returns: %FALSE if something is
 */
gboolean
bb_list_line_judge (BbListLine *self,
                    gboolean    even_if_untouched)
{
  gpointer item = bb_record_new (self->table);
  gboolean valid = TRUE;

  for (guint e = 0; e < self->editors->len; e++)
    {
      BbFieldRow *editor = self->editors->pdata[e];
      g_autofree char *message = dup_fault (self, editor, item);

      bb_field_row_set_message (editor, NULL);
      if (message == NULL)
        continue;
      complain (editor, message, even_if_untouched);
      valid = FALSE;
    }
  valid = valid && judge_whole (self, item, even_if_untouched);
  bb_record_free (self->table, item);

  return valid;
}

/**
 * bb_list_line_dup_state:
 * @self: a line
 *
 * Returns: (transfer full): what is typed in its editors, escaped and separated by tabs
 */
char *
bb_list_line_dup_state (BbListLine *self)
{
  GString *state = g_string_new (NULL);

  for (guint e = 0; e < self->editors->len; e++)
    {
      g_autofree char *text = bb_field_row_dup_state (self->editors->pdata[e]);
      g_autofree char *escaped = g_strescape (text != NULL ? text : "", NULL);

      g_string_append_printf (state, "%s%s", e > 0 ? "\t" : "", escaped);
    }

  return g_string_free (state, FALSE);
}

/**
 * bb_list_line_set_state:
 * @self: a line
 * @state: what bb_list_line_dup_state() gave earlier
 * @system: the units that held then
 */
void
bb_list_line_set_state (BbListLine  *self,
                        const char  *state,
                        BbUnitSystem system)
{
  g_auto (GStrv) texts = g_strsplit (state, "\t", -1);

  for (guint e = 0; e < self->editors->len && texts[e] != NULL; e++)
    {
      g_autofree char *text = g_strcompress (texts[e]);

      bb_field_row_set_state (self->editors->pdata[e], text, system);
    }
}

/**
 * bb_list_line_refresh:
 * @self: a line
 *
 * Shows numbers in the units that hold now.
 */
void
bb_list_line_refresh (BbListLine *self)
{
  for (guint e = 0; e < self->editors->len; e++)
    bb_field_row_refresh (self->editors->pdata[e]);
}

/**
 * bb_list_line_find:
 * @self: a line
 * @path: the name of a field, or the way to one within it
 *
 * Returns: (transfer none) (nullable): the row that edits it
 */
BbFieldRow *
bb_list_line_find (BbListLine *self,
                   const char *path)
{
  const gsize n = strcspn (path, ".[");

  for (guint e = 0; e < self->editors->len; e++)
    {
      const char *name = bb_field_row_get_field (self->editors->pdata[e])->name;

      if (strlen (name) == n && strncmp (name, path, n) == 0)
        return bb_field_row_find_nested (self->editors->pdata[e], path + n);
    }

  return NULL;
}

/**
 * bb_list_line_find_faulty:
 * @self: a line
 *
 * Returns: (transfer none) (nullable): the first row in it that says that something is wrong
 */
BbFieldRow *
bb_list_line_find_faulty (BbListLine *self)
{
  BbFieldRow *faulty = NULL;

  for (guint e = 0; faulty == NULL && e < self->editors->len; e++)
    faulty = bb_field_row_find_faulty (self->editors->pdata[e]);

  return faulty;
}
