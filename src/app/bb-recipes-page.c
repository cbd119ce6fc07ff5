/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-recipes-page"

#include "bb-recipes-page.h"

#include <glib/gi18n-lib.h>

#include "bb-after-paint.h"
#include "bb-editor.h"
#include "bb-finder.h"
#include "bb-recipe-detail.h"
#include "bb-recipe-line.h"

struct _BbRecipesPage
{
  BbPage parent_instance;

  /* template */
  BbFinder *finder;
  GtkStack *stack;
  BbEditor *editor;

  /* borrowed from the stack: made when the first recipe is shown, so that the list does not wait for it */
  BbRecipeDetail *detail;

  guint show_id;
};

G_DEFINE_FINAL_TYPE (BbRecipesPage, bb_recipes_page, BB_TYPE_PAGE)

static char *
count (guint n)
{
  return g_strdup_printf (ngettext ("%u recipe", "%u recipes", n), n);
}

static const BbFinderInfo finder_info = {
  .table = &bb_recipe_table,
  .fill = bb_recipe_line_fill,
  .title = N_("Recipes"),
  .search_title = N_("Search recipes"),
  .search_hint = N_("Garment, colour, code…"),
  .count = count,
};

static void
show_state (BbRecipesPage *self)
{
  if (bb_editor_is_open (self->editor))
    gtk_stack_set_visible_child_name (self->stack, "editor");
  else if (bb_finder_get_n_found (self->finder) > 0)
    gtk_stack_set_visible_child_name (self->stack, "detail");
  else
    gtk_stack_set_visible_child_name (self->stack, bb_finder_is_narrowed (self->finder) ? "nothing" : "empty");
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

static void
ensure_detail (BbRecipesPage *self)
{
  if (self->detail != NULL)
    return;

  self->detail = g_object_new (BB_TYPE_RECIPE_DETAIL, NULL);
  g_signal_connect_object (self->detail, "edit", G_CALLBACK (edit_cb), self, G_CONNECT_SWAPPED);
  gtk_stack_add_named (self->stack, GTK_WIDGET (self->detail), "detail");
}

static void
show_chosen (GtkWidget *widget)
{
  BbRecipesPage *self = BB_RECIPES_PAGE (widget);
  const gint64 recipe = bb_finder_get_chosen (self->finder);

  if (recipe != 0)
    {
      ensure_detail (self);
      bb_recipe_detail_show (self->detail, bb_page_get_session (BB_PAGE (self)), recipe);
    }
  show_state (self);
}

/* Who types sees at each letter what is found, and the recipe itself when there is time. */
static void
chosen_cb (BbRecipesPage *self)
{
  bb_after_paint (GTK_WIDGET (self), &self->show_id, show_chosen);
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
      bb_finder_show (self->finder, id);
      if (!has_revision (self, id))
        {
          start_first_revision (self, id);
          return;
        }
    }
  if (table == &bb_revision_table && id != 0)
    {
      ensure_detail (self);
      bb_recipe_detail_choose (self->detail, id);
    }
  bb_finder_refresh (self->finder);
}

static void
add_action (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  bb_page_add (BB_PAGE (widget));
}

static void
bb_recipes_page_add (BbPage *page)
{
  edit_record (BB_RECIPES_PAGE (page), &bb_recipe_table, bb_recipe_new ());
}

static void
bb_recipes_page_edit (BbPage *page)
{
  BbRecipesPage *self = BB_RECIPES_PAGE (page);

  if (g_str_equal (gtk_stack_get_visible_child_name (self->stack), "detail"))
    gtk_widget_activate_action (GTK_WIDGET (self->detail), "recipe.edit-settings", NULL);
}

static void
bb_recipes_page_start (BbPage *page)
{
  BbRecipesPage *self = BB_RECIPES_PAGE (page);

  bb_finder_start (self->finder, bb_page_get_session (page), &finder_info, "recipes.add", _("Add a recipe"));
  bb_editor_set_session (self->editor, bb_page_get_session (page), "recipes");
  bb_editor_resume (self->editor);
}

static void
bb_recipes_page_refresh (BbPage *page)
{
  bb_finder_refresh (BB_RECIPES_PAGE (page)->finder);
}

static void
bb_recipes_page_show_record (BbPage *page,
                             gint64  id)
{
  bb_finder_show (BB_RECIPES_PAGE (page)->finder, id);
}

static void
bb_recipes_page_focus (BbPage *page)
{
  bb_finder_focus (BB_RECIPES_PAGE (page)->finder);
}

static void
bb_recipes_page_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

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
  page_class->find = bb_recipes_page_focus;
  page_class->add = bb_recipes_page_add;
  page_class->edit = bb_recipes_page_edit;

  g_type_ensure (BB_TYPE_EDITOR);
  g_type_ensure (BB_TYPE_FINDER);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-recipes-page.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRecipesPage, finder);
  gtk_widget_class_bind_template_child (widget_class, BbRecipesPage, stack);
  gtk_widget_class_bind_template_child (widget_class, BbRecipesPage, editor);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, editor_done_cb);
  gtk_widget_class_install_action (widget_class, "recipes.add", NULL, add_action);
}

static void
bb_recipes_page_init (BbRecipesPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
