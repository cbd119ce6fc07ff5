/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-catalogue-head"

#include "bb-catalogue-head.h"

#include "bb-trace-dialog.h"
#include "bb-trace.h"
#include "bb-withdrawn-bar.h"

struct _BbCatalogueHead
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *name_label;
  GtkLabel *code_label;
  GtkButton *edit_button;
  GtkButton *trace_button;
  GtkButton *withdraw_button;
  GtkButton *labels_button;
  BbWithdrawnBar *withdrawn_bar;

  /* owned */
  BbSession *session;

  const BbTable *table;
  gint64 id;
  gboolean withdrawn;
  gboolean fixed;
};

G_DEFINE_FINAL_TYPE (BbCatalogueHead, bb_catalogue_head, ADW_TYPE_BIN)

static const char *
get_text (BbCatalogueHead *self,
          gconstpointer    record,
          const char      *name)
{
  const BbField *field = bb_table_find_field (self->table, name);
  const char *text = field != NULL ? bb_field_get_text (field, record) : NULL;

  return text != NULL ? text : "";
}

static void
show_buttons (BbCatalogueHead *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self->edit_button), !self->withdrawn && !self->fixed);
  gtk_widget_set_visible (GTK_WIDGET (self->withdraw_button),
                          !self->withdrawn && bb_table_find_field (self->table, "withdrawn_at") != NULL);
}

static void
withdraw_action (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  BbCatalogueHead *self = BB_CATALOGUE_HEAD (widget);

  (void) name;
  (void) parameter;

  /* The finder may be a step ahead of what is shown, and it is what is shown that goes. */
  bb_session_withdraw (self->session, self->table, self->id, gtk_label_get_label (self->name_label));
}

static void
trace_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  BbCatalogueHead *self = BB_CATALOGUE_HEAD (widget);

  (void) name;
  (void) parameter;

  bb_trace_dialog_present (widget, self->session, self->table, self->id);
}

static void
bb_catalogue_head_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);
  g_clear_object (&BB_CATALOGUE_HEAD (object)->session);

  G_OBJECT_CLASS (bb_catalogue_head_parent_class)->dispose (object);
}

static void
bb_catalogue_head_class_init (BbCatalogueHeadClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_catalogue_head_dispose;

  g_type_ensure (BB_TYPE_WITHDRAWN_BAR);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-catalogue-head.ui");
  gtk_widget_class_bind_template_child (widget_class, BbCatalogueHead, name_label);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogueHead, code_label);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogueHead, edit_button);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogueHead, trace_button);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogueHead, withdraw_button);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogueHead, labels_button);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogueHead, withdrawn_bar);
  gtk_widget_class_install_action (widget_class, "head.withdraw", NULL, withdraw_action);
  gtk_widget_class_install_action (widget_class, "head.trace", NULL, trace_action);
}

static void
bb_catalogue_head_init (BbCatalogueHead *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_catalogue_head_start:
 * @self: a head
 * @session: the session
 * @table: the table of the records that are shown
 * @has_labels: %TRUE for what gets a label with a code on it
 *
 * To be called once.
 */
void
bb_catalogue_head_start (BbCatalogueHead *self,
                         BbSession       *session,
                         const BbTable   *table,
                         gboolean         has_labels)
{
  g_return_if_fail (BB_IS_CATALOGUE_HEAD (self) && BB_IS_SESSION (session) && table != NULL);

  g_set_object (&self->session, session);
  self->table = table;
  gtk_widget_set_visible (GTK_WIDGET (self->trace_button), bb_book_is_traced (table));
  gtk_widget_set_visible (GTK_WIDGET (self->labels_button), has_labels);
}

/**
 * bb_catalogue_head_show:
 * @self: a head
 * @record: the record to show
 */
void
bb_catalogue_head_show (BbCatalogueHead *self,
                        gconstpointer    record)
{
  gboolean has_name = FALSE;

  g_return_if_fail (BB_IS_CATALOGUE_HEAD (self) && record != NULL);

  self->id = bb_record_get_key (self->table, record);
  has_name = bb_table_find_field (self->table, "name") != NULL;
  /* In large letters stands the name, or the code where such records have no name. */
  gtk_label_set_label (self->name_label, get_text (self, record, has_name ? "name" : "code"));
  gtk_label_set_label (self->code_label, get_text (self, record, "code"));
  gtk_widget_set_visible (GTK_WIDGET (self->code_label), has_name);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (self->labels_button), "(sx)", self->table->name, self->id);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->labels_button), "win.labels");
  bb_withdrawn_bar_show (self->withdrawn_bar, self->session, self->table, record);
  self->withdrawn = bb_record_is_withdrawn (self->table, record);
  show_buttons (self);
}

/**
 * bb_catalogue_head_set_fixed:
 * @self: a head
 * @fixed: whether the record can't be edited any more
 */
void
bb_catalogue_head_set_fixed (BbCatalogueHead *self,
                             gboolean         fixed)
{
  g_return_if_fail (BB_IS_CATALOGUE_HEAD (self));

  self->fixed = fixed;
  show_buttons (self);
}

/**
 * bb_catalogue_head_set_subtitle:
 * @self: a head
 * @subtitle: what stands below the large letters until another record is shown, in place of the code
 */
void
bb_catalogue_head_set_subtitle (BbCatalogueHead *self,
                                const char      *subtitle)
{
  g_return_if_fail (BB_IS_CATALOGUE_HEAD (self) && subtitle != NULL);

  gtk_label_set_label (self->code_label, subtitle);
  gtk_widget_set_visible (GTK_WIDGET (self->code_label), *subtitle != '\0');
}
