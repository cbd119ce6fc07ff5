/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-line-recipe"

#include "bb-line-recipe.h"

#include <glib/gi18n-lib.h>

#include "bb-advice-load.h"
#include "bb-compat.h"
#include "bb-job-words.h"
#include "bb-recipe-picker.h"
#include "bb-revision-menu.h"
#include "bb-show.h"
#include "bb-state-badge.h"

struct _BbLineRecipe
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *name_label;
  BbStateBadge *badge;
  GtkLabel *caution_label;
  GtkLabel *options_label;
  GtkListBox *list;
  BbRecipePicker *picker;

  /* owned */
  BbSession *session;
  GPtrArray *options;
  GCancellable *reading;

  gint64 customer;
  gint64 colourway;
  gint64 revision;
};

G_DEFINE_FINAL_TYPE (BbLineRecipe, bb_line_recipe, ADW_TYPE_BIN)

enum {
  SIGNAL_CHOSEN,
  SIGNAL_FOUND,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

typedef struct {
  gint64 customer;
  gint64 colourway;
  BbUnitContext units;
} Wanted;

static gpointer
read_options (BbBook   *book,
              gpointer  data,
              GError  **error)
{
  const Wanted *self = data;

  return bb_line_options_load (book, self->customer, self->colourway, &self->units, error);
}

static void
choose (BbLineRecipe *self,
        gint64        revision,
        const char   *why)
{
  g_signal_emit (self, signals[SIGNAL_CHOSEN], 0, revision, why);
}

static void
use_action (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  BbLineRecipe *self = BB_LINE_RECIPE (widget);
  const gint64 revision = g_variant_get_int64 (parameter);

  (void) name;

  for (guint i = 0; i < self->options->len; i++)
    {
      const BbLineOption *option = self->options->pdata[i];

      if (option->revision == revision)
        {
          g_autofree char *why = g_strdup (option->why);

          choose (self, revision, why);
          return;
        }
    }
}

static void
picked_cb (BbLineRecipe *self,
           gint64        recipe)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbRevision) revision = bb_book_load_current (bb_session_get_book (self->session), recipe, &error);

  if (revision == NULL)
    bb_session_report (self->session, error);
  else
    choose (self, revision->id, NULL);
}

static GtkWidget *
make_row (const BbLineOption *option)
{
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *badge = bb_state_badge_new ();
  GtkWidget *button = gtk_button_new_with_label (_("Use"));
  g_autofree char *label = g_strdup_printf (_("Use %s"), option->name);

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), option->name);
  adw_action_row_set_title_lines (ADW_ACTION_ROW (row), 0);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), option->why);
  adw_action_row_set_subtitle_lines (ADW_ACTION_ROW (row), 0);
  bb_state_badge_set_state (BB_STATE_BADGE (badge), (BbState) option->state);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), badge);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "x", option->revision);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "line-recipe.use");
  bb_compat_set_name (button, label);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), button);

  return row;
}

/* What is chosen already is no choice. */
static void
show_options (BbLineRecipe *self)
{
  guint n_shown = 0;

  bb_compat_empty_list (self->list);
  for (guint i = 0; i < self->options->len; i++)
    {
      const BbLineOption *option = self->options->pdata[i];

      if (option->revision == self->revision)
        continue;
      gtk_list_box_append (self->list, make_row (option));
      n_shown++;
    }
  gtk_widget_set_visible (GTK_WIDGET (self->list), n_shown > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->options_label), n_shown > 0);
}

static void
read_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  g_autoptr (BbLineRecipe) self = data;
  g_autoptr (GError) error = NULL;
  GPtrArray *options = bb_session_read_finish (BB_SESSION (source), result, &error);

  if (options == NULL)
    {
      bb_session_report (BB_SESSION (source), error);
      return;
    }
  g_ptr_array_unref (self->options);
  self->options = options;
  if (self->session == NULL)
    return;
  show_options (self);
  g_signal_emit (self, signals[SIGNAL_FOUND], 0);
}

/**
 * bb_line_recipe_set_session:
 * @self: a widget
 * @session: the session
 */
void
bb_line_recipe_set_session (BbLineRecipe *self,
                            BbSession    *session)
{
  g_return_if_fail (BB_IS_LINE_RECIPE (self) && self->session == NULL);

  self->session = g_object_ref (session);
  bb_recipe_picker_set_session (self->picker, session);
  bb_recipe_picker_set_label (self->picker, _("Another Recipe…"));
}

/**
 * bb_line_recipe_set_garment:
 * @self: a widget
 * @customer: key of who orders, 0 where that is not known
 * @colourway: key of the garment in its colour, 0 for none yet
 *
 * Looks up what the garment could be printed by. ::found tells when that is done.
 */
void
bb_line_recipe_set_garment (BbLineRecipe *self,
                            gint64        customer,
                            gint64        colourway)
{
  Wanted *wanted = NULL;

  g_return_if_fail (BB_IS_LINE_RECIPE (self) && self->session != NULL);

  if (customer == self->customer && colourway == self->colourway)
    return;
  self->customer = customer;
  self->colourway = colourway;
  g_cancellable_cancel (self->reading);
  g_clear_object (&self->reading);
  g_ptr_array_set_size (self->options, 0);
  show_options (self);
  if (colourway == 0)
    return;

  wanted = g_new0 (Wanted, 1);
  *wanted = (Wanted) { customer, colourway, bb_session_copy_units (self->session) };
  self->reading = g_cancellable_new ();
  bb_session_read_async (self->session, read_options, wanted, g_free, (GDestroyNotify) g_ptr_array_unref,
                         self->reading, read_cb, g_object_ref (self));
}

/* What speaks against printing by it, and what to know of its settings. */
static char *
dup_caution (BbLineRecipe     *self,
             const BbRevision *revision,
             BbState           state,
             int               mode_wanted)
{
  g_autoptr (GPtrArray) advice = bb_advice_load (bb_session_get_book (self->session), revision,
                                                 bb_session_get_units (self->session), NULL);

  return bb_words_of_cautions (revision, state, mode_wanted, advice);
}

static void
show_chosen (BbLineRecipe *self,
             int           mode_wanted)
{
  BbBook *book = bb_session_get_book (self->session);
  g_autoptr (BbRevision) revision = NULL;
  BbState state = BB_STATE_DRAFT;
  g_autofree char *caution = NULL;
  g_autofree char *name = NULL;

  if (self->revision != 0)
    revision = bb_book_load (book, &bb_revision_table, self->revision, NULL);
  if (revision != NULL)
    {
      g_autofree char *recipe = bb_show_name (self->session, &bb_recipe_table, revision->recipe);

      name = g_strdup_printf (_("%s, revision %d"), recipe, (int) revision->number);
      state = bb_revision_menu_load_state (self->session, revision->id);
      bb_state_badge_set_state (self->badge, state);
      caution = dup_caution (self, revision, state, mode_wanted);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->badge), revision != NULL);
  gtk_label_set_label (self->name_label, name != NULL ? name : _("None chosen yet"));
  gtk_label_set_label (self->caution_label, caution != NULL ? caution : "");
  gtk_widget_set_visible (GTK_WIDGET (self->caution_label), caution != NULL);
}

/**
 * bb_line_recipe_set_revision:
 * @self: a widget
 * @revision: key of the revision that is chosen, 0 for none
 * @mode_wanted: the #BbPrintMode that the artwork asks for, or %BB_CHOICE_NONE
 */
void
bb_line_recipe_set_revision (BbLineRecipe *self,
                             gint64        revision,
                             int           mode_wanted)
{
  g_return_if_fail (BB_IS_LINE_RECIPE (self) && self->session != NULL);

  if (revision != self->revision)
    {
      self->revision = revision;
      show_options (self);
    }
  show_chosen (self, mode_wanted);
}

/**
 * bb_line_recipe_get_recalled:
 * @self: a widget
 *
 * Returns: (transfer none) (nullable): the proven revision that the garment is printed by, or %NULL where there is none
 *   or it is not looked up yet
 */
const BbLineOption *
bb_line_recipe_get_recalled (BbLineRecipe *self)
{
  const BbLineOption *first = NULL;

  g_return_val_if_fail (BB_IS_LINE_RECIPE (self), NULL);

  first = self->options->len > 0 ? self->options->pdata[0] : NULL;

  return first != NULL && first->is_recalled ? first : NULL;
}

static void
bb_line_recipe_dispose (GObject *object)
{
  BbLineRecipe *self = BB_LINE_RECIPE (object);

  g_cancellable_cancel (self->reading);
  g_clear_object (&self->reading);
  adw_bin_set_child (ADW_BIN (object), NULL);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (bb_line_recipe_parent_class)->dispose (object);
}

static void
bb_line_recipe_finalize (GObject *object)
{
  g_ptr_array_unref (BB_LINE_RECIPE (object)->options);

  G_OBJECT_CLASS (bb_line_recipe_parent_class)->finalize (object);
}

static void
bb_line_recipe_class_init (BbLineRecipeClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_line_recipe_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_line_recipe_finalize;

  /**
   * BbLineRecipe::chosen:
   * @revision: key of the revision that a person chose
   * @why: (nullable): what speaks for it
   */
  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", BB_TYPE_LINE_RECIPE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 2, G_TYPE_INT64, G_TYPE_STRING);
  /**
   * BbLineRecipe::found:
   *
   * What the garment could be printed by is looked up.
   */
  signals[SIGNAL_FOUND] = g_signal_new ("found", BB_TYPE_LINE_RECIPE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                        G_TYPE_NONE, 0);

  g_type_ensure (BB_TYPE_RECIPE_PICKER);
  g_type_ensure (BB_TYPE_STATE_BADGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-line-recipe.ui");
  gtk_widget_class_bind_template_child (widget_class, BbLineRecipe, name_label);
  gtk_widget_class_bind_template_child (widget_class, BbLineRecipe, badge);
  gtk_widget_class_bind_template_child (widget_class, BbLineRecipe, caution_label);
  gtk_widget_class_bind_template_child (widget_class, BbLineRecipe, options_label);
  gtk_widget_class_bind_template_child (widget_class, BbLineRecipe, list);
  gtk_widget_class_bind_template_child (widget_class, BbLineRecipe, picker);
  gtk_widget_class_bind_template_callback (widget_class, picked_cb);
  gtk_widget_class_install_action (widget_class, "line-recipe.use", "x", use_action);
}

static void
bb_line_recipe_init (BbLineRecipe *self)
{
  self->options = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}
