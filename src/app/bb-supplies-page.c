/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-supplies-page"

#include "bb-supplies-page.h"

#include <glib/gi18n-lib.h>

#include "bb-hazard-view.h"

struct _BbSuppliesPage
{
  BbCataloguePage parent_instance;

  BbHazardView *hazards;
};

G_DEFINE_FINAL_TYPE (BbSuppliesPage, bb_supplies_page, BB_TYPE_CATALOGUE_PAGE)

static void
fill (BbRow         *row,
      BbSession     *session,
      gconstpointer  record)
{
  const BbSupply *supply = record;
  /* The maker is the last of them, so that where there is none the kind stands alone. */
  g_autofree char *description = g_strjoin (" · ", bb_choices_get_title (&bb_supply_kind_choices, supply->kind),
                                            supply->maker, NULL);

  (void) session;

  bb_row_set (row, supply->name, supply->code, description);
}

static char *
count (guint n)
{
  return g_strdup_printf (ngettext ("%u supply", "%u supplies", n), n);
}

static const BbCatalogueInfo info = {
  .finder = {
    .table = &bb_supply_table,
    .fill = fill,
    .title = N_("Supplies"),
    .search_title = N_("Search supplies"),
    .search_hint = N_("Name, kind, hazard…"),
    .count = count,
  },
  .add_title = N_("Add a Supply"),
  .icon_name = "blankbook-supplies-symbolic",
  .empty_title = N_("No Supplies Yet"),
  .empty_text = N_("Write down the pretreats, inks, cover sheets and cleaners that the shop uses, from their labels "
                   "and data sheets. Recipes refer to them, and mixes take density and solids from here."),
};

static void
bb_supplies_page_chosen (BbCataloguePage *page,
                         gconstpointer    record)
{
  BbSuppliesPage *self = BB_SUPPLIES_PAGE (page);
  const BbSupply *supply = record;

  bb_hazard_view_show (self->hazards, supply->hazards);
}

static void
bb_supplies_page_build (BbCataloguePage *page,
                        BbCatalogue     *catalogue)
{
  BbSuppliesPage *self = BB_SUPPLIES_PAGE (page);

  self->hazards = BB_HAZARD_VIEW (bb_hazard_view_new ());
  bb_catalogue_add_below (catalogue, GTK_WIDGET (self->hazards));
}

static void
bb_supplies_page_class_init (BbSuppliesPageClass *klass)
{
  BbCataloguePageClass *page_class = BB_CATALOGUE_PAGE_CLASS (klass);

  page_class->info = &info;
  page_class->build = bb_supplies_page_build;
  page_class->chosen = bb_supplies_page_chosen;
}

static void
bb_supplies_page_init (BbSuppliesPage *self)
{
  (void) self;
}
