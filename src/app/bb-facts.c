/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-facts"

#include "bb-facts.h"

#include <glib/gi18n-lib.h>

#include "bb-children.h"
#include "bb-show.h"

static GtkWidget *
make_label (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_yalign (GTK_LABEL (label), 0.0f);

  return label;
}

static GtkWidget *
make_title (const char *text)
{
  GtkWidget *label = make_label (text);

  gtk_widget_add_css_class (label, "dim-label");

  return label;
}

static GtkWidget *
make_value (const char *text)
{
  GtkWidget *label = make_label (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_widget_set_hexpand (label, TRUE);

  return label;
}

/* The name and the code stand above the facts, as the record's title. */
static gboolean
is_fact (const BbTable *table,
         const BbField *field,
         gconstpointer  record)
{
  return !field->derived && bb_field_is_set (field, record) && !bb_table_is_second_part (table, field) &&
         !g_str_equal (field->name, "code") && !g_str_equal (field->name, "name");
}

static GtkWidget *
make_line (GtkSizeGroup *titles,
           const char   *title,
           const char   *value)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 18);
  GtkWidget *label = make_title (title);

  gtk_size_group_add_widget (titles, label);
  gtk_box_append (GTK_BOX (line), label);
  gtk_box_append (GTK_BOX (line), make_value (value));

  return line;
}

/**
 * bb_facts_fill:
 * @box: where to show them, one below the other
 * @session: the session
 * @table: the record's table
 * @record: a record
 *
 * Shows every value that a record holds, one line each: its title, and the value as a person reads it.
 */
void
bb_facts_fill (GtkBox        *box,
               BbSession     *session,
               const BbTable *table,
               gconstpointer  record)
{
  g_autoptr (GtkSizeGroup) titles = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);

  bb_children_empty_box (box);
  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];
      g_autofree char *text = NULL;

      if (!is_fact (table, field, record))
        continue;
      text = bb_show_field (session, table, field, record);
      gtk_box_append (box, make_line (titles, _(field->title), text));
    }
}
