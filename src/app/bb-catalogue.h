/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-catalogue-info.h"
#include "bb-editor.h"

G_BEGIN_DECLS

/**
 * BbCatalogue:
 *
 * The records of one table: a list to search, the chosen record's facts, and the editor. A page adds what
 * belongs to the chosen record above or below its facts.
 */
#define BB_TYPE_CATALOGUE (bb_catalogue_get_type ())
G_DECLARE_FINAL_TYPE (BbCatalogue, bb_catalogue, BB, CATALOGUE, AdwBin)

void          bb_catalogue_set_aside    (BbCatalogue           *self,
                                         const BbTable         *table,
                                         BbEditorAside          make);
void          bb_catalogue_start        (BbCatalogue           *self,
                                         BbSession             *session,
                                         const BbCatalogueInfo *info);
void          bb_catalogue_refresh      (BbCatalogue           *self);
void          bb_catalogue_show         (BbCatalogue           *self,
                                         gint64                 id);
gconstpointer bb_catalogue_get_chosen   (BbCatalogue           *self);
void          bb_catalogue_edit         (BbCatalogue           *self,
                                         const BbTable         *table,
                                         gpointer               record,
                                         const BbField         *fixed);
void          bb_catalogue_edit_found   (BbCatalogue           *self);
void          bb_catalogue_add_above    (BbCatalogue           *self,
                                         GtkWidget             *widget);
void          bb_catalogue_add_below    (BbCatalogue           *self,
                                         GtkWidget             *widget);
void          bb_catalogue_set_fixed    (BbCatalogue           *self,
                                         gboolean               fixed);
void          bb_catalogue_set_subtitle (BbCatalogue           *self,
                                         const char            *subtitle);
void          bb_catalogue_focus        (BbCatalogue           *self);

G_END_DECLS
