/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-person-menu"

#include "bb-person-menu.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-pick-width.h"
#include "bb-signal.h"

/* Most characters of a name; the sidebar is narrow. */
#define NAME_WIDTH 13

static void
selected_cb (GtkDropDown *drop_down,
             GParamSpec  *pspec,
             BbSession   *session)
{
  GArray *ids = g_object_get_data (G_OBJECT (drop_down), "ids");
  guint position = gtk_drop_down_get_selected (drop_down);

  (void) pspec;

  if (position < ids->len)
    bb_session_set_person (session, g_array_index (ids, gint64, position));
}

static gboolean
offers (GtkDropDown   *drop_down,
        const GArray  *ids,
        GtkStringList *names)
{
  const GArray *shown = g_object_get_data (G_OBJECT (drop_down), "ids");
  GtkStringList *model = NULL;

  if (shown == NULL || shown->len != ids->len || memcmp (shown->data, ids->data, ids->len * sizeof (gint64)) != 0)
    return FALSE;
  model = GTK_STRING_LIST (gtk_drop_down_get_model (drop_down));
  for (guint i = 0; i < ids->len; i++)
    if (!g_str_equal (gtk_string_list_get_string (model, i), gtk_string_list_get_string (names, i)))
      return FALSE;

  return TRUE;
}

/* A choice itself is told as a change, and GTK goes on with the old list afterwards: it stays unless it says else. */
static void
offer (GtkDropDown   *drop_down,
       GArray        *ids,
       GtkStringList *names)
{
  if (offers (drop_down, ids, names))
    {
      g_array_unref (ids);
      return;
    }
  g_object_set_data_full (G_OBJECT (drop_down), "ids", ids, (GDestroyNotify) g_array_unref);
  gtk_drop_down_set_model (drop_down, G_LIST_MODEL (names));
}

static void
fill (GtkDropDown *drop_down,
      BbSession   *session)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) people = NULL;
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  GArray *ids = g_array_new (FALSE, TRUE, sizeof (gint64));
  guint selected = 0;

  people = bb_book_load_all (bb_session_get_book (session), &bb_person_table, FALSE, &error);
  if (people == NULL)
    bb_session_report (session, error);

  g_array_set_size (ids, 1);
  gtk_string_list_append (names, _("Nobody named"));
  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const BbPerson *person = people->pdata[i];

      if (person->id == bb_session_get_person (session))
        selected = ids->len;
      g_array_append_val (ids, person->id);
      gtk_string_list_append (names, person->name);
    }

  g_signal_handlers_block_by_func (drop_down, BB_HANDLER (selected_cb), session);
  offer (drop_down, ids, names);
  gtk_drop_down_set_selected (drop_down, selected);
  g_signal_handlers_unblock_by_func (drop_down, BB_HANDLER (selected_cb), session);
}

/**
 * bb_person_menu_connect:
 * @drop_down: a drop-down
 * @session: the session
 *
 * Lets the person at the bench say who they are, so that what they write carries their name.
 */
void
bb_person_menu_connect (GtkDropDown *drop_down,
                        BbSession   *session)
{
  g_return_if_fail (GTK_IS_DROP_DOWN (drop_down) && BB_IS_SESSION (session));

  bb_pick_set_width (drop_down, NAME_WIDTH);
  fill (drop_down, session);
  g_signal_connect_object (drop_down, "notify::selected", G_CALLBACK (selected_cb), session, 0);
  g_signal_connect_object (session, "changed", G_CALLBACK (fill), drop_down, G_CONNECT_SWAPPED);
}
