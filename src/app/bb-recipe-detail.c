/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-recipe-detail"

#include "bb-recipe-detail.h"

#include "bb-chain-view.h"
#include "bb-compare-view.h"
#include "bb-evidence.h"
#include "bb-garment-band.h"
#include "bb-recipe-band.h"
#include "bb-revision-menu.h"
#include "bb-revision-picker.h"
#include "bb-safety.h"
#include "bb-session-proof.h"
#include "bb-standing-view.h"
#include "bb-state-badge.h"
#include "bb-withdrawn-bar.h"

struct _BbRecipeDetail
{
  AdwBin parent_instance;

  /* template */
  GtkScrolledWindow *scrolled;
  BbGarmentBand *band;
  BbRevisionPicker *picker;
  BbStateBadge *badge;
  GtkToggleButton *compare_button;
  BbWithdrawnBar *withdrawn_bar;
  GtkStack *stack;
  BbStandingView *standing;
  BbChainView *chain;
  GtkLabel *note_label;
  BbEvidence *evidence;
  GtkLabel *disclaimer_label;
  BbCompareView *compare;

  /* owned */
  BbSession *session;
  BbRecipe *recipe;
};

G_DEFINE_FINAL_TYPE (BbRecipeDetail, bb_recipe_detail, ADW_TYPE_BIN)

enum {
  SIGNAL_EDIT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
update_actions (BbRecipeDetail *self)
{
  const BbRevision *revision = bb_revision_picker_get_shown (self->picker);
  const BbState state = revision != NULL ? bb_revision_menu_load_state (self->session, revision->id)
                                          : BB_STATE_DRAFT;

  const gboolean in_use = self->recipe->withdrawn_at == NULL;

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "recipe.mix", revision != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "recipe.edit-settings", in_use);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "recipe.edit-recipe", in_use);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "recipe.withdraw-recipe", in_use);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "recipe.to-on-trial",
                                 revision != NULL && bb_state_may_become (state, BB_STATE_ON_TRIAL));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "recipe.to-withdrawn",
                                 revision != NULL && bb_state_may_become (state, BB_STATE_WITHDRAWN));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "recipe.take-back",
                                 revision != NULL && state == BB_STATE_WITHDRAWN);
  bb_state_badge_set_state (self->badge, state);
}

static void
show_standing (BbRecipeDetail   *self,
               const BbRevision *revision)
{
  bb_standing_view_show (self->standing, self->session, revision, bb_revision_picker_get_newest (self->picker),
                         self->evidence);
}

static void
evidence_loaded_cb (BbRecipeDetail *self)
{
  const BbRevision *revision = bb_revision_picker_get_shown (self->picker);

  if (revision != NULL)
    show_standing (self, revision);
}

static void
show_note (BbRecipeDetail   *self,
           const BbRevision *revision)
{
  g_autofree char *text = NULL;

  if (self->recipe->note != NULL && revision->note != NULL)
    text = g_strjoin ("\n\n", self->recipe->note, revision->note, NULL);
  else
    text = g_strdup (revision->note != NULL ? revision->note : self->recipe->note);

  gtk_label_set_label (self->note_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->note_label), text != NULL);
}

static void
show_settings (BbRecipeDetail   *self,
               const BbRevision *revision)
{
  show_note (self, revision);
  bb_chain_view_show (self->chain, self->session, revision, bb_revision_picker_get_before (self->picker));
  bb_evidence_show (self->evidence, self->session, revision);
  show_standing (self, revision);
}

static void
show_revision (BbRecipeDetail *self)
{
  const BbRevision *revision = bb_revision_picker_get_shown (self->picker);
  const gboolean compares = gtk_toggle_button_get_active (self->compare_button);
  GPtrArray *revisions = bb_revision_picker_get_all (self->picker);

  update_actions (self);
  gtk_widget_set_visible (GTK_WIDGET (self->picker), revision != NULL && !compares);
  gtk_widget_set_visible (GTK_WIDGET (self->badge), revision != NULL && !compares);
  gtk_widget_set_visible (GTK_WIDGET (self->compare_button), revisions != NULL && revisions->len > 1);
  if (revision == NULL)
    {
      gtk_stack_set_visible_child_name (self->stack, "bare");
      return;
    }

  if (compares)
    bb_compare_view_show (self->compare, self->session, revisions);
  else
    show_settings (self, revision);
  gtk_stack_set_visible_child_name (self->stack, compares ? "compare" : "chain");
}

static void
revision_picked_cb (BbRecipeDetail *self)
{
  show_revision (self);
}

static void
compare_toggled_cb (BbRecipeDetail *self)
{
  show_revision (self);
}

/**
 * bb_recipe_detail_show:
 * @self: a recipe's detail
 * @session: the session
 * @recipe: key of the recipe to show
 */
void
bb_recipe_detail_show (BbRecipeDetail *self,
                       BbSession      *session,
                       gint64          recipe)
{
  const gboolean is_same = self->recipe != NULL && self->recipe->id == recipe;
  g_autoptr (GError) error = NULL;
  BbRecipe *loaded = NULL;

  g_return_if_fail (BB_IS_RECIPE_DETAIL (self));

  g_set_object (&self->session, session);
  loaded = bb_book_load (bb_session_get_book (session), &bb_recipe_table, recipe, &error);
  if (loaded == NULL)
    {
      bb_session_report (session, error);
      return;
    }
  g_clear_pointer (&self->recipe, bb_recipe_free);
  self->recipe = loaded;

  if (!is_same)
    {
      gtk_toggle_button_set_active (self->compare_button, FALSE);
      gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scrolled), 0);
    }
  gtk_label_set_label (self->disclaimer_label, bb_safety_disclaimer ());
  bb_recipe_band_show (self->band, session, self->recipe);
  bb_withdrawn_bar_show (self->withdrawn_bar, session, &bb_recipe_table, self->recipe);
  bb_revision_picker_show (self->picker, session, recipe);
  show_revision (self);
}

/**
 * bb_recipe_detail_choose:
 * @self: a recipe's detail
 * @revision: key of the revision to show from now on, where the recipe has it
 */
void
bb_recipe_detail_choose (BbRecipeDetail *self,
                         gint64          revision)
{
  g_return_if_fail (BB_IS_RECIPE_DETAIL (self));

  bb_revision_picker_choose (self->picker, revision);
}

static void
labels_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  const BbRevision *revision = bb_revision_picker_get_shown (BB_RECIPE_DETAIL (widget)->picker);

  (void) name;
  (void) parameter;

  if (revision != NULL)
    gtk_widget_activate_action (widget, "win.labels", "(sx)", bb_revision_table.name, revision->id);
}

static void
mix_action (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  BbRecipeDetail *self = BB_RECIPE_DETAIL (widget);
  const BbRevision *revision = bb_revision_picker_get_shown (self->picker);

  (void) name;
  (void) parameter;

  if (revision != NULL)
    bb_session_show (self->session, "mix", revision->id);
}

static void
edit_settings_action (GtkWidget  *widget,
                      const char *name,
                      GVariant   *parameter)
{
  BbRecipeDetail *self = BB_RECIPE_DETAIL (widget);
  const BbRevision *revision = bb_revision_picker_get_shown (self->picker);
  g_autoptr (BbRevision) edited = NULL;
  g_autoptr (GError) error = NULL;
  int used = 0;

  (void) name;
  (void) parameter;

  if (self->recipe == NULL)
    return;
  if (revision == NULL)
    {
      edited = bb_revision_new ();
      edited->recipe = self->recipe->id;
      edited->number = 1;
      g_signal_emit (self, signals[SIGNAL_EDIT], 0, &bb_revision_table, edited);
      return;
    }

  used = bb_book_revision_is_used (bb_session_get_book (self->session), revision->id, &error);
  if (used < 0)
    {
      bb_session_report (self->session, error);
      return;
    }
  edited = used > 0 ? bb_revision_new_next (revision, bb_revision_picker_get_newest (self->picker)->number + 1)
                    : bb_record_copy (&bb_revision_table, revision);
  g_signal_emit (self, signals[SIGNAL_EDIT], 0, &bb_revision_table, edited);
}

static void
edit_recipe_action (GtkWidget  *widget,
                    const char *name,
                    GVariant   *parameter)
{
  BbRecipeDetail *self = BB_RECIPE_DETAIL (widget);

  (void) name;
  (void) parameter;

  if (self->recipe != NULL)
    g_signal_emit (self, signals[SIGNAL_EDIT], 0, &bb_recipe_table, self->recipe);
}

static void
withdraw_recipe_action (GtkWidget  *widget,
                        const char *name,
                        GVariant   *parameter)
{
  BbRecipeDetail *self = BB_RECIPE_DETAIL (widget);

  (void) name;
  (void) parameter;

  if (self->recipe != NULL)
    bb_session_withdraw (self->session, &bb_recipe_table, self->recipe->id, self->recipe->name);
}

static void
to_on_trial_action (GtkWidget  *widget,
                    const char *name,
                    GVariant   *parameter)
{
  BbRecipeDetail *self = BB_RECIPE_DETAIL (widget);
  const BbRevision *revision = bb_revision_picker_hold (self->picker);

  (void) name;
  (void) parameter;

  if (revision != NULL)
    bb_session_put_on_trial (self->session, revision->id);
}

static void
to_withdrawn_action (GtkWidget  *widget,
                     const char *name,
                     GVariant   *parameter)
{
  BbRecipeDetail *self = BB_RECIPE_DETAIL (widget);
  const BbRevision *revision = bb_revision_picker_hold (self->picker);

  (void) name;
  (void) parameter;

  if (revision != NULL)
    bb_session_withdraw (self->session, &bb_revision_table, revision->id, revision->code);
}

/* Back to the state that it was withdrawn from: no other way leads out of it. */
static void
take_back_action (GtkWidget  *widget,
                  const char *name,
                  GVariant   *parameter)
{
  BbRecipeDetail *self = BB_RECIPE_DETAIL (widget);
  const BbRevision *revision = bb_revision_picker_get_shown (self->picker);

  (void) name;
  (void) parameter;

  if (revision == NULL)
    return;
  bb_revision_picker_choose (self->picker, revision->id);
  bb_session_restore (self->session, &bb_revision_table, revision->id);
}

static void
bb_recipe_detail_dispose (GObject *object)
{
  BbRecipeDetail *self = BB_RECIPE_DETAIL (object);

  adw_bin_set_child (ADW_BIN (self), NULL);
  g_clear_pointer (&self->recipe, bb_recipe_free);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (bb_recipe_detail_parent_class)->dispose (object);
}

static void
install_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "recipe.labels", NULL, labels_action);
  gtk_widget_class_install_action (widget_class, "recipe.mix", NULL, mix_action);
  gtk_widget_class_install_action (widget_class, "recipe.edit-settings", NULL, edit_settings_action);
  gtk_widget_class_install_action (widget_class, "recipe.edit-recipe", NULL, edit_recipe_action);
  gtk_widget_class_install_action (widget_class, "recipe.withdraw-recipe", NULL, withdraw_recipe_action);
  gtk_widget_class_install_action (widget_class, "recipe.to-on-trial", NULL, to_on_trial_action);
  gtk_widget_class_install_action (widget_class, "recipe.to-withdrawn", NULL, to_withdrawn_action);
  gtk_widget_class_install_action (widget_class, "recipe.take-back", NULL, take_back_action);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, scrolled);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, band);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, picker);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, badge);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, compare_button);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, withdrawn_bar);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, stack);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, standing);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, chain);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, note_label);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, evidence);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, disclaimer_label);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, compare);
  gtk_widget_class_bind_template_callback (widget_class, evidence_loaded_cb);
  gtk_widget_class_bind_template_callback (widget_class, revision_picked_cb);
  gtk_widget_class_bind_template_callback (widget_class, compare_toggled_cb);
}

static void
bb_recipe_detail_class_init (BbRecipeDetailClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_recipe_detail_dispose;

  /**
   * BbRecipeDetail::edit:
   * @table: the table of the record
   * @record: the record to edit
   */
  signals[SIGNAL_EDIT] = g_signal_new ("edit", BB_TYPE_RECIPE_DETAIL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 2, G_TYPE_POINTER, G_TYPE_POINTER);

  g_type_ensure (BB_TYPE_CHAIN_VIEW);
  g_type_ensure (BB_TYPE_COMPARE_VIEW);
  g_type_ensure (BB_TYPE_EVIDENCE);
  g_type_ensure (BB_TYPE_GARMENT_BAND);
  g_type_ensure (BB_TYPE_REVISION_PICKER);
  g_type_ensure (BB_TYPE_STANDING_VIEW);
  g_type_ensure (BB_TYPE_STATE_BADGE);
  g_type_ensure (BB_TYPE_WITHDRAWN_BAR);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-recipe-detail.ui");
  bind_template (widget_class);
  install_actions (widget_class);
}

static void
bb_recipe_detail_init (BbRecipeDetail *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_insert_action_group (GTK_WIDGET (self), "proof", bb_evidence_get_actions (self->evidence));
}
