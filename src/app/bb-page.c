/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-page"

#include "bb-page.h"

typedef struct {
  BbSession *session;
  gboolean started;
  gboolean stale;
} BbPagePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (BbPage, bb_page, ADW_TYPE_BIN)

/* A page that is not looked at does no work. */
static void
refresh_if_shown (BbPage *self)
{
  BbPagePrivate *priv = bb_page_get_instance_private (self);

  if (priv->session == NULL || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  if (!priv->started)
    {
      priv->started = TRUE;
      BB_PAGE_GET_CLASS (self)->start (self);
      priv->stale = TRUE;
    }
  if (priv->stale)
    {
      priv->stale = FALSE;
      BB_PAGE_GET_CLASS (self)->refresh (self);
    }
}

static void
changed_cb (BbPage *self)
{
  BbPagePrivate *priv = bb_page_get_instance_private (self);

  priv->stale = TRUE;
  refresh_if_shown (self);
}

static void
bb_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (bb_page_parent_class)->map (widget);
  refresh_if_shown (BB_PAGE (widget));
}

static void
bb_page_dispose (GObject *object)
{
  BbPagePrivate *priv = bb_page_get_instance_private (BB_PAGE (object));

  g_clear_object (&priv->session);

  G_OBJECT_CLASS (bb_page_parent_class)->dispose (object);
}

static void
bb_page_class_init (BbPageClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bb_page_dispose;
  GTK_WIDGET_CLASS (klass)->map = bb_page_map;
}

static void
bb_page_init (BbPage *self)
{
  (void) self;
}

/**
 * bb_page_set_session:
 * @self: a page
 * @session: the session that it works with from now on
 *
 * To be called once.
 */
void
bb_page_set_session (BbPage    *self,
                     BbSession *session)
{
  BbPagePrivate *priv = bb_page_get_instance_private (self);

  g_return_if_fail (BB_IS_PAGE (self) && BB_IS_SESSION (session) && priv->session == NULL);

  priv->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "units-changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  refresh_if_shown (self);
}

/**
 * bb_page_get_session:
 * @self: a page
 *
 * Returns: (transfer none): its session
 */
BbSession *
bb_page_get_session (BbPage *self)
{
  BbPagePrivate *priv = bb_page_get_instance_private (self);

  return priv->session;
}

/**
 * bb_page_show_record:
 * @self: a page, shown
 * @id: key of the record to show, 0 for none
 */
void
bb_page_show_record (BbPage *self,
                     gint64  id)
{
  g_return_if_fail (BB_IS_PAGE (self));

  refresh_if_shown (self);
  if (id != 0 && BB_PAGE_GET_CLASS (self)->show_record != NULL)
    BB_PAGE_GET_CLASS (self)->show_record (self, id);
}

/**
 * bb_page_show_for:
 * @self: a page, shown
 * @table: the table of a record of another page
 * @id: its key
 *
 * Shows what the page has for that record, where it has something for such.
 */
void
bb_page_show_for (BbPage        *self,
                  const BbTable *table,
                  gint64         id)
{
  g_return_if_fail (BB_IS_PAGE (self) && table != NULL);

  refresh_if_shown (self);
  if (BB_PAGE_GET_CLASS (self)->show_for != NULL)
    BB_PAGE_GET_CLASS (self)->show_for (self, table, id);
}

/**
 * bb_page_focus:
 * @self: a page, shown
 *
 * Puts the keyboard where a person who comes to the page starts.
 */
void
bb_page_focus (BbPage *self)
{
  g_return_if_fail (BB_IS_PAGE (self));

  if (BB_PAGE_GET_CLASS (self)->focus != NULL)
    BB_PAGE_GET_CLASS (self)->focus (self);
}

/**
 * bb_page_find:
 * @self: a page, shown
 *
 * Puts the keyboard where one searches on this page.
 *
 * Returns: %FALSE if there is nothing to search on it
 */
gboolean
bb_page_find (BbPage *self)
{
  g_return_val_if_fail (BB_IS_PAGE (self), FALSE);

  if (BB_PAGE_GET_CLASS (self)->find == NULL)
    return FALSE;
  BB_PAGE_GET_CLASS (self)->find (self);

  return TRUE;
}

/**
 * bb_page_add:
 * @self: a page, shown
 *
 * Starts a new record, where the page has such.
 */
void
bb_page_add (BbPage *self)
{
  g_return_if_fail (BB_IS_PAGE (self));

  if (BB_PAGE_GET_CLASS (self)->add != NULL)
    BB_PAGE_GET_CLASS (self)->add (self);
}

/**
 * bb_page_edit:
 * @self: a page, shown
 *
 * Starts to edit the record that is shown, where there is one.
 */
void
bb_page_edit (BbPage *self)
{
  g_return_if_fail (BB_IS_PAGE (self));

  if (BB_PAGE_GET_CLASS (self)->edit != NULL)
    BB_PAGE_GET_CLASS (self)->edit (self);
}
