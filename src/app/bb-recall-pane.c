/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-recall-pane"

#include "bb-recall-pane.h"

#include <glib/gi18n-lib.h>

#include "bb-like-load.h"
#include "bb-likest.h"
#include "bb-recall-filter.h"
#include "bb-recall-lists.h"
#include "bb-recall.h"
#include "bb-session-things.h"
#include "bb-signal.h"
#include "bb-withdrawn-toggle.h"

struct _BbRecallPane
{
  AdwBin parent_instance;

  /* template */
  GtkSearchEntry *search_entry;
  BbRecallFilter *filter;
  GtkBox *filter_box;
  GtkLabel *filter_label;
  BbRecallLists *lists;
  BbWithdrawnToggle *withdrawn_toggle;

  /* owned; @like are the garments of a colour like the one that is narrowed by, or NULL */
  BbSession *session;
  GArray *like;
};

G_DEFINE_FINAL_TYPE (BbRecallPane, bb_recall_pane, ADW_TYPE_BIN)

enum {
  SIGNAL_CHOSEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
chosen_cb (BbRecallPane *self)
{
  g_signal_emit (self, signals[SIGNAL_CHOSEN], 0);
}

/* All recipes, as many as there are, since a person may go through them; and the newest jobs. */
static void
search_all (BbRecallPane *self,
            gboolean      keep)
{
  BbBook *book = bb_session_get_book (self->session);
  const BbQuery all = { .withdrawn = bb_withdrawn_toggle_get_wanted (self->withdrawn_toggle) };
  const BbQuery newest = { .limit = BB_RECALL_LISTS_MOST };
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) recipes = bb_book_search (book, &bb_recipe_table, &all, &error);
  g_autoptr (GArray) jobs = recipes != NULL ? bb_book_search (book, &bb_job_table, &newest, &error) : NULL;

  bb_recall_lists_tell (self->lists, "", NULL, 0);
  if (jobs != NULL)
    bb_recall_lists_take (self->lists, g_steal_pointer (&recipes), g_steal_pointer (&jobs), keep);
  else
    bb_session_report (self->session, error);
}

static void
search (BbRecallPane *self,
        gboolean      keep)
{
  const BbNarrow *narrow = bb_recall_filter_get_narrow (self->filter);
  const BbRecall recall = {
    .text = bb_recall_pane_get_text (self),
    .narrow = narrow,
    .colourways = self->like,
    .shades = self->like != NULL ? bb_shades_of (narrow->srgb) : 0,
    .withdrawn = bb_withdrawn_toggle_get_wanted (self->withdrawn_toggle),
    .limit = BB_RECALL_LISTS_MOST,
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (BbRecalled) recalled = NULL;

  if (!bb_recall_pane_is_narrowed (self))
    {
      search_all (self, keep);
      return;
    }
  recalled = bb_book_recall (bb_session_get_book (self->session), &recall, &error);
  if (recalled == NULL)
    {
      bb_session_report (self->session, error);
      return;
    }
  bb_recall_lists_tell (self->lists, recall.text, recalled->corrected, recalled->specimen);
  bb_recall_lists_take (self->lists, g_array_ref (recalled->recipes), g_array_ref (recalled->jobs), keep);
}

/* Not at each letter: all garments are looked at for it. */
static void
find_like (BbRecallPane *self)
{
  const BbNarrow *narrow = bb_recall_filter_get_narrow (self->filter);
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&self->like, g_array_unref);
  if (narrow == NULL || narrow->srgb == NULL)
    return;
  self->like = bb_load_colourways_like (bb_session_get_book (self->session), narrow->srgb, &error);
  if (self->like == NULL)
    bb_session_report (self->session, error);
}

/* What is found first is what a person looks for; once the search is empty again, what was looked at is. */
static void
search_changed_cb (BbRecallPane *self)
{
  if (self->session == NULL)
    return;
  search (self, *bb_recall_pane_get_text (self) == '\0');
  bb_recall_lists_bring_into_sight (self->lists);
}

static void
show_filter (BbRecallPane *self)
{
  g_autofree char *summary = bb_recall_filter_dup_summary (self->filter);

  gtk_label_set_label (self->filter_label, summary);
  gtk_widget_set_visible (GTK_WIDGET (self->filter_box), *summary != '\0');
}

static void
filter_changed_cb (BbRecallPane *self)
{
  show_filter (self);
  find_like (self);
  search (self, TRUE);
  bb_recall_lists_bring_into_sight (self->lists);
}

/* What is withdrawn comes first, and whoever asks for it looks for that. */
static void
withdrawn_changed_cb (BbRecallPane *self)
{
  search (self, bb_withdrawn_toggle_get_wanted (self->withdrawn_toggle) == BB_WITHDRAWN_NONE);
  bb_recall_lists_bring_into_sight (self->lists);
}

static void
clear_cb (BbRecallPane *self)
{
  bb_recall_filter_clear (self->filter);
  gtk_widget_grab_focus (GTK_WIDGET (self->search_entry));
  filter_changed_cb (self);
}

/* A scanner types a label and then Enter: the next one takes its place. The first recipe is shown already, a job is
 * opened. */
static void
search_activate_cb (BbRecallPane *self)
{
  g_autofree char *text = g_strdup (bb_recall_pane_get_text (self));

  if (*text != '\0' && bb_session_open_label (self->session, text))
    {
      gtk_editable_select_region (GTK_EDITABLE (self->search_entry), 0, -1);
      return;
    }
  bb_recall_lists_activate (self->lists, *text != '\0');
}

/* Down goes from the search to what is found, whatever stands between them. */
static gboolean
key_pressed_cb (BbRecallPane    *self,
                guint            keyval,
                guint            keycode,
                GdkModifierType  state)
{
  (void) keycode;

  if ((keyval != GDK_KEY_Down && keyval != GDK_KEY_KP_Down) || (state & gtk_accelerator_get_default_mod_mask ()) != 0)
    return FALSE;
  bb_recall_lists_activate (self->lists, FALSE);

  return TRUE;
}

static void
add_keys (BbRecallPane *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->search_entry), keys);
}

static void
stop_search_cb (BbRecallPane *self)
{
  gtk_editable_set_text (GTK_EDITABLE (self->search_entry), "");
}

/**
 * bb_recall_pane_start:
 * @self: a pane
 * @session: the session
 *
 * To be called once. The lists are empty until bb_recall_pane_refresh().
 */
void
bb_recall_pane_start (BbRecallPane *self,
                      BbSession    *session)
{
  g_return_if_fail (BB_IS_RECALL_PANE (self) && BB_IS_SESSION (session) && self->session == NULL);

  self->session = g_object_ref (session);
  bb_recall_filter_set_session (self->filter, session);
  bb_recall_lists_start (self->lists, session);
  bb_withdrawn_toggle_start (self->withdrawn_toggle, session, &bb_recipe_table);
}

/**
 * bb_recall_pane_refresh:
 * @self: a pane, started
 *
 * Searches again, in the book as it is now. What is chosen stays chosen, where it is still there.
 */
void
bb_recall_pane_refresh (BbRecallPane *self)
{
  g_return_if_fail (BB_IS_RECALL_PANE (self) && self->session != NULL);

  show_filter (self);
  find_like (self);
  bb_withdrawn_toggle_refresh (self->withdrawn_toggle);
  search (self, TRUE);
}

static void
clear_text (BbRecallPane *self)
{
  g_signal_handlers_block_by_func (self->search_entry, BB_HANDLER (search_changed_cb), self);
  gtk_editable_set_text (GTK_EDITABLE (self->search_entry), "");
  g_signal_handlers_unblock_by_func (self->search_entry, BB_HANDLER (search_changed_cb), self);
}

/**
 * bb_recall_pane_show:
 * @self: a pane, started
 * @recipe: key of a recipe
 *
 * Chooses a recipe and brings it into sight, whatever was searched for before.
 */
void
bb_recall_pane_show (BbRecallPane *self,
                     gint64        recipe)
{
  g_return_if_fail (BB_IS_RECALL_PANE (self) && self->session != NULL);

  clear_text (self);
  bb_recall_lists_keep (self->lists, recipe);
  search (self, TRUE);
  if (bb_recall_filter_get_narrow (self->filter) != NULL && bb_recall_pane_get_chosen (self) != recipe)
    {
      bb_recall_filter_clear (self->filter);
      bb_recall_lists_keep (self->lists, recipe);
      bb_recall_pane_refresh (self);
    }
  /* What was looked for may have been withdrawn since. */
  if (bb_recall_pane_get_chosen (self) != recipe)
    {
      bb_withdrawn_toggle_set (self->withdrawn_toggle, TRUE);
      bb_recall_lists_keep (self->lists, recipe);
      bb_recall_pane_refresh (self);
    }
  bb_recall_lists_bring_into_sight (self->lists);
}

/**
 * bb_recall_pane_get_chosen:
 * @self: a pane, started
 *
 * Returns: key of the recipe that is chosen, 0 where none is found
 */
gint64
bb_recall_pane_get_chosen (BbRecallPane *self)
{
  g_return_val_if_fail (BB_IS_RECALL_PANE (self), 0);

  return bb_recall_lists_get_chosen (self->lists);
}

/**
 * bb_recall_pane_get_n_found:
 * @self: a pane, started
 *
 * Returns: how many recipes are found
 */
guint
bb_recall_pane_get_n_found (BbRecallPane *self)
{
  g_return_val_if_fail (BB_IS_RECALL_PANE (self), 0);

  return bb_recall_lists_get_n_recipes (self->lists);
}

/**
 * bb_recall_pane_get_n_jobs:
 * @self: a pane, started
 *
 * Returns: how many jobs are found
 */
guint
bb_recall_pane_get_n_jobs (BbRecallPane *self)
{
  g_return_val_if_fail (BB_IS_RECALL_PANE (self), 0);

  return bb_recall_lists_get_n_jobs (self->lists);
}

/**
 * bb_recall_pane_get_text:
 * @self: a pane
 *
 * Returns: (transfer none): what is typed in the search
 */
const char *
bb_recall_pane_get_text (BbRecallPane *self)
{
  g_return_val_if_fail (BB_IS_RECALL_PANE (self), NULL);

  return gtk_editable_get_text (GTK_EDITABLE (self->search_entry));
}

/**
 * bb_recall_pane_is_narrowed:
 * @self: a pane
 *
 * Returns: %TRUE if a person asked for less than all
 */
gboolean
bb_recall_pane_is_narrowed (BbRecallPane *self)
{
  g_return_val_if_fail (BB_IS_RECALL_PANE (self), FALSE);

  return bb_recall_filter_get_narrow (self->filter) != NULL || *bb_recall_pane_get_text (self) != '\0';
}

/**
 * bb_recall_pane_focus:
 * @self: a pane
 *
 * Puts the keyboard into the search.
 */
void
bb_recall_pane_focus (BbRecallPane *self)
{
  g_return_if_fail (BB_IS_RECALL_PANE (self));

  gtk_widget_grab_focus (GTK_WIDGET (self->search_entry));
}

static void
bb_recall_pane_dispose (GObject *object)
{
  BbRecallPane *self = BB_RECALL_PANE (object);

  adw_bin_set_child (ADW_BIN (self), NULL);
  g_clear_pointer (&self->like, g_array_unref);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (bb_recall_pane_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, BbRecallPane, search_entry);
  gtk_widget_class_bind_template_child (widget_class, BbRecallPane, filter);
  gtk_widget_class_bind_template_child (widget_class, BbRecallPane, filter_box);
  gtk_widget_class_bind_template_child (widget_class, BbRecallPane, filter_label);
  gtk_widget_class_bind_template_child (widget_class, BbRecallPane, lists);
  gtk_widget_class_bind_template_child (widget_class, BbRecallPane, withdrawn_toggle);
  gtk_widget_class_bind_template_callback (widget_class, withdrawn_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, clear_cb);
}

static void
bb_recall_pane_class_init (BbRecallPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_recall_pane_dispose;

  /**
   * BbRecallPane::chosen:
   *
   * Another recipe is chosen, or the list was made anew.
   */
  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", BB_TYPE_RECALL_PANE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 0);

  g_type_ensure (BB_TYPE_RECALL_FILTER);
  g_type_ensure (BB_TYPE_RECALL_LISTS);
  g_type_ensure (BB_TYPE_WITHDRAWN_TOGGLE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-recall-pane.ui");
  bind_template (widget_class);
}

static void
bb_recall_pane_init (BbRecallPane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_object (self->lists, "chosen", G_CALLBACK (chosen_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->filter, "changed", G_CALLBACK (filter_changed_cb), self, G_CONNECT_SWAPPED);
  /* Not "search-changed", which comes later than the letter, and once for nothing. */
  g_signal_connect_object (self->search_entry, "changed", G_CALLBACK (search_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->search_entry, "activate", G_CALLBACK (search_activate_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->search_entry, "stop-search", G_CALLBACK (stop_search_cb), self, G_CONNECT_SWAPPED);
  add_keys (self);
}
