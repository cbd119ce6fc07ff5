-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Where a record may refer to one kind of another only, as a revision's pretreat is a supply that is one, the database
-- holds to it: the kinds are those of the field tables in src/model. What is referred to so stays what it is.

CREATE TRIGGER revision_insert_kinds BEFORE INSERT ON revision
WHEN (SELECT kind FROM supply WHERE id = NEW.pretreat_product) <> 'pretreat'
  OR (SELECT kind FROM supply WHERE id = NEW.dry_sheet) <> 'sheet'
  OR (SELECT kind FROM supply WHERE id = NEW.cure_sheet) <> 'sheet'
BEGIN
  SELECT RAISE (ABORT, 'A record is referred to that is of another kind.');
END;

CREATE TRIGGER revision_update_kinds BEFORE UPDATE OF pretreat_product, dry_sheet, cure_sheet ON revision
WHEN (SELECT kind FROM supply WHERE id = NEW.pretreat_product) <> 'pretreat'
  OR (SELECT kind FROM supply WHERE id = NEW.dry_sheet) <> 'sheet'
  OR (SELECT kind FROM supply WHERE id = NEW.cure_sheet) <> 'sheet'
BEGIN
  SELECT RAISE (ABORT, 'A record is referred to that is of another kind.');
END;

CREATE TRIGGER run_insert_kinds BEFORE INSERT ON run
WHEN (SELECT kind FROM equipment WHERE id = NEW.sprayer) <> 'sprayer'
  OR (SELECT kind FROM equipment WHERE id = NEW.printer) <> 'printer'
BEGIN
  SELECT RAISE (ABORT, 'A record is referred to that is of another kind.');
END;

CREATE TRIGGER run_update_kinds BEFORE UPDATE OF sprayer, printer ON run
WHEN (SELECT kind FROM equipment WHERE id = NEW.sprayer) <> 'sprayer'
  OR (SELECT kind FROM equipment WHERE id = NEW.printer) <> 'printer'
BEGIN
  SELECT RAISE (ABORT, 'A record is referred to that is of another kind.');
END;

CREATE TRIGGER supply_kind BEFORE UPDATE OF kind ON supply
WHEN NEW.kind <> OLD.kind
  AND EXISTS (SELECT 1 FROM revision WHERE pretreat_product = OLD.id OR dry_sheet = OLD.id OR cure_sheet = OLD.id)
BEGIN
  SELECT RAISE (ABORT, 'The kind cannot be changed: a recipe or a run uses this as what it is.');
END;

CREATE TRIGGER equipment_kind BEFORE UPDATE OF kind ON equipment
WHEN NEW.kind <> OLD.kind AND EXISTS (SELECT 1 FROM run WHERE sprayer = OLD.id OR printer = OLD.id)
BEGIN
  SELECT RAISE (ABORT, 'The kind cannot be changed: a recipe or a run uses this as what it is.');
END;

-- INSERT OR REPLACE puts another row in the place of this one without asking the triggers of an update.
CREATE TRIGGER supply_insert_over BEFORE INSERT ON supply
WHEN EXISTS (
  SELECT 1 FROM supply s
  WHERE (s.id = NEW.id OR s.code = NEW.code) AND s.kind <> NEW.kind
    AND EXISTS (SELECT 1 FROM revision WHERE pretreat_product = s.id OR dry_sheet = s.id OR cure_sheet = s.id)
)
BEGIN
  SELECT RAISE (ABORT, 'The kind cannot be changed: a recipe or a run uses this as what it is.');
END;

CREATE TRIGGER equipment_insert_over BEFORE INSERT ON equipment
WHEN EXISTS (
  SELECT 1 FROM equipment e
  WHERE (e.id = NEW.id OR e.code = NEW.code) AND e.kind <> NEW.kind
    AND EXISTS (SELECT 1 FROM run WHERE sprayer = e.id OR printer = e.id)
)
BEGIN
  SELECT RAISE (ABORT, 'The kind cannot be changed: a recipe or a run uses this as what it is.');
END;
