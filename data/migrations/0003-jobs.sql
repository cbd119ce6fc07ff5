-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Jobs: customers, machines, lots, what was ordered, what was run, and what is left.

ALTER TABLE blank ADD COLUMN price REAL CHECK (price BETWEEN 0 AND 1000000);
ALTER TABLE supply ADD COLUMN sheet_price REAL CHECK (sheet_price BETWEEN 0 AND 1000000);
ALTER TABLE supply ADD COLUMN sheet_uses REAL CHECK (sheet_uses BETWEEN 1 AND 100000);
ALTER TABLE supply ADD COLUMN low_stock_g REAL CHECK (low_stock_g BETWEEN 0 AND 1000000);
ALTER TABLE supply ADD COLUMN open_life_days INTEGER CHECK (open_life_days BETWEEN 1 AND 5000);

CREATE TABLE customer (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length (code) BETWEEN 1 AND 40),
  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 120),
  contact TEXT CHECK (length (contact) <= 200),
  note TEXT,
  withdrawn_at TEXT CHECK (length (withdrawn_at) IN (10, 20))
) STRICT;

CREATE TABLE equipment (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length (code) BETWEEN 1 AND 40),
  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 120),
  kind TEXT NOT NULL CHECK (kind IN ('sprayer', 'press', 'printer', 'tunnel')),
  stations INTEGER NOT NULL CHECK (stations BETWEEN 1 AND 1000),
  handling_s REAL CHECK (handling_s BETWEEN 0 AND 3600),
  print_s_per_m2 REAL CHECK (print_s_per_m2 > 0 AND print_s_per_m2 <= 100000),
  reach_width_mm REAL CHECK (reach_width_mm > 0 AND reach_width_mm <= 5000),
  reach_height_mm REAL CHECK (reach_height_mm > 0 AND reach_height_mm <= 5000),
  power_w REAL CHECK (power_w BETWEEN 0 AND 1000000),
  calibrated_at TEXT CHECK (length (calibrated_at) IN (10, 20)),
  note TEXT,
  withdrawn_at TEXT CHECK (length (withdrawn_at) IN (10, 20))
) STRICT;

CREATE TABLE lot (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length (code) BETWEEN 1 AND 60),
  supply INTEGER NOT NULL REFERENCES supply (id),
  batch TEXT CHECK (length (batch) <= 80),
  received_at TEXT CHECK (length (received_at) IN (10, 20)),
  opened_at TEXT CHECK (length (opened_at) IN (10, 20)),
  expires_at TEXT CHECK (length (expires_at) IN (10, 20)),
  start_g REAL CHECK (start_g > 0 AND start_g <= 1000000),
  container_g REAL CHECK (container_g BETWEEN 0 AND 100000),
  note TEXT,
  withdrawn_at TEXT CHECK (length (withdrawn_at) IN (10, 20))
) STRICT;

CREATE TABLE job (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length (code) BETWEEN 1 AND 40),
  customer INTEGER NOT NULL REFERENCES customer (id),
  title TEXT CHECK (length (title) <= 120),
  ordered_at TEXT NOT NULL CHECK (length (ordered_at) IN (10, 20)),
  due_at TEXT CHECK (length (due_at) IN (10, 20)),
  spoilage_fraction REAL CHECK (spoilage_fraction BETWEEN 0 AND 1),
  note TEXT,
  repeats INTEGER REFERENCES job (id),
  state TEXT NOT NULL CHECK (state IN ('planned', 'running', 'done', 'cancelled')),
  since TEXT CHECK (length (since) IN (10, 20))
) STRICT;

CREATE TABLE job_line (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length (code) BETWEEN 1 AND 60),
  job INTEGER NOT NULL REFERENCES job (id),
  number INTEGER NOT NULL CHECK (number BETWEEN 1 AND 9999),
  colourway INTEGER NOT NULL REFERENCES colourway (id),
  size TEXT CHECK (length (size) <= 80),
  count INTEGER NOT NULL CHECK (count BETWEEN 1 AND 1000000),
  artwork TEXT CHECK (length (artwork) <= 200),
  placement TEXT CHECK (length (placement) <= 80),
  same_garments INTEGER NOT NULL CHECK (same_garments IN (0, 1)),
  print_width_mm REAL CHECK (print_width_mm > 0 AND print_width_mm <= 5000),
  print_height_mm REAL CHECK (print_height_mm > 0 AND print_height_mm <= 5000),
  white_fraction REAL CHECK (white_fraction BETWEEN 0 AND 1),
  highlight_fraction REAL CHECK (highlight_fraction BETWEEN 0 AND 1),
  colour_fraction REAL CHECK (colour_fraction BETWEEN 0 AND 1),
  print_mode TEXT CHECK (print_mode IN ('colour-only', 'underbase', 'underbase-knockout')),
  revision INTEGER REFERENCES revision (id),
  why TEXT CHECK (length (why) <= 400),
  note TEXT,
  withdrawn_at TEXT CHECK (length (withdrawn_at) IN (10, 20)),
  UNIQUE (job, number)
) STRICT;

CREATE TABLE run (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length (code) BETWEEN 1 AND 80),
  line INTEGER NOT NULL REFERENCES job_line (id),
  number INTEGER NOT NULL CHECK (number BETWEEN 1 AND 9999),
  revision INTEGER NOT NULL REFERENCES revision (id),
  person INTEGER REFERENCES person (id),
  sprayer INTEGER REFERENCES equipment (id),
  dryer INTEGER REFERENCES equipment (id),
  printer INTEGER REFERENCES equipment (id),
  curer INTEGER REFERENCES equipment (id),
  started_at TEXT NOT NULL CHECK (length (started_at) IN (10, 20)),
  good INTEGER CHECK (good BETWEEN 0 AND 1000000),
  spoiled INTEGER CHECK (spoiled BETWEEN 0 AND 1000000),
  spoilt_by TEXT
    CHECK (spoilt_by IN ('pretreat-stain', 'fibres', 'place', 'print', 'heat', 'adhesion', 'garment', 'other')),
  note TEXT,
  finished_at TEXT CHECK (length (finished_at) IN (10, 20)),
  UNIQUE (line, number),
  CHECK (finished_at IS NULL OR (good IS NOT NULL AND spoiled IS NOT NULL))
) STRICT;

CREATE TABLE run_weighed (
  run INTEGER NOT NULL REFERENCES run (id),
  position INTEGER NOT NULL CHECK (position BETWEEN 0 AND 499),
  tare_g REAL NOT NULL CHECK (tare_g > 0 AND tare_g <= 5000),
  wet_g REAL NOT NULL CHECK (wet_g > 0 AND wet_g <= 5000),
  box_area_m2 REAL NOT NULL CHECK (box_area_m2 > 0 AND box_area_m2 <= 4),
  PRIMARY KEY (run, position)
) STRICT;

CREATE TABLE run_departures (
  run INTEGER NOT NULL REFERENCES run (id),
  position INTEGER NOT NULL CHECK (position BETWEEN 0 AND 59),
  setting TEXT NOT NULL CHECK (length (setting) BETWEEN 1 AND 60),
  done TEXT CHECK (length (done) <= 80),
  why TEXT CHECK (length (why) <= 200),
  PRIMARY KEY (run, position)
) STRICT;

CREATE TABLE annotation (
  id INTEGER PRIMARY KEY,
  run INTEGER NOT NULL REFERENCES run (id),
  number INTEGER NOT NULL CHECK (number BETWEEN 1 AND 9999),
  at TEXT NOT NULL CHECK (length (at) IN (10, 20)),
  person INTEGER REFERENCES person (id),
  text TEXT NOT NULL CHECK (length (text) BETWEEN 1 AND 4000),
  UNIQUE (run, number)
) STRICT;

CREATE TABLE lot_entry (
  id INTEGER PRIMARY KEY,
  lot INTEGER NOT NULL REFERENCES lot (id),
  number INTEGER NOT NULL CHECK (number BETWEEN 1 AND 999999),
  at TEXT NOT NULL CHECK (length (at) IN (10, 20)),
  person INTEGER REFERENCES person (id),
  deed TEXT NOT NULL CHECK (deed IN ('used', 'weighed', 'wasted')),
  run INTEGER REFERENCES run (id),
  change_g REAL CHECK (change_g BETWEEN -1000000 AND 1000000),
  scale_g REAL CHECK (scale_g BETWEEN 0 AND 1000000),
  note TEXT CHECK (length (note) <= 400),
  UNIQUE (lot, number)
) STRICT;

CREATE INDEX lot_supply ON lot (supply);
CREATE INDEX job_customer ON job (customer);
CREATE INDEX job_due ON job (state, due_at);
CREATE INDEX job_repeats ON job (repeats);
CREATE INDEX job_line_colourway ON job_line (colourway);
CREATE INDEX job_line_revision ON job_line (revision);
CREATE INDEX run_revision ON run (revision);
CREATE INDEX run_person ON run (person);
CREATE INDEX run_sprayer ON run (sprayer);
CREATE INDEX run_dryer ON run (dryer);
CREATE INDEX run_printer ON run (printer);
CREATE INDEX run_curer ON run (curer);
CREATE INDEX lot_entry_run ON lot_entry (run);

-- Found in their lists, as in the migration before.
CREATE VIRTUAL TABLE search_customer USING fts5 (
  code, name, contact, note,
  tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3'
);

CREATE VIRTUAL TABLE search_equipment USING fts5 (
  code, name, kind, note,
  tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3'
);

CREATE VIRTUAL TABLE search_lot USING fts5 (
  code, supply, batch, note,
  tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3'
);

CREATE VIRTUAL TABLE search_job USING fts5 (
  code, customer, artwork, blank, colourway, recipe, note,
  tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3'
);

CREATE INDEX customer_in_use ON customer (id) WHERE withdrawn_at IS NULL;
CREATE INDEX equipment_in_use ON equipment (id) WHERE withdrawn_at IS NULL;
CREATE INDEX lot_in_use ON lot (id) WHERE withdrawn_at IS NULL;

-- A revision is in use once a job or a run refers to it, too.
DROP VIEW used_revision;
CREATE VIEW used_revision AS
  SELECT revision FROM wash_test
  UNION ALL
  SELECT revision FROM standing WHERE state <> 'draft'
  UNION ALL
  SELECT revision FROM job_line WHERE revision IS NOT NULL
  UNION ALL
  SELECT revision FROM run;

-- planned -> running -> done, or cancelled; done too early runs again. Which state an undone cancellation leads back
-- to is known from the events, and the program sees to it.
CREATE TRIGGER job_step BEFORE UPDATE ON job
WHEN NEW.state <> OLD.state AND NOT (
  (OLD.state = 'planned' AND NEW.state IN ('running', 'cancelled'))
  OR (OLD.state = 'running' AND NEW.state IN ('done', 'cancelled'))
  OR (OLD.state = 'done' AND NEW.state = 'running')
  OR OLD.state = 'cancelled'
)
BEGIN
  SELECT RAISE (ABORT, 'A job cannot go from this state to that one.');
END;

-- Lines and runs carry the job's number, on labels too.
CREATE TRIGGER job_code BEFORE UPDATE OF code ON job
WHEN NEW.code <> OLD.code
  AND EXISTS (SELECT 1 FROM job_line l JOIN run r ON r.line = l.id WHERE l.job = OLD.id)
BEGIN
  SELECT RAISE (ABORT, 'The number of a job cannot be changed once a line of it was run.');
END;

CREATE TRIGGER job_line_kept BEFORE UPDATE ON job_line
WHEN (NEW.id <> OLD.id OR NEW.code <> OLD.code OR NEW.job <> OLD.job OR NEW.number <> OLD.number
      OR NEW.colourway <> OLD.colourway OR NEW.artwork IS NOT OLD.artwork OR NEW.placement IS NOT OLD.placement
      OR NEW.print_width_mm IS NOT OLD.print_width_mm OR NEW.print_height_mm IS NOT OLD.print_height_mm)
  AND EXISTS (SELECT 1 FROM run WHERE line = OLD.id)
BEGIN
  SELECT RAISE (ABORT, 'A line that was run keeps its garment and its print: add another line.');
END;

CREATE TRIGGER job_line_delete BEFORE DELETE ON job_line
WHEN EXISTS (SELECT 1 FROM run WHERE line = OLD.id)
BEGIN
  SELECT RAISE (ABORT, 'A line that was run cannot be deleted: strike it off.');
END;

CREATE TRIGGER job_line_insert_over BEFORE INSERT ON job_line
WHEN EXISTS (
  SELECT 1 FROM job_line l
  WHERE (l.id = NEW.id OR l.code = NEW.code OR (l.job = NEW.job AND l.number = NEW.number))
    AND EXISTS (SELECT 1 FROM run r WHERE r.line = l.id)
)
BEGIN
  SELECT RAISE (ABORT, 'There is a line with this code or number already.');
END;

-- What was run, was run.
CREATE TRIGGER run_finished BEFORE UPDATE ON run
WHEN OLD.finished_at IS NOT NULL
BEGIN
  SELECT RAISE (ABORT, 'A finished run cannot be changed: add a remark to it.');
END;

CREATE TRIGGER run_kept BEFORE UPDATE ON run
WHEN NEW.id <> OLD.id OR NEW.code <> OLD.code OR NEW.line <> OLD.line OR NEW.number <> OLD.number
  OR NEW.revision <> OLD.revision
BEGIN
  SELECT RAISE (ABORT, 'A run keeps its line and its revision: finish it, and start another.');
END;

CREATE TRIGGER run_delete BEFORE DELETE ON run
BEGIN
  SELECT RAISE (ABORT, 'A run cannot be deleted.');
END;

CREATE TRIGGER run_insert_over BEFORE INSERT ON run
WHEN EXISTS (
  SELECT 1 FROM run WHERE id = NEW.id OR code = NEW.code OR (line = NEW.line AND number = NEW.number)
)
BEGIN
  SELECT RAISE (ABORT, 'There is a run with this code or number already.');
END;

CREATE TRIGGER run_weighed_insert BEFORE INSERT ON run_weighed
WHEN EXISTS (SELECT 1 FROM run WHERE id = NEW.run AND finished_at IS NOT NULL)
BEGIN
  SELECT RAISE (ABORT, 'A finished run cannot be changed: add a remark to it.');
END;

CREATE TRIGGER run_weighed_update BEFORE UPDATE ON run_weighed
WHEN EXISTS (SELECT 1 FROM run WHERE id IN (OLD.run, NEW.run) AND finished_at IS NOT NULL)
BEGIN
  SELECT RAISE (ABORT, 'A finished run cannot be changed: add a remark to it.');
END;

CREATE TRIGGER run_weighed_delete BEFORE DELETE ON run_weighed
WHEN EXISTS (SELECT 1 FROM run WHERE id = OLD.run AND finished_at IS NOT NULL)
BEGIN
  SELECT RAISE (ABORT, 'A finished run cannot be changed: add a remark to it.');
END;

CREATE TRIGGER run_departures_insert BEFORE INSERT ON run_departures
WHEN EXISTS (SELECT 1 FROM run WHERE id = NEW.run AND finished_at IS NOT NULL)
BEGIN
  SELECT RAISE (ABORT, 'A finished run cannot be changed: add a remark to it.');
END;

CREATE TRIGGER run_departures_update BEFORE UPDATE ON run_departures
WHEN EXISTS (SELECT 1 FROM run WHERE id IN (OLD.run, NEW.run) AND finished_at IS NOT NULL)
BEGIN
  SELECT RAISE (ABORT, 'A finished run cannot be changed: add a remark to it.');
END;

CREATE TRIGGER run_departures_delete BEFORE DELETE ON run_departures
WHEN EXISTS (SELECT 1 FROM run WHERE id = OLD.run AND finished_at IS NOT NULL)
BEGIN
  SELECT RAISE (ABORT, 'A finished run cannot be changed: add a remark to it.');
END;

CREATE TRIGGER annotation_update BEFORE UPDATE ON annotation
BEGIN
  SELECT RAISE (ABORT, 'A remark cannot be changed: add another.');
END;

CREATE TRIGGER annotation_delete BEFORE DELETE ON annotation
BEGIN
  SELECT RAISE (ABORT, 'A remark cannot be deleted.');
END;

CREATE TRIGGER annotation_insert_over BEFORE INSERT ON annotation
WHEN EXISTS (SELECT 1 FROM annotation WHERE id = NEW.id OR (run = NEW.run AND number = NEW.number))
BEGIN
  SELECT RAISE (ABORT, 'There is a remark with this number already.');
END;

-- What is left in a lot follows from its entries.
CREATE TRIGGER lot_kept BEFORE UPDATE ON lot
WHEN (NEW.id <> OLD.id OR NEW.supply <> OLD.supply) AND EXISTS (SELECT 1 FROM lot_entry WHERE lot = OLD.id)
BEGIN
  SELECT RAISE (ABORT, 'A lot that was used stays a lot of its supply.');
END;

CREATE TRIGGER lot_delete BEFORE DELETE ON lot
WHEN EXISTS (SELECT 1 FROM lot_entry WHERE lot = OLD.id)
BEGIN
  SELECT RAISE (ABORT, 'A lot that was used cannot be deleted: withdraw it.');
END;

CREATE TRIGGER lot_insert_over BEFORE INSERT ON lot
WHEN EXISTS (
  SELECT 1 FROM lot l
  WHERE (l.id = NEW.id OR l.code = NEW.code) AND EXISTS (SELECT 1 FROM lot_entry e WHERE e.lot = l.id)
)
BEGIN
  SELECT RAISE (ABORT, 'There is a lot with this code already.');
END;

CREATE TRIGGER lot_entry_update BEFORE UPDATE ON lot_entry
BEGIN
  SELECT RAISE (ABORT, 'An entry of a lot cannot be changed: add another.');
END;

CREATE TRIGGER lot_entry_delete BEFORE DELETE ON lot_entry
BEGIN
  SELECT RAISE (ABORT, 'An entry of a lot cannot be deleted.');
END;

CREATE TRIGGER lot_entry_insert_over BEFORE INSERT ON lot_entry
WHEN EXISTS (SELECT 1 FROM lot_entry WHERE id = NEW.id OR (lot = NEW.lot AND number = NEW.number))
BEGIN
  SELECT RAISE (ABORT, 'There is an entry of this lot with this number already.');
END;

-- The newest run by each revision, for each customer and garment: answers at once what is set for them now.
CREATE TABLE last_run (
  customer INTEGER NOT NULL REFERENCES customer (id),
  colourway INTEGER NOT NULL REFERENCES colourway (id),
  revision INTEGER NOT NULL REFERENCES revision (id),
  run INTEGER NOT NULL REFERENCES run (id),
  PRIMARY KEY (customer, colourway, revision)
) STRICT, WITHOUT ROWID;

CREATE INDEX last_run_colourway ON last_run (colourway, run);

CREATE TRIGGER last_run_insert AFTER INSERT ON run
BEGIN
  INSERT INTO last_run (customer, colourway, revision, run)
  SELECT j.customer, l.colourway, NEW.revision, NEW.id
  FROM job_line l JOIN job j ON j.id = l.job WHERE l.id = NEW.line
  ON CONFLICT (customer, colourway, revision) DO UPDATE SET run = excluded.run WHERE excluded.run > run;
END;

CREATE TRIGGER last_run_customer AFTER UPDATE OF customer ON job
WHEN NEW.customer <> OLD.customer
BEGIN
  DELETE FROM last_run WHERE customer IN (OLD.customer, NEW.customer);
  INSERT INTO last_run (customer, colourway, revision, run)
  SELECT j.customer, l.colourway, r.revision, MAX (r.id)
  FROM job j JOIN job_line l ON l.job = j.id JOIN run r ON r.line = l.id
  WHERE j.customer IN (OLD.customer, NEW.customer)
  GROUP BY j.customer, l.colourway, r.revision;
END;
