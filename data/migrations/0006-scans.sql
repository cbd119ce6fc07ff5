-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Scans of specimens, and the pictures they are.

CREATE TABLE picture (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length (code) = 64),
  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 255),
  n_bytes INTEGER NOT NULL CHECK (n_bytes BETWEEN 1 AND 33554432),
  width_px INTEGER NOT NULL CHECK (width_px BETWEEN 1 AND 200000),
  height_px INTEGER NOT NULL CHECK (height_px BETWEEN 1 AND 1000000000),
  added_at TEXT NOT NULL CHECK (length (added_at) IN (10, 20))
) STRICT;

-- Apart from the record, which is read often, while the bytes seldom are.
CREATE TABLE picture_content (
  picture INTEGER PRIMARY KEY REFERENCES picture (id),
  content BLOB NOT NULL CHECK (length (content) BETWEEN 1 AND 33554432)
) STRICT;

CREATE TABLE scan (
  id INTEGER PRIMARY KEY,
  wash_test INTEGER NOT NULL REFERENCES wash_test (id),
  cycles INTEGER NOT NULL CHECK (cycles BETWEEN 0 AND 500),
  subject TEXT NOT NULL CHECK (subject IN ('print', 'cloth')),
  picture INTEGER NOT NULL REFERENCES picture (id),
  x_px INTEGER NOT NULL CHECK (x_px BETWEEN 0 AND 199999),
  y_px INTEGER NOT NULL CHECK (y_px BETWEEN 0 AND 999999999),
  width_px INTEGER NOT NULL CHECK (width_px BETWEEN 1 AND 200000),
  height_px INTEGER NOT NULL CHECK (height_px BETWEEN 1 AND 1000000000),
  l REAL NOT NULL CHECK (l BETWEEN 0 AND 150),
  a REAL NOT NULL CHECK (a BETWEEN -500 AND 500),
  b REAL NOT NULL CHECK (b BETWEEN -500 AND 500),
  l_sd REAL CHECK (l_sd BETWEEN 0 AND 500),
  a_sd REAL CHECK (a_sd BETWEEN 0 AND 500),
  b_sd REAL CHECK (b_sd BETWEEN 0 AND 500),
  patch_x_px INTEGER CHECK (patch_x_px BETWEEN 0 AND 199999),
  patch_y_px INTEGER CHECK (patch_y_px BETWEEN 0 AND 999999999),
  patch_width_px INTEGER CHECK (patch_width_px BETWEEN 1 AND 200000),
  patch_height_px INTEGER CHECK (patch_height_px BETWEEN 1 AND 1000000000),
  patch_l REAL CHECK (patch_l BETWEEN 0 AND 150),
  patch_a REAL CHECK (patch_a BETWEEN -500 AND 500),
  patch_b REAL CHECK (patch_b BETWEEN -500 AND 500),
  scanned_at TEXT NOT NULL CHECK (length (scanned_at) IN (10, 20)),
  person INTEGER REFERENCES person (id),
  UNIQUE (wash_test, subject, cycles)
) STRICT;
CREATE INDEX scan_picture ON scan (picture);
CREATE INDEX scan_person ON scan (person);

-- A picture is its bytes: others are another picture.
CREATE TRIGGER picture_update BEFORE UPDATE ON picture
WHEN NEW.id <> OLD.id OR NEW.code <> OLD.code OR NEW.n_bytes <> OLD.n_bytes OR NEW.width_px <> OLD.width_px
  OR NEW.height_px <> OLD.height_px
BEGIN
  SELECT RAISE (ABORT, 'A picture cannot be changed: add another.');
END;

CREATE TRIGGER picture_content_insert BEFORE INSERT ON picture_content
WHEN length (NEW.content) <> (SELECT n_bytes FROM picture WHERE id = NEW.picture)
BEGIN
  SELECT RAISE (ABORT, 'A picture cannot be changed: add another.');
END;

CREATE TRIGGER picture_content_update BEFORE UPDATE ON picture_content
BEGIN
  SELECT RAISE (ABORT, 'A picture cannot be changed: add another.');
END;
