/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-lines-select.h"

#include "bb-book.h"
#include "bb-book-current.h"

BB_DEFINE_TABLE (BbNameLine, bb_name_line, "name_line", N_("Record"), BB_NAME_LINE_FIELDS, NULL)
BB_DEFINE_TABLE (BbRecipeLine, bb_recipe_line, "recipe_line", N_("Recipe"), BB_RECIPE_LINE_FIELDS, NULL)
BB_DEFINE_TABLE (BbWashLine, bb_wash_line, "wash_line", N_("Wash test"), BB_WASH_LINE_FIELDS, NULL)
BB_DEFINE_TABLE (BbJobCard, bb_job_card, "job_card", N_("Job"), BB_JOB_CARD_FIELDS, NULL)
BB_DEFINE_TABLE (BbRunCard, bb_run_card, "run_card", N_("Run"), BB_RUN_CARD_FIELDS, NULL)
BB_DEFINE_TABLE (BbLineCard, bb_line_card, "line_card", N_("Line of a job"), BB_LINE_CARD_FIELDS, NULL)

/* Each statement ends with the key that the lines are chosen by. */

#define RECIPE_LINES \
  "SELECT r.id AS id, r.code AS code, r.name AS name, COALESCE (b.name, r.family, '') AS blank, " \
  "COALESCE (c.name, '') AS colourway, COALESCE (c.srgb, '') AS srgb, r.shade AS shade, v.id AS revision, " \
  "v.number AS number, CASE WHEN v.id IS NOT NULL THEN COALESCE (s.state, 'draft') END AS state, " \
  "v.pretreat_laydown_g_per_m2 AS pretreat_laydown_g_per_m2, v.made_at AS made_at, " \
  "(SELECT COUNT (DISTINCT f.wash_test) FROM failed_reading f WHERE f.revision = v.id) AS failed, " \
  "r.withdrawn_at AS withdrawn_at " \
  "FROM recipe r LEFT JOIN blank b ON b.id = r.blank LEFT JOIN colourway c ON c.id = r.colourway " \
  "LEFT JOIN revision v ON v.id = (" BB_SQL_CURRENT_OF ("r.id") ") " \
  "LEFT JOIN standing s ON s.revision = v.id WHERE r.id"

/* Garments that come twice, printed in two places, are counted once. */
#define JOB_CARDS \
  "SELECT j.id AS id, j.code AS code, c.name AS customer, COALESCE (j.title, '') AS title, j.state AS state, " \
  "j.ordered_at AS ordered_at, j.due_at AS due_at, " \
  "(SELECT COUNT (*) FROM job_line n WHERE n.job = j.id AND n.withdrawn_at IS NULL) AS n_lines, " \
  "(SELECT COALESCE (SUM (n.count), 0) FROM job_line n " \
  "WHERE n.job = j.id AND n.withdrawn_at IS NULL AND n.same_garments = 0) AS garments, " \
  "(SELECT COALESCE (SUM (r.good), 0) FROM job_line n JOIN run r ON r.line = n.id " \
  "WHERE n.job = j.id AND n.withdrawn_at IS NULL AND n.same_garments = 0) AS good, " \
  "COALESCE (b.name, '') AS blank, COALESCE (w.name, '') AS colourway, COALESCE (w.srgb, '') AS srgb, " \
  "COALESCE (l.artwork, '') AS artwork, COALESCE (v.code, '') AS revision " \
  "FROM job j JOIN customer c ON c.id = j.customer " \
  "LEFT JOIN job_line l ON l.id = (SELECT f.id FROM job_line f WHERE f.job = j.id AND f.withdrawn_at IS NULL " \
  "ORDER BY f.number LIMIT 1) " \
  "LEFT JOIN colourway w ON w.id = l.colourway LEFT JOIN blank b ON b.id = w.blank " \
  "LEFT JOIN revision v ON v.id = l.revision WHERE j.id"

#define LINE_CARDS \
  "SELECT l.id AS id, l.code AS code, b.name AS blank, w.name AS colourway, w.srgb AS srgb, " \
  "COALESCE (l.size, '') AS size, l.count AS count, COALESCE (l.artwork, '') AS artwork, " \
  "COALESCE (l.placement, '') AS placement, COALESCE (v.code, '') AS revision, s.state AS state, " \
  "(SELECT COALESCE (SUM (good), 0) FROM run WHERE line = l.id) AS good, " \
  "(SELECT COALESCE (SUM (spoiled), 0) FROM run WHERE line = l.id) AS spoiled, " \
  "(SELECT COUNT (*) FROM run WHERE line = l.id AND finished_at IS NULL) AS running " \
  "FROM job_line l JOIN colourway w ON w.id = l.colourway JOIN blank b ON b.id = w.blank " \
  "LEFT JOIN revision v ON v.id = l.revision LEFT JOIN standing s ON s.revision = v.id WHERE l.id"

#define RUN_CARDS \
  "SELECT r.id AS id, r.code AS code, j.code AS job, c.code AS customer_code, c.name AS customer, " \
  "COALESCE (c.contact, '') AS contact, " \
  "b.name AS blank, w.name AS colourway, COALESCE (l.artwork, '') AS artwork, v.code AS revision, s.state AS state, " \
  "COALESCE (p.name, '') AS person, r.started_at AS started_at, r.finished_at AS finished_at, r.good AS good, " \
  "r.spoiled AS spoiled, " \
  "COALESCE ((SELECT group_concat (m.code, ', ') FROM (SELECT e.code FROM equipment e " \
  "WHERE e.id IN (r.sprayer, r.dryer, r.printer, r.curer) ORDER BY e.id) m), '') AS machines, " \
  "COALESCE ((SELECT group_concat (k.code, ', ') FROM (SELECT DISTINCT o.code FROM lot_entry n " \
  "JOIN lot o ON o.id = n.lot WHERE n.run = r.id ORDER BY o.code) k), '') AS lots, " \
  "(SELECT COUNT (*) FROM annotation a WHERE a.run = r.id) AS remarks " \
  "FROM run r JOIN job_line l ON l.id = r.line JOIN job j ON j.id = l.job JOIN customer c ON c.id = j.customer " \
  "JOIN colourway w ON w.id = l.colourway JOIN blank b ON b.id = w.blank JOIN revision v ON v.id = r.revision " \
  "LEFT JOIN standing s ON s.revision = v.id LEFT JOIN person p ON p.id = r.person WHERE r.id"

/**
 * bb_lines_select:
 * @table: a table of the book
 *
 * Returns: (transfer none) (nullable): the beginning of a statement whose columns are the fields of the table's lines,
 *   up to the key that they are chosen by; %NULL where lines are not made by one statement
 */
const char *
bb_lines_select (const BbTable *table)
{
  if (table == &bb_recipe_table)
    return RECIPE_LINES;
  if (table == &bb_job_table)
    return JOB_CARDS;
  if (table == &bb_run_table)
    return RUN_CARDS;

  return table == &bb_job_line_table ? LINE_CARDS : NULL;
}

/**
 * bb_book_get_line_table:
 * @table: a table of the book
 *
 * Returns: (transfer none): the table of what bb_book_load_lines() gives for its records: their own, or one of
 *   bb-lines.h
 */
const BbTable *
bb_book_get_line_table (const BbTable *table)
{
  if (table == &bb_recipe_table)
    return &bb_recipe_line_table;
  if (table == &bb_wash_test_table)
    return &bb_wash_line_table;
  if (table == &bb_job_table)
    return &bb_job_card_table;
  if (table == &bb_job_line_table)
    return &bb_line_card_table;
  if (table == &bb_run_table)
    return &bb_run_card_table;

  return table;
}
