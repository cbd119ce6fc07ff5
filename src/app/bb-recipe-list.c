/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-recipe-list"

#include "bb-recipe-list.h"

/* A screenful or two: one query per page of scrolling. */
#define PAGE 64

struct _BbRecipeList
{
  GObject parent_instance;

  /* owned */
  BbSession *session;
  GArray *ids;
  GHashTable *pages;
};

static void bb_recipe_list_list_model_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (BbRecipeList, bb_recipe_list, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, bb_recipe_list_list_model_init))

static GType
bb_recipe_list_get_item_type (GListModel *model)
{
  (void) model;

  return BB_TYPE_ITEM;
}

static guint
bb_recipe_list_get_n_items (GListModel *model)
{
  return BB_RECIPE_LIST (model)->ids->len;
}

static GPtrArray *
load_page (BbRecipeList *self,
           guint         page)
{
  const guint first = page * PAGE;
  const guint n = MIN (PAGE, self->ids->len - first);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) lines = NULL;
  GPtrArray *items = NULL;

  lines = bb_book_load_lines (bb_session_get_book (self->session), &bb_recipe_table,
                              &g_array_index (self->ids, gint64, first), n, &error);
  if (lines == NULL)
    {
      bb_session_report (self->session, error);
      return NULL;
    }

  items = g_ptr_array_new_with_free_func (g_object_unref);
  for (guint i = 0; i < lines->len; i++)
    g_ptr_array_add (items, bb_item_new (&bb_recipe_line_table,
                                         bb_record_copy (&bb_recipe_line_table, lines->pdata[i])));
  g_hash_table_insert (self->pages, GUINT_TO_POINTER (page), items);

  return items;
}

static gpointer
bb_recipe_list_get_item (GListModel *model,
                         guint       position)
{
  BbRecipeList *self = BB_RECIPE_LIST (model);
  GPtrArray *items = NULL;

  if (position >= self->ids->len)
    return NULL;

  items = g_hash_table_lookup (self->pages, GUINT_TO_POINTER (position / PAGE));
  if (items == NULL)
    items = load_page (self, position / PAGE);

  /* A recipe that another program took away meanwhile leaves its place empty until the list is made anew. */
  if (items == NULL || position % PAGE >= items->len)
    return bb_item_new (&bb_recipe_line_table, bb_recipe_line_new ());

  return g_object_ref (items->pdata[position % PAGE]);
}

static void
bb_recipe_list_list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = bb_recipe_list_get_item_type;
  iface->get_n_items = bb_recipe_list_get_n_items;
  iface->get_item = bb_recipe_list_get_item;
}

static void
bb_recipe_list_finalize (GObject *object)
{
  BbRecipeList *self = BB_RECIPE_LIST (object);

  g_clear_pointer (&self->pages, g_hash_table_unref);
  g_clear_pointer (&self->ids, g_array_unref);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (bb_recipe_list_parent_class)->finalize (object);
}

static void
bb_recipe_list_class_init (BbRecipeListClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bb_recipe_list_finalize;
}

static void
bb_recipe_list_init (BbRecipeList *self)
{
  self->ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->pages = g_hash_table_new_full (NULL, NULL, NULL, (GDestroyNotify) g_ptr_array_unref);
}

/**
 * bb_recipe_list_new:
 * @session: the session
 *
 * Returns: (transfer full): a list without recipes
 */
BbRecipeList *
bb_recipe_list_new (BbSession *session)
{
  BbRecipeList *self = g_object_new (BB_TYPE_RECIPE_LIST, NULL);

  self->session = g_object_ref (session);

  return self;
}

/**
 * bb_recipe_list_search:
 * @self: a list
 * @text: what to look for, empty for every recipe
 *
 * Fills the list anew, newest first.
 */
void
bb_recipe_list_search (BbRecipeList *self,
                       const char   *text)
{
  g_autoptr (GError) error = NULL;
  const guint n_before = self->ids->len;
  const BbQuery query = { .text = text };
  GArray *ids = NULL;

  g_return_if_fail (BB_IS_RECIPE_LIST (self) && text != NULL);

  ids = bb_book_search (bb_session_get_book (self->session), &bb_recipe_table, &query, &error);
  if (ids == NULL)
    {
      bb_session_report (self->session, error);
      return;
    }

  g_array_unref (self->ids);
  self->ids = ids;
  g_hash_table_remove_all (self->pages);
  g_list_model_items_changed (G_LIST_MODEL (self), 0, n_before, ids->len);
}

/**
 * bb_recipe_list_find:
 * @self: a list
 * @id: a recipe's key
 *
 * Returns: the recipe's position, or %G_MAXUINT if the list does not have it
 */
guint
bb_recipe_list_find (BbRecipeList *self,
                     gint64        id)
{
  g_return_val_if_fail (BB_IS_RECIPE_LIST (self), G_MAXUINT);

  for (guint i = 0; i < self->ids->len; i++)
    if (g_array_index (self->ids, gint64, i) == id)
      return i;

  return G_MAXUINT;
}
