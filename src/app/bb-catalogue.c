/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-catalogue"

#include "bb-catalogue.h"

#include <glib/gi18n-lib.h>

#include "bb-after-paint.h"
#include "bb-catalogue-head.h"
#include "bb-facts.h"
#include "bb-no-records.h"

struct _BbCatalogue
{
  AdwBin parent_instance;

  /* template */
  BbFinder *finder;
  GtkStack *stack;
  BbNoRecords *nothing;
  GtkBox *detail;
  BbCatalogueHead *head;
  GtkBox *facts;
  BbEditor *editor;

  /* owned; the record is the chosen one, or NULL */
  BbSession *session;
  gpointer record;

  guint show_id;

  const BbTable *table;
  gboolean fixed;
};

G_DEFINE_FINAL_TYPE (BbCatalogue, bb_catalogue, ADW_TYPE_BIN)

enum {
  SIGNAL_CHOSEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
show_state (BbCatalogue *self)
{
  const gboolean in_use = self->record != NULL && !bb_record_is_withdrawn (self->table, self->record);

  bb_no_records_show (self->nothing, bb_finder_is_narrowed (self->finder));
  gtk_stack_set_visible_child_name (self->stack, bb_editor_is_open (self->editor) ? "editor"
                                                 : self->record != NULL           ? "detail" : "nothing");
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "catalogue.edit", in_use && !self->fixed);
}

static void
load_record (BbCatalogue *self)
{
  const gint64 id = bb_finder_get_chosen (self->finder);
  g_autoptr (GError) error = NULL;

  bb_record_free (self->table, g_steal_pointer (&self->record));
  if (id == 0)
    return;
  self->record = bb_book_load (bb_session_get_book (self->session), self->table, id, &error);
  if (self->record == NULL)
    bb_session_report (self->session, error);
}

static void
show_chosen (GtkWidget *widget)
{
  BbCatalogue *self = BB_CATALOGUE (widget);

  load_record (self);
  show_state (self);
  if (self->record != NULL)
    {
      bb_catalogue_head_show (self->head, self->record);
      bb_facts_fill (self->facts, self->session, self->table, self->record);
    }
  g_signal_emit (self, signals[SIGNAL_CHOSEN], 0);
}

/* Who types sees at each letter what is found, and the record itself when there is time. */
static void
chosen_cb (BbCatalogue *self)
{
  const guint rest_ms = self->record != NULL ? BB_REST_BETWEEN_KEYS_MS : 0;

  bb_after_paint (GTK_WIDGET (self), &self->show_id, rest_ms, show_chosen);
}

static void
editor_done_cb (BbCatalogue   *self,
                const BbTable *table,
                gint64         id)
{
  if (table == self->table && id != 0)
    bb_finder_show (self->finder, id);
  show_state (self);
  bb_catalogue_focus (self);
}

/* Who undoes a withdrawal looks at what they had before it. */
static void
restored_cb (BbCatalogue *self,
             gpointer     table,
             gint64       id)
{
  if (table == self->table)
    bb_finder_show (self->finder, id);
}

static void
add_action (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  BbCatalogue *self = BB_CATALOGUE (widget);
  gpointer record = bb_record_new (self->table);

  (void) name;
  (void) parameter;

  bb_session_fill_in (self->session, self->table, record);
  bb_catalogue_edit (self, self->table, record, NULL);
}

static void
edit_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbCatalogue *self = BB_CATALOGUE (widget);

  (void) name;
  (void) parameter;

  if (self->record != NULL)
    bb_catalogue_edit (self, self->table, bb_record_copy (self->table, self->record), NULL);
}

static void
bb_catalogue_dispose (GObject *object)
{
  BbCatalogue *self = BB_CATALOGUE (object);

  adw_bin_set_child (ADW_BIN (self), NULL);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (bb_catalogue_parent_class)->dispose (object);
}

static void
bb_catalogue_finalize (GObject *object)
{
  BbCatalogue *self = BB_CATALOGUE (object);

  bb_record_free (self->table, self->record);

  G_OBJECT_CLASS (bb_catalogue_parent_class)->finalize (object);
}

static void
bb_catalogue_class_init (BbCatalogueClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_catalogue_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_catalogue_finalize;

  /**
   * BbCatalogue::chosen:
   *
   * Another record is shown, or the same one anew.
   */
  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", BB_TYPE_CATALOGUE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 0);

  g_type_ensure (BB_TYPE_CATALOGUE_HEAD);
  g_type_ensure (BB_TYPE_EDITOR);
  g_type_ensure (BB_TYPE_FINDER);
  g_type_ensure (BB_TYPE_NO_RECORDS);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-catalogue.ui");
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, finder);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, stack);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, nothing);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, detail);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, head);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, facts);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, editor);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, editor_done_cb);
  gtk_widget_class_bind_template_callback (widget_class, show_state);
  gtk_widget_class_install_action (widget_class, "catalogue.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "catalogue.edit", NULL, edit_action);
}

static void
bb_catalogue_init (BbCatalogue *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_catalogue_set_aside:
 * @self: a catalogue, not yet started
 * @table: a table
 * @make: makes what stands beside the form of a record of that table
 */
void
bb_catalogue_set_aside (BbCatalogue   *self,
                        const BbTable *table,
                        BbEditorAside  make)
{
  g_return_if_fail (BB_IS_CATALOGUE (self));

  bb_editor_set_aside (self->editor, table, make);
}

/**
 * bb_catalogue_start:
 * @self: a catalogue
 * @session: the session
 * @info: what it holds
 *
 * To be called once. The list is empty until bb_catalogue_refresh().
 */
void
bb_catalogue_start (BbCatalogue           *self,
                    BbSession             *session,
                    const BbCatalogueInfo *info)
{
  g_return_if_fail (BB_IS_CATALOGUE (self) && BB_IS_SESSION (session) && self->session == NULL);

  self->session = g_object_ref (session);
  self->table = info->finder.table;
  bb_no_records_start (self->nothing, info);
  bb_catalogue_head_start (self->head, session, self->table, info->has_labels);
  bb_finder_start (self->finder, session, &info->finder, "catalogue.add", _(info->add_title));
  bb_editor_set_session (self->editor, session, self->table->name);
  bb_editor_resume (self->editor);
  g_signal_connect_object (session, "restored", G_CALLBACK (restored_cb), self, G_CONNECT_SWAPPED);
}

/**
 * bb_catalogue_refresh:
 * @self: a catalogue, started
 *
 * Reads the records anew and keeps the chosen one.
 */
void
bb_catalogue_refresh (BbCatalogue *self)
{
  g_return_if_fail (BB_IS_CATALOGUE (self));

  bb_finder_refresh (self->finder);
}

/**
 * bb_catalogue_set_fixed:
 * @self: a catalogue
 * @fixed: whether the chosen record can't be edited any more
 *
 * To be called by a page whose records come to an end, each time that one is chosen.
 */
void
bb_catalogue_set_fixed (BbCatalogue *self,
                        gboolean     fixed)
{
  g_return_if_fail (BB_IS_CATALOGUE (self));

  self->fixed = fixed;
  bb_catalogue_head_set_fixed (self->head, fixed);
  show_state (self);
}

/**
 * bb_catalogue_show:
 * @self: a catalogue, started
 * @id: key of the record to show, whatever was searched for before
 */
void
bb_catalogue_show (BbCatalogue *self,
                   gint64       id)
{
  g_return_if_fail (BB_IS_CATALOGUE (self));

  bb_finder_show (self->finder, id);
}

/**
 * bb_catalogue_get_chosen:
 * @self: a catalogue
 *
 * Returns: (transfer none) (nullable): the record that is shown, as it stands in the book
 */
gconstpointer
bb_catalogue_get_chosen (BbCatalogue *self)
{
  g_return_val_if_fail (BB_IS_CATALOGUE (self), NULL);

  return self->record;
}

/**
 * bb_catalogue_edit:
 * @self: a catalogue
 * @table: the record's table
 * @record: (transfer full): a record to edit, of the catalogue's table or one that belongs to it
 * @fixed: (nullable): a field that is decided already
 */
void
bb_catalogue_edit (BbCatalogue   *self,
                   const BbTable *table,
                   gpointer       record,
                   const BbField *fixed)
{
  g_return_if_fail (BB_IS_CATALOGUE (self));

  gtk_stack_set_visible_child_name (self->stack, "editor");
  bb_editor_open (self->editor, table, record, fixed);
}

/**
 * bb_catalogue_add_above:
 * @self: a catalogue
 * @widget: (transfer floating): what belongs to the chosen record and is looked for first
 */
void
bb_catalogue_add_above (BbCatalogue *self,
                        GtkWidget   *widget)
{
  g_return_if_fail (BB_IS_CATALOGUE (self));

  gtk_box_insert_child_after (self->detail, widget, gtk_widget_get_first_child (GTK_WIDGET (self->detail)));
}

/**
 * bb_catalogue_set_subtitle:
 * @self: a catalogue
 * @subtitle: what stands below the title of the chosen record, in place of its code
 */
void
bb_catalogue_set_subtitle (BbCatalogue *self,
                           const char  *subtitle)
{
  g_return_if_fail (BB_IS_CATALOGUE (self) && subtitle != NULL);

  bb_catalogue_head_set_subtitle (self->head, subtitle);
}

/**
 * bb_catalogue_add_below:
 * @self: a catalogue
 * @widget: (transfer floating): what belongs to the chosen record
 */
void
bb_catalogue_add_below (BbCatalogue *self,
                        GtkWidget   *widget)
{
  g_return_if_fail (BB_IS_CATALOGUE (self));

  gtk_widget_add_css_class (widget, "below");
  gtk_box_append (self->detail, widget);
}

/**
 * bb_catalogue_edit_found:
 * @self: a catalogue
 *
 * Edits what was found, also where that has only just been typed and something else is still shown.
 */
void
bb_catalogue_edit_found (BbCatalogue *self)
{
  g_return_if_fail (BB_IS_CATALOGUE (self));

  bb_after_paint_now (GTK_WIDGET (self), &self->show_id, show_chosen);
  gtk_widget_activate_action (GTK_WIDGET (self), "catalogue.edit", NULL);
}

/**
 * bb_catalogue_focus:
 * @self: a catalogue
 *
 * Puts the keyboard into the editor if it is open, else into the search field.
 */
void
bb_catalogue_focus (BbCatalogue *self)
{
  g_return_if_fail (BB_IS_CATALOGUE (self));

  if (!bb_editor_is_open (self->editor))
    bb_finder_focus (self->finder);
}
