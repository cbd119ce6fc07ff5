/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-records.h"

/* Each table stands after those it refers to, so that a book can be written and read in this order. A standing stands
 * after what a proof rests on. */
static const BbTable * const tables[] = {
  &bb_shop_table,
  &bb_person_table,
  &bb_blank_table,
  &bb_colourway_table,
  &bb_supply_table,
  &bb_recipe_table,
  &bb_revision_table,
  &bb_wash_plan_table,
  &bb_wash_test_table,
  &bb_reading_table,
  &bb_picture_table,
  &bb_scan_table,
  &bb_customer_table,
  &bb_equipment_table,
  &bb_lot_table,
  &bb_job_table,
  &bb_job_line_table,
  &bb_run_table,
  &bb_annotation_table,
  &bb_lot_entry_table,
  &bb_signature_table,
  &bb_standing_table,
  &bb_notice_table,
  &bb_event_table,
};

/**
 * bb_book_tables:
 * @n_tables: (out): how many there are
 *
 * Returns: (transfer none) (array length=n_tables): the tables of the records that a book holds, each after
 *   those it refers to
 */
const BbTable * const *
bb_book_tables (guint *n_tables)
{
  *n_tables = G_N_ELEMENTS (tables);

  return tables;
}

/**
 * bb_book_find_table:
 * @name: a table's name
 *
 * Returns: (transfer none) (nullable): the table, or %NULL if the book has none of that name
 */
const BbTable *
bb_book_find_table (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (tables); i++)
    if (g_str_equal (tables[i]->name, name))
      return tables[i];

  return NULL;
}

/**
 * bb_book_table_is_exchanged:
 * @table: a table of the book
 *
 * Returns: %TRUE if its records go into files; those of the log and the notices are of one book
 */
gboolean
bb_book_table_is_exchanged (const BbTable *table)
{
  return table != &bb_event_table && table != &bb_notice_table;
}
