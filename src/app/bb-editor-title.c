/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-editor-title"

#include "bb-editor-title.h"

#include <glib/gi18n-lib.h>

#include "bb-show.h"

struct _BbEditorTitle
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *kind_label;
  GtkLabel *record_label;
};

G_DEFINE_FINAL_TYPE (BbEditorTitle, bb_editor_title, ADW_TYPE_BIN)

static void
bb_editor_title_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_editor_title_parent_class)->dispose (object);
}

static void
bb_editor_title_class_init (BbEditorTitleClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_editor_title_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-editor-title.ui");
  gtk_widget_class_bind_template_child (widget_class, BbEditorTitle, kind_label);
  gtk_widget_class_bind_template_child (widget_class, BbEditorTitle, record_label);
}

static void
bb_editor_title_init (BbEditorTitle *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* What the record belongs to: a colour to its blank, a revision to its recipe, a reading to its specimen. */
static char *
describe_owner (BbSession     *session,
                const BbTable *table,
                gconstpointer  record)
{
  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];

      if (field->owner && bb_field_is_set (field, record))
        return bb_show_name (session, field->target, bb_field_get_integer (field, record));
    }

  return NULL;
}

static const char *
get_text (const BbTable *table,
          gconstpointer  record,
          const char    *name)
{
  const BbField *field = bb_table_find_field (table, name);

  return field != NULL ? bb_field_get_text (field, record) : NULL;
}

static char *
describe (BbSession     *session,
          const BbTable *table,
          gconstpointer  record,
          const char    *first)
{
  const char *name = get_text (table, record, "name");
  const char *code = get_text (table, record, "code");
  g_autofree char *owner = describe_owner (session, table, record);
  g_autoptr (GStrvBuilder) parts = g_strv_builder_new ();
  g_auto (GStrv) list = NULL;

  if (first != NULL)
    g_strv_builder_add (parts, first);
  if (name != NULL)
    g_strv_builder_add (parts, name);
  if (code != NULL)
    g_strv_builder_add (parts, code);
  if (owner != NULL)
    g_strv_builder_add (parts, owner);
  list = g_strv_builder_end (parts);

  return g_strjoinv (" · ", list);
}

/**
 * bb_editor_title_show:
 * @self: a title
 * @session: the session
 * @table: the table of the record that is edited
 * @record: the record as it was before
 */
void
bb_editor_title_show (BbEditorTitle *self,
                      BbSession     *session,
                      const BbTable *table,
                      gconstpointer  record)
{
  const BbField *id = bb_table_find_field (table, "id");
  const gboolean is_new = id != NULL && !bb_field_is_set (id, record);
  g_autofree char *text = NULL;

  g_return_if_fail (BB_IS_EDITOR_TITLE (self) && BB_IS_SESSION (session) && table != NULL && record != NULL);

  text = describe (session, table, record, is_new ? _("New") : NULL);
  gtk_label_set_label (self->kind_label, _(table->title));
  gtk_label_set_label (self->record_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->record_label), *text != '\0');
}

/**
 * bb_editor_title_dup_text:
 * @session: the session
 * @table: a table
 * @record: a record of it
 *
 * Returns: (transfer full): what is edited, in one line
 */
char *
bb_editor_title_dup_text (BbSession     *session,
                          const BbTable *table,
                          gconstpointer  record)
{
  g_return_val_if_fail (BB_IS_SESSION (session) && table != NULL && record != NULL, NULL);

  return describe (session, table, record, _(table->title));
}
