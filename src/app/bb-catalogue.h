/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-editor.h"
#include "bb-finder.h"

G_BEGIN_DECLS

/**
 * BbCatalogueInfo:
 * @finder: what the list finds
 * @add_title: what the button that adds a record says, marked for translation
 * @other_title: (nullable): what another button of the empty catalogue says, marked for translation
 * @other_action: (nullable): the action of that button
 * @icon_name: icon of the empty catalogue
 * @empty_title: title of the empty catalogue, marked for translation
 * @empty_text: what to do first, marked for translation
 * @has_labels: %TRUE for what gets a label with a code on it
 *
 * What a #BbCatalogue holds.
 */
typedef struct {
  BbFinderInfo finder;
  const char *add_title;
  const char *other_title;
  const char *other_action;
  const char *icon_name;
  const char *empty_title;
  const char *empty_text;
  gboolean has_labels;
} BbCatalogueInfo;

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
