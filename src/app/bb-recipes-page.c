/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-recipes-page"

#include "bb-recipes-page.h"

#include "bb-after-paint.h"
#include "bb-editor.h"
#include "bb-nearest-view.h"
#include "bb-new-recipe.h"
#include "bb-no-recipes.h"
#include "bb-recall-pane.h"
#include "bb-recipe-detail.h"
#include "bb-session-near.h"

/* Under this key a form is kept that is half typed. */
#define FORM_KEY "recipes"

struct _BbRecipesPage
{
  BbPage parent_instance;

  /* template */
  BbRecallPane *pane;
  GtkStack *stack;
  BbEditor *editor;

  /* borrowed from the stack: made when the first is shown, so that the list does not wait for them */
  BbRecipeDetail *detail;
  BbNearestView *nearest;
  BbNoRecipes *none;

  /* owned */
  BbNewRecipe *new_recipe;

  /* Whether recipes are looked for that are near to a garment, since when what is chosen and typed is as it was. */
  gboolean seeks;
  gint64 chosen_before;
  char *typed_before;

  /* A blank that has the words for which there is no recipe: those near to it are shown. 0 for none. */
  gint64 guess;

  guint show_id;
};

G_DEFINE_FINAL_TYPE (BbRecipesPage, bb_recipes_page, BB_TYPE_PAGE)

static BbNoRecipesWhy
get_why (BbRecipesPage *self)
{
  if (!bb_recall_pane_is_narrowed (self->pane))
    return BB_NO_RECIPES_YET;

  return bb_recall_pane_get_n_jobs (self->pane) > 0 ? BB_NO_RECIPES_BUT_JOBS : BB_NO_RECIPES_FOUND;
}

static void
show_none (BbRecipesPage *self)
{
  if (self->none == NULL)
    {
      self->none = g_object_new (BB_TYPE_NO_RECIPES, NULL);
      gtk_stack_add_named (self->stack, GTK_WIDGET (self->none), "none");
    }
  bb_no_recipes_show (self->none, bb_page_get_session (BB_PAGE (self)), get_why (self));
  gtk_stack_set_visible_child_name (self->stack, "none");
}

static void
show_state (BbRecipesPage *self)
{
  if (bb_editor_is_open (self->editor))
    gtk_stack_set_visible_child_name (self->stack, "editor");
  else if (self->seeks || self->guess != 0)
    gtk_stack_set_visible_child_name (self->stack, "nearest");
  else if (bb_recall_pane_get_n_found (self->pane) > 0)
    gtk_stack_set_visible_child_name (self->stack, "detail");
  else
    show_none (self);
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
  bb_new_recipe_forget (self->new_recipe);
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
nearest_closed_cb (BbRecipesPage *self)
{
  self->seeks = FALSE;
  self->guess = 0;
  show_state (self);
  bb_recall_pane_focus (self->pane);
}

static void
start_cb (BbRecipesPage *self,
          gpointer       revision,
          gpointer       blank,
          gpointer       colourway,
          int            shade)
{
  edit_record (self, &bb_recipe_table, bb_new_recipe_start (self->new_recipe, revision, blank, colourway, shade));
  bb_editor_keep (self->editor);
}

static void
ensure_nearest (BbRecipesPage *self)
{
  if (self->nearest != NULL)
    return;

  self->nearest = g_object_new (BB_TYPE_NEAREST_VIEW, NULL);
  bb_nearest_view_set_session (self->nearest, bb_page_get_session (BB_PAGE (self)));
  g_signal_connect_object (self->nearest, "closed", G_CALLBACK (nearest_closed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->nearest, "start", G_CALLBACK (start_cb), self, G_CONNECT_SWAPPED);
  gtk_stack_add_named (self->stack, GTK_WIDGET (self->nearest), "nearest");
}

static void
seek (BbRecipesPage *self,
      gint64         blank,
      gint64         colourway)
{
  ensure_nearest (self);
  self->seeks = TRUE;
  self->chosen_before = bb_recall_pane_get_chosen (self->pane);
  g_free (self->typed_before);
  self->typed_before = g_strdup (bb_recall_pane_get_text (self->pane));
  bb_nearest_view_show (self->nearest, blank, colourway);
  show_state (self);
}

/* Who looks for a garment that nobody has printed sees at once what is near to it. */
static void
guess_blank (BbRecipesPage *self)
{
  const gboolean is_found = bb_recall_pane_get_n_found (self->pane) > 0 || bb_recall_pane_get_n_jobs (self->pane) > 0;
  const char *text = bb_recall_pane_get_text (self->pane);
  const gint64 blank = self->seeks || is_found ? 0 : bb_session_find_blank (bb_page_get_session (BB_PAGE (self)), text);

  if (blank != 0 && blank != self->guess)
    {
      ensure_nearest (self);
      bb_nearest_view_show (self->nearest, blank, 0);
    }
  self->guess = blank;
}

static void
show_chosen (GtkWidget *widget)
{
  BbRecipesPage *self = BB_RECIPES_PAGE (widget);
  const gint64 recipe = bb_recall_pane_get_chosen (self->pane);

  /* Who chooses a recipe has found one, and who types looks for another thing. */
  if (self->seeks && (recipe != self->chosen_before ||
                      g_strcmp0 (bb_recall_pane_get_text (self->pane), self->typed_before) != 0))
    self->seeks = FALSE;
  guess_blank (self);
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
  const guint rest_ms = self->detail != NULL ? BB_REST_BETWEEN_KEYS_MS : 0;

  bb_after_paint (GTK_WIDGET (self), &self->show_id, rest_ms, show_chosen);
}

/* A new recipe is nothing without settings: its first revision comes at once. */
static gboolean
start_first_revision (BbRecipesPage *self,
                      gint64         recipe)
{
  BbRevision *revision = bb_new_recipe_dup_first (self->new_recipe, recipe);

  if (revision != NULL)
    {
      edit_record (self, &bb_revision_table, revision);
      bb_editor_keep (self->editor);
    }
  bb_new_recipe_forget (self->new_recipe);

  return revision != NULL;
}

static void
editor_done_cb (BbRecipesPage *self,
                const BbTable *table,
                gint64         id)
{
  if (table == &bb_recipe_table && id == 0 && !bb_editor_is_put_aside (self->editor))
    bb_new_recipe_forget (self->new_recipe);
  if (id != 0)
    self->seeks = FALSE;
  if (table == &bb_recipe_table && id != 0)
    {
      bb_recall_pane_show (self->pane, id);
      if (start_first_revision (self, id))
        return;
    }
  if (table == &bb_revision_table && id != 0)
    {
      ensure_detail (self);
      bb_recipe_detail_choose (self->detail, id);
    }
  bb_recall_pane_refresh (self->pane);
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
find_for_blank_action (GtkWidget  *widget,
                       const char *name,
                       GVariant   *parameter)
{
  BbRecipesPage *self = BB_RECIPES_PAGE (widget);
  BbSession *session = bb_page_get_session (BB_PAGE (self));
  const gint64 blank = bb_session_find_blank (session, bb_recall_pane_get_text (self->pane));
  const gint64 recipe = bb_recall_pane_get_chosen (self->pane);

  (void) name;
  (void) parameter;

  seek (self, blank != 0 ? blank : bb_session_get_blank_of (session, recipe), 0);
  bb_nearest_view_focus (self->nearest);
}

static void
bb_recipes_page_add (BbPage *page)
{
  BbRecipesPage *self = BB_RECIPES_PAGE (page);

  bb_new_recipe_forget (self->new_recipe);
  edit_record (self, &bb_recipe_table, bb_recipe_new ());
}

static void
bb_recipes_page_edit (BbPage *page)
{
  BbRecipesPage *self = BB_RECIPES_PAGE (page);

  /* What is edited is what was found, also where that has only just been typed. */
  bb_after_paint_now (GTK_WIDGET (self), &self->show_id, show_chosen);
  if (g_str_equal (gtk_stack_get_visible_child_name (self->stack), "detail"))
    gtk_widget_activate_action (GTK_WIDGET (self->detail), "recipe.edit-settings", NULL);
}

static void
bb_recipes_page_start (BbPage *page)
{
  BbRecipesPage *self = BB_RECIPES_PAGE (page);

  self->new_recipe = bb_new_recipe_new (bb_page_get_session (page));
  bb_recall_pane_start (self->pane, bb_page_get_session (page));
  bb_editor_set_session (self->editor, bb_page_get_session (page), FORM_KEY);
  if (bb_editor_resume (self->editor))
    bb_new_recipe_resume (self->new_recipe);
}

static void
bb_recipes_page_refresh (BbPage *page)
{
  BbRecipesPage *self = BB_RECIPES_PAGE (page);

  bb_recall_pane_refresh (self->pane);
  if (self->seeks)
    bb_nearest_view_refresh (self->nearest);
}

static void
bb_recipes_page_show_record (BbPage *page,
                             gint64  id)
{
  BbRecipesPage *self = BB_RECIPES_PAGE (page);

  self->seeks = FALSE;
  bb_recall_pane_show (self->pane, id);
}

static void
show_revision (BbRecipesPage *self,
               gint64         id)
{
  BbSession *session = bb_page_get_session (BB_PAGE (self));
  g_autoptr (GError) error = NULL;
  g_autoptr (BbRevision) revision = bb_book_load (bb_session_get_book (session), &bb_revision_table, id, &error);

  if (revision == NULL)
    {
      bb_session_report (session, error);
      return;
    }
  ensure_detail (self);
  bb_recipe_detail_choose (self->detail, id);
  bb_recipes_page_show_record (BB_PAGE (self), revision->recipe);
}

static void
bb_recipes_page_show_for (BbPage        *page,
                          const BbTable *table,
                          gint64         id)
{
  if (table == &bb_blank_table)
    seek (BB_RECIPES_PAGE (page), id, 0);
  else if (table == &bb_colourway_table)
    seek (BB_RECIPES_PAGE (page), 0, id);
  else if (table == &bb_revision_table)
    show_revision (BB_RECIPES_PAGE (page), id);
}

static void
bb_recipes_page_focus (BbPage *page)
{
  bb_recall_pane_focus (BB_RECIPES_PAGE (page)->pane);
}

static void
bb_recipes_page_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);
  g_clear_object (&BB_RECIPES_PAGE (object)->new_recipe);
  g_clear_pointer (&BB_RECIPES_PAGE (object)->typed_before, g_free);

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
  page_class->show_for = bb_recipes_page_show_for;
  page_class->focus = bb_recipes_page_focus;
  page_class->find = bb_recipes_page_focus;
  page_class->add = bb_recipes_page_add;
  page_class->edit = bb_recipes_page_edit;

  g_type_ensure (BB_TYPE_EDITOR);
  g_type_ensure (BB_TYPE_RECALL_PANE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-recipes-page.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRecipesPage, pane);
  gtk_widget_class_bind_template_child (widget_class, BbRecipesPage, stack);
  gtk_widget_class_bind_template_child (widget_class, BbRecipesPage, editor);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, editor_done_cb);
  gtk_widget_class_bind_template_callback (widget_class, show_state);
  gtk_widget_class_install_action (widget_class, "recipes.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "recipes.find-for-blank", NULL, find_for_blank_action);
}

static void
bb_recipes_page_init (BbRecipesPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
