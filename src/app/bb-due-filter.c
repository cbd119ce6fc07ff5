/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-due-filter"

#include "bb-due-filter.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-pick-width.h"
#include "bb-reading-table.h"
#include "bb-session-due.h"
#include "bb-signal.h"

/* Characters in the button. */
#define WIDTH 30

/* Which wash tests are wanted, in the order of the drop-down. */
typedef enum {
  ANY,
  TO_GRADE,
  OVERDUE,
  DUE,
  RUNNING,
  DONE,
  N_WANTED
} Wanted;

struct _BbDueFilter
{
  AdwBin parent_instance;

  /* template */
  GtkDropDown *drop_down;

  /* owned */
  BbSession *session;
  GCancellable *loading;

  /* owned: keys of those that are not done, all and by what is wanted, what has waited longest first */
  GArray *open;
  GArray *ids[N_WANTED];
};

G_DEFINE_FINAL_TYPE (BbDueFilter, bb_due_filter, ADW_TYPE_BIN)

enum {
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static Wanted
get_wanted (BbDueFilter *self)
{
  const guint selected = gtk_drop_down_get_selected (self->drop_down);

  return selected < N_WANTED ? (Wanted) selected : ANY;
}

static void
selected_cb (BbDueFilter *self)
{
  if (self->session != NULL)
    g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static char *
make_item (BbDueFilter *self,
           Wanted       wanted)
{
  const guint n = self->ids[wanted]->len;

  switch (wanted)
    {
    case TO_GRADE:
      return g_strdup_printf (_("To grade now: %u"), n);
    case OVERDUE:
      return g_strdup_printf (_("Overdue: %u"), n);
    case DUE:
      return g_strdup_printf (_("Due: %u"), n);
    case RUNNING:
      return g_strdup_printf (_("Running: %u"), n);
    case DONE:
      return g_strdup (_("Done"));
    case ANY:
    case N_WANTED:
    default:
      return g_strdup_printf (_("All, %u to grade"), self->ids[TO_GRADE]->len);
    }
}

static void
fill (BbDueFilter *self,
      Wanted       wanted)
{
  g_autoptr (GtkStringList) items = gtk_string_list_new (NULL);

  for (Wanted w = ANY; w < N_WANTED; w++)
    gtk_string_list_take (items, make_item (self, w));
  g_signal_handlers_block_by_func (self->drop_down, BB_HANDLER (selected_cb), self);
  gtk_drop_down_set_model (self->drop_down, G_LIST_MODEL (items));
  gtk_drop_down_set_selected (self->drop_down, wanted);
  g_signal_handlers_unblock_by_func (self->drop_down, BB_HANDLER (selected_cb), self);
}

static void
add (BbDueFilter     *self,
     const BbDueLine *line)
{
  const gint64 id = line->line->id;
  const Wanted wanted = line->due.state == BB_DUE_OVERDUE ? OVERDUE : line->due.state == BB_DUE_TODAY ? DUE : RUNNING;

  g_array_append_val (self->ids[wanted], id);
  if (wanted != RUNNING)
    g_array_append_val (self->ids[TO_GRADE], id);
  g_array_append_val (self->open, id);
}

static void
show (BbDueFilter     *self,
      const GPtrArray *lines)
{
  for (Wanted w = ANY; w < N_WANTED; w++)
    g_array_set_size (self->ids[w], 0);
  g_array_set_size (self->open, 0);
  for (guint i = 0; i < lines->len; i++)
    add (self, lines->pdata[i]);
  fill (self, get_wanted (self));
  if (bb_due_filter_is_set (self))
    g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
loaded_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (BbDueFilter) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) lines = bb_session_load_due_finish (BB_SESSION (source), result, &error);

  if (lines != NULL)
    show (self, lines);
  else if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CLOSED))
    bb_session_report (BB_SESSION (source), error);
}

static void
grade_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  GtkWidget *table = bb_reading_table_new (GTK_WINDOW (gtk_widget_get_root (widget)), BB_DUE_FILTER (widget)->session);

  (void) name;
  (void) parameter;

  gtk_window_present (GTK_WINDOW (table));
}

static void
stop_loading (BbDueFilter *self)
{
  if (self->loading != NULL)
    g_cancellable_cancel (self->loading);
  g_clear_object (&self->loading);
}

static void
bb_due_filter_dispose (GObject *object)
{
  BbDueFilter *self = BB_DUE_FILTER (object);

  stop_loading (self);
  adw_bin_set_child (ADW_BIN (self), NULL);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (bb_due_filter_parent_class)->dispose (object);
}

static void
bb_due_filter_finalize (GObject *object)
{
  for (Wanted w = ANY; w < N_WANTED; w++)
    g_array_unref (BB_DUE_FILTER (object)->ids[w]);
  g_array_unref (BB_DUE_FILTER (object)->open);

  G_OBJECT_CLASS (bb_due_filter_parent_class)->finalize (object);
}

static void
bb_due_filter_class_init (BbDueFilterClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_due_filter_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_due_filter_finalize;

  /**
   * BbDueFilter::changed:
   *
   * Another part of the wash log is wanted, or that part holds something else.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_DUE_FILTER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-due-filter.ui");
  gtk_widget_class_bind_template_child (widget_class, BbDueFilter, drop_down);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
  gtk_widget_class_install_action (widget_class, "due.grade", NULL, grade_action);
}

static void
bb_due_filter_init (BbDueFilter *self)
{
  for (Wanted w = ANY; w < N_WANTED; w++)
    self->ids[w] = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->open = g_array_new (FALSE, FALSE, sizeof (gint64));
  gtk_widget_init_template (GTK_WIDGET (self));
  bb_compat_set_name (GTK_WIDGET (self->drop_down), _("Which wash tests"));
  bb_pick_set_width (self->drop_down, WIDTH);
}

/**
 * bb_due_filter_set_session:
 * @self: a filter
 * @session: the session whose book has the wash tests
 */
void
bb_due_filter_set_session (BbDueFilter *self,
                           BbSession   *session)
{
  g_return_if_fail (BB_IS_DUE_FILTER (self) && self->session == NULL);

  self->session = g_object_ref (session);
  fill (self, ANY);
}

/**
 * bb_due_filter_refresh:
 * @self: a filter
 *
 * Finds out anew what has to be read, in its own time; what is wanted stays.
 */
void
bb_due_filter_refresh (BbDueFilter *self)
{
  g_return_if_fail (BB_IS_DUE_FILTER (self) && self->session != NULL);

  stop_loading (self);
  self->loading = g_cancellable_new ();
  bb_session_load_due_async (self->session, self->loading, loaded_cb, g_object_ref (self));
}

/**
 * bb_due_filter_narrow:
 * @self: a filter
 * @query: what else is looked for; it is narrowed to what is wanted, to be used at once
 */
void
bb_due_filter_narrow (BbDueFilter *self,
                      BbQuery     *query)
{
  const Wanted wanted = get_wanted (self);

  g_return_if_fail (BB_IS_DUE_FILTER (self) && query != NULL);

  if (wanted == DONE)
    query->apart_from = self->open;
  else if (wanted != ANY)
    query->among = self->ids[wanted];
}

/**
 * bb_due_filter_is_set:
 * @self: a filter
 *
 * Returns: %TRUE if less than all is wanted
 */
gboolean
bb_due_filter_is_set (BbDueFilter *self)
{
  g_return_val_if_fail (BB_IS_DUE_FILTER (self), FALSE);

  return get_wanted (self) != ANY;
}

/**
 * bb_due_filter_clear:
 * @self: a filter
 *
 * Lets everything through from now on, and says so to nobody.
 */
void
bb_due_filter_clear (BbDueFilter *self)
{
  g_return_if_fail (BB_IS_DUE_FILTER (self));

  if (bb_due_filter_is_set (self))
    fill (self, ANY);
}
