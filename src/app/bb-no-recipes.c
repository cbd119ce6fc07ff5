/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-no-recipes"

#include "bb-no-recipes.h"

struct _BbNoRecipes
{
  AdwBin parent_instance;

  /* template */
  GtkStack *stack;
  GtkWidget *blanks_button;
  GtkWidget *supplies_button;
  GtkWidget *add_button;
};

G_DEFINE_FINAL_TYPE (BbNoRecipes, bb_no_recipes, ADW_TYPE_BIN)

/* The names of the stack's pages in the template. */
static const char *const page_names[] = {
  [BB_NO_RECIPES_YET] = "first",
  [BB_NO_RECIPES_FOUND] = "nothing",
  [BB_NO_RECIPES_BUT_JOBS] = "only-jobs",
};

static gboolean
has_any (BbSession     *session,
         const BbTable *table)
{
  const BbQuery one = { .limit = 1 };
  g_autoptr (GArray) found = bb_book_search (bb_session_get_book (session), table, &one, NULL);

  return found != NULL && found->len > 0;
}

/* In an empty book the step that comes next is coloured: a recipe refers to its blank and its pretreat. */
static void
show_next_step (BbNoRecipes *self,
                BbSession   *session)
{
  GtkWidget *steps[] = { self->blanks_button, self->supplies_button, self->add_button };
  const guint next = !has_any (session, &bb_blank_table) ? 0 : !has_any (session, &bb_supply_table) ? 1 : 2;

  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    if (i == next)
      gtk_widget_add_css_class (steps[i], "suggested-action");
    else
      gtk_widget_remove_css_class (steps[i], "suggested-action");
}

static void
bb_no_recipes_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_no_recipes_parent_class)->dispose (object);
}

static void
bb_no_recipes_class_init (BbNoRecipesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_no_recipes_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-no-recipes.ui");
  gtk_widget_class_bind_template_child (widget_class, BbNoRecipes, stack);
  gtk_widget_class_bind_template_child (widget_class, BbNoRecipes, blanks_button);
  gtk_widget_class_bind_template_child (widget_class, BbNoRecipes, supplies_button);
  gtk_widget_class_bind_template_child (widget_class, BbNoRecipes, add_button);
}

static void
bb_no_recipes_init (BbNoRecipes *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_no_recipes_show:
 * @self: what stands where a recipe would
 * @session: the session
 * @why: why there is none
 *
 * Says why, and offers what to do.
 */
void
bb_no_recipes_show (BbNoRecipes    *self,
                    BbSession      *session,
                    BbNoRecipesWhy  why)
{
  g_return_if_fail (BB_IS_NO_RECIPES (self));
  g_return_if_fail (BB_IS_SESSION (session));

  gtk_stack_set_visible_child_name (self->stack, page_names[why]);
  if (why == BB_NO_RECIPES_YET)
    show_next_step (self, session);
}
