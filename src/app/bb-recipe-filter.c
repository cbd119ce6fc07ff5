/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-recipe-filter"

#include "bb-recipe-filter.h"

#include <glib/gi18n-lib.h>

#include "bb-recipe-picker.h"
#include "bb-show.h"

struct _BbRecipeFilter
{
  AdwBin parent_instance;

  /* template */
  BbRecipePicker *picker;
  GtkButton *clear_button;

  /* owned */
  BbSession *session;

  gint64 recipe;
};

G_DEFINE_FINAL_TYPE (BbRecipeFilter, bb_recipe_filter, ADW_TYPE_BIN)

enum {
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
set_recipe (BbRecipeFilter *self,
            gint64          recipe)
{
  g_autofree char *name = recipe != 0 ? bb_show_name (self->session, &bb_recipe_table, recipe) : NULL;

  self->recipe = recipe;
  bb_recipe_picker_set_label (self->picker, name != NULL ? name : _("Of Every Recipe"));
  gtk_widget_set_visible (GTK_WIDGET (self->clear_button), recipe != 0);
}

static void
picked_cb (BbRecipeFilter *self,
           gint64          recipe)
{
  set_recipe (self, recipe);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
clear_cb (BbRecipeFilter *self)
{
  gtk_widget_child_focus (GTK_WIDGET (self->picker), GTK_DIR_TAB_FORWARD);
  picked_cb (self, 0);
}

static void
bb_recipe_filter_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);
  g_clear_object (&BB_RECIPE_FILTER (object)->session);

  G_OBJECT_CLASS (bb_recipe_filter_parent_class)->dispose (object);
}

static void
bb_recipe_filter_class_init (BbRecipeFilterClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_recipe_filter_dispose;

  /**
   * BbRecipeFilter::changed:
   *
   * A person chose another recipe, or let go of it.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_RECIPE_FILTER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);

  g_type_ensure (BB_TYPE_RECIPE_PICKER);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-recipe-filter.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRecipeFilter, picker);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeFilter, clear_button);
  gtk_widget_class_bind_template_callback (widget_class, picked_cb);
  gtk_widget_class_bind_template_callback (widget_class, clear_cb);
}

static void
bb_recipe_filter_init (BbRecipeFilter *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_recipe_filter_set_session:
 * @self: a filter
 * @session: the session whose book has the recipes
 */
void
bb_recipe_filter_set_session (BbRecipeFilter *self,
                              BbSession      *session)
{
  g_return_if_fail (BB_IS_RECIPE_FILTER (self) && self->session == NULL);

  self->session = g_object_ref (session);
  bb_recipe_picker_set_session (self->picker, session);
  set_recipe (self, 0);
}

/**
 * bb_recipe_filter_get_recipe:
 * @self: a filter
 *
 * Returns: key of the recipe whose records are wanted, 0 for those of any
 */
gint64
bb_recipe_filter_get_recipe (BbRecipeFilter *self)
{
  g_return_val_if_fail (BB_IS_RECIPE_FILTER (self), 0);

  return self->recipe;
}

/**
 * bb_recipe_filter_clear:
 * @self: a filter
 *
 * Lets everything through from now on, and says so to nobody.
 */
void
bb_recipe_filter_clear (BbRecipeFilter *self)
{
  g_return_if_fail (BB_IS_RECIPE_FILTER (self));

  set_recipe (self, 0);
}
