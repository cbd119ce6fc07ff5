/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-blanks-page"

#include "bb-blanks-page.h"

#include <glib/gi18n-lib.h>

#include "bb-catalogue.h"
#include "bb-colourways.h"

struct _BbBlanksPage
{
  BbPage parent_instance;

  /* template */
  BbCatalogue *catalogue;

  BbColourways *colourways;
};

G_DEFINE_FINAL_TYPE (BbBlanksPage, bb_blanks_page, BB_TYPE_PAGE)

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
chosen_cb (BbBlanksPage *self)
{
  const BbBlank *blank = bb_catalogue_get_chosen (self->catalogue);

  if (blank != NULL && self->colourways != NULL)
    bb_colourways_show (self->colourways, bb_page_get_session (BB_PAGE (self)), blank->id);
}

static void
edit_colourway_cb (BbBlanksPage *self,
                   gpointer      colourway)
{
  bb_catalogue_edit (self->catalogue, &bb_colourway_table, bb_record_copy (&bb_colourway_table, colourway),
                     bb_table_find_field (&bb_colourway_table, "blank"));
}

static void
bb_blanks_page_start (BbPage *page)
{
  BbBlanksPage *self = BB_BLANKS_PAGE (page);

  self->colourways = BB_COLOURWAYS (bb_colourways_new ());
  g_signal_connect_object (self->colourways, "edit", G_CALLBACK (edit_colourway_cb), self, G_CONNECT_SWAPPED);
  bb_catalogue_add_below (self->catalogue, GTK_WIDGET (self->colourways));
  bb_catalogue_start (self->catalogue, bb_page_get_session (page), &info);
}

static void
bb_blanks_page_refresh (BbPage *page)
{
  bb_catalogue_refresh (BB_BLANKS_PAGE (page)->catalogue);
}

static void
bb_blanks_page_show_record (BbPage *page,
                            gint64  id)
{
  bb_catalogue_show (BB_BLANKS_PAGE (page)->catalogue, id);
}

static void
bb_blanks_page_focus (BbPage *page)
{
  bb_catalogue_focus (BB_BLANKS_PAGE (page)->catalogue);
}

static void
bb_blanks_page_add (BbPage *page)
{
  gtk_widget_activate_action (GTK_WIDGET (BB_BLANKS_PAGE (page)->catalogue), "catalogue.add", NULL);
}

static void
bb_blanks_page_edit (BbPage *page)
{
  gtk_widget_activate_action (GTK_WIDGET (BB_BLANKS_PAGE (page)->catalogue), "catalogue.edit", NULL);
}

static void
bb_blanks_page_dispose (GObject *object)
{
  BB_BLANKS_PAGE (object)->colourways = NULL;
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_blanks_page_parent_class)->dispose (object);
}

static void
bb_blanks_page_class_init (BbBlanksPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  BbPageClass *page_class = BB_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_blanks_page_dispose;
  page_class->start = bb_blanks_page_start;
  page_class->refresh = bb_blanks_page_refresh;
  page_class->show_record = bb_blanks_page_show_record;
  page_class->focus = bb_blanks_page_focus;
  page_class->find = bb_blanks_page_focus;
  page_class->add = bb_blanks_page_add;
  page_class->edit = bb_blanks_page_edit;

  g_type_ensure (BB_TYPE_CATALOGUE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-blanks-page.ui");
  gtk_widget_class_bind_template_child (widget_class, BbBlanksPage, catalogue);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
}

static void
bb_blanks_page_init (BbBlanksPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
