/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-colourways"

#include "bb-colourways.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-gone-list.h"
#include "bb-swatch.h"

struct _BbColourways
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *empty_label;
  GtkListBox *list;
  BbGoneList *gone;

  /* owned */
  BbSession *session;
  GPtrArray *colourways;

  gint64 blank;
};

G_DEFINE_FINAL_TYPE (BbColourways, bb_colourways, GTK_TYPE_BOX)

enum {
  SIGNAL_EDIT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static const BbColourway *
find_colourway (BbColourways *self,
                gint64        id)
{
  for (guint i = 0; i < self->colourways->len; i++)
    if (((const BbColourway *) self->colourways->pdata[i])->id == id)
      return self->colourways->pdata[i];

  return NULL;
}

static void
edit_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbColourways *self = BB_COLOURWAYS (widget);
  const BbColourway *colourway = find_colourway (self, g_variant_get_int64 (parameter));

  (void) name;

  if (colourway != NULL)
    g_signal_emit (self, signals[SIGNAL_EDIT], 0, colourway);
}

static void
withdraw_action (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  BbColourways *self = BB_COLOURWAYS (widget);
  const BbColourway *colourway = find_colourway (self, g_variant_get_int64 (parameter));

  (void) name;

  if (colourway != NULL)
    bb_session_withdraw (self->session, &bb_colourway_table, colourway->id, colourway->name);
}

static void
add_action (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  BbColourways *self = BB_COLOURWAYS (widget);
  g_autoptr (BbColourway) colourway = bb_colourway_new ();

  (void) name;
  (void) parameter;

  colourway->blank = self->blank;
  g_signal_emit (self, signals[SIGNAL_EDIT], 0, colourway);
}

static void
find_for_blank_action (GtkWidget  *widget,
                       const char *name,
                       GVariant   *parameter)
{
  BbColourways *self = BB_COLOURWAYS (widget);

  (void) name;
  (void) parameter;

  bb_session_show_for (self->session, "recipes", &bb_blank_table, self->blank);
}

static void
find_recipe_action (GtkWidget  *widget,
                    const char *name,
                    GVariant   *parameter)
{
  (void) name;

  bb_session_show_for (BB_COLOURWAYS (widget)->session, "recipes", &bb_colourway_table,
                       g_variant_get_int64 (parameter));
}

static GtkWidget *
make_button (const char        *icon_name,
             const char        *label,
             const BbColourway *colourway,
             const char        *action)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon_name);

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_tooltip_text (button, label);
  bb_compat_set_name (button, label);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "x", colourway->id);

  return button;
}

static GtkWidget *
make_row (const BbColourway *colourway)
{
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *swatch = bb_swatch_new (30);
  g_autofree char *find = g_strdup_printf (_("Find a recipe for %s"), colourway->name);
  g_autofree char *edit = g_strdup_printf (_("Edit %s"), colourway->name);
  g_autofree char *withdraw = g_strdup_printf (_("Withdraw %s"), colourway->name);
  g_autofree char *subtitle = g_strdup_printf ("%s · %s", colourway->code, colourway->srgb);

  bb_swatch_set_srgb (BB_SWATCH (swatch), colourway->srgb);
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), colourway->name);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), subtitle);
  adw_action_row_add_prefix (ADW_ACTION_ROW (row), swatch);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row),
                             make_button ("blankbook-recipes-symbolic", find, colourway, "colourways.find-recipe"));
  adw_action_row_add_suffix (ADW_ACTION_ROW (row),
                             make_button ("document-edit-symbolic", edit, colourway, "colourways.edit"));
  adw_action_row_add_suffix (ADW_ACTION_ROW (row),
                             make_button ("edit-delete-symbolic", withdraw, colourway,
                                          "colourways.withdraw"));

  return row;
}

static char *
count_gone (guint n)
{
  return g_strdup_printf (ngettext ("%u colour that is withdrawn", "%u colours that are withdrawn", n), n);
}

static char *
describe_gone (BbSession     *session,
               gconstpointer  record)
{
  const BbColourway *colourway = record;

  (void) session;

  return g_strjoin (" · ", colourway->name, colourway->code, NULL);
}

static const BbGoneInfo gone_info = { &bb_colourway_table, count_gone, describe_gone };

/**
 * bb_colourways_new:
 *
 * Returns: (transfer floating): the colours of no blank
 */
GtkWidget *
bb_colourways_new (void)
{
  return g_object_new (BB_TYPE_COLOURWAYS, NULL);
}

/**
 * bb_colourways_show:
 * @self: the colours
 * @session: the session
 * @blank: key of the blank whose colours to show
 */
void
bb_colourways_show (BbColourways *self,
                    BbSession    *session,
                    gint64        blank)
{
  g_autoptr (GError) error = NULL;

  g_return_if_fail (BB_IS_COLOURWAYS (self));

  g_set_object (&self->session, session);
  self->blank = blank;
  g_clear_pointer (&self->colourways, g_ptr_array_unref);
  self->colourways = bb_book_load_referring (bb_session_get_book (session), &bb_colourway_table, &bb_blank_table, blank,
                                             &error);
  if (self->colourways == NULL)
    {
      bb_session_report (session, error);
      self->colourways = g_ptr_array_new ();
    }

  bb_compat_empty_list (self->list);
  for (guint i = 0; i < self->colourways->len; i++)
    if (((const BbColourway *) self->colourways->pdata[i])->withdrawn_at == NULL)
      gtk_list_box_append (self->list, make_row (self->colourways->pdata[i]));

  bb_gone_list_show (self->gone, session, &gone_info, &bb_blank_table, blank, FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->list), gtk_list_box_get_row_at_index (self->list, 0) != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->empty_label), self->colourways->len == 0);
}

static void
bb_colourways_dispose (GObject *object)
{
  BbColourways *self = BB_COLOURWAYS (object);

  g_clear_pointer (&self->colourways, g_ptr_array_unref);
  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_COLOURWAYS);

  G_OBJECT_CLASS (bb_colourways_parent_class)->dispose (object);
}

static void
bb_colourways_class_init (BbColourwaysClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_colourways_dispose;

  /**
   * BbColourways::edit:
   * @colourway: the colourway to edit; a new one has no key
   */
  signals[SIGNAL_EDIT] = g_signal_new ("edit", BB_TYPE_COLOURWAYS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, G_TYPE_POINTER);

  g_type_ensure (BB_TYPE_GONE_LIST);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-colourways.ui");
  gtk_widget_class_bind_template_child (widget_class, BbColourways, empty_label);
  gtk_widget_class_bind_template_child (widget_class, BbColourways, list);
  gtk_widget_class_bind_template_child (widget_class, BbColourways, gone);
  gtk_widget_class_install_action (widget_class, "colourways.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "colourways.find-for-blank", NULL, find_for_blank_action);
  gtk_widget_class_install_action (widget_class, "colourways.find-recipe", "x", find_recipe_action);
  gtk_widget_class_install_action (widget_class, "colourways.edit", "x", edit_action);
  gtk_widget_class_install_action (widget_class, "colourways.withdraw", "x", withdraw_action);
}

static void
bb_colourways_init (BbColourways *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
