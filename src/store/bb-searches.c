/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-searches.h"

#include "bb-wash.h"

/* The notes of what belongs to a record, one after the other. */
#define NOTES_OF(table, owner) \
  "COALESCE ((SELECT group_concat (n.note, ' ') FROM (SELECT ' ' || note AS note FROM " table " WHERE " owner \
  " = r.id AND note IS NOT NULL ORDER BY id) n), '')"

#define COLOURS_OF(blank) \
  "(SELECT group_concat (o.name, ' ') FROM (SELECT name FROM colourway WHERE blank = " blank " ORDER BY id) o)"

/* A recipe for no one colour is found by each colour of its blank. */
#define RECIPE_WORDS \
  "SELECT r.id, r.code, r.name, COALESCE (r.family, ''), " \
  "COALESCE (b.code || ' ' || b.name || ' ' || COALESCE (b.maker, ''), ''), " \
  "COALESCE (c.name, " COLOURS_OF ("r.blank") ", ''), " \
  "COALESCE (r.note, '') || " NOTES_OF ("revision", "recipe") " " \
  "FROM recipe r LEFT JOIN colourway c ON c.id = r.colourway " \
  "LEFT JOIN blank b ON b.id = COALESCE (r.blank, c.blank)"

#define BLANK_WORDS \
  "SELECT r.id, r.code, r.name, COALESCE (r.maker, ''), r.knit || ' ' || r.finish || ' ' || " \
  "COALESCE ((SELECT group_concat (f.fibre, ' ') FROM (SELECT fibre FROM blank_composition WHERE blank = r.id " \
  "ORDER BY position) f), ''), COALESCE (" COLOURS_OF ("r.id") ", ''), COALESCE (r.note, '') FROM blank r"

#define SUPPLY_WORDS \
  "SELECT r.id, r.code, r.name, COALESCE (r.maker, ''), r.kind, COALESCE (r.hazards, ''), COALESCE (r.note, '') " \
  "FROM supply r"

/* The garment is the specimen's own, or where that is not told the recipe's. */
#define WASH_TEST_WORDS \
  "SELECT r.id, r.code, v.code || ' ' || p.name, COALESCE (b.code || ' ' || b.name, p.family, ''), " \
  "COALESCE (c.name, ''), COALESCE (r.note, '') || " NOTES_OF ("reading", "wash_test") " " \
  "FROM wash_test r JOIN revision v ON v.id = r.revision JOIN recipe p ON p.id = v.recipe " \
  "LEFT JOIN colourway c ON c.id = COALESCE (r.colourway, p.colourway) " \
  "LEFT JOIN blank b ON b.id = COALESCE (c.blank, p.blank)"

#define WASH_TESTS "SELECT t.id FROM wash_test t JOIN revision v ON v.id = t.revision "

static const BbSearch searches[BB_N_SEARCHES] = {
  { &bb_recipe_table, "search_recipe", "code, name, family, blank, colourway, note", RECIPE_WORDS, NULL, { NULL } },
  { &bb_blank_table, "search_blank", "code, name, maker, fabric, colourway, note", BLANK_WORDS, NULL,
    { &bb_fibre_choices, &bb_knit_choices, &bb_finish_choices } },
  { &bb_supply_table, "search_supply", "code, name, maker, kind, hazards, note", SUPPLY_WORDS, NULL,
    { &bb_supply_kind_choices } },
  { &bb_wash_test_table, "search_wash_test", "code, recipe, blank, colourway, note", WASH_TEST_WORDS,
    WASH_TESTS "WHERE v.recipe = ?3", { NULL } },
};

static const BbTouch touches[] = {
  { &bb_revision_table, &bb_recipe_table, "SELECT recipe FROM revision WHERE id = ?1" },
  { &bb_blank_table, &bb_recipe_table,
    "SELECT id FROM recipe WHERE blank = ?1 "
    "UNION SELECT r.id FROM recipe r JOIN colourway c ON c.id = r.colourway WHERE c.blank = ?1" },
  { &bb_colourway_table, &bb_recipe_table,
    "SELECT id FROM recipe WHERE colourway = ?1 OR blank = (SELECT blank FROM colourway WHERE id = ?1)" },
  { &bb_colourway_table, &bb_blank_table, "SELECT blank FROM colourway WHERE id = ?1" },
  { &bb_recipe_table, &bb_wash_test_table, WASH_TESTS "WHERE v.recipe = ?1" },
  { &bb_colourway_table, &bb_wash_test_table,
    "SELECT id FROM wash_test WHERE colourway = ?1 "
    "UNION " WASH_TESTS "JOIN recipe p ON p.id = v.recipe WHERE p.colourway = ?1" },
  { &bb_blank_table, &bb_wash_test_table,
    "SELECT t.id FROM wash_test t JOIN colourway c ON c.id = t.colourway WHERE c.blank = ?1 "
    "UNION " WASH_TESTS "JOIN recipe p ON p.id = v.recipe WHERE p.blank = ?1 "
    "UNION " WASH_TESTS "JOIN recipe p ON p.id = v.recipe JOIN colourway c ON c.id = p.colourway "
    "WHERE c.blank = ?1" },
  { &bb_reading_table, &bb_wash_test_table, "SELECT wash_test FROM reading WHERE id = ?1" },
};

/**
 * bb_searches:
 *
 * Returns: (transfer none) (array fixed-size=4): every search of the book
 */
const BbSearch *
bb_searches (void)
{
  return searches;
}

/**
 * bb_search_find:
 * @table: a table of the book
 *
 * Returns: (transfer none) (nullable): how its records are found; %NULL where they are not
 */
const BbSearch *
bb_search_find (const BbTable *table)
{
  for (guint i = 0; i < G_N_ELEMENTS (searches); i++)
    if (searches[i].table == table)
      return &searches[i];

  return NULL;
}

/**
 * bb_touches:
 * @n_touches: (out): how many
 *
 * Returns: (transfer none) (array length=n_touches): whose words change with whose records; a record's own words are
 *   not among them
 */
const BbTouch *
bb_touches (guint *n_touches)
{
  *n_touches = G_N_ELEMENTS (touches);

  return touches;
}
