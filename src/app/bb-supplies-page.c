/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-supplies-page"

#include "bb-supplies-page.h"

#include <glib/gi18n-lib.h>

#include "bb-book-jobs.h"
#include "bb-hazard-view.h"
#include "bb-lots.h"
#include "bb-moment.h"
#include "bb-word-badge.h"

struct _BbSuppliesPage
{
  BbCataloguePage parent_instance;

  BbLots *lots;
  BbHazardView *hazards;

  /* The container to look at once its supply is shown; 0 for none. */
  gint64 wanted;
};

G_DEFINE_FINAL_TYPE (BbSuppliesPage, bb_supplies_page, BB_TYPE_CATALOGUE_PAGE)

static BbWordBadge *
ensure_badge (BbRow *row)
{
  if (bb_row_get_badge (row) == NULL)
    bb_row_set_badge (row, bb_word_badge_new ());

  return BB_WORD_BADGE (bb_row_get_badge (row));
}

static gboolean
has_past (const GPtrArray *stock,
          const char      *today)
{
  for (guint i = 0; i < stock->len; i++)
    if (bb_stock_is_past (stock->pdata[i], today))
      return TRUE;

  return FALSE;
}

/* What has to be ordered comes before what has to be thrown away. */
static void
show_stock (BbWordBadge    *badge,
            BbSession      *session,
            const BbSupply *supply)
{
  g_autofree char *today = bb_dup_today ();
  g_autoptr (GPtrArray) stock = bb_book_load_stock (bb_session_get_book (session), supply->id, NULL);

  if (stock != NULL && bb_supply_is_low (supply, bb_stock_sum_left (stock, today)))
    bb_word_badge_say (badge, BB_TONE_SOON, _("Low stock"));
  else if (stock != NULL && has_past (stock, today))
    bb_word_badge_say (badge, BB_TONE_BAD, _("Past its date"));
  else
    bb_word_badge_say (badge, BB_TONE_PLAIN, "");
}

static void
fill (BbRow         *row,
      BbSession     *session,
      gconstpointer  record)
{
  const BbSupply *supply = record;
  /* The maker is the last of them, so that where there is none the kind stands alone. */
  g_autofree char *description = g_strjoin (" · ", bb_choices_get_title (&bb_supply_kind_choices, supply->kind),
                                            supply->maker, NULL);

  bb_row_set (row, supply->name, supply->code, description);
  show_stock (ensure_badge (row), session, supply);
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

  bb_lots_show (self->lots, bb_page_get_session (BB_PAGE (page)), supply);
  bb_hazard_view_show (self->hazards, supply->hazards);
  if (self->wanted != 0)
    bb_lots_mark (self->lots, self->wanted);
  self->wanted = 0;
}

static void
edit_lot_cb (BbSuppliesPage *self,
             gpointer        lot)
{
  bb_catalogue_page_edit_part (BB_CATALOGUE_PAGE (self), &bb_lot_table, lot, "supply");
}

static void
bb_supplies_page_show_for (BbPage        *page,
                           const BbTable *table,
                           gint64         id)
{
  BbSuppliesPage *self = BB_SUPPLIES_PAGE (page);
  BbSession *session = bb_page_get_session (page);
  g_autoptr (GError) error = NULL;
  g_autoptr (BbLot) lot = NULL;

  if (table != &bb_lot_table)
    return;

  lot = bb_book_load (bb_session_get_book (session), table, id, &error);
  if (lot == NULL)
    {
      bb_session_report (session, error);
      return;
    }
  self->wanted = id;
  bb_catalogue_show (bb_catalogue_page_get_catalogue (BB_CATALOGUE_PAGE (self)), lot->supply);
}

static void
bb_supplies_page_build (BbCataloguePage *page,
                        BbCatalogue     *catalogue)
{
  BbSuppliesPage *self = BB_SUPPLIES_PAGE (page);

  self->lots = BB_LOTS (bb_lots_new ());
  g_signal_connect_object (self->lots, "edit", G_CALLBACK (edit_lot_cb), self, G_CONNECT_SWAPPED);
  bb_catalogue_add_above (catalogue, GTK_WIDGET (self->lots));
  self->hazards = BB_HAZARD_VIEW (bb_hazard_view_new ());
  bb_catalogue_add_below (catalogue, GTK_WIDGET (self->hazards));
}

static void
bb_supplies_page_class_init (BbSuppliesPageClass *klass)
{
  BbCataloguePageClass *page_class = BB_CATALOGUE_PAGE_CLASS (klass);

  BB_PAGE_CLASS (klass)->show_for = bb_supplies_page_show_for;
  page_class->info = &info;
  page_class->build = bb_supplies_page_build;
  page_class->chosen = bb_supplies_page_chosen;
}

static void
bb_supplies_page_init (BbSuppliesPage *self)
{
  (void) self;
}
