/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-recipe-detail"

#include "bb-recipe-detail.h"

#include <glib/gi18n-lib.h>

#include "bb-chain-view.h"
#include "bb-compare-view.h"
#include "bb-compat.h"
#include "bb-evidence.h"
#include "bb-garment-band.h"
#include "bb-revision-menu.h"
#include "bb-safety.h"
#include "bb-show.h"
#include "bb-signal.h"
#include "bb-state-badge.h"
#include "bb-word-badge.h"

struct _BbRecipeDetail
{
  AdwBin parent_instance;

  /* template */
  GtkScrolledWindow *scrolled;
  BbGarmentBand *band;
  GtkDropDown *revision_drop_down;
  BbStateBadge *badge;
  GtkToggleButton *compare_button;
  GtkLabel *standing_label;
  GtkLabel *missing_label;
  BbWordBadge *failed_badge;
  GtkLabel *reason_label;
  GtkStack *stack;
  BbChainView *chain;
  GtkLabel *note_label;
  BbEvidence *evidence;
  GtkLabel *disclaimer_label;
  BbCompareView *compare;

  /* owned */
  BbSession *session;
  BbRecipe *recipe;
  GPtrArray *revisions;

  /* Key of the revision that the person chose; 0 to show the one that counts now. */
  gint64 chosen;
};

G_DEFINE_FINAL_TYPE (BbRecipeDetail, bb_recipe_detail, ADW_TYPE_BIN)

enum {
  SIGNAL_EDIT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static BbRevision *
get_revision (BbRecipeDetail *self)
{
  guint position = gtk_drop_down_get_selected (self->revision_drop_down);

  if (self->revisions == NULL || position >= self->revisions->len)
    return NULL;

  return self->revisions->pdata[position];
}

static const BbRevision *
get_before (BbRecipeDetail *self)
{
  guint position = gtk_drop_down_get_selected (self->revision_drop_down) + 1;

  return position < self->revisions->len ? self->revisions->pdata[position] : NULL;
}

static void
update_actions (BbRecipeDetail *self)
{
  const BbRevision *revision = get_revision (self);
  const BbState state = revision != NULL ? bb_revision_menu_load_state (self->session, revision->id)
                                          : BB_STATE_DRAFT;

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "recipe.mix", revision != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "recipe.to-on-trial",
                                 revision != NULL && bb_state_may_become (state, BB_STATE_ON_TRIAL));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "recipe.to-withdrawn",
                                 revision != NULL && bb_state_may_become (state, BB_STATE_WITHDRAWN));
  bb_state_badge_set_state (self->badge, state);
}

static void
show_reason (BbRecipeDetail   *self,
             const BbRevision *revision)
{
  g_autofree char *made = bb_show_date (revision->made_at);
  g_autofree char *person = bb_show_name (self->session, &bb_person_table, revision->made_by);
  g_autofree char *written = NULL;
  g_autofree char *text = NULL;

  written = *person != '\0' ? g_strdup_printf (_("Written %s by %s."), made, person)
                            : g_strdup_printf (_("Written %s."), made);
  text = revision->reason != NULL ? g_strjoin (" ", written, revision->reason, NULL) : g_strdup (written);
  gtk_label_set_label (self->reason_label, text);
}

/* What it takes to sign it, where a person looks first. */
static void
show_proof (BbRecipeDetail *self)
{
  const guint n_failed = bb_evidence_get_n_failed (self->evidence);
  g_autofree char *missing = bb_evidence_dup_missing (self->evidence);
  g_autofree char *failed = n_failed > 0 ? g_strdup_printf (ngettext ("%u specimen failed", "%u specimens failed",
                                                                      n_failed), n_failed)
                                         : g_strdup ("");

  gtk_label_set_label (self->missing_label, missing != NULL ? missing : "");
  gtk_widget_set_visible (GTK_WIDGET (self->missing_label), missing != NULL);
  bb_word_badge_say (self->failed_badge, BB_TONE_BAD, failed);
}

/* On the first screen: since when it stands as it does, who said so, and on what. */
static void
show_standing (BbRecipeDetail   *self,
               const BbRevision *revision)
{
  g_autofree char *state = bb_revision_menu_describe_standing (self->session, revision->id);
  g_autofree char *summary = bb_evidence_dup_summary (self->evidence);
  g_autofree char *newest = bb_revision_menu_describe_newest (self->session, self->revisions->pdata[0], revision);
  const char * const sentences[] = { state, summary, newest };
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (sentences); i++)
    if (sentences[i] != NULL)
      g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", sentences[i]);
  gtk_label_set_label (self->standing_label, text->str);
  show_proof (self);
}

static void
evidence_loaded_cb (BbRecipeDetail *self)
{
  const BbRevision *revision = get_revision (self);

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
  show_reason (self, revision);
  show_note (self, revision);
  bb_chain_view_show (self->chain, self->session, revision, get_before (self));
  bb_evidence_show (self->evidence, self->session, revision);
  show_standing (self, revision);
}

static void
show_revision (BbRecipeDetail *self)
{
  const BbRevision *revision = get_revision (self);
  const gboolean compares = gtk_toggle_button_get_active (self->compare_button);

  update_actions (self);
  gtk_widget_set_visible (GTK_WIDGET (self->revision_drop_down), revision != NULL && !compares);
  gtk_widget_set_visible (GTK_WIDGET (self->badge), revision != NULL && !compares);
  gtk_widget_set_visible (GTK_WIDGET (self->compare_button), self->revisions != NULL && self->revisions->len > 1);
  if (revision == NULL)
    {
      gtk_stack_set_visible_child_name (self->stack, "bare");
      return;
    }

  if (compares)
    bb_compare_view_show (self->compare, self->session, self->revisions);
  else
    show_settings (self, revision);
  gtk_stack_set_visible_child_name (self->stack, compares ? "compare" : "chain");
}

static void
revision_selected_cb (BbRecipeDetail *self)
{
  const BbRevision *revision = get_revision (self);

  if (revision == NULL)
    return;
  self->chosen = revision->id;
  show_revision (self);
}

static void
compare_toggled_cb (BbRecipeDetail *self)
{
  show_revision (self);
}

static int
compare_numbers (gconstpointer a,
                 gconstpointer b)
{
  const BbRevision *first = *(BbRevision * const *) a;
  const BbRevision *second = *(BbRevision * const *) b;

  return (first->number < second->number) - (first->number > second->number);
}

static guint
find_position (BbRecipeDetail *self)
{
  g_autoptr (BbRevision) current = NULL;

  for (guint i = 0; i < self->revisions->len; i++)
    if (((const BbRevision *) self->revisions->pdata[i])->id == self->chosen)
      return i;

  current = bb_book_load_current (bb_session_get_book (self->session), self->recipe->id, NULL);
  for (guint i = 0; current != NULL && i < self->revisions->len; i++)
    if (((const BbRevision *) self->revisions->pdata[i])->id == current->id)
      return i;

  return 0;
}

static void
fill_revisions (BbRecipeDetail *self)
{
  g_signal_handlers_block_by_func (self->revision_drop_down, BB_HANDLER (revision_selected_cb), self);
  bb_revision_menu_fill (self->revision_drop_down, self->session, self->revisions, find_position (self));
  g_signal_handlers_unblock_by_func (self->revision_drop_down, BB_HANDLER (revision_selected_cb), self);
}

/* What identifies the garment, below the recipe's name. */
static char *
describe_garment (BbRecipeDetail    *self,
                  const BbColourway *colourway)
{
  BbBook *book = bb_session_get_book (self->session);
  g_autoptr (BbBlank) blank = NULL;
  g_autofree char *fibres = NULL;
  g_autofree char *mass = NULL;
  const char *colour = colourway != NULL ? colourway->name
                                         : bb_choices_get_title (&bb_shade_choices, self->recipe->shade);

  if (self->recipe->blank != 0)
    blank = bb_book_load (book, &bb_blank_table, self->recipe->blank, NULL);
  if (blank == NULL)
    return self->recipe->family != NULL ? g_strjoin (" · ", self->recipe->code, self->recipe->family, colour, NULL)
                                        : g_strjoin (" · ", self->recipe->code, colour, NULL);

  fibres = bb_composition_dup_text (blank->composition);
  mass = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, blank->mass_g_per_m2,
                                       bb_session_get_units (self->session));

  return g_strjoin (" · ", self->recipe->code, blank->name, colour, fibres, mass, NULL);
}

static void
show_garment (BbRecipeDetail *self)
{
  g_autoptr (BbColourway) colourway = NULL;
  g_autofree char *garment = NULL;

  if (self->recipe->colourway != 0)
    colourway = bb_book_load (bb_session_get_book (self->session), &bb_colourway_table, self->recipe->colourway, NULL);
  garment = describe_garment (self, colourway);
  bb_garment_band_set_title (self->band, self->recipe->name, garment);
  bb_garment_band_set_colour (self->band, colourway != NULL ? colourway->srgb : NULL, (BbShade) self->recipe->shade);
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
  BbBook *book = bb_session_get_book (session);
  const gboolean is_same = self->recipe != NULL && self->recipe->id == recipe;
  g_autoptr (GError) error = NULL;
  BbRecipe *loaded = NULL;

  g_return_if_fail (BB_IS_RECIPE_DETAIL (self));

  g_set_object (&self->session, session);
  loaded = bb_book_load (book, &bb_recipe_table, recipe, &error);
  if (loaded == NULL)
    {
      bb_session_report (session, error);
      return;
    }
  g_clear_pointer (&self->recipe, bb_recipe_free);
  self->recipe = loaded;

  g_clear_pointer (&self->revisions, g_ptr_array_unref);
  self->revisions = bb_book_load_referring (book, &bb_revision_table, &bb_recipe_table, recipe, &error);
  if (self->revisions == NULL)
    {
      bb_session_report (session, error);
      self->revisions = g_ptr_array_new ();
    }
  g_ptr_array_sort (self->revisions, compare_numbers);

  if (!is_same)
    {
      gtk_toggle_button_set_active (self->compare_button, FALSE);
      gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scrolled), 0);
    }
  gtk_label_set_label (self->disclaimer_label, bb_safety_disclaimer ());
  show_garment (self);
  fill_revisions (self);
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

  self->chosen = revision;
}

static void
labels_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  const BbRevision *revision = get_revision (BB_RECIPE_DETAIL (widget));

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
  const BbRevision *revision = get_revision (self);

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
  const BbRevision *revision = get_revision (self);
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
  edited = used > 0 ? bb_revision_new_next (revision, ((const BbRevision *) self->revisions->pdata[0])->number + 1)
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

typedef struct {
  gint64 revision;
  BbState state;
} Step;

static gboolean
write_step (BbBook   *book,
            gpointer  data,
            GError  **error)
{
  const Step *step = data;

  return bb_book_set_state (book, step->revision, step->state, NULL, error);
}

static void
take_step (BbRecipeDetail *self,
           BbState         state)
{
  const BbRevision *revision = get_revision (self);
  Step *step = NULL;

  if (revision == NULL)
    return;
  self->chosen = revision->id;
  if (state == BB_STATE_WITHDRAWN)
    {
      bb_session_withdraw (self->session, &bb_revision_table, revision->id, revision->code);
      return;
    }

  step = g_new0 (Step, 1);
  step->revision = revision->id;
  step->state = state;
  bb_session_write (self->session, write_step, step, g_free);
}

static void
to_on_trial_action (GtkWidget  *widget,
                    const char *name,
                    GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  take_step (BB_RECIPE_DETAIL (widget), BB_STATE_ON_TRIAL);
}

static void
to_withdrawn_action (GtkWidget  *widget,
                     const char *name,
                     GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  take_step (BB_RECIPE_DETAIL (widget), BB_STATE_WITHDRAWN);
}

static void
bb_recipe_detail_dispose (GObject *object)
{
  BbRecipeDetail *self = BB_RECIPE_DETAIL (object);

  adw_bin_set_child (ADW_BIN (self), NULL);
  g_clear_pointer (&self->revisions, g_ptr_array_unref);
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
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, scrolled);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, band);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, revision_drop_down);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, badge);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, compare_button);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, standing_label);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, missing_label);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, failed_badge);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, reason_label);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, stack);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, chain);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, note_label);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, evidence);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, disclaimer_label);
  gtk_widget_class_bind_template_child (widget_class, BbRecipeDetail, compare);
  gtk_widget_class_bind_template_callback (widget_class, evidence_loaded_cb);
  gtk_widget_class_bind_template_callback (widget_class, revision_selected_cb);
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
  g_type_ensure (BB_TYPE_STATE_BADGE);
  g_type_ensure (BB_TYPE_WORD_BADGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-recipe-detail.ui");
  bind_template (widget_class);
  install_actions (widget_class);
}

static void
bb_recipe_detail_init (BbRecipeDetail *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  bb_compat_set_name (GTK_WIDGET (self->revision_drop_down), _("Revision"));
  gtk_widget_insert_action_group (GTK_WIDGET (self), "proof", bb_evidence_get_actions (self->evidence));
}
