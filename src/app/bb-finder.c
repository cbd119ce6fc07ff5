/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-finder"

#include "bb-finder.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-due-filter.h"
#include "bb-job-filter.h"
#include "bb-lines-view.h"
#include "bb-moment.h"
#include "bb-recipe-filter.h"
#include "bb-signal.h"
#include "bb-withdrawn-toggle.h"

struct _BbFinder
{
  AdwBin parent_instance;

  /* template */
  GtkSearchEntry *search_entry;
  GtkButton *add_button;
  BbDueFilter *due_filter;
  BbJobFilter *job_filter;
  BbRecipeFilter *filter;
  BbLinesView *view;
  GtkLabel *count_label;
  BbWithdrawnToggle *withdrawn_toggle;

  /* owned */
  BbSession *session;

  const BbFinderInfo *info;
};

G_DEFINE_FINAL_TYPE (BbFinder, bb_finder, ADW_TYPE_BIN)

enum {
  SIGNAL_CHOSEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
chosen_cb (BbFinder *self)
{
  g_signal_emit (self, signals[SIGNAL_CHOSEN], 0);
}

/* An order has what is in use. */
static GArray *
add_withdrawn (BbFinder *self,
               GArray   *order)
{
  const BbQuery query = { .withdrawn = BB_WITHDRAWN_ONLY };
  g_autoptr (GError) error = NULL;
  GArray *withdrawn = bb_book_search (bb_session_get_book (self->session), self->info->table, &query, &error);

  if (withdrawn == NULL)
    {
      bb_session_report (self->session, error);
      return order;
    }
  g_array_append_vals (withdrawn, order->data, order->len);
  g_array_unref (order);

  return withdrawn;
}

static GArray *
find_order (BbFinder *self)
{
  g_autofree char *today = bb_dup_today ();
  g_autoptr (GError) error = NULL;
  GArray *order = NULL;

  if (self->info->by_state)
    return bb_job_filter_find (self->job_filter, self->session);
  if (self->info->find_order == NULL)
    return NULL;

  order = self->info->find_order (bb_session_get_book (self->session), today, &error);
  if (order == NULL)
    bb_session_report (self->session, error);
  else if (bb_withdrawn_toggle_get_wanted (self->withdrawn_toggle) != BB_WITHDRAWN_NONE)
    order = add_withdrawn (self, order);

  return order;
}

static void
search (BbFinder *self,
        gboolean  keep)
{
  g_autoptr (GArray) order = find_order (self);
  BbQuery query = {
    .text = gtk_editable_get_text (GTK_EDITABLE (self->search_entry)),
    .recipe = bb_recipe_filter_get_recipe (self->filter),
    .among = order,
    .withdrawn = bb_withdrawn_toggle_get_wanted (self->withdrawn_toggle),
  };
  g_autofree char *count = NULL;

  bb_due_filter_narrow (self->due_filter, &query);

  g_signal_handlers_block_by_func (self->view, BB_HANDLER (chosen_cb), self);
  bb_lines_view_search (self->view, &query, keep);
  g_signal_handlers_unblock_by_func (self->view, BB_HANDLER (chosen_cb), self);

  count = self->info->count (bb_finder_get_n_found (self));
  gtk_label_set_label (self->count_label, count);
  chosen_cb (self);
}

/* What is found first is what a person looks for; once the search is empty again, what was looked at is. */
static void
search_changed_cb (BbFinder *self)
{
  if (self->info == NULL)
    return;
  search (self, *gtk_editable_get_text (GTK_EDITABLE (self->search_entry)) == '\0');
  bb_lines_view_bring_into_sight (self->view);
}

static void
filter_changed_cb (BbFinder *self)
{
  search (self, TRUE);
  bb_lines_view_bring_into_sight (self->view);
}

/* What is withdrawn comes first, and whoever asks for it looks for that. */
static void
withdrawn_changed_cb (BbFinder *self)
{
  search (self, bb_withdrawn_toggle_get_wanted (self->withdrawn_toggle) == BB_WITHDRAWN_NONE);
  bb_lines_view_bring_into_sight (self->view);
}

static void
search_activate_cb (BbFinder *self)
{
  bb_lines_view_focus (self->view);
}

static void
stop_search_cb (BbFinder *self)
{
  gtk_editable_set_text (GTK_EDITABLE (self->search_entry), "");
}

static void
clear_text (BbFinder *self)
{
  g_signal_handlers_block_by_func (self->search_entry, BB_HANDLER (search_changed_cb), self);
  gtk_editable_set_text (GTK_EDITABLE (self->search_entry), "");
  g_signal_handlers_unblock_by_func (self->search_entry, BB_HANDLER (search_changed_cb), self);
}

static void
set_name (gpointer    widget,
          const char *name)
{
  bb_compat_set_name (widget, name);
}

static void
bb_finder_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);
  g_clear_object (&BB_FINDER (object)->session);

  G_OBJECT_CLASS (bb_finder_parent_class)->dispose (object);
}

static void
bb_finder_class_init (BbFinderClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_finder_dispose;

  /**
   * BbFinder::chosen:
   *
   * Another line is chosen, or the list was made anew.
   */
  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", BB_TYPE_FINDER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 0);

  g_type_ensure (BB_TYPE_DUE_FILTER);
  g_type_ensure (BB_TYPE_JOB_FILTER);
  g_type_ensure (BB_TYPE_LINES_VIEW);
  g_type_ensure (BB_TYPE_RECIPE_FILTER);
  g_type_ensure (BB_TYPE_WITHDRAWN_TOGGLE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-finder.ui");
  gtk_widget_class_bind_template_child (widget_class, BbFinder, search_entry);
  gtk_widget_class_bind_template_child (widget_class, BbFinder, add_button);
  gtk_widget_class_bind_template_child (widget_class, BbFinder, due_filter);
  gtk_widget_class_bind_template_child (widget_class, BbFinder, job_filter);
  gtk_widget_class_bind_template_child (widget_class, BbFinder, filter);
  gtk_widget_class_bind_template_child (widget_class, BbFinder, view);
  gtk_widget_class_bind_template_child (widget_class, BbFinder, count_label);
  gtk_widget_class_bind_template_child (widget_class, BbFinder, withdrawn_toggle);
  gtk_widget_class_bind_template_callback (widget_class, withdrawn_changed_cb);
}

static void
bb_finder_init (BbFinder *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_object (self->view, "chosen", G_CALLBACK (chosen_cb), self, G_CONNECT_SWAPPED);
  /* Not "search-changed", which comes later than the letter, and once for nothing. */
  g_signal_connect_object (self->search_entry, "changed", G_CALLBACK (search_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->search_entry, "activate", G_CALLBACK (search_activate_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->search_entry, "stop-search", G_CALLBACK (stop_search_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->due_filter, "changed", G_CALLBACK (filter_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->job_filter, "changed", G_CALLBACK (filter_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->filter, "changed", G_CALLBACK (filter_changed_cb), self, G_CONNECT_SWAPPED);
}

/**
 * bb_finder_start:
 * @self: a finder
 * @session: the session
 * @info: what it finds
 * @add_action: name of the action that adds a record
 * @add_title: what that action is called, translated
 *
 * To be called once. The list is empty until bb_finder_refresh().
 */
void
bb_finder_start (BbFinder           *self,
                 BbSession          *session,
                 const BbFinderInfo *info,
                 const char         *add_action,
                 const char         *add_title)
{
  g_return_if_fail (BB_IS_FINDER (self) && BB_IS_SESSION (session) && info != NULL && self->info == NULL);

  self->session = g_object_ref (session);
  self->info = info;
  bb_lines_view_start (self->view, session, info->table, info->fill, _(info->title));
  if (info->by_recipe)
    bb_recipe_filter_set_session (self->filter, session);
  gtk_widget_set_visible (GTK_WIDGET (self->filter), info->by_recipe);
  if (info->by_due)
    bb_due_filter_set_session (self->due_filter, session);
  gtk_widget_set_visible (GTK_WIDGET (self->due_filter), info->by_due);
  gtk_widget_set_visible (GTK_WIDGET (self->job_filter), info->by_state);
  bb_withdrawn_toggle_start (self->withdrawn_toggle, session, info->table);

  g_object_set (self->search_entry, "placeholder-text", _(info->search_hint), NULL);
  set_name (self->search_entry, _(info->search_title));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->add_button), add_action);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->add_button), add_title);
  set_name (self->add_button, add_title);
}

/**
 * bb_finder_refresh:
 * @self: a finder
 *
 * Searches again. What is chosen stays chosen, where it is still there.
 */
void
bb_finder_refresh (BbFinder *self)
{
  g_return_if_fail (BB_IS_FINDER (self) && self->info != NULL);

  if (self->info->by_due)
    bb_due_filter_refresh (self->due_filter);
  bb_withdrawn_toggle_refresh (self->withdrawn_toggle);
  search (self, TRUE);
}

static gboolean
is_filtered (BbFinder *self)
{
  return bb_recipe_filter_get_recipe (self->filter) != 0 || bb_due_filter_is_set (self->due_filter) ||
         bb_job_filter_is_set (self->job_filter);
}

/**
 * bb_finder_show:
 * @self: a finder
 * @id: key of a record
 *
 * Chooses a record and brings it into sight, whatever was searched for before.
 */
void
bb_finder_show (BbFinder *self,
                gint64    id)
{
  g_return_if_fail (BB_IS_FINDER (self) && self->info != NULL);

  clear_text (self);
  bb_lines_view_keep (self->view, id);
  search (self, TRUE);
  if (is_filtered (self) && bb_finder_get_chosen (self) != id)
    {
      bb_due_filter_clear (self->due_filter);
      bb_job_filter_clear (self->job_filter);
      bb_recipe_filter_clear (self->filter);
      bb_lines_view_keep (self->view, id);
      search (self, TRUE);
    }
  /* What was looked for may have been withdrawn since. */
  if (bb_finder_get_chosen (self) != id)
    {
      bb_withdrawn_toggle_set (self->withdrawn_toggle, TRUE);
      bb_lines_view_keep (self->view, id);
      search (self, TRUE);
    }
  bb_lines_view_bring_into_sight (self->view);
}

/**
 * bb_finder_get_chosen:
 * @self: a finder
 *
 * Returns: key of the record that is chosen, 0 where nothing is found
 */
gint64
bb_finder_get_chosen (BbFinder *self)
{
  g_return_val_if_fail (BB_IS_FINDER (self) && self->info != NULL, 0);

  return bb_lines_view_get_chosen (self->view);
}

/**
 * bb_finder_get_n_found:
 * @self: a finder
 *
 * Returns: how many records are found
 */
guint
bb_finder_get_n_found (BbFinder *self)
{
  g_return_val_if_fail (BB_IS_FINDER (self) && self->info != NULL, 0);

  return bb_lines_view_get_n_found (self->view);
}

/**
 * bb_finder_is_narrowed:
 * @self: a finder
 *
 * Returns: %TRUE if a person asked for less than all records
 */
gboolean
bb_finder_is_narrowed (BbFinder *self)
{
  g_return_val_if_fail (BB_IS_FINDER (self), FALSE);

  return is_filtered (self) || *gtk_editable_get_text (GTK_EDITABLE (self->search_entry)) != '\0';
}

/**
 * bb_finder_focus:
 * @self: a finder
 *
 * Puts the keyboard into the search.
 */
void
bb_finder_focus (BbFinder *self)
{
  g_return_if_fail (BB_IS_FINDER (self));

  gtk_widget_grab_focus (GTK_WIDGET (self->search_entry));
}
