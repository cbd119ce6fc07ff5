-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Every list of the window is searched in the book: a search for each kind of record that has a list, named after its
-- table. One row for each record that is not withdrawn, under the record's key. The program keeps the words, and writes
-- them anew after the last migration.

DROP TABLE search;

CREATE VIRTUAL TABLE search_recipe USING fts5 (
  code, name, family, blank, colourway, note,
  tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3'
);

CREATE VIRTUAL TABLE search_blank USING fts5 (
  code, name, maker, fabric, colourway, note,
  tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3'
);

CREATE VIRTUAL TABLE search_supply USING fts5 (
  code, name, maker, kind, hazards, note,
  tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3'
);

CREATE VIRTUAL TABLE search_wash_test USING fts5 (
  code, recipe, blank, colourway, note,
  tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3'
);

-- The lists without a search: what is in use, newest first.
CREATE INDEX recipe_in_use ON recipe (id) WHERE withdrawn_at IS NULL;
CREATE INDEX blank_in_use ON blank (id) WHERE withdrawn_at IS NULL;
CREATE INDEX supply_in_use ON supply (id) WHERE withdrawn_at IS NULL;
CREATE INDEX wash_test_in_use ON wash_test (id) WHERE withdrawn_at IS NULL;
