/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-catalogue"

#include "bb-catalogue.h"

#include <glib/gi18n-lib.h>

#include "bb-editor.h"
#include "bb-facts.h"
#include "bb-row.h"

struct _BbCatalogue
{
  AdwBin parent_instance;

  /* template */
  GtkSearchEntry *search_entry;
  GtkButton *add_button;
  GtkListView *list_view;
  GtkStack *stack;
  AdwStatusPage *empty_page;
  GtkButton *first_button;
  GtkBox *detail;
  GtkLabel *name_label;
  GtkLabel *code_label;
  GtkGrid *facts;
  BbEditor *editor;

  /* owned */
  BbSession *session;
  GListStore *store;
  GtkFilter *filter;
  GtkSingleSelection *selection;
  char *needle;

  const BbTable *table;
  BbDescribe describe;
  BbBadge badge;
  gboolean newest_first;
};

G_DEFINE_FINAL_TYPE (BbCatalogue, bb_catalogue, ADW_TYPE_BIN)

enum {
  SIGNAL_CHOSEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static const char *
get_text (BbCatalogue   *self,
          const char    *name,
          gconstpointer  record)
{
  const BbField *field = bb_table_find_field (self->table, name);
  const char *text = field != NULL ? bb_field_get_text (field, record) : NULL;

  return text != NULL ? text : "";
}

/* What stands in bold: the name, or the code where such records have no name. */
static const char *
get_title (BbCatalogue   *self,
           gconstpointer  record)
{
  const gboolean has_name = bb_table_find_field (self->table, "name") != NULL;

  return get_text (self, has_name ? "name" : "code", record);
}

static const char *
get_second (BbCatalogue   *self,
            gconstpointer  record)
{
  const gboolean has_name = bb_table_find_field (self->table, "name") != NULL;

  return has_name ? get_text (self, "code", record) : "";
}

/* The line below the title costs look-ups in the book, so it is made once an item. */
static const char *
get_description (BbCatalogue *self,
                 gpointer     item)
{
  char *description = g_object_get_data (item, "description");

  if (description == NULL)
    {
      description = self->describe (self->session, bb_item_get_record (item));
      g_object_set_data_full (item, "description", description, g_free);
    }

  return description;
}

static gboolean
matches (gpointer item,
         gpointer data)
{
  BbCatalogue *self = BB_CATALOGUE (data);
  gconstpointer record = bb_item_get_record (item);

  if (self->needle == NULL || *self->needle == '\0')
    return TRUE;
  if (g_str_match_string (self->needle, get_description (self, item), TRUE))
    return TRUE;

  for (guint i = 0; i < self->table->n_fields; i++)
    if (self->table->fields[i].kind == BB_KIND_TEXT)
      {
        const char *text = bb_field_get_text (&self->table->fields[i], record);

        if (text != NULL && g_str_match_string (self->needle, text, TRUE))
          return TRUE;
      }

  return FALSE;
}

static void
show_state (BbCatalogue *self)
{
  BbItem *chosen = bb_catalogue_get_chosen (self);

  if (bb_editor_is_open (self->editor))
    gtk_stack_set_visible_child_name (self->stack, "editor");
  else if (g_list_model_get_n_items (G_LIST_MODEL (self->store)) == 0)
    gtk_stack_set_visible_child_name (self->stack, "empty");
  else
    gtk_stack_set_visible_child_name (self->stack, chosen != NULL ? "detail" : "nothing");

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "catalogue.edit", chosen != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "catalogue.withdraw", chosen != NULL);
}

static void
show_chosen (BbCatalogue *self)
{
  BbItem *chosen = bb_catalogue_get_chosen (self);

  show_state (self);
  if (chosen != NULL)
    {
      gconstpointer record = bb_item_get_record (chosen);

      gtk_label_set_label (self->name_label, get_title (self, record));
      gtk_label_set_label (self->code_label, get_second (self, record));
      gtk_widget_set_visible (GTK_WIDGET (self->code_label), *get_second (self, record) != '\0');
      bb_facts_fill (self->facts, self->session, self->table, record);
    }
  g_signal_emit (self, signals[SIGNAL_CHOSEN], 0);
}

static void
search_changed_cb (BbCatalogue *self)
{
  g_free (self->needle);
  self->needle = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->search_entry))));
  gtk_filter_changed (self->filter, GTK_FILTER_CHANGE_DIFFERENT);
  show_state (self);
}

static void
editor_done_cb (BbCatalogue   *self,
                const BbTable *table,
                gint64         id)
{
  if (table == self->table && id != 0)
    {
      gtk_editable_set_text (GTK_EDITABLE (self->search_entry), "");
      bb_catalogue_refresh (self);
      bb_catalogue_select (self, id);
    }
  show_state (self);
  bb_catalogue_focus (self);
}

static void
setup_row_cb (GtkSignalListItemFactory *factory,
              GtkListItem              *list_item,
              gpointer                  data)
{
  (void) factory;
  (void) data;

  gtk_list_item_set_child (list_item, bb_row_new ());
}

static void
bind_row_cb (GtkSignalListItemFactory *factory,
             GtkListItem              *list_item,
             BbCatalogue              *self)
{
  BbRow *row = BB_ROW (gtk_list_item_get_child (list_item));
  gpointer item = gtk_list_item_get_item (list_item);
  gconstpointer record = bb_item_get_record (item);

  (void) factory;

  bb_row_set (row, get_title (self, record), get_second (self, record), get_description (self, item));
  if (self->badge != NULL)
    bb_row_set_badge (row, self->badge (self->session, record));
}

static void
add_action (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  BbCatalogue *self = BB_CATALOGUE (widget);

  (void) name;
  (void) parameter;

  bb_catalogue_edit (self, self->table, bb_record_new (self->table), NULL);
}

static void
edit_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbCatalogue *self = BB_CATALOGUE (widget);
  BbItem *chosen = bb_catalogue_get_chosen (self);

  (void) name;
  (void) parameter;

  if (chosen != NULL)
    bb_catalogue_edit (self, self->table, bb_record_copy (self->table, bb_item_get_record (chosen)), NULL);
}

static void
withdraw_action (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  BbCatalogue *self = BB_CATALOGUE (widget);
  BbItem *chosen = bb_catalogue_get_chosen (self);

  (void) name;
  (void) parameter;

  if (chosen != NULL)
    bb_session_withdraw (self->session, self->table, bb_item_get_id (chosen),
                         get_title (self, bb_item_get_record (chosen)));
}

static void
bb_catalogue_dispose (GObject *object)
{
  BbCatalogue *self = BB_CATALOGUE (object);

  adw_bin_set_child (ADW_BIN (self), NULL);
  g_clear_object (&self->selection);
  g_clear_object (&self->filter);
  g_clear_object (&self->store);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (bb_catalogue_parent_class)->dispose (object);
}

static void
bb_catalogue_finalize (GObject *object)
{
  g_free (BB_CATALOGUE (object)->needle);

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

  g_type_ensure (BB_TYPE_EDITOR);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-catalogue.ui");
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, search_entry);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, add_button);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, list_view);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, stack);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, empty_page);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, first_button);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, detail);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, name_label);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, code_label);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, facts);
  gtk_widget_class_bind_template_child (widget_class, BbCatalogue, editor);
  gtk_widget_class_bind_template_callback (widget_class, search_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, editor_done_cb);
  gtk_widget_class_install_action (widget_class, "catalogue.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "catalogue.edit", NULL, edit_action);
  gtk_widget_class_install_action (widget_class, "catalogue.withdraw", NULL, withdraw_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_n, GDK_CONTROL_MASK, "catalogue.add", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_e, GDK_CONTROL_MASK, "catalogue.edit", NULL);
}

static void
bb_catalogue_init (BbCatalogue *self)
{
  GtkFilterListModel *filtered = NULL;

  gtk_widget_init_template (GTK_WIDGET (self));

  self->store = g_list_store_new (BB_TYPE_ITEM);
  self->filter = GTK_FILTER (gtk_custom_filter_new (matches, self, NULL));
  filtered = gtk_filter_list_model_new (g_object_ref (G_LIST_MODEL (self->store)), g_object_ref (self->filter));
  self->selection = gtk_single_selection_new (G_LIST_MODEL (filtered));
}

static void
make_list (BbCatalogue *self)
{
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_row_cb), NULL);
  g_signal_connect_object (factory, "bind", G_CALLBACK (bind_row_cb), self, 0);
  gtk_list_view_set_factory (self->list_view, factory);
  gtk_list_view_set_model (self->list_view, GTK_SELECTION_MODEL (self->selection));
  g_signal_connect_object (self->selection, "notify::selected-item", G_CALLBACK (show_chosen), self,
                           G_CONNECT_SWAPPED);
}

/**
 * bb_catalogue_start:
 * @self: a catalogue
 * @session: the session
 * @table: whose records it shows
 * @describe: says what stands below a record's name in the list
 * @icon_name: icon of the empty catalogue
 * @empty_title: title of the empty catalogue, translated
 * @empty_text: what to do first, translated
 *
 * To be called once.
 */
void
bb_catalogue_start (BbCatalogue   *self,
                    BbSession     *session,
                    const BbTable *table,
                    BbDescribe     describe,
                    const char    *icon_name,
                    const char    *empty_title,
                    const char    *empty_text)
{
  g_autofree char *add = NULL;

  g_return_if_fail (BB_IS_CATALOGUE (self) && BB_IS_SESSION (session) && self->session == NULL);

  self->session = g_object_ref (session);
  self->table = table;
  self->describe = describe;
  adw_status_page_set_icon_name (self->empty_page, icon_name);
  adw_status_page_set_title (self->empty_page, empty_title);
  adw_status_page_set_description (self->empty_page, empty_text);

  /* Translators: adds a record of a kind: "Add: Blank". */
  add = g_strdup_printf (_("Add: %s"), _(table->title));
  gtk_button_set_label (self->first_button, add);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->add_button), add);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->add_button), GTK_ACCESSIBLE_PROPERTY_LABEL, add, -1);

  bb_editor_set_session (self->editor, session, table->name);
  make_list (self);
  bb_catalogue_refresh (self);
  if (bb_editor_resume (self->editor))
    show_state (self);
}

/**
 * bb_catalogue_refresh:
 * @self: a catalogue
 *
 * Reads the records anew and keeps the chosen one.
 */
void
bb_catalogue_refresh (BbCatalogue *self)
{
  BbItem *chosen = bb_catalogue_get_chosen (self);
  const gint64 id = chosen != NULL ? bb_item_get_id (chosen) : 0;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) records = NULL;
  g_autoptr (GPtrArray) items = g_ptr_array_new_with_free_func (g_object_unref);

  g_return_if_fail (BB_IS_CATALOGUE (self));

  records = bb_book_load_all (bb_session_get_book (self->session), self->table, FALSE, &error);
  if (records == NULL)
    {
      bb_session_report (self->session, error);
      return;
    }

  for (guint i = 0; i < records->len; i++)
    {
      const guint position = self->newest_first ? records->len - 1 - i : i;

      g_ptr_array_add (items, bb_item_new (self->table, bb_record_copy (self->table, records->pdata[position])));
    }
  g_list_store_splice (self->store, 0, g_list_model_get_n_items (G_LIST_MODEL (self->store)), items->pdata,
                       items->len);
  if (id != 0)
    bb_catalogue_select (self, id);
  show_chosen (self);
}

/**
 * bb_catalogue_select:
 * @self: a catalogue
 * @id: key of the record to show
 */
void
bb_catalogue_select (BbCatalogue *self,
                     gint64       id)
{
  GListModel *model = G_LIST_MODEL (self->selection);

  for (guint i = 0; i < g_list_model_get_n_items (model); i++)
    {
      g_autoptr (BbItem) item = g_list_model_get_item (model, i);

      if (bb_item_get_id (item) == id)
        {
          gtk_single_selection_set_selected (self->selection, i);
          return;
        }
    }
}

/**
 * bb_catalogue_get_chosen:
 * @self: a catalogue
 *
 * Returns: (transfer none) (nullable): the record that is shown
 */
BbItem *
bb_catalogue_get_chosen (BbCatalogue *self)
{
  g_return_val_if_fail (BB_IS_CATALOGUE (self), NULL);

  return gtk_single_selection_get_selected_item (self->selection);
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
 * bb_catalogue_set_badge:
 * @self: a catalogue
 * @badge: makes what stands below a record's lines in the list
 *
 * To be called before bb_catalogue_start().
 */
void
bb_catalogue_set_badge (BbCatalogue *self,
                        BbBadge      badge)
{
  g_return_if_fail (BB_IS_CATALOGUE (self));

  self->badge = badge;
}

/**
 * bb_catalogue_set_newest_first:
 * @self: a catalogue
 *
 * Turns the list round: what was added last stands first. To be called before bb_catalogue_start().
 */
void
bb_catalogue_set_newest_first (BbCatalogue *self)
{
  g_return_if_fail (BB_IS_CATALOGUE (self));

  self->newest_first = TRUE;
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
    gtk_widget_grab_focus (GTK_WIDGET (self->search_entry));
}
