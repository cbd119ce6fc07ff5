/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbCatalogueHead:
 *
 * What a record is called, in large letters, and beside that what can be done with it.
 */
#define BB_TYPE_CATALOGUE_HEAD (bb_catalogue_head_get_type ())
G_DECLARE_FINAL_TYPE (BbCatalogueHead, bb_catalogue_head, BB, CATALOGUE_HEAD, AdwBin)

void bb_catalogue_head_start        (BbCatalogueHead *self,
                                     BbSession       *session,
                                     const BbTable   *table,
                                     gboolean         has_labels);
void bb_catalogue_head_show         (BbCatalogueHead *self,
                                     gconstpointer    record);
void bb_catalogue_head_set_fixed    (BbCatalogueHead *self,
                                     gboolean         fixed);
void bb_catalogue_head_set_subtitle (BbCatalogueHead *self,
                                     const char      *subtitle);

G_END_DECLS
