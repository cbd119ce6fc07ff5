-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- The first book. Applied in one transaction and never edited after release: a change is the next file.
-- Columns, limits and words are those of the field tables in src/model; a test holds both together.
-- A list lives in a table of its own, named after its owner and field, in order of position.

CREATE TABLE person (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length (code) BETWEEN 1 AND 12),
  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 120),
  role TEXT NOT NULL CHECK (role IN ('operator', 'lead', 'trainer', 'owner')),
  withdrawn_at TEXT CHECK (length (withdrawn_at) IN (10, 20))
) STRICT;

CREATE TABLE blank (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length (code) BETWEEN 1 AND 40),
  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 120),
  maker TEXT CHECK (length (maker) <= 120),
  mass_g_per_m2 REAL NOT NULL CHECK (mass_g_per_m2 BETWEEN 40 AND 1000),
  knit TEXT NOT NULL
    CHECK (knit IN ('jersey', 'rib', 'interlock', 'pique', 'fleece', 'terry', 'mesh', 'woven')),
  finish TEXT NOT NULL
    CHECK (finish IN ('none', 'combed-ring-spun', 'enzyme-washed', 'garment-dyed', 'softened',
                      'water-repellent')),
  note TEXT,
  withdrawn_at TEXT CHECK (length (withdrawn_at) IN (10, 20))
) STRICT;

CREATE TABLE blank_composition (
  blank INTEGER NOT NULL REFERENCES blank (id),
  position INTEGER NOT NULL CHECK (position BETWEEN 0 AND 7),
  fibre TEXT NOT NULL
    CHECK (fibre IN ('cotton', 'polyester', 'viscose', 'modal', 'lyocell', 'linen', 'hemp', 'wool',
                     'silk', 'polyamide', 'acrylic', 'polypropylene', 'elastane')),
  fraction REAL NOT NULL CHECK (fraction > 0 AND fraction <= 1),
  PRIMARY KEY (blank, position),
  UNIQUE (blank, fibre)
) STRICT;

CREATE TABLE colourway (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length (code) BETWEEN 1 AND 60),
  blank INTEGER NOT NULL REFERENCES blank (id),
  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 80),
  srgb TEXT NOT NULL CHECK (length (srgb) = 7),
  withdrawn_at TEXT CHECK (length (withdrawn_at) IN (10, 20))
) STRICT;

CREATE TABLE supply (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length (code) BETWEEN 1 AND 40),
  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 120),
  maker TEXT CHECK (length (maker) <= 120),
  kind TEXT NOT NULL CHECK (kind IN ('pretreat', 'ink', 'sheet', 'cleaner')),
  density_g_per_ml REAL CHECK (density_g_per_ml BETWEEN 0.5 AND 2),
  solids_fraction REAL CHECK (solids_fraction BETWEEN 0 AND 1),
  water_parts_least REAL CHECK (water_parts_least BETWEEN 0 AND 100),
  water_parts_most REAL CHECK (water_parts_most BETWEEN 0 AND 100),
  laydown_least_g_per_m2 REAL CHECK (laydown_least_g_per_m2 BETWEEN 0 AND 1000),
  laydown_most_g_per_m2 REAL CHECK (laydown_most_g_per_m2 BETWEEN 0 AND 1000),
  price_per_kg REAL CHECK (price_per_kg BETWEEN 0 AND 1000000),
  shelf_life_days INTEGER CHECK (shelf_life_days BETWEEN 1 AND 5000),
  hazards TEXT CHECK (length (hazards) <= 200),
  note TEXT,
  withdrawn_at TEXT CHECK (length (withdrawn_at) IN (10, 20))
) STRICT;

CREATE TABLE recipe (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length (code) BETWEEN 1 AND 40),
  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 120),
  blank INTEGER REFERENCES blank (id),
  family TEXT CHECK (length (family) <= 120),
  colourway INTEGER REFERENCES colourway (id),
  shade TEXT NOT NULL CHECK (shade IN ('any', 'white', 'light', 'dark', 'black')),
  note TEXT,
  withdrawn_at TEXT CHECK (length (withdrawn_at) IN (10, 20))
) STRICT;

CREATE TABLE revision (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length (code) BETWEEN 1 AND 60),
  recipe INTEGER NOT NULL REFERENCES recipe (id),
  number INTEGER NOT NULL CHECK (number BETWEEN 1 AND 9999),
  made_at TEXT NOT NULL CHECK (length (made_at) IN (10, 20)),
  made_by INTEGER REFERENCES person (id),
  reason TEXT CHECK (length (reason) <= 400),
  pretreat_method TEXT NOT NULL CHECK (pretreat_method IN ('machine', 'gun', 'roller', 'none')),
  pretreat_product INTEGER REFERENCES supply (id),
  pretreat_parts_concentrate REAL
    CHECK (pretreat_parts_concentrate > 0 AND pretreat_parts_concentrate <= 100),
  pretreat_parts_water REAL CHECK (pretreat_parts_water BETWEEN 0 AND 100),
  pretreat_basis TEXT CHECK (pretreat_basis IN ('volume', 'mass')),
  pretreat_laydown_g_per_m2 REAL
    CHECK (pretreat_laydown_g_per_m2 > 0 AND pretreat_laydown_g_per_m2 <= 600),
  pretreat_margin_mm REAL CHECK (pretreat_margin_mm BETWEEN 0 AND 200),
  pretreat_passes INTEGER CHECK (pretreat_passes BETWEEN 1 AND 20),
  dry_method TEXT NOT NULL CHECK (dry_method IN ('press', 'hover', 'tunnel', 'air')),
  dry_c REAL CHECK (dry_c BETWEEN 10 AND 230),
  dry_s REAL CHECK (dry_s > 0 AND dry_s <= 86400),
  dry_kpa REAL CHECK (dry_kpa BETWEEN 0 AND 1000),
  dry_sheet INTEGER REFERENCES supply (id),
  dry_presses INTEGER CHECK (dry_presses BETWEEN 1 AND 20),
  print_mode TEXT NOT NULL CHECK (print_mode IN ('colour-only', 'underbase', 'underbase-knockout')),
  print_white_g_per_m2 REAL CHECK (print_white_g_per_m2 BETWEEN 0 AND 600),
  print_highlight_g_per_m2 REAL CHECK (print_highlight_g_per_m2 BETWEEN 0 AND 600),
  print_passes INTEGER CHECK (print_passes BETWEEN 1 AND 32),
  print_colour_limit REAL CHECK (print_colour_limit > 0 AND print_colour_limit <= 4),
  cure_method TEXT NOT NULL CHECK (cure_method IN ('press', 'hover', 'tunnel', 'air')),
  cure_c REAL NOT NULL CHECK (cure_c BETWEEN 10 AND 230),
  cure_s REAL NOT NULL CHECK (cure_s > 0 AND cure_s <= 3600),
  cure_kpa REAL CHECK (cure_kpa BETWEEN 0 AND 1000),
  cure_sheet INTEGER REFERENCES supply (id),
  cure_presses INTEGER CHECK (cure_presses BETWEEN 1 AND 20),
  cure_belt_mm_per_s REAL CHECK (cure_belt_mm_per_s > 0 AND cure_belt_mm_per_s <= 1000),
  proof_method TEXT NOT NULL
    CHECK (proof_method IN ('shop', 'iso-6330', 'iso-105-c06', 'aatcc-61', 'aatcc-lp1')),
  proof_cycles INTEGER NOT NULL CHECK (proof_cycles BETWEEN 1 AND 500),
  proof_change TEXT NOT NULL
    CHECK (proof_change IN ('5', '4-5', '4', '3-4', '3', '2-3', '2', '1-2', '1')),
  proof_stain TEXT CHECK (proof_stain IN ('5', '4-5', '4', '3-4', '3', '2-3', '2', '1-2', '1')),
  proof_crack TEXT NOT NULL CHECK (proof_crack IN ('none', 'hairline', 'visible')),
  note TEXT,
  seal TEXT NOT NULL CHECK (length (seal) = 64),
  UNIQUE (recipe, number)
) STRICT;

CREATE TABLE standing (
  id INTEGER PRIMARY KEY,
  revision INTEGER NOT NULL UNIQUE REFERENCES revision (id),
  state TEXT NOT NULL CHECK (state IN ('draft', 'on-trial', 'proven', 'withdrawn')),
  since TEXT NOT NULL CHECK (length (since) IN (10, 20)),
  person INTEGER REFERENCES person (id),
  reason TEXT CHECK (length (reason) <= 400)
) STRICT;

CREATE TABLE wash_test (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length (code) BETWEEN 1 AND 40),
  revision INTEGER NOT NULL REFERENCES revision (id),
  colourway INTEGER REFERENCES colourway (id),
  method TEXT NOT NULL
    CHECK (method IN ('shop', 'iso-6330', 'iso-105-c06', 'aatcc-61', 'aatcc-lp1')),
  wash_c REAL CHECK (wash_c BETWEEN 5 AND 100),
  plan_cycles INTEGER NOT NULL CHECK (plan_cycles BETWEEN 1 AND 500),
  tare_g REAL CHECK (tare_g > 0 AND tare_g <= 5000),
  wet_g REAL CHECK (wet_g > 0 AND wet_g <= 5000),
  box_area_m2 REAL CHECK (box_area_m2 > 0 AND box_area_m2 <= 4),
  made_at TEXT NOT NULL CHECK (length (made_at) IN (10, 20)),
  person INTEGER REFERENCES person (id),
  note TEXT,
  withdrawn_at TEXT CHECK (length (withdrawn_at) IN (10, 20))
) STRICT;

CREATE TABLE reading (
  id INTEGER PRIMARY KEY,
  wash_test INTEGER NOT NULL REFERENCES wash_test (id),
  cycles INTEGER NOT NULL CHECK (cycles BETWEEN 0 AND 500),
  change TEXT NOT NULL CHECK (change IN ('5', '4-5', '4', '3-4', '3', '2-3', '2', '1-2', '1')),
  stain TEXT CHECK (stain IN ('5', '4-5', '4', '3-4', '3', '2-3', '2', '1-2', '1')),
  crack TEXT NOT NULL CHECK (crack IN ('none', 'hairline', 'visible')),
  read_at TEXT NOT NULL CHECK (length (read_at) IN (10, 20)),
  person INTEGER REFERENCES person (id),
  note TEXT,
  UNIQUE (wash_test, cycles)
) STRICT;

CREATE TABLE event (
  id INTEGER PRIMARY KEY,
  at TEXT NOT NULL CHECK (length (at) IN (10, 20)),
  person INTEGER REFERENCES person (id),
  deed TEXT NOT NULL
    CHECK (deed IN ('added', 'changed', 'withdrawn', 'restored', 'state', 'imported')),
  subject TEXT NOT NULL,
  subject_id INTEGER NOT NULL,
  detail TEXT CHECK (length (detail) <= 100000)
) STRICT;

-- What the program looks records up by. The keys above serve the rest.
CREATE INDEX colourway_blank ON colourway (blank);
CREATE INDEX recipe_blank ON recipe (blank);
CREATE INDEX recipe_colourway ON recipe (colourway);
CREATE INDEX revision_pretreat_product ON revision (pretreat_product);
CREATE INDEX revision_dry_sheet ON revision (dry_sheet);
CREATE INDEX revision_cure_sheet ON revision (cure_sheet);
CREATE INDEX wash_test_revision ON wash_test (revision);
CREATE INDEX wash_test_colourway ON wash_test (colourway);
CREATE INDEX event_subject ON event (subject, subject_id);

-- The one place that says when a revision is in use.
CREATE VIEW used_revision AS
  SELECT revision FROM wash_test
  UNION ALL
  SELECT revision FROM standing WHERE state <> 'draft';

CREATE TRIGGER revision_update BEFORE UPDATE ON revision
WHEN EXISTS (SELECT 1 FROM used_revision WHERE revision = OLD.id)
BEGIN
  SELECT RAISE (ABORT, 'A revision in use cannot be changed: save the change as the next revision.');
END;

CREATE TRIGGER revision_delete BEFORE DELETE ON revision
WHEN EXISTS (SELECT 1 FROM used_revision WHERE revision = OLD.id)
BEGIN
  SELECT RAISE (ABORT, 'A revision in use cannot be deleted: withdraw it.');
END;

-- INSERT OR REPLACE and UPDATE OR REPLACE delete the row in their way without asking its triggers.
CREATE TRIGGER revision_insert_over BEFORE INSERT ON revision
WHEN EXISTS (
  SELECT 1 FROM revision r
  WHERE (r.id = NEW.id OR r.code = NEW.code OR (r.recipe = NEW.recipe AND r.number = NEW.number))
    AND EXISTS (SELECT 1 FROM used_revision u WHERE u.revision = r.id)
)
BEGIN
  SELECT RAISE (ABORT, 'There is a revision with this code or number already.');
END;

CREATE TRIGGER revision_update_over BEFORE UPDATE ON revision
WHEN EXISTS (
  SELECT 1 FROM revision r
  WHERE r.id <> OLD.id
    AND (r.id = NEW.id OR r.code = NEW.code OR (r.recipe = NEW.recipe AND r.number = NEW.number))
    AND EXISTS (SELECT 1 FROM used_revision u WHERE u.revision = r.id)
)
BEGIN
  SELECT RAISE (ABORT, 'There is a revision with this code or number already.');
END;

-- A revision carries its recipe's code, on labels too.
CREATE TRIGGER recipe_code BEFORE UPDATE OF code ON recipe
WHEN NEW.code <> OLD.code
  AND EXISTS (
    SELECT 1 FROM revision r
    WHERE r.recipe = OLD.id AND EXISTS (SELECT 1 FROM used_revision u WHERE u.revision = r.id)
  )
BEGIN
  SELECT RAISE (ABORT, 'The code of a recipe cannot be changed once a revision of it is in use.');
END;

-- draft -> on trial -> proven -> withdrawn; evidence puts a proven revision back on trial. Which state
-- an undone withdrawal leads back to is known from the events, and the program sees to it.
CREATE TRIGGER standing_step BEFORE UPDATE ON standing
WHEN NEW.state <> OLD.state AND NOT (
  (OLD.state = 'draft' AND NEW.state IN ('on-trial', 'withdrawn'))
  OR (OLD.state = 'on-trial' AND NEW.state IN ('proven', 'withdrawn'))
  OR (OLD.state = 'proven' AND NEW.state IN ('on-trial', 'withdrawn'))
  OR OLD.state = 'withdrawn'
)
BEGIN
  SELECT RAISE (ABORT, 'A revision cannot go from this state to that one.');
END;

CREATE TRIGGER standing_owner BEFORE UPDATE ON standing
WHEN NEW.id <> OLD.id OR NEW.revision <> OLD.revision
BEGIN
  SELECT RAISE (ABORT, 'A state stays with its revision.');
END;

CREATE TRIGGER standing_delete BEFORE DELETE ON standing
WHEN OLD.state <> 'draft'
BEGIN
  SELECT RAISE (ABORT, 'The state of a revision in use cannot be deleted.');
END;

CREATE TRIGGER standing_insert_over BEFORE INSERT ON standing
WHEN EXISTS (
  SELECT 1 FROM standing WHERE (id = NEW.id OR revision = NEW.revision) AND state <> 'draft'
)
BEGIN
  SELECT RAISE (ABORT, 'This revision has a state already.');
END;

-- What happened, happened.
CREATE TRIGGER event_update BEFORE UPDATE ON event
BEGIN
  SELECT RAISE (ABORT, 'An event cannot be changed.');
END;

CREATE TRIGGER event_delete BEFORE DELETE ON event
BEGIN
  SELECT RAISE (ABORT, 'An event cannot be deleted.');
END;

CREATE TRIGGER event_insert_over BEFORE INSERT ON event
WHEN EXISTS (SELECT 1 FROM event WHERE id = NEW.id)
BEGIN
  SELECT RAISE (ABORT, 'This event is in the book already.');
END;

-- A form that was begun and not saved, as JSON; whose form it is says the key.
CREATE TABLE form_draft (
  form TEXT PRIMARY KEY NOT NULL CHECK (length (form) BETWEEN 1 AND 200),
  body TEXT NOT NULL CHECK (length (body) <= 1000000)
) STRICT;

-- One row for each recipe that is not withdrawn, under the recipe's key; the program keeps it.
CREATE VIRTUAL TABLE search USING fts5 (
  code, name, family, blank, colourway, note,
  tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3'
);
