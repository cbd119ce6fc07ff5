/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The words that a recipe is found by, in the order of the search's columns. A recipe for no one colour is found by
 * each colour of its blank. */
#define BB_SQL_INDEX \
  "SELECT r.id, r.code, r.name, COALESCE (r.family, ''), " \
  "COALESCE (b.code || ' ' || b.name || ' ' || COALESCE (b.maker, ''), ''), " \
  "COALESCE (c.name, (SELECT group_concat (o.name, ' ') FROM " \
  "(SELECT name FROM colourway WHERE blank = r.blank ORDER BY id) o), ''), " \
  "COALESCE (r.note, '') || COALESCE ((SELECT group_concat (n.note, ' ') FROM " \
  "(SELECT ' ' || note AS note FROM revision WHERE recipe = r.id AND note IS NOT NULL ORDER BY id) n), '') " \
  "FROM recipe r LEFT JOIN colourway c ON c.id = r.colourway " \
  "LEFT JOIN blank b ON b.id = COALESCE (r.blank, c.blank) "

const char *bb_book_index_select (void);

G_END_DECLS
