-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- What is added takes no specimen away from a proof, unless it replaces what is there. So that is refused, and what is
-- added need not be held against all specimens of its revision.

DROP TRIGGER reading_insert_proof;
DROP TRIGGER wash_test_insert_proof;

CREATE TRIGGER reading_insert_over BEFORE INSERT ON reading
WHEN EXISTS (
  SELECT 1 FROM reading r
  JOIN wash_test t ON t.id = r.wash_test
  JOIN standing s ON s.revision = t.revision
  WHERE (r.id = NEW.id OR (r.wash_test = NEW.wash_test AND r.cycles = NEW.cycles)) AND s.state = 'proven'
)
BEGIN
  SELECT RAISE (ABORT, 'There is a reading of this specimen at as many cycles already.');
END;

CREATE TRIGGER wash_test_insert_over BEFORE INSERT ON wash_test
WHEN EXISTS (
  SELECT 1 FROM wash_test t JOIN standing s ON s.revision = t.revision
  WHERE (t.id = NEW.id OR t.code = NEW.code) AND s.state = 'proven'
)
BEGIN
  SELECT RAISE (ABORT, 'There is a specimen with this code already.');
END;

CREATE TRIGGER reading_insert_proof AFTER INSERT ON reading
BEGIN
  SELECT RAISE (ABORT, 'A specimen of a proven revision fails: the revision has to go back on trial first.')
  FROM failed_reading f JOIN standing s ON s.revision = f.revision
  WHERE f.reading = NEW.id AND s.state = 'proven';
END;
