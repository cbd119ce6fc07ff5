/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-catalogue.h"
#include "bb-page.h"

G_BEGIN_DECLS

/**
 * BbCataloguePage:
 *
 * A page that holds the records of one table, in a catalogue. Subclasses say which, and what belongs to the record that
 * is shown.
 */
#define BB_TYPE_CATALOGUE_PAGE (bb_catalogue_page_get_type ())
G_DECLARE_DERIVABLE_TYPE (BbCataloguePage, bb_catalogue_page, BB, CATALOGUE_PAGE, BbPage)

/**
 * BbCataloguePageClass:
 * @info: what the catalogue holds
 * @build: (nullable): adds to the catalogue what belongs to the record that is shown; called once
 * @chosen: (nullable): shows what belongs to @record, which is another one, or the same one anew
 */
struct _BbCataloguePageClass
{
  BbPageClass parent_class;

  const BbCatalogueInfo *info;

  void (*build)  (BbCataloguePage *self,
                  BbCatalogue     *catalogue);
  void (*chosen) (BbCataloguePage *self,
                  gconstpointer    record);
};

BbCatalogue *bb_catalogue_page_get_catalogue (BbCataloguePage *self);
void         bb_catalogue_page_edit_part     (BbCataloguePage *self,
                                              const BbTable   *table,
                                              gconstpointer    part,
                                              const char      *owner);

G_END_DECLS
