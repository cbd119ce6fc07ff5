/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-recipe-picker"

#include "bb-recipe-picker.h"

#include "bb-line-factory.h"
#include "bb-recipe-line.h"

struct _BbRecipePicker
{
  AdwBin parent_instance;

  /* template */
  GtkMenuButton *button;
  GtkLabel *label;
  GtkPopover *popover;
  GtkSearchEntry *search_entry;
  GtkStack *stack;
  GtkListView *list_view;

  /* owned */
  BbLineList *recipes;
};

G_DEFINE_FINAL_TYPE (BbRecipePicker, bb_recipe_picker, ADW_TYPE_BIN)

enum {
  SIGNAL_PICKED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
pick (BbRecipePicker *self,
      guint           position)
{
  const gint64 recipe = bb_line_list_get_id (self->recipes, position);

  if (recipe == 0)
    return;
  gtk_popover_popdown (self->popover);
  g_signal_emit (self, signals[SIGNAL_PICKED], 0, recipe);
}

static void
activate_cb (BbRecipePicker *self,
             guint           position)
{
  pick (self, position);
}

static void
search_activate_cb (BbRecipePicker *self)
{
  pick (self, 0);
}

static void
search_changed_cb (BbRecipePicker *self)
{
  const BbQuery query = { .text = gtk_editable_get_text (GTK_EDITABLE (self->search_entry)) };

  if (self->recipes == NULL)
    return;

  bb_line_list_search (self->recipes, &query);
  gtk_stack_set_visible_child_name (self->stack, g_list_model_get_n_items (G_LIST_MODEL (self->recipes)) > 0
                                                   ? "list" : "nothing");
}

static void
stop_search_cb (BbRecipePicker *self)
{
  gtk_popover_popdown (self->popover);
}

static void
shown_cb (BbRecipePicker *self)
{
  search_changed_cb (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->search_entry));
  gtk_editable_select_region (GTK_EDITABLE (self->search_entry), 0, -1);
}

/**
 * bb_recipe_picker_set_session:
 * @self: a picker
 * @session: the session whose book it searches
 */
void
bb_recipe_picker_set_session (BbRecipePicker *self,
                              BbSession      *session)
{
  g_autoptr (GtkListItemFactory) factory = NULL;
  g_autoptr (GtkNoSelection) model = NULL;

  g_return_if_fail (BB_IS_RECIPE_PICKER (self) && self->recipes == NULL);

  self->recipes = bb_line_list_new (session, &bb_recipe_table);
  model = gtk_no_selection_new (g_object_ref (G_LIST_MODEL (self->recipes)));
  factory = bb_line_factory_new (self->recipes, bb_recipe_line_fill);
  gtk_list_view_set_factory (self->list_view, factory);
  gtk_list_view_set_model (self->list_view, GTK_SELECTION_MODEL (model));
}

/**
 * bb_recipe_picker_set_label:
 * @self: a picker
 * @label: what the button says, translated
 */
void
bb_recipe_picker_set_label (BbRecipePicker *self,
                            const char     *label)
{
  g_return_if_fail (BB_IS_RECIPE_PICKER (self));

  gtk_label_set_label (self->label, label);
}

/**
 * bb_recipe_picker_popup:
 * @self: a picker
 *
 * Opens the list.
 */
void
bb_recipe_picker_popup (BbRecipePicker *self)
{
  g_return_if_fail (BB_IS_RECIPE_PICKER (self));

  gtk_menu_button_popup (self->button);
}

static void
bb_recipe_picker_dispose (GObject *object)
{
  BbRecipePicker *self = BB_RECIPE_PICKER (object);

  adw_bin_set_child (ADW_BIN (self), NULL);
  g_clear_object (&self->recipes);

  G_OBJECT_CLASS (bb_recipe_picker_parent_class)->dispose (object);
}

static void
bb_recipe_picker_class_init (BbRecipePickerClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_recipe_picker_dispose;

  /**
   * BbRecipePicker::picked:
   * @recipe: key of the recipe that the person picked
   */
  signals[SIGNAL_PICKED] = g_signal_new ("picked", BB_TYPE_RECIPE_PICKER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 1, G_TYPE_INT64);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-recipe-picker.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRecipePicker, button);
  gtk_widget_class_bind_template_child (widget_class, BbRecipePicker, label);
  gtk_widget_class_bind_template_child (widget_class, BbRecipePicker, popover);
  gtk_widget_class_bind_template_child (widget_class, BbRecipePicker, search_entry);
  gtk_widget_class_bind_template_child (widget_class, BbRecipePicker, stack);
  gtk_widget_class_bind_template_child (widget_class, BbRecipePicker, list_view);
  gtk_widget_class_bind_template_callback (widget_class, shown_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, stop_search_cb);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
}

static void
bb_recipe_picker_init (BbRecipePicker *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
