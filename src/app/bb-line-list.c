/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-line-list"

#include "bb-line-list.h"

/* A screenful or two: one query per page of scrolling. */
#define PAGE 64

struct _BbLineList
{
  GObject parent_instance;

  /* owned; places that were never asked for are NULL */
  BbSession *session;
  GArray *ids;
  GPtrArray *places;
  GHashTable *pages;

  const BbTable *table;
};

static void bb_line_list_list_model_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (BbLineList, bb_line_list, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, bb_line_list_list_model_init))

enum {
  SIGNAL_RELOADED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static GType
bb_line_list_get_item_type (GListModel *model)
{
  (void) model;

  return G_TYPE_OBJECT;
}

static guint
bb_line_list_get_n_items (GListModel *model)
{
  return BB_LINE_LIST (model)->ids->len;
}

static gpointer
bb_line_list_get_item (GListModel *model,
                       guint       position)
{
  BbLineList *self = BB_LINE_LIST (model);

  if (position >= self->ids->len)
    return NULL;

  if (self->places->pdata[position] == NULL)
    self->places->pdata[position] = g_object_new (G_TYPE_OBJECT, NULL);

  return g_object_ref (self->places->pdata[position]);
}

static void
bb_line_list_list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = bb_line_list_get_item_type;
  iface->get_n_items = bb_line_list_get_n_items;
  iface->get_item = bb_line_list_get_item;
}

static void
bb_line_list_finalize (GObject *object)
{
  BbLineList *self = BB_LINE_LIST (object);

  g_clear_pointer (&self->pages, g_hash_table_unref);
  g_clear_pointer (&self->places, g_ptr_array_unref);
  g_clear_pointer (&self->ids, g_array_unref);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (bb_line_list_parent_class)->finalize (object);
}

static void
bb_line_list_class_init (BbLineListClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bb_line_list_finalize;

  /**
   * BbLineList::reloaded:
   *
   * The list was made anew: each place may hold something else.
   */
  signals[SIGNAL_RELOADED] = g_signal_new ("reloaded", BB_TYPE_LINE_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                           G_TYPE_NONE, 0);
}

static void
place_free (gpointer place)
{
  if (place != NULL)
    g_object_unref (place);
}

static void
bb_line_list_init (BbLineList *self)
{
  self->ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->places = g_ptr_array_new_with_free_func (place_free);
  self->pages = g_hash_table_new_full (NULL, NULL, NULL, (GDestroyNotify) g_ptr_array_unref);
}

/**
 * bb_line_list_new:
 * @session: the session
 * @table: the table of the records, one that bb_book_search() searches
 *
 * Returns: (transfer full): a list without lines
 */
BbLineList *
bb_line_list_new (BbSession     *session,
                  const BbTable *table)
{
  BbLineList *self = NULL;

  g_return_val_if_fail (BB_IS_SESSION (session) && table != NULL, NULL);

  self = g_object_new (BB_TYPE_LINE_LIST, NULL);
  self->session = g_object_ref (session);
  self->table = table;

  return self;
}

/**
 * bb_line_list_get_session:
 * @self: a list
 *
 * Returns: (transfer none): the session
 */
BbSession *
bb_line_list_get_session (BbLineList *self)
{
  g_return_val_if_fail (BB_IS_LINE_LIST (self), NULL);

  return self->session;
}

/**
 * bb_line_list_get_line_table:
 * @self: a list
 *
 * Returns: (transfer none): the table of what bb_line_list_load() gives
 */
const BbTable *
bb_line_list_get_line_table (BbLineList *self)
{
  g_return_val_if_fail (BB_IS_LINE_LIST (self), NULL);

  return bb_book_get_line_table (self->table);
}

/**
 * bb_line_list_search:
 * @self: a list
 * @query: what to look for
 *
 * Fills the list anew, newest first.
 */
void
bb_line_list_search (BbLineList    *self,
                     const BbQuery *query)
{
  g_autoptr (GError) error = NULL;
  GArray *ids = NULL;

  g_return_if_fail (BB_IS_LINE_LIST (self) && query != NULL);

  ids = bb_book_search (bb_session_get_book (self->session), self->table, query, &error);
  if (ids != NULL)
    bb_line_list_take (self, ids);
  else
    bb_session_report (self->session, error);
}

/**
 * bb_line_list_take:
 * @self: a list
 * @ids: (transfer full) (element-type gint64): keys of records
 *
 * Fills the list anew with what was found elsewhere.
 */
void
bb_line_list_take (BbLineList *self,
                   GArray     *ids)
{
  guint n_before = 0;
  guint n_stay = 0;

  g_return_if_fail (BB_IS_LINE_LIST (self) && ids != NULL);

  n_before = self->ids->len;
  n_stay = MIN (n_before, ids->len);
  g_array_unref (self->ids);
  self->ids = ids;
  g_ptr_array_set_size (self->places, (int) ids->len);
  g_hash_table_remove_all (self->pages);
  if (n_before != ids->len)
    g_list_model_items_changed (G_LIST_MODEL (self), n_stay, n_before - n_stay, ids->len - n_stay);
  g_signal_emit (self, signals[SIGNAL_RELOADED], 0);
}

/**
 * bb_line_list_get_id:
 * @self: a list
 * @position: a position, which may be beyond its end
 *
 * Returns: the key of the record there, 0 where there is none
 */
gint64
bb_line_list_get_id (BbLineList *self,
                     guint       position)
{
  g_return_val_if_fail (BB_IS_LINE_LIST (self), 0);

  return position < self->ids->len ? g_array_index (self->ids, gint64, position) : 0;
}

/**
 * bb_line_list_find:
 * @self: a list
 * @id: a record's key
 *
 * Returns: the record's position, or %G_MAXUINT if the list does not have it
 */
guint
bb_line_list_find (BbLineList *self,
                   gint64      id)
{
  g_return_val_if_fail (BB_IS_LINE_LIST (self), G_MAXUINT);

  for (guint i = 0; i < self->ids->len; i++)
    if (g_array_index (self->ids, gint64, i) == id)
      return i;

  return G_MAXUINT;
}

/*
 * Each key has its record. One that another program took away meanwhile leaves nothing in its place until the list is
 * made anew, and so does what can't be read.
 */
static GPtrArray *
arrange (BbLineList   *self,
         GPtrArray    *records,
         const gint64 *ids,
         guint         n_ids)
{
  const BbTable *table = bb_book_get_line_table (self->table);
  const BbField *key = bb_table_find_field (table, "id");
  GPtrArray *page = g_ptr_array_new_full (n_ids, table->free_record);
  guint taken = 0;

  for (guint i = 0; i < n_ids; i++)
    {
      const gboolean is_there = records != NULL && taken < records->len &&
                                bb_field_get_integer (key, records->pdata[taken]) == ids[i];

      g_ptr_array_add (page, is_there ? g_steal_pointer (&records->pdata[taken++]) : NULL);
    }

  return page;
}

static GPtrArray *
load_page (BbLineList *self,
           guint       number)
{
  const guint first = number * PAGE;
  const guint n = MIN (PAGE, self->ids->len - first);
  const gint64 *ids = &g_array_index (self->ids, gint64, first);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) records = bb_book_load_lines (bb_session_get_book (self->session), self->table, ids, n, &error);
  GPtrArray *page = arrange (self, records, ids, n);

  g_hash_table_insert (self->pages, GUINT_TO_POINTER (number), page);
  if (records == NULL)
    bb_session_report (self->session, error);

  return page;
}

/**
 * bb_line_list_load:
 * @self: a list
 * @position: a position in it
 *
 * Loads what is to be shown there, unless that was done before.
 *
 * Returns: (transfer none) (nullable): the record's line, of the table bb_book_get_line_table(), which holds until the
 *   list is made anew; %NULL where the record is gone, or can't be read, which was said once then
 */
gconstpointer
bb_line_list_load (BbLineList *self,
                   guint       position)
{
  GPtrArray *page = NULL;

  g_return_val_if_fail (BB_IS_LINE_LIST (self) && position < self->ids->len, NULL);

  page = g_hash_table_lookup (self->pages, GUINT_TO_POINTER (position / PAGE));
  if (page == NULL)
    page = load_page (self, position / PAGE);

  return page->pdata[position % PAGE];
}

/**
 * bb_line_list_get_n_loaded:
 * @self: a list
 *
 * Returns: how many pages of lines were loaded since the last search
 */
guint
bb_line_list_get_n_loaded (BbLineList *self)
{
  g_return_val_if_fail (BB_IS_LINE_LIST (self), 0);

  return g_hash_table_size (self->pages);
}
