/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-list-row"

#include "bb-list-row.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"

struct _BbListRow
{
  BbFieldRow parent_instance;

  GtkBox *captions;
  GtkListBox *lines;
  GtkButton *add_button;

  /* owned: one for each field of a line */
  GPtrArray *columns;
};

G_DEFINE_FINAL_TYPE (BbListRow, bb_list_row, BB_TYPE_FIELD_ROW)

static GtkWidget *add_line (BbListRow     *self,
                            gconstpointer  item);

static const BbTable *
get_item_table (BbListRow *self)
{
  return bb_field_row_get_field (BB_FIELD_ROW (self))->item;
}

/* A line is a row of the list box; its editors hang on it in the order of the table's fields. */
static GPtrArray *
get_editors (GtkWidget *line)
{
  return g_object_get_data (G_OBJECT (line), "editors");
}

static guint
count_lines (BbListRow *self)
{
  guint n = 0;

  while (gtk_list_box_get_row_at_index (self->lines, (int) n) != NULL)
    n++;

  return n;
}

/* Two editors tell by their units and choices what they are for; more need it written above them. */
static void
update_captions (BbListRow *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self->captions), get_item_table (self)->n_fields > 2 && count_lines (self) > 0);
}

static void
update_add_button (BbListRow *self)
{
  const BbLimits *count = &bb_field_row_get_field (BB_FIELD_ROW (self))->count;

  gtk_widget_set_sensitive (GTK_WIDGET (self->add_button), !count->set || count_lines (self) < count->maximum);
  update_captions (self);
}

static void
editor_changed_cb (BbListRow *self)
{
  bb_field_row_edited (BB_FIELD_ROW (self));
}

static void
remove_clicked_cb (GtkButton *button,
                   BbListRow *self)
{
  GtkWidget *line = gtk_widget_get_ancestor (GTK_WIDGET (button), GTK_TYPE_LIST_BOX_ROW);

  gtk_list_box_remove (self->lines, line);
  update_add_button (self);
  bb_field_row_edited (BB_FIELD_ROW (self));
}

static void
add_clicked_cb (GtkButton *button,
                BbListRow *self)
{
  GtkWidget *line = add_line (self, NULL);

  (void) button;

  gtk_widget_child_focus (line, GTK_DIR_TAB_FORWARD);
  bb_field_row_edited (BB_FIELD_ROW (self));
}

static GtkWidget *
add_line (BbListRow     *self,
          gconstpointer  item)
{
  const BbTable *table = get_item_table (self);
  BbSession *session = bb_field_row_get_session (BB_FIELD_ROW (self));
  GtkWidget *line = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  GtkWidget *remove = gtk_button_new_from_icon_name ("list-remove-symbolic");
  GPtrArray *editors = g_ptr_array_new ();

  for (guint i = 0; i < table->n_fields; i++)
    {
      BbFieldRow *editor = bb_field_row_new (session, table, &table->fields[i]);

      if (item != NULL)
        bb_field_row_load (editor, item);
      bb_field_row_set_compact (editor);
      gtk_size_group_add_widget (self->columns->pdata[i], GTK_WIDGET (editor));
      g_signal_connect_swapped (editor, "changed", G_CALLBACK (editor_changed_cb), self);
      g_ptr_array_add (editors, editor);
      gtk_box_append (GTK_BOX (box), GTK_WIDGET (editor));
    }

  gtk_widget_set_tooltip_text (remove, _("Take this line away"));
  bb_compat_set_name (remove, _("Take this line away"));
  gtk_widget_set_valign (remove, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (remove, "flat");
  g_signal_connect (remove, "clicked", G_CALLBACK (remove_clicked_cb), self);
  gtk_box_append (GTK_BOX (box), remove);

  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (line), box);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (line), FALSE);
  gtk_widget_set_focusable (line, FALSE);
  g_object_set_data_full (G_OBJECT (line), "editors", editors, (GDestroyNotify) g_ptr_array_unref);
  gtk_list_box_append (self->lines, line);
  update_add_button (self);

  return line;
}

static void
clear_lines (BbListRow *self)
{
  bb_compat_empty_list (self->lines);
  update_add_button (self);
}

static void
bb_list_row_load (BbFieldRow    *row,
                  gconstpointer  record)
{
  BbListRow *self = BB_LIST_ROW (row);
  const BbField *field = bb_field_row_get_field (row);
  const GArray *array = bb_field_get_array (field, record);

  clear_lines (self);
  for (guint i = 0; array != NULL && i < array->len; i++)
    add_line (self, array->data + i * field->item->size);
  /* A list that may be empty is, until a person adds to it. */
  if (field->required && (array == NULL || array->len == 0))
    add_line (self, NULL);
}

static gboolean
bb_list_row_store (BbFieldRow  *row,
                   gpointer     record,
                   char       **message)
{
  BbListRow *self = BB_LIST_ROW (row);
  const BbField *field = bb_field_row_get_field (row);
  gboolean understood = TRUE;
  GtkListBoxRow *line = NULL;

  bb_field_clear (field, record);
  for (int i = 0; (line = gtk_list_box_get_row_at_index (self->lines, i)) != NULL; i++)
    {
      GPtrArray *editors = get_editors (GTK_WIDGET (line));
      gpointer item = bb_field_append_item (field, record);

      for (guint e = 0; e < editors->len; e++)
        {
          g_autofree char *text = NULL;

          if (!bb_field_row_store (editors->pdata[e], item, &text) && understood)
            {
              *message = g_steal_pointer (&text);
              understood = FALSE;
            }
        }
    }

  return understood;
}

/* One line of text per line of the list, its editors' states escaped and separated by tabs. */
static char *
bb_list_row_dup_state (BbFieldRow *row)
{
  BbListRow *self = BB_LIST_ROW (row);
  GString *state = g_string_new (NULL);
  GtkListBoxRow *line = NULL;

  for (int i = 0; (line = gtk_list_box_get_row_at_index (self->lines, i)) != NULL; i++)
    {
      GPtrArray *editors = get_editors (GTK_WIDGET (line));

      for (guint e = 0; e < editors->len; e++)
        {
          g_autofree char *text = bb_field_row_dup_state (editors->pdata[e]);
          g_autofree char *escaped = g_strescape (text != NULL ? text : "", NULL);

          g_string_append_printf (state, "%s%s", e > 0 ? "\t" : "", escaped);
        }
      g_string_append_c (state, '\n');
    }

  return g_string_free (state, FALSE);
}

static void
bb_list_row_set_state (BbFieldRow  *row,
                       const char  *state,
                       BbUnitSystem system)
{
  BbListRow *self = BB_LIST_ROW (row);
  g_auto (GStrv) lines = g_strsplit (state, "\n", -1);

  clear_lines (self);
  for (guint i = 0; lines[i] != NULL && *lines[i] != '\0'; i++)
    {
      g_auto (GStrv) texts = g_strsplit (lines[i], "\t", -1);
      GPtrArray *editors = get_editors (add_line (self, NULL));

      for (guint e = 0; e < editors->len && texts[e] != NULL; e++)
        {
          g_autofree char *text = g_strcompress (texts[e]);

          bb_field_row_set_state (editors->pdata[e], text, system);
        }
    }
}

static void
bb_list_row_refresh (BbFieldRow *row)
{
  BbListRow *self = BB_LIST_ROW (row);
  GtkListBoxRow *line = NULL;

  for (int i = 0; (line = gtk_list_box_get_row_at_index (self->lines, i)) != NULL; i++)
    {
      GPtrArray *editors = get_editors (GTK_WIDGET (line));

      for (guint e = 0; e < editors->len; e++)
        bb_field_row_refresh (editors->pdata[e]);
    }
}

static void
make_captions (BbListRow *self)
{
  const BbTable *table = get_item_table (self);

  self->captions = GTK_BOX (gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4));
  for (guint i = 0; i < table->n_fields; i++)
    {
      GtkWidget *label = gtk_label_new (_(table->fields[i].title));
      GtkSizeGroup *column = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);

      gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
      gtk_widget_add_css_class (label, "caption");
      gtk_widget_add_css_class (label, "dim-label");
      gtk_size_group_add_widget (column, label);
      g_ptr_array_add (self->columns, column);
      gtk_box_append (self->captions, label);
    }
}

static void
bb_list_row_build (BbFieldRow *row)
{
  BbListRow *self = BB_LIST_ROW (row);
  GtkWidget *below = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->add_button = GTK_BUTTON (gtk_button_new_from_icon_name ("list-add-symbolic"));
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->add_button), _("Add a line"));
  gtk_widget_add_css_class (GTK_WIDGET (self->add_button), "flat");
  g_signal_connect (self->add_button, "clicked", G_CALLBACK (add_clicked_cb), self);
  self->lines = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->lines, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (self->lines), "lines");
  bb_field_row_set_editor (row, GTK_WIDGET (self->add_button), GTK_WIDGET (self->add_button));
  bb_compat_set_name (GTK_WIDGET (self->add_button), _("Add a line"));
  make_captions (self);
  gtk_box_append (GTK_BOX (below), GTK_WIDGET (self->captions));
  gtk_box_append (GTK_BOX (below), GTK_WIDGET (self->lines));
  bb_field_row_set_below (row, below, GTK_WIDGET (self->lines));
  update_captions (self);
}

static void
bb_list_row_finalize (GObject *object)
{
  g_ptr_array_unref (BB_LIST_ROW (object)->columns);

  G_OBJECT_CLASS (bb_list_row_parent_class)->finalize (object);
}

static void
bb_list_row_class_init (BbListRowClass *klass)
{
  BbFieldRowClass *row_class = BB_FIELD_ROW_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = bb_list_row_finalize;
  row_class->build = bb_list_row_build;
  row_class->load = bb_list_row_load;
  row_class->store = bb_list_row_store;
  row_class->dup_state = bb_list_row_dup_state;
  row_class->set_state = bb_list_row_set_state;
  row_class->refresh = bb_list_row_refresh;
}

static void
bb_list_row_init (BbListRow *self)
{
  self->columns = g_ptr_array_new_with_free_func (g_object_unref);
}
