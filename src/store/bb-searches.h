/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-db.h"
#include "bb-field.h"

G_BEGIN_DECLS

/**
 * BbSearch:
 * @table: whose records are found
 * @index: the search's table, which has one row for each record: under its key, or where it is withdrawn under its key
 *   made negative, so that a search for what is in use passes over it without a look
 * @columns: the columns of @index
 * @words: a statement that gives the key in @index of every record, which it calls `r`, and its words in the order of
 *   @columns
 * @of_mass: (nullable): a condition on the search's table that holds where a record is of a mass from ?4 to ?5 g/m²;
 *   with it the last of @columns holds the record's marks: see bb-narrow.h
 * @of_day: (nullable): a condition that holds where it is of a day from ?6 to ?7
 * @of_shade: (nullable): a condition that holds where it is for one colour, or for a shade that ?8 has between bars
 * @of_recipe: (nullable): a statement that gives the keys of the records that belong to the recipe ?3
 * @choices: the choices whose keys are among the words, up to a %NULL; their titles find them too
 *
 * How the records of a table are found.
 */
typedef struct {
  const BbTable *table;
  const char *index;
  const char *columns;
  const char *words;
  const char *of_mass;
  const char *of_day;
  const char *of_shade;
  const char *of_recipe;
  const BbChoices *choices[4];
} BbSearch;

/**
 * BbTouch:
 * @written: a table of the book
 * @found: a table that has a search
 * @sql: a statement that gives the keys of the records of @found that have words of the record ?1 of @written
 *
 * What is found by other words once a record is written.
 */
typedef struct {
  const BbTable *written;
  const BbTable *found;
  const char *sql;
} BbTouch;

/* How many searches there are. */
#define BB_N_SEARCHES 9

const BbSearch *bb_searches     (void);
const BbSearch *bb_search_find  (const BbTable *table);
const BbTouch  *bb_touches      (guint         *n_touches);

G_END_DECLS
