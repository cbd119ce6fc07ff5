/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-line-list"

#include "bb-line-list.h"

/* A screenful or two: one query per page of scrolling. */
#define PAGE 64

struct _BbLineList
{
  GObject parent_instance;

  /* owned */
  BbSession *session;
  GArray *ids;
  GHashTable *pages;

  const BbTable *table;
};

static void bb_line_list_list_model_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (BbLineList, bb_line_list, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, bb_line_list_list_model_init))

static GType
bb_line_list_get_item_type (GListModel *model)
{
  (void) model;

  return BB_TYPE_ITEM;
}

static guint
bb_line_list_get_n_items (GListModel *model)
{
  return BB_LINE_LIST (model)->ids->len;
}

/*
 * Each key has its line. A record that another program took away meanwhile leaves its place empty until the list is
 * made anew, and so does what can't be read.
 */
static GPtrArray *
make_items (BbLineList   *self,
            GPtrArray    *lines,
            const gint64 *ids,
            guint         n_ids)
{
  const BbTable *table = bb_book_get_line_table (self->table);
  const BbField *key = bb_table_find_field (table, "id");
  GPtrArray *items = g_ptr_array_new_with_free_func (g_object_unref);
  const guint n_lines = lines != NULL ? lines->len : 0;
  guint taken = 0;

  for (guint i = 0; i < n_ids; i++)
    if (taken < n_lines && bb_field_get_integer (key, lines->pdata[taken]) == ids[i])
      g_ptr_array_add (items, bb_item_new (table, g_steal_pointer (&lines->pdata[taken++])));
    else
      g_ptr_array_add (items, bb_item_new (table, bb_record_new (table)));

  return items;
}

static GPtrArray *
load_page (BbLineList *self,
           guint       page)
{
  const guint first = page * PAGE;
  const guint n = MIN (PAGE, self->ids->len - first);
  const gint64 *ids = &g_array_index (self->ids, gint64, first);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) lines = bb_book_load_lines (bb_session_get_book (self->session), self->table, ids, n, &error);
  GPtrArray *items = make_items (self, lines, ids, n);

  if (lines == NULL)
    bb_session_report (self->session, error);
  g_hash_table_insert (self->pages, GUINT_TO_POINTER (page), items);

  return items;
}

static gpointer
bb_line_list_get_item (GListModel *model,
                       guint       position)
{
  BbLineList *self = BB_LINE_LIST (model);
  GPtrArray *items = NULL;

  if (position >= self->ids->len)
    return NULL;

  items = g_hash_table_lookup (self->pages, GUINT_TO_POINTER (position / PAGE));
  if (items == NULL)
    items = load_page (self, position / PAGE);

  return g_object_ref (items->pdata[position % PAGE]);
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
  g_clear_pointer (&self->ids, g_array_unref);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (bb_line_list_parent_class)->finalize (object);
}

static void
bb_line_list_class_init (BbLineListClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bb_line_list_finalize;
}

static void
bb_line_list_init (BbLineList *self)
{
  self->ids = g_array_new (FALSE, FALSE, sizeof (gint64));
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
  guint n_before = 0;
  GArray *ids = NULL;

  g_return_if_fail (BB_IS_LINE_LIST (self) && query != NULL);

  ids = bb_book_search (bb_session_get_book (self->session), self->table, query, &error);
  if (ids == NULL)
    {
      bb_session_report (self->session, error);
      return;
    }

  n_before = self->ids->len;
  g_array_unref (self->ids);
  self->ids = ids;
  g_hash_table_remove_all (self->pages);
  g_list_model_items_changed (G_LIST_MODEL (self), 0, n_before, ids->len);
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

/**
 * bb_line_list_get_n_loaded:
 * @self: a list
 *
 * Returns: how many pages of lines were looked at since the last search
 */
guint
bb_line_list_get_n_loaded (BbLineList *self)
{
  g_return_val_if_fail (BB_IS_LINE_LIST (self), 0);

  return g_hash_table_size (self->pages);
}
