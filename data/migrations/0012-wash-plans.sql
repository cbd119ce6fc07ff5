-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Wash plans have a list of their own, and a plan after a published method says what the method says.

CREATE VIRTUAL TABLE search_wash_plan USING fts5 (
  code, name, method, detergent, note,
  tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3'
);
CREATE INDEX wash_plan_in_use ON wash_plan (id) WHERE withdrawn_at IS NULL;

-- Whose numbers a plan has was free to say for any plan. Only the shop's own plan has the shop's.
UPDATE wash_plan SET origin = 'shop' WHERE standard = 'shop';
UPDATE wash_plan SET origin = 'memory' WHERE standard <> 'shop' AND origin = 'shop';

-- How long a print rests before its first wash is a part of how it was tested.
DROP TRIGGER wash_plan_update;

CREATE TRIGGER wash_plan_update BEFORE UPDATE OF id, code, standard, publication, procedure, wash_c, wash_s, liquor_ml,
  steel_balls, detergent, drying, launderings, rest_days ON wash_plan
WHEN EXISTS (SELECT 1 FROM used_plan u WHERE u.wash_plan = OLD.id)
  AND (NEW.id <> OLD.id OR NEW.code <> OLD.code OR NEW.standard <> OLD.standard
       OR NEW.publication IS NOT OLD.publication OR NEW.procedure IS NOT OLD.procedure
       OR NEW.wash_c IS NOT OLD.wash_c OR NEW.wash_s IS NOT OLD.wash_s OR NEW.liquor_ml IS NOT OLD.liquor_ml
       OR NEW.steel_balls IS NOT OLD.steel_balls OR NEW.detergent IS NOT OLD.detergent
       OR NEW.drying IS NOT OLD.drying OR NEW.launderings <> OLD.launderings OR NEW.rest_days <> OLD.rest_days)
BEGIN
  SELECT RAISE (ABORT, 'A wash plan in use cannot be changed: add another, and withdraw this one.');
END;

-- Whoever has the standard in hand can put its numbers right, and says so. Anything else is another method.
CREATE TRIGGER wash_plan_update_published BEFORE UPDATE OF standard, publication, procedure, wash_c, wash_s, liquor_ml,
  steel_balls, detergent, drying, launderings, origin ON wash_plan
WHEN OLD.standard <> 'shop' AND (NEW.standard = 'shop' OR NEW.origin <> 'standard')
  AND (NEW.standard <> OLD.standard
       OR NEW.publication IS NOT OLD.publication OR NEW.procedure IS NOT OLD.procedure
       OR NEW.wash_c IS NOT OLD.wash_c OR NEW.wash_s IS NOT OLD.wash_s OR NEW.liquor_ml IS NOT OLD.liquor_ml
       OR NEW.steel_balls IS NOT OLD.steel_balls OR NEW.detergent IS NOT OLD.detergent
       OR NEW.drying IS NOT OLD.drying OR NEW.launderings <> OLD.launderings OR NEW.origin = 'shop')
BEGIN
  SELECT RAISE (ABORT, 'A published method is changed only as checked against the standard: make a plan of your own.');
END;

-- What replaces a row fires no trigger of an update.
DROP TRIGGER wash_plan_insert_over;
DROP TRIGGER wash_plan_update_over;

CREATE TRIGGER wash_plan_insert_over BEFORE INSERT ON wash_plan
WHEN EXISTS (SELECT 1 FROM wash_plan p WHERE p.id = NEW.id OR p.code = NEW.code)
BEGIN
  SELECT RAISE (ABORT, 'There is a wash plan with this code already.');
END;

CREATE TRIGGER wash_plan_update_over BEFORE UPDATE OF id, code ON wash_plan
WHEN EXISTS (SELECT 1 FROM wash_plan p WHERE p.id <> OLD.id AND (p.id = NEW.id OR p.code = NEW.code))
BEGIN
  SELECT RAISE (ABORT, 'There is a wash plan with this code already.');
END;
