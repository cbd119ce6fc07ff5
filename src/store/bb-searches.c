/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-searches.h"

#include "bb-book-current.h"
#include "bb-narrow.h"
#include "bb-run.h"
#include "bb-wash.h"

/* What is withdrawn has its words too, under its key made negative: see BbSearch. */
#define KEY "CASE WHEN r.withdrawn_at IS NULL THEN r.id ELSE -r.id END AS id"

/* The notes of what belongs to a record, one after the other. */
#define NOTES_OF(table, owner) \
  "COALESCE ((SELECT group_concat (n.note, ' ') FROM (SELECT ' ' || note AS note FROM " table " WHERE " owner \
  " = r.id AND note IS NOT NULL ORDER BY id) n), '')"

#define COLOURS_OF(blank) \
  "(SELECT group_concat (o.name, ' ') FROM (SELECT name FROM colourway WHERE blank = " blank " ORDER BY id) o)"

/* What a record is narrowed by, as marks among its words. */
#define TENS_OF(mass) "CAST (" mass " / 10 AS INTEGER)"
#define FABRIC_MARKS_OF(blank) \
  "COALESCE ((SELECT group_concat ('" BB_MARK_FIBRE "' || f.fibre || ' " BB_MARK_FABRIC "' || f.fibre || " \
  TENS_OF ("f.mass_g_per_m2") " || ' " BB_MARK_MASS "' || " TENS_OF ("f.mass_g_per_m2") ", ' ') FROM " \
  "(SELECT x.fibre, y.mass_g_per_m2 FROM blank_composition x JOIN blank y ON y.id = x.blank " \
  "WHERE x.blank = " blank " ORDER BY x.position) f), '')"
#define DAY_MARKS(day) \
  "'" BB_MARK_YEAR "' || substr (" day ", 1, 4) || ' " BB_MARK_MONTH "' || substr (" day ", 1, 4) || " \
  "substr (" day ", 6, 2)"

#define RECIPE_MARKS \
  FABRIC_MARKS_OF ("b.id") " || ' ' || " \
  "COALESCE ((SELECT '" BB_MARK_STATE "' || replace (COALESCE (s.state, 'draft'), '-', '') || ' ' || " \
  DAY_MARKS ("v.made_at") " FROM revision v LEFT JOIN standing s ON s.revision = v.id " \
  "WHERE v.id = (" BB_SQL_CURRENT_OF ("r.id") ")), '') || ' ' || " \
  "COALESCE ('" BB_MARK_COLOURWAY "' || c.id, (SELECT group_concat ('" BB_MARK_COLOURWAY "' || o.id, ' ') FROM " \
  "(SELECT id FROM colourway WHERE blank = r.blank ORDER BY id) o), '')"

#define RECIPE_OF_MASS \
  "EXISTS (SELECT 1 FROM recipe r LEFT JOIN colourway c ON c.id = r.colourway " \
  "JOIN blank b ON b.id = COALESCE (r.blank, c.blank) " \
  "WHERE r.id = abs (search_recipe.rowid) AND b.mass_g_per_m2 BETWEEN ?4 AND ?5)"
#define RECIPE_OF_DAY \
  "EXISTS (SELECT 1 FROM revision v WHERE v.id = (" BB_SQL_CURRENT_OF ("abs (search_recipe.rowid)") ") " \
  "AND substr (v.made_at, 1, 10) BETWEEN ?6 AND ?7)"

#define RECIPE_OF_SHADE \
  "EXISTS (SELECT 1 FROM recipe r WHERE r.id = abs (search_recipe.rowid) " \
  "AND (r.colourway IS NOT NULL OR ?8 LIKE '%|' || r.shade || '|%'))"

/* A recipe for no one colour is found by each colour of its blank. */
#define RECIPE_WORDS \
  "SELECT " KEY ", r.code, r.name, COALESCE (r.family, ''), " \
  "COALESCE (b.code || ' ' || b.name || ' ' || COALESCE (b.maker, ''), ''), " \
  "COALESCE (c.name, " COLOURS_OF ("r.blank") ", ''), " \
  "COALESCE (r.note, '') || " NOTES_OF ("revision", "recipe") ", " RECIPE_MARKS " " \
  "FROM recipe r LEFT JOIN colourway c ON c.id = r.colourway " \
  "LEFT JOIN blank b ON b.id = COALESCE (r.blank, c.blank)"

#define BLANK_WORDS \
  "SELECT " KEY ", r.code, r.name, COALESCE (r.maker, ''), r.knit || ' ' || r.finish || ' ' || " \
  "COALESCE ((SELECT group_concat (f.fibre, ' ') FROM (SELECT fibre FROM blank_composition WHERE blank = r.id " \
  "ORDER BY position) f), ''), COALESCE (" COLOURS_OF ("r.id") ", ''), COALESCE (r.note, '') FROM blank r"

#define SUPPLY_WORDS \
  "SELECT " KEY ", r.code, r.name, COALESCE (r.maker, ''), r.kind, COALESCE (r.hazards, ''), COALESCE (r.note, '') " \
  "FROM supply r"

/* The garment is the specimen's own, or where that is not told the recipe's. */
#define WASH_TEST_WORDS \
  "SELECT " KEY ", r.code, v.code || ' ' || p.name, COALESCE (b.code || ' ' || b.name, p.family, ''), " \
  "COALESCE (c.name, ''), COALESCE (r.note, '') || " NOTES_OF ("reading", "wash_test") " " \
  "FROM wash_test r JOIN revision v ON v.id = r.revision JOIN recipe p ON p.id = v.recipe " \
  "LEFT JOIN colourway c ON c.id = COALESCE (r.colourway, p.colourway) " \
  "LEFT JOIN blank b ON b.id = COALESCE (c.blank, p.blank)"

#define WASH_TESTS "SELECT t.id FROM wash_test t JOIN revision v ON v.id = t.revision "

#define CUSTOMER_WORDS \
  "SELECT " KEY ", r.code, r.name, COALESCE (r.contact, ''), COALESCE (r.note, '') FROM customer r"

#define EQUIPMENT_WORDS "SELECT " KEY ", r.code, r.name, r.kind, COALESCE (r.note, '') FROM equipment r"

#define WASH_PLAN_WORDS \
  "SELECT " KEY ", r.code, r.name, r.standard || ' ' || COALESCE (r.publication, '') || ' ' || " \
  "COALESCE (r.procedure, '') || ' ' || COALESCE (r.drying, '') || ' ' || r.origin, COALESCE (r.detergent, ''), " \
  "COALESCE (r.note, '') FROM wash_plan r"

#define LOT_WORDS \
  "SELECT " KEY ", r.code, s.code || ' ' || s.name || ' ' || COALESCE (s.maker, ''), COALESCE (r.batch, ''), " \
  "COALESCE (r.note, '') FROM lot r JOIN supply s ON s.id = r.supply"

/* What each line of a job has, one after the other. */
#define OF_LINES(text, joins) \
  "COALESCE ((SELECT group_concat (n.words, ' ') FROM (SELECT " text " AS words FROM job_line l " joins \
  " WHERE l.job = r.id AND l.withdrawn_at IS NULL ORDER BY l.number) n), '')"

#define JOB_MARKS \
  OF_LINES (FABRIC_MARKS_OF ("w.blank"), "JOIN colourway w ON w.id = l.colourway") " || ' ' || " \
  "'" BB_MARK_JOB_STATE "' || r.state || ' ' || " DAY_MARKS ("r.ordered_at") " || ' ' || " \
  OF_LINES ("'" BB_MARK_COLOURWAY "' || l.colourway", "")

#define JOB_OF_MASS \
  "EXISTS (SELECT 1 FROM job_line l JOIN colourway w ON w.id = l.colourway JOIN blank b ON b.id = w.blank " \
  "WHERE l.job = search_job.rowid AND l.withdrawn_at IS NULL AND b.mass_g_per_m2 BETWEEN ?4 AND ?5)"
#define JOB_OF_DAY \
  "EXISTS (SELECT 1 FROM job r WHERE r.id = search_job.rowid AND substr (r.ordered_at, 1, 10) BETWEEN ?6 AND ?7)"

/* A job is found by what its lines print, by what on, and by what was written down about its runs. */
#define JOB_WORDS \
  "SELECT r.id, r.code, c.code || ' ' || c.name, COALESCE (r.title, '') || ' ' || " \
  OF_LINES ("l.artwork", "") ", " \
  OF_LINES ("b.code || ' ' || b.name || ' ' || COALESCE (b.maker, '')", \
            "JOIN colourway w ON w.id = l.colourway JOIN blank b ON b.id = w.blank") ", " \
  OF_LINES ("w.name", "JOIN colourway w ON w.id = l.colourway") ", " \
  OF_LINES ("v.code || ' ' || p.name", "JOIN revision v ON v.id = l.revision JOIN recipe p ON p.id = v.recipe") ", " \
  "COALESCE (r.note, '') || ' ' || " OF_LINES ("l.note", "") " || ' ' || " \
  OF_LINES ("u.note", "JOIN run u ON u.line = l.id") " || ' ' || " \
  OF_LINES ("a.text", "JOIN run u ON u.line = l.id JOIN annotation a ON a.run = u.id") ", " JOB_MARKS " " \
  "FROM job r JOIN customer c ON c.id = r.customer"

#define JOBS_OF_LINES "SELECT l.job FROM job_line l "

static const BbSearch searches[BB_N_SEARCHES] = {
  { &bb_recipe_table, "search_recipe", "code, name, family, blank, colourway, note, marks", RECIPE_WORDS,
    RECIPE_OF_MASS, RECIPE_OF_DAY, RECIPE_OF_SHADE, NULL, { NULL } },
  { &bb_blank_table, "search_blank", "code, name, maker, fabric, colourway, note", BLANK_WORDS, NULL, NULL, NULL, NULL,
    { &bb_fibre_choices, &bb_knit_choices, &bb_finish_choices } },
  { &bb_supply_table, "search_supply", "code, name, maker, kind, hazards, note", SUPPLY_WORDS, NULL, NULL, NULL, NULL,
    { &bb_supply_kind_choices } },
  { &bb_wash_test_table, "search_wash_test", "code, recipe, blank, colourway, note", WASH_TEST_WORDS, NULL, NULL, NULL,
    WASH_TESTS "WHERE v.recipe = ?3", { NULL } },
  { &bb_customer_table, "search_customer", "code, name, contact, note", CUSTOMER_WORDS, NULL, NULL, NULL, NULL,
    { NULL } },
  { &bb_equipment_table, "search_equipment", "code, name, kind, note", EQUIPMENT_WORDS, NULL, NULL, NULL, NULL,
    { &bb_equipment_kind_choices } },
  { &bb_lot_table, "search_lot", "code, supply, batch, note", LOT_WORDS, NULL, NULL, NULL, NULL, { NULL } },
  { &bb_job_table, "search_job", "code, customer, artwork, blank, colourway, recipe, note, marks", JOB_WORDS,
    JOB_OF_MASS, JOB_OF_DAY, NULL, JOBS_OF_LINES "JOIN revision v ON v.id = l.revision WHERE v.recipe = ?3", { NULL } },
  { &bb_wash_plan_table, "search_wash_plan", "code, name, method, detergent, note", WASH_PLAN_WORDS, NULL, NULL, NULL,
    NULL, { &bb_wash_method_choices, &bb_drying_choices, &bb_plan_origin_choices } },
};

static const BbTouch touches[] = {
  { &bb_revision_table, &bb_recipe_table, "SELECT recipe FROM revision WHERE id = ?1" },
  { &bb_standing_table, &bb_recipe_table,
    "SELECT v.recipe FROM standing s JOIN revision v ON v.id = s.revision WHERE s.id = ?1" },
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
  { &bb_supply_table, &bb_lot_table, "SELECT id FROM lot WHERE supply = ?1" },
  { &bb_customer_table, &bb_job_table, "SELECT id FROM job WHERE customer = ?1" },
  { &bb_blank_table, &bb_job_table,
    JOBS_OF_LINES "JOIN colourway w ON w.id = l.colourway WHERE w.blank = ?1" },
  { &bb_colourway_table, &bb_job_table, JOBS_OF_LINES "WHERE l.colourway = ?1" },
  { &bb_recipe_table, &bb_job_table, JOBS_OF_LINES "JOIN revision v ON v.id = l.revision WHERE v.recipe = ?1" },
  { &bb_job_line_table, &bb_job_table, JOBS_OF_LINES "WHERE l.id = ?1" },
  { &bb_run_table, &bb_job_table, JOBS_OF_LINES "JOIN run u ON u.line = l.id WHERE u.id = ?1" },
  { &bb_annotation_table, &bb_job_table,
    JOBS_OF_LINES "JOIN run u ON u.line = l.id JOIN annotation a ON a.run = u.id WHERE a.id = ?1" },
};

/**
 * bb_searches:
 *
 * Returns: (transfer none) (array fixed-size=9): every search of the book
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
