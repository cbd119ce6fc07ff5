/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-recipes-page"

#include "bb-recipes-page.h"

#include <glib/gi18n-lib.h>

#include "bb-editor.h"
#include "bb-recipe-detail.h"
#include "bb-recipe-list.h"
#include "bb-recipe-row.h"
#include "bb-signal.h"

struct _BbRecipesPage
{
  BbPage parent_instance;

  /* template */
  GtkSearchEntry *search_entry;
  GtkListView *list_view;
  GtkLabel *count_label;
  GtkStack *stack;
  BbRecipeDetail *detail;
  BbEditor *editor;

  /* owned */
  BbRecipeList *recipes;
  GtkSingleSelection *selection;

  /* The recipe that is shown, so that it stays while the list is made anew; 0 for none. */
  gint64 shown;
};

G_DEFINE_FINAL_TYPE (BbRecipesPage, bb_recipes_page, BB_TYPE_PAGE)

static gboolean
is_searching (BbRecipesPage *self)
{
  return *gtk_editable_get_text (GTK_EDITABLE (self->search_entry)) != '\0';
}

static void
show_state (BbRecipesPage *self)
{
  const guint n = g_list_model_get_n_items (G_LIST_MODEL (self->recipes));
  g_autofree char *count = g_strdup_printf (ngettext ("%u recipe", "%u recipes", n), n);

  gtk_label_set_label (self->count_label, count);
  if (bb_editor_is_open (self->editor))
    gtk_stack_set_visible_child_name (self->stack, "editor");
  else if (n > 0)
    gtk_stack_set_visible_child_name (self->stack, "detail");
  else
    gtk_stack_set_visible_child_name (self->stack, is_searching (self) ? "nothing" : "empty");
}

static void
show_chosen (BbRecipesPage *self)
{
  BbItem *item = gtk_single_selection_get_selected_item (self->selection);
  const gint64 id = item != NULL ? bb_item_get_id (item) : 0;

  if (id != 0)
    {
      self->shown = id;
      bb_recipe_detail_show (self->detail, bb_page_get_session (BB_PAGE (self)), id);
    }
  show_state (self);
}

/* Keeps the recipe that is looked at where the list still has it; what is looked for anew starts with the first. */
static void
search (BbRecipesPage *self,
        gboolean       is_new)
{
  guint position = G_MAXUINT;
  const gint64 shown = self->shown;

  g_signal_handlers_block_by_func (self->selection, BB_HANDLER (show_chosen), self);
  bb_recipe_list_search (self->recipes, gtk_editable_get_text (GTK_EDITABLE (self->search_entry)));
  if (shown != 0 && (!is_new || !is_searching (self)))
    position = bb_recipe_list_find (self->recipes, shown);
  gtk_single_selection_set_selected (self->selection, position == G_MAXUINT ? 0 : position);
  g_signal_handlers_unblock_by_func (self->selection, BB_HANDLER (show_chosen), self);
  show_chosen (self);
}

static void
search_changed_cb (BbRecipesPage *self)
{
  if (self->selection != NULL)
    search (self, TRUE);
}

static void
search_activate_cb (BbRecipesPage *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->list_view));
}

static void
edit_record (BbRecipesPage *self,
             const BbTable *table,
             gpointer       record)
{
  gtk_stack_set_visible_child_name (self->stack, "editor");
  bb_editor_open (self->editor, table, record, NULL);
}

static void
edit_cb (BbRecipesPage *self,
         gpointer       table,
         gpointer       record)
{
  edit_record (self, table, bb_record_copy (table, record));
}

/* A new recipe is nothing without settings: its first revision comes at once. */
static void
start_first_revision (BbRecipesPage *self,
                      gint64         recipe)
{
  BbRevision *revision = bb_revision_new ();

  revision->recipe = recipe;
  revision->number = 1;
  edit_record (self, &bb_revision_table, revision);
}

static gboolean
has_revision (BbRecipesPage *self,
              gint64         recipe)
{
  BbSession *session = bb_page_get_session (BB_PAGE (self));
  g_autoptr (GPtrArray) revisions = NULL;

  revisions = bb_book_load_referring (bb_session_get_book (session), &bb_revision_table, &bb_recipe_table, recipe,
                                      NULL);

  return revisions == NULL || revisions->len > 0;
}

static void
editor_done_cb (BbRecipesPage *self,
                const BbTable *table,
                gint64         id)
{
  if (table == &bb_recipe_table && id != 0)
    {
      self->shown = id;
      gtk_editable_set_text (GTK_EDITABLE (self->search_entry), "");
      if (!has_revision (self, id))
        {
          start_first_revision (self, id);
          return;
        }
    }
  if (table == &bb_revision_table && id != 0)
    bb_recipe_detail_choose (self->detail, id);
  search (self, FALSE);
}

static void
add_action (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  edit_record (BB_RECIPES_PAGE (widget), &bb_recipe_table, bb_recipe_new ());
}

static void
edit_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbRecipesPage *self = BB_RECIPES_PAGE (widget);

  (void) name;
  (void) parameter;

  if (g_str_equal (gtk_stack_get_visible_child_name (self->stack), "detail"))
    gtk_widget_activate_action (GTK_WIDGET (self->detail), "recipe.edit-settings", NULL);
}

static void
bb_recipes_page_start (BbPage *page)
{
  BbRecipesPage *self = BB_RECIPES_PAGE (page);
  g_autoptr (GtkListItemFactory) factory = bb_recipe_row_factory_new ();

  self->recipes = bb_recipe_list_new (bb_page_get_session (page));
  self->selection = gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->recipes)));
  gtk_list_view_set_factory (self->list_view, factory);
  gtk_list_view_set_model (self->list_view, GTK_SELECTION_MODEL (self->selection));
  g_signal_connect_object (self->selection, "notify::selected-item", G_CALLBACK (show_chosen), self,
                           G_CONNECT_SWAPPED);
  bb_editor_set_session (self->editor, bb_page_get_session (page), "recipes");
  bb_editor_resume (self->editor);
}

static void
bb_recipes_page_refresh (BbPage *page)
{
  search (BB_RECIPES_PAGE (page), FALSE);
}

static void
bb_recipes_page_show_record (BbPage *page,
                             gint64  id)
{
  BbRecipesPage *self = BB_RECIPES_PAGE (page);
  guint position = 0;

  gtk_editable_set_text (GTK_EDITABLE (self->search_entry), "");
  self->shown = id;
  search (self, FALSE);
  position = gtk_single_selection_get_selected (self->selection);
  gtk_widget_activate_action (GTK_WIDGET (self->list_view), "list.scroll-to-item", "u", position);
}

static void
bb_recipes_page_focus (BbPage *page)
{
  BbRecipesPage *self = BB_RECIPES_PAGE (page);

  gtk_widget_grab_focus (GTK_WIDGET (self->search_entry));
}

static void
bb_recipes_page_dispose (GObject *object)
{
  BbRecipesPage *self = BB_RECIPES_PAGE (object);

  adw_bin_set_child (ADW_BIN (self), NULL);
  g_clear_object (&self->selection);
  g_clear_object (&self->recipes);

  G_OBJECT_CLASS (bb_recipes_page_parent_class)->dispose (object);
}

static void
bb_recipes_page_class_init (BbRecipesPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  BbPageClass *page_class = BB_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_recipes_page_dispose;
  page_class->start = bb_recipes_page_start;
  page_class->refresh = bb_recipes_page_refresh;
  page_class->show_record = bb_recipes_page_show_record;
  page_class->focus = bb_recipes_page_focus;

  g_type_ensure (BB_TYPE_EDITOR);
  g_type_ensure (BB_TYPE_RECIPE_DETAIL);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-recipes-page.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRecipesPage, search_entry);
  gtk_widget_class_bind_template_child (widget_class, BbRecipesPage, list_view);
  gtk_widget_class_bind_template_child (widget_class, BbRecipesPage, count_label);
  gtk_widget_class_bind_template_child (widget_class, BbRecipesPage, stack);
  gtk_widget_class_bind_template_child (widget_class, BbRecipesPage, detail);
  gtk_widget_class_bind_template_child (widget_class, BbRecipesPage, editor);
  gtk_widget_class_bind_template_callback (widget_class, search_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, edit_cb);
  gtk_widget_class_bind_template_callback (widget_class, editor_done_cb);
  gtk_widget_class_install_action (widget_class, "recipes.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "recipes.edit", NULL, edit_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_n, GDK_CONTROL_MASK, "recipes.add", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_e, GDK_CONTROL_MASK, "recipes.edit", NULL);
}

static void
bb_recipes_page_init (BbRecipesPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
