/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-list-row"

#include "bb-list-row.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-list-line.h"

struct _BbListRow
{
  BbFieldRow parent_instance;

  GtkBox *captions;
  GtkListBox *lines;
  GtkButton *add_button;

  /* owned: one for each field of a line, and one for what is behind them */
  GPtrArray *columns;

  /* owned: what is known of a line that is yet to be written, or NULL */
  gpointer fresh;
};

G_DEFINE_FINAL_TYPE (BbListRow, bb_list_row, BB_TYPE_FIELD_ROW)

static const BbTable *
get_item_table (BbListRow *self)
{
  return bb_field_row_get_field (BB_FIELD_ROW (self))->item;
}

static BbListLine *
get_line (BbListRow *self,
          guint      n)
{
  return BB_LIST_LINE (gtk_list_box_get_row_at_index (self->lines, (int) n));
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
line_changed_cb (BbListRow *self)
{
  bb_field_row_edited (BB_FIELD_ROW (self));
}

static void
line_unwanted_cb (BbListRow  *self,
                  BbListLine *line)
{
  gtk_list_box_remove (self->lines, GTK_WIDGET (line));
  update_add_button (self);
  bb_field_row_edited (BB_FIELD_ROW (self));
}

static BbListLine *
add_line (BbListRow     *self,
          gconstpointer  item)
{
  GtkWidget *line = bb_list_line_new (bb_field_row_get_session (BB_FIELD_ROW (self)), get_item_table (self),
                                      self->columns, item);

  g_signal_connect_object (line, "changed", G_CALLBACK (line_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (line, "unwanted", G_CALLBACK (line_unwanted_cb), self, G_CONNECT_SWAPPED);
  gtk_list_box_append (self->lines, line);
  update_add_button (self);

  return BB_LIST_LINE (line);
}

static void
add_clicked_cb (GtkButton *button,
                BbListRow *self)
{
  BbListLine *line = add_line (self, self->fresh);

  (void) button;

  gtk_widget_child_focus (GTK_WIDGET (line), GTK_DIR_TAB_FORWARD);
  bb_field_row_edited (BB_FIELD_ROW (self));
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
    add_line (self, self->fresh);
}

static gboolean
bb_list_row_store (BbFieldRow  *row,
                   gpointer     record,
                   char       **message)
{
  BbListRow *self = BB_LIST_ROW (row);
  const BbField *field = bb_field_row_get_field (row);
  const guint n = count_lines (self);
  gboolean understood = TRUE;

  bb_field_clear (field, record);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *text = NULL;

      if (!bb_list_line_store (get_line (self, i), bb_field_append_item (field, record), &text) && understood)
        {
          *message = g_steal_pointer (&text);
          understood = FALSE;
        }
    }

  return understood;
}

/* One line of text per line of the list. */
static char *
bb_list_row_dup_state (BbFieldRow *row)
{
  BbListRow *self = BB_LIST_ROW (row);
  const guint n = count_lines (self);
  GString *state = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *text = bb_list_line_dup_state (get_line (self, i));

      g_string_append_printf (state, "%s\n", text);
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
    bb_list_line_set_state (add_line (self, NULL), lines[i], system);
}

static void
bb_list_row_refresh (BbFieldRow *row)
{
  BbListRow *self = BB_LIST_ROW (row);
  const guint n = count_lines (self);

  for (guint i = 0; i < n; i++)
    bb_list_line_refresh (get_line (self, i));
}

static gboolean
bb_list_row_judge (BbFieldRow *row,
                   gboolean    even_if_untouched)
{
  BbListRow *self = BB_LIST_ROW (row);
  const guint n = count_lines (self);
  gboolean valid = TRUE;

  for (guint i = 0; i < n; i++)
    valid = bb_list_line_judge (get_line (self, i), even_if_untouched) && valid;

  return valid;
}

static BbFieldRow *
bb_list_row_find_nested (BbFieldRow *row,
                         const char *path)
{
  BbListRow *self = BB_LIST_ROW (row);
  const guint n = count_lines (self);
  char *end = NULL;
  guint64 i = 0;

  if (*path != '[')
    return NULL;
  i = g_ascii_strtoull (path + 1, &end, 10);

  return i < n && g_str_has_prefix (end, "].") ? bb_list_line_find (get_line (self, (guint) i), end + 2) : NULL;
}

static BbFieldRow *
bb_list_row_find_faulty (BbFieldRow *row)
{
  BbListRow *self = BB_LIST_ROW (row);
  const guint n = count_lines (self);
  BbFieldRow *faulty = NULL;

  for (guint i = 0; faulty == NULL && i < n; i++)
    faulty = bb_list_line_find_faulty (get_line (self, i));

  return faulty;
}

static void
make_captions (BbListRow *self)
{
  const BbTable *table = get_item_table (self);
  GtkWidget *behind = gtk_label_new (NULL);

  self->captions = GTK_BOX (gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4));
  for (guint i = 0; i < table->n_fields; i++)
    {
      GtkWidget *label = gtk_label_new (_(table->fields[i].title));
      GtkSizeGroup *column = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);

      gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
      gtk_widget_add_css_class (label, "caption");
      gtk_widget_add_css_class (label, "dim-label");
      /* A line grows with its texts, and what stands above them with it. */
      gtk_widget_set_hexpand (label, table->fields[i].kind == BB_KIND_TEXT && table->fields[i].names == NULL);
      gtk_size_group_add_widget (column, label);
      g_ptr_array_add (self->columns, column);
      gtk_box_append (self->captions, label);
    }
  g_ptr_array_add (self->columns, gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL));
  gtk_box_append (self->captions, behind);
  gtk_size_group_add_widget (self->columns->pdata[table->n_fields], behind);
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
  BbListRow *self = BB_LIST_ROW (object);

  g_ptr_array_unref (self->columns);
  if (self->fresh != NULL)
    bb_record_free (get_item_table (self), self->fresh);

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
  row_class->judge = bb_list_row_judge;
  row_class->find_nested = bb_list_row_find_nested;
  row_class->find_faulty = bb_list_row_find_faulty;
}

static void
bb_list_row_init (BbListRow *self)
{
  self->columns = g_ptr_array_new_with_free_func (g_object_unref);
}

/**
 * bb_list_row_set_fresh:
 * @self: a row
 * @item: what is known of a struct that a person adds to the list; copied
 *
 * Fills in what need not be typed in each line that is added from now on. The person can change it.
 */
void
bb_list_row_set_fresh (BbListRow     *self,
                       gconstpointer  item)
{
  const BbTable *table = NULL;

  g_return_if_fail (BB_IS_LIST_ROW (self) && item != NULL);

  table = get_item_table (self);
  if (self->fresh != NULL)
    bb_record_free (table, self->fresh);
  self->fresh = bb_record_copy (table, item);
}
