/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-supplies-page"

#include "bb-supplies-page.h"

#include <glib/gi18n-lib.h>

#include "bb-catalogue.h"
#include "bb-hazard-view.h"

struct _BbSuppliesPage
{
  BbPage parent_instance;

  /* template */
  BbCatalogue *catalogue;

  BbHazardView *hazards;
};

G_DEFINE_FINAL_TYPE (BbSuppliesPage, bb_supplies_page, BB_TYPE_PAGE)

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
chosen_cb (BbSuppliesPage *self)
{
  const BbSupply *supply = bb_catalogue_get_chosen (self->catalogue);

  if (supply != NULL && self->hazards != NULL)
    bb_hazard_view_show (self->hazards, supply->hazards);
}

static void
bb_supplies_page_start (BbPage *page)
{
  BbSuppliesPage *self = BB_SUPPLIES_PAGE (page);

  self->hazards = BB_HAZARD_VIEW (bb_hazard_view_new ());
  bb_catalogue_add_below (self->catalogue, GTK_WIDGET (self->hazards));
  bb_catalogue_start (self->catalogue, bb_page_get_session (page), &info);
}

static void
bb_supplies_page_refresh (BbPage *page)
{
  bb_catalogue_refresh (BB_SUPPLIES_PAGE (page)->catalogue);
}

static void
bb_supplies_page_show_record (BbPage *page,
                              gint64  id)
{
  bb_catalogue_show (BB_SUPPLIES_PAGE (page)->catalogue, id);
}

static void
bb_supplies_page_focus (BbPage *page)
{
  bb_catalogue_focus (BB_SUPPLIES_PAGE (page)->catalogue);
}

static void
bb_supplies_page_add (BbPage *page)
{
  gtk_widget_activate_action (GTK_WIDGET (BB_SUPPLIES_PAGE (page)->catalogue), "catalogue.add", NULL);
}

static void
bb_supplies_page_edit (BbPage *page)
{
  gtk_widget_activate_action (GTK_WIDGET (BB_SUPPLIES_PAGE (page)->catalogue), "catalogue.edit", NULL);
}

static void
bb_supplies_page_dispose (GObject *object)
{
  BB_SUPPLIES_PAGE (object)->hazards = NULL;
  adw_bin_set_child (ADW_BIN (object), NULL);

  G_OBJECT_CLASS (bb_supplies_page_parent_class)->dispose (object);
}

static void
bb_supplies_page_class_init (BbSuppliesPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  BbPageClass *page_class = BB_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_supplies_page_dispose;
  page_class->start = bb_supplies_page_start;
  page_class->refresh = bb_supplies_page_refresh;
  page_class->show_record = bb_supplies_page_show_record;
  page_class->focus = bb_supplies_page_focus;
  page_class->find = bb_supplies_page_focus;
  page_class->add = bb_supplies_page_add;
  page_class->edit = bb_supplies_page_edit;

  g_type_ensure (BB_TYPE_CATALOGUE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-supplies-page.ui");
  gtk_widget_class_bind_template_child (widget_class, BbSuppliesPage, catalogue);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
}

static void
bb_supplies_page_init (BbSuppliesPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
