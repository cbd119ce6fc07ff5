/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-equipment-page"

#include "bb-equipment-page.h"

#include <glib/gi18n-lib.h>

#include "bb-care-view.h"
#include "bb-history-view.h"
#include "bb-moment.h"
#include "bb-show.h"
#include "bb-word-badge.h"

struct _BbEquipmentPage
{
  BbCataloguePage parent_instance;

  BbCareView *care;
  BbHistoryView *history;
};

G_DEFINE_FINAL_TYPE (BbEquipmentPage, bb_equipment_page, BB_TYPE_CATALOGUE_PAGE)

static BbWordBadge *
ensure_badge (BbRow *row)
{
  if (bb_row_get_badge (row) == NULL)
    bb_row_set_badge (row, bb_word_badge_new ());

  return BB_WORD_BADGE (bb_row_get_badge (row));
}

/* As short as the row is. */
static char *
dup_mark (const BbEquipment *machine)
{
  g_autofree char *today = bb_dup_today ();
  g_autofree char *due = bb_equipment_dup_due_day (machine);
  g_autofree char *day = bb_show_date (due);

  if (!bb_equipment_is_due (machine, today))
    return g_strdup ("");

  return due != NULL ? g_strdup_printf (_("Due since %s"), day) : g_strdup (_("Never calibrated"));
}

static void
fill (BbRow         *row,
      BbSession     *session,
      gconstpointer  record)
{
  const BbEquipment *machine = record;
  g_autofree char *mark = dup_mark (machine);
  g_autofree char *day = bb_show_date (machine->calibrated_at);
  g_autofree char *calibrated = machine->calibrated_at != NULL ? g_strdup_printf (_("calibrated %s"), day) : NULL;
  g_autofree char *description = g_strjoin (" · ", bb_choices_get_title (&bb_equipment_kind_choices, machine->kind),
                                            calibrated, NULL);

  (void) session;

  bb_row_set (row, machine->name, machine->code, description);
  bb_word_badge_say (ensure_badge (row), BB_TONE_SOON, mark);
}

static char *
count (guint n)
{
  return g_strdup_printf (ngettext ("%u machine", "%u machines", n), n);
}

static const BbCatalogueInfo info = {
  .finder = {
    .table = &bb_equipment_table,
    .fill = fill,
    .title = N_("Equipment"),
    .search_title = N_("Search equipment"),
    .search_hint = N_("Name, kind, note…"),
    .count = count,
    .find_order = bb_book_find_machines,
  },
  .add_title = N_("Add a Machine"),
  .icon_name = "blankbook-equipment-symbolic",
  .empty_title = N_("No Equipment Yet"),
  .empty_text = N_("Write down the sprayers, presses, printers and tunnels of the shop. Time and cost of a job follow "
                   "from them, a run says what it was made on, and what has to be calibrated is listed here."),
};

static void
bb_equipment_page_chosen (BbCataloguePage *page,
                          gconstpointer    record)
{
  BbEquipmentPage *self = BB_EQUIPMENT_PAGE (page);
  BbSession *session = bb_page_get_session (BB_PAGE (page));
  const BbEquipment *machine = record;

  bb_care_view_show (self->care, session, machine);
  bb_history_view_show (self->history, session, &bb_equipment_table, machine->id);
}

static void
bb_equipment_page_build (BbCataloguePage *page,
                         BbCatalogue     *catalogue)
{
  BbEquipmentPage *self = BB_EQUIPMENT_PAGE (page);

  self->care = BB_CARE_VIEW (bb_care_view_new ());
  bb_catalogue_add_above (catalogue, GTK_WIDGET (self->care));
  self->history = BB_HISTORY_VIEW (bb_history_view_new ());
  bb_catalogue_add_below (catalogue, GTK_WIDGET (self->history));
}

static void
bb_equipment_page_class_init (BbEquipmentPageClass *klass)
{
  BbCataloguePageClass *page_class = BB_CATALOGUE_PAGE_CLASS (klass);

  page_class->info = &info;
  page_class->build = bb_equipment_page_build;
  page_class->chosen = bb_equipment_page_chosen;
}

static void
bb_equipment_page_init (BbEquipmentPage *self)
{
  (void) self;
}
