/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-item.h"
#include "bb-session.h"

G_BEGIN_DECLS

typedef char *(*BbDescribe) (BbSession     *session,
                             gconstpointer  record);

typedef GtkWidget *(*BbBadge) (BbSession     *session,
                               gconstpointer  record);

/**
 * BbCatalogue:
 *
 * The records of one table: a list to search, the chosen record's facts, and the editor. A page adds what
 * belongs to the chosen record below its facts.
 */
#define BB_TYPE_CATALOGUE (bb_catalogue_get_type ())
G_DECLARE_FINAL_TYPE (BbCatalogue, bb_catalogue, BB, CATALOGUE, AdwBin)

void           bb_catalogue_start      (BbCatalogue   *self,
                                        BbSession     *session,
                                        const BbTable *table,
                                        BbDescribe     describe,
                                        const char    *icon_name,
                                        const char    *empty_title,
                                        const char    *empty_text);
void           bb_catalogue_refresh    (BbCatalogue   *self);
void           bb_catalogue_select     (BbCatalogue   *self,
                                        gint64         id);
BbItem        *bb_catalogue_get_chosen (BbCatalogue   *self);
void           bb_catalogue_edit       (BbCatalogue   *self,
                                        const BbTable *table,
                                        gpointer       record,
                                        const BbField *fixed);
void           bb_catalogue_add_below  (BbCatalogue   *self,
                                        GtkWidget     *widget);
void           bb_catalogue_set_badge  (BbCatalogue   *self,
                                        BbBadge        badge);
void           bb_catalogue_set_newest_first (BbCatalogue *self);
void           bb_catalogue_focus      (BbCatalogue   *self);

G_END_DECLS
