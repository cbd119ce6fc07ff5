-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Recall: what was done, and what is set now, from the first key on. Recipes and jobs carry marks among their words, by
-- which they are narrowed, and beginnings of one to six letters are in the index: of a longer one few words are left. The
-- program writes both anew.

DROP TABLE search_recipe;
DROP TABLE search_job;

CREATE VIRTUAL TABLE search_recipe USING fts5 (
  code, name, family, blank, colourway, note, marks,
  tokenize = 'unicode61 remove_diacritics 2', prefix = '1 2 3 4 5 6'
);

CREATE VIRTUAL TABLE search_job USING fts5 (
  code, customer, artwork, blank, colourway, recipe, note, marks,
  tokenize = 'unicode61 remove_diacritics 2', prefix = '1 2 3 4 5 6'
);

-- Every word by which something was ever found, and its runs of three letters, for words that are mistyped.
CREATE TABLE search_word (
  id INTEGER PRIMARY KEY,
  word TEXT NOT NULL UNIQUE CHECK (length (word) BETWEEN 1 AND 40)
) STRICT;

CREATE TABLE search_gram (
  gram TEXT NOT NULL CHECK (length (gram) = 3),
  word INTEGER NOT NULL REFERENCES search_word (id),
  PRIMARY KEY (gram, word)
) STRICT, WITHOUT ROWID;
