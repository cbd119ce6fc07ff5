/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-revision-menu"

#include "bb-revision-menu.h"

#include <glib/gi18n-lib.h>

#include "bb-state-badge.h"

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *list_item,
          gpointer                  data)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 16);
  GtkWidget *label = gtk_label_new (NULL);
  GtkWidget *badge = bb_state_badge_new ();

  (void) factory;
  (void) data;

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), badge);
  g_object_set_data (G_OBJECT (box), "label", label);
  g_object_set_data (G_OBJECT (box), "badge", badge);
  gtk_list_item_set_child (list_item, box);
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *list_item,
         gpointer                  data)
{
  GtkStringObject *title = gtk_list_item_get_item (list_item);
  GtkWidget *box = gtk_list_item_get_child (list_item);

  (void) factory;
  (void) data;

  gtk_label_set_label (g_object_get_data (G_OBJECT (box), "label"), gtk_string_object_get_string (title));
  bb_state_badge_set_state (g_object_get_data (G_OBJECT (box), "badge"),
                            (BbState) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (title), "state")));
}

/**
 * bb_revision_menu_load_standing:
 * @session: the session
 * @revision: a revision's key
 *
 * Returns: (transfer full) (nullable): where the revision stands; %NULL where nobody has judged it, and where that
 *   could not be read, which is said
 */
BbStanding *
bb_revision_menu_load_standing (BbSession *session,
                                gint64     revision)
{
  g_autoptr (GError) error = NULL;
  BbStanding *standing = bb_book_load_standing (bb_session_get_book (session), revision, &error);

  if (standing == NULL && !g_error_matches (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND))
    bb_session_report (session, error);

  return standing;
}

/**
 * bb_revision_menu_load_state:
 * @session: the session
 * @revision: a revision's key
 *
 * Returns: the revision's state; a revision that nobody has judged is a draft
 */
BbState
bb_revision_menu_load_state (BbSession *session,
                             gint64     revision)
{
  g_autoptr (BbStanding) standing = bb_revision_menu_load_standing (session, revision);

  return standing != NULL ? (BbState) standing->state : BB_STATE_DRAFT;
}

/**
 * bb_revision_menu_fill:
 * @drop_down: a drop-down
 * @session: the session
 * @revisions: #BbRevision of one recipe
 * @selected: position of the one to select
 *
 * Offers the revisions by number, and in the opened list by state.
 */
void
bb_revision_menu_fill (GtkDropDown *drop_down,
                       BbSession   *session,
                       GPtrArray   *revisions,
                       guint        selected)
{
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkStringList) titles = gtk_string_list_new (NULL);

  g_return_if_fail (GTK_IS_DROP_DOWN (drop_down) && BB_IS_SESSION (session) && revisions != NULL);

  for (guint i = 0; i < revisions->len; i++)
    {
      const BbRevision *revision = revisions->pdata[i];
      g_autofree char *title = g_strdup_printf (_("Revision %" G_GINT64_FORMAT), revision->number);
      g_autoptr (GtkStringObject) object = NULL;

      gtk_string_list_append (titles, title);
      object = g_list_model_get_item (G_LIST_MODEL (titles), i);
      g_object_set_data (G_OBJECT (object), "state",
                         GINT_TO_POINTER ((int) bb_revision_menu_load_state (session, revision->id)));
    }

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);
  gtk_drop_down_set_list_factory (drop_down, factory);
  gtk_drop_down_set_model (drop_down, G_LIST_MODEL (titles));
  gtk_drop_down_set_selected (drop_down, selected);
}
