/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-blanks-page"

#include "bb-blanks-page.h"

#include <glib/gi18n-lib.h>

#include "bb-colourways.h"

struct _BbBlanksPage
{
  BbCataloguePage parent_instance;

  BbColourways *colourways;
};

G_DEFINE_FINAL_TYPE (BbBlanksPage, bb_blanks_page, BB_TYPE_CATALOGUE_PAGE)

static void
fill (BbRow         *row,
      BbSession     *session,
      gconstpointer  record)
{
  const BbBlank *blank = record;
  g_autofree char *fibres = bb_composition_dup_text (blank->composition);
  g_autofree char *mass = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, blank->mass_g_per_m2,
                                                        bb_session_get_units (session));
  g_autofree char *description = g_strjoin (" · ", mass, fibres, NULL);

  bb_row_set (row, blank->name, blank->code, description);
}

static char *
count (guint n)
{
  return g_strdup_printf (ngettext ("%u blank", "%u blanks", n), n);
}

static const BbCatalogueInfo info = {
  .finder = {
    .table = &bb_blank_table,
    .fill = fill,
    .title = N_("Blanks"),
    .search_title = N_("Search blanks"),
    .search_hint = N_("Garment, fibre, colour…"),
    .count = count,
  },
  .add_title = N_("Add a Blank"),
  .icon_name = "blankbook-blanks-symbolic",
  .empty_title = N_("No Blanks Yet"),
  .empty_text = N_("Add the garments that the shop prints on: fibres, fabric mass and colours. Settings that work "
                   "depend on them."),
};

static void
bb_blanks_page_chosen (BbCataloguePage *page,
                       gconstpointer    record)
{
  BbBlanksPage *self = BB_BLANKS_PAGE (page);
  const BbBlank *blank = record;

  bb_colourways_show (self->colourways, bb_page_get_session (BB_PAGE (self)), blank->id);
}

static void
edit_colourway_cb (BbBlanksPage *self,
                   gpointer      colourway)
{
  bb_catalogue_page_edit_part (BB_CATALOGUE_PAGE (self), &bb_colourway_table, colourway, "blank");
}

static void
bb_blanks_page_build (BbCataloguePage *page,
                      BbCatalogue     *catalogue)
{
  BbBlanksPage *self = BB_BLANKS_PAGE (page);

  self->colourways = BB_COLOURWAYS (bb_colourways_new ());
  g_signal_connect_object (self->colourways, "edit", G_CALLBACK (edit_colourway_cb), self, G_CONNECT_SWAPPED);
  bb_catalogue_add_below (catalogue, GTK_WIDGET (self->colourways));
}

static void
bb_blanks_page_class_init (BbBlanksPageClass *klass)
{
  BbCataloguePageClass *page_class = BB_CATALOGUE_PAGE_CLASS (klass);

  page_class->info = &info;
  page_class->build = bb_blanks_page_build;
  page_class->chosen = bb_blanks_page_chosen;
}

static void
bb_blanks_page_init (BbBlanksPage *self)
{
  (void) self;
}
