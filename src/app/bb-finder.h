/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-line-factory.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbFinderInfo:
 * @table: whose records are found
 * @fill: shows one of them in a row
 * @title: what the list is called, marked for translation
 * @search_title: what the search is called, marked for translation
 * @search_hint: what stands in the empty search, marked for translation
 * @count: says how many there are
 * @by_recipe: %TRUE for records that belong to recipes, so that those of one can be asked for
 * @by_due: %TRUE for wash tests, so that those can be asked for that have to be read
 * @by_state: %TRUE for jobs, so that those in a state can be asked for, and what is due first
 * @find_order: (nullable): gives the keys of all records in the order of the list on a day; %NULL for newest first
 *
 * What a #BbFinder finds.
 */
typedef struct {
  const BbTable *table;
  BbLineFill fill;
  const char *title;
  const char *search_title;
  const char *search_hint;
  char *(*count) (guint n);
  gboolean by_recipe;
  gboolean by_due;
  gboolean by_state;
  GArray *(*find_order) (BbBook *book, const char *today, GError **error);
} BbFinderInfo;

/**
 * BbFinder:
 *
 * A search, the list of what it finds, and how many that are. One line is chosen wherever there is one; it stays
 * chosen while the list is made anew.
 */
#define BB_TYPE_FINDER (bb_finder_get_type ())
G_DECLARE_FINAL_TYPE (BbFinder, bb_finder, BB, FINDER, AdwBin)

void     bb_finder_start       (BbFinder           *self,
                                BbSession          *session,
                                const BbFinderInfo *info,
                                const char         *add_action,
                                const char         *add_title);
void     bb_finder_refresh     (BbFinder           *self);
void     bb_finder_show        (BbFinder           *self,
                                gint64              id);
gint64   bb_finder_get_chosen  (BbFinder           *self);
guint    bb_finder_get_n_found (BbFinder           *self);
gboolean bb_finder_is_narrowed (BbFinder           *self);
void     bb_finder_focus       (BbFinder           *self);

G_END_DECLS
