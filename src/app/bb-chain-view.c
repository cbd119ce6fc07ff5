/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-chain-view"

#include "bb-chain-view.h"

#include "bb-advice-load.h"
#include "bb-station-view.h"

struct _BbChainView
{
  GtkBox parent_instance;

  BbStationView *stations[BB_N_STATIONS];
};

G_DEFINE_FINAL_TYPE (BbChainView, bb_chain_view, GTK_TYPE_BOX)

static void
bb_chain_view_class_init (BbChainViewClass *klass)
{
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
bb_chain_view_init (BbChainView *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  for (BbStation station = BB_STATION_PRETREAT; station < BB_N_STATIONS; station++)
    {
      self->stations[station] = BB_STATION_VIEW (bb_station_view_new (station));
      gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->stations[station]));
    }
}

/**
 * bb_chain_view_set_last:
 * @self: a chain
 * @last: the station that it ends with: what comes after it is not shown
 */
void
bb_chain_view_set_last (BbChainView *self,
                        BbStation    last)
{
  g_return_if_fail (BB_IS_CHAIN_VIEW (self));

  for (BbStation station = BB_STATION_PRETREAT; station < BB_N_STATIONS; station++)
    gtk_widget_set_visible (GTK_WIDGET (self->stations[station]), station <= last);
}

/**
 * bb_chain_view_show:
 * @self: a chain
 * @session: the session
 * @revision: the revision to show
 * @before: (nullable): the revision to compare it with
 */
void
bb_chain_view_show (BbChainView      *self,
                    BbSession        *session,
                    const BbRevision *revision,
                    const BbRevision *before)
{
  g_autoptr (GPtrArray) advice = NULL;
  g_autoptr (GError) error = NULL;

  g_return_if_fail (BB_IS_CHAIN_VIEW (self) && revision != NULL);

  advice = bb_advice_load (bb_session_get_book (session), revision, bb_session_get_units (session), &error);
  if (advice == NULL)
    bb_session_report (session, error);
  for (BbStation station = BB_STATION_PRETREAT; station < BB_N_STATIONS; station++)
    {
      bb_station_view_show (self->stations[station], session, revision, before);
      if (advice != NULL)
        bb_station_view_advise (self->stations[station], advice);
    }
}
