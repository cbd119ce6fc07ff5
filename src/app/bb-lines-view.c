/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-lines-view"

#include "bb-lines-view.h"

#include "bb-compat.h"
#include "bb-signal.h"

struct _BbLinesView
{
  AdwBin parent_instance;

  /* template */
  GtkListView *list_view;

  /* owned */
  BbLineList *lines;
  GtkSingleSelection *selection;

  /* The record that was chosen last, so that it is again where the list has it; 0 for none. */
  gint64 kept;
};

G_DEFINE_FINAL_TYPE (BbLinesView, bb_lines_view, ADW_TYPE_BIN)

enum {
  SIGNAL_CHOSEN,
  SIGNAL_OPENED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
chosen_cb (BbLinesView *self)
{
  const gint64 chosen = bb_lines_view_get_chosen (self);

  if (chosen != 0)
    self->kept = chosen;
  g_signal_emit (self, signals[SIGNAL_CHOSEN], 0);
}

static void
activate_cb (BbLinesView *self,
             guint        position)
{
  const gint64 id = bb_line_list_get_id (self->lines, position);

  if (id != 0)
    g_signal_emit (self, signals[SIGNAL_OPENED], 0, id);
}

/* Where the record that has to stay is gone, what has come into its place is chosen. */
static guint
find_position (BbLinesView *self,
               gboolean     keep,
               guint        before)
{
  const guint n = bb_lines_view_get_n_found (self);
  guint position = G_MAXUINT;

  if (!keep || n == 0)
    return 0;
  position = bb_line_list_find (self->lines, self->kept);
  if (position == G_MAXUINT)
    position = before != GTK_INVALID_LIST_POSITION ? MIN (before, n - 1) : 0;

  return position;
}

/* One of @query and @ids is given. */
static void
fill (BbLinesView   *self,
      const BbQuery *query,
      GArray        *ids,
      gboolean       keep)
{
  const guint before = gtk_single_selection_get_selected (self->selection);

  g_signal_handlers_block_by_func (self->selection, BB_HANDLER (chosen_cb), self);
  if (query != NULL)
    bb_line_list_search (self->lines, query);
  else
    bb_line_list_take (self->lines, ids);
  gtk_single_selection_set_selected (self->selection, find_position (self, keep, before));
  g_signal_handlers_unblock_by_func (self->selection, BB_HANDLER (chosen_cb), self);
  chosen_cb (self);
}

/**
 * bb_lines_view_start:
 * @self: a view
 * @session: the session
 * @table: whose records are in the list
 * @fill_line: shows one of them in a row
 * @title: what the list is called, translated
 *
 * To be called once. The list is empty until it is filled.
 */
void
bb_lines_view_start (BbLinesView   *self,
                     BbSession     *session,
                     const BbTable *table,
                     BbLineFill     fill_line,
                     const char    *title)
{
  g_autoptr (GtkListItemFactory) factory = NULL;

  g_return_if_fail (BB_IS_LINES_VIEW (self) && BB_IS_SESSION (session) && self->lines == NULL);

  self->lines = bb_line_list_new (session, table);
  self->selection = gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->lines)));
  g_signal_connect_object (self->selection, "notify::selected-item", G_CALLBACK (chosen_cb), self, G_CONNECT_SWAPPED);
  factory = bb_line_factory_new (self->lines, fill_line);
  gtk_list_view_set_factory (self->list_view, factory);
  gtk_list_view_set_model (self->list_view, GTK_SELECTION_MODEL (self->selection));
  bb_compat_set_name (GTK_WIDGET (self->list_view), title);
}

/**
 * bb_lines_view_set_opens:
 * @self: a view
 * @opens: %TRUE if a click on a line opens it, and not only chooses it
 */
void
bb_lines_view_set_opens (BbLinesView *self,
                         gboolean     opens)
{
  g_return_if_fail (BB_IS_LINES_VIEW (self));

  gtk_list_view_set_single_click_activate (self->list_view, opens);
}

/**
 * bb_lines_view_search:
 * @self: a view
 * @query: what to look for
 * @keep: %TRUE to keep what is chosen, where it is found; %FALSE to choose what is found first
 *
 * Fills the list anew.
 */
void
bb_lines_view_search (BbLinesView   *self,
                      const BbQuery *query,
                      gboolean       keep)
{
  g_return_if_fail (BB_IS_LINES_VIEW (self) && self->lines != NULL && query != NULL);

  fill (self, query, NULL, keep);
}

/**
 * bb_lines_view_take:
 * @self: a view
 * @ids: (transfer full) (element-type gint64): keys of what was found
 * @keep: as for bb_lines_view_search()
 *
 * Fills the list with what was found elsewhere.
 */
void
bb_lines_view_take (BbLinesView *self,
                    GArray      *ids,
                    gboolean     keep)
{
  g_return_if_fail (BB_IS_LINES_VIEW (self) && self->lines != NULL && ids != NULL);

  fill (self, NULL, ids, keep);
}

/**
 * bb_lines_view_keep:
 * @self: a view
 * @id: key of the record that is to be chosen when the list is made anew
 */
void
bb_lines_view_keep (BbLinesView *self,
                    gint64       id)
{
  g_return_if_fail (BB_IS_LINES_VIEW (self));

  self->kept = id;
}

/**
 * bb_lines_view_get_chosen:
 * @self: a view
 *
 * Returns: key of the record that is chosen, 0 where the list is empty
 */
gint64
bb_lines_view_get_chosen (BbLinesView *self)
{
  g_return_val_if_fail (BB_IS_LINES_VIEW (self) && self->lines != NULL, 0);

  return bb_line_list_get_id (self->lines, gtk_single_selection_get_selected (self->selection));
}

/**
 * bb_lines_view_get_n_found:
 * @self: a view
 *
 * Returns: how many records are in the list
 */
guint
bb_lines_view_get_n_found (BbLinesView *self)
{
  g_return_val_if_fail (BB_IS_LINES_VIEW (self) && self->lines != NULL, 0);

  return g_list_model_get_n_items (G_LIST_MODEL (self->lines));
}

/**
 * bb_lines_view_bring_into_sight:
 * @self: a view
 *
 * Scrolls to what is chosen.
 */
void
bb_lines_view_bring_into_sight (BbLinesView *self)
{
  guint position = 0;

  g_return_if_fail (BB_IS_LINES_VIEW (self));

  position = gtk_single_selection_get_selected (self->selection);
  if (position != GTK_INVALID_LIST_POSITION)
    gtk_widget_activate_action (GTK_WIDGET (self->list_view), "list.scroll-to-item", "u", position);
}

/**
 * bb_lines_view_focus:
 * @self: a view
 *
 * Puts the keyboard into the list.
 */
void
bb_lines_view_focus (BbLinesView *self)
{
  g_return_if_fail (BB_IS_LINES_VIEW (self));

  gtk_widget_grab_focus (GTK_WIDGET (self->list_view));
}

static void
bb_lines_view_dispose (GObject *object)
{
  BbLinesView *self = BB_LINES_VIEW (object);

  adw_bin_set_child (ADW_BIN (self), NULL);
  g_clear_object (&self->selection);
  g_clear_object (&self->lines);

  G_OBJECT_CLASS (bb_lines_view_parent_class)->dispose (object);
}

static void
bb_lines_view_class_init (BbLinesViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_lines_view_dispose;

  /**
   * BbLinesView::chosen:
   *
   * Another line is chosen, or the list was made anew.
   */
  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", BB_TYPE_LINES_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 0);
  /**
   * BbLinesView::opened:
   * @id: key of the record that a person opened, by the Enter key or a click
   */
  signals[SIGNAL_OPENED] = g_signal_new ("opened", BB_TYPE_LINES_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 1, G_TYPE_INT64);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-lines-view.ui");
  gtk_widget_class_bind_template_child (widget_class, BbLinesView, list_view);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
}

static void
bb_lines_view_init (BbLinesView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
