-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- What "proven" rests on: wash plans, fuller readings, the shop's rule, signatures, and the news of a proof that was
-- lost.

CREATE TABLE shop (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 120),
  address TEXT CHECK (length (address) <= 400),
  proof_specimens INTEGER NOT NULL CHECK (proof_specimens BETWEEN 1 AND 1000),
  proof_confidence_fraction REAL NOT NULL
    CHECK (proof_confidence_fraction > 0 AND proof_confidence_fraction < 1)
) STRICT;

CREATE TABLE wash_plan (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length (code) BETWEEN 1 AND 40),
  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 120),
  standard TEXT NOT NULL
    CHECK (standard IN ('shop', 'iso-6330', 'iso-105-c06', 'aatcc-61', 'aatcc-lp1')),
  publication TEXT CHECK (length (publication) <= 120),
  procedure TEXT CHECK (length (procedure) <= 20),
  wash_c REAL CHECK (wash_c BETWEEN 5 AND 100),
  wash_s REAL CHECK (wash_s > 0 AND wash_s <= 86400),
  liquor_ml REAL CHECK (liquor_ml > 0 AND liquor_ml <= 1000000),
  steel_balls INTEGER CHECK (steel_balls BETWEEN 0 AND 1000),
  detergent TEXT CHECK (length (detergent) <= 120),
  drying TEXT CHECK (drying IN ('line', 'drip-line', 'flat', 'drip-flat', 'flat-press', 'tumble')),
  launderings INTEGER NOT NULL CHECK (launderings BETWEEN 1 AND 50),
  rest_days INTEGER NOT NULL CHECK (rest_days BETWEEN 0 AND 60),
  cycles_per_week REAL NOT NULL CHECK (cycles_per_week > 0 AND cycles_per_week <= 500),
  grace_days INTEGER NOT NULL CHECK (grace_days BETWEEN 0 AND 60),
  origin TEXT NOT NULL CHECK (origin IN ('shop', 'standard', 'part', 'memory')),
  note TEXT,
  withdrawn_at TEXT CHECK (length (withdrawn_at) IN (10, 20))
) STRICT;

CREATE TABLE wash_plan_grade_at (
  wash_plan INTEGER NOT NULL REFERENCES wash_plan (id),
  position INTEGER NOT NULL CHECK (position BETWEEN 0 AND 39),
  cycles INTEGER NOT NULL CHECK (cycles BETWEEN 1 AND 500),
  PRIMARY KEY (wash_plan, position),
  UNIQUE (wash_plan, cycles)
) STRICT;

ALTER TABLE wash_test ADD COLUMN plan INTEGER REFERENCES wash_plan (id);
CREATE INDEX wash_test_plan ON wash_test (plan);

ALTER TABLE reading ADD COLUMN lifting TEXT CHECK (lifting IN ('none', 'slight', 'marked'));
ALTER TABLE reading ADD COLUMN fibrillation TEXT CHECK (fibrillation IN ('none', 'slight', 'marked'));
ALTER TABLE reading ADD COLUMN hand INTEGER CHECK (hand BETWEEN 1 AND 5);
ALTER TABLE reading ADD COLUMN box_mark TEXT CHECK (box_mark IN ('none', 'slight', 'marked'));
ALTER TABLE reading ADD COLUMN change_measured TEXT
  CHECK (change_measured IN ('5', '4-5', '4', '3-4', '3', '2-3', '2', '1-2', '1'));
ALTER TABLE reading ADD COLUMN stain_measured TEXT
  CHECK (stain_measured IN ('5', '4-5', '4', '3-4', '3', '2-3', '2', '1-2', '1'));

CREATE TABLE signature (
  id INTEGER PRIMARY KEY,
  revision INTEGER NOT NULL REFERENCES revision (id),
  signed_at TEXT NOT NULL CHECK (length (signed_at) IN (10, 20)),
  person INTEGER NOT NULL REFERENCES person (id),
  overruled INTEGER NOT NULL CHECK (overruled IN (0, 1)),
  reason TEXT CHECK (length (reason) <= 400),
  passed INTEGER NOT NULL CHECK (passed BETWEEN 0 AND 1000000),
  failed INTEGER NOT NULL CHECK (failed BETWEEN 0 AND 1000000),
  needed INTEGER NOT NULL CHECK (needed BETWEEN 1 AND 1000),
  UNIQUE (revision, signed_at)
) STRICT;

CREATE TABLE notice (
  id INTEGER PRIMARY KEY,
  at TEXT NOT NULL CHECK (length (at) IN (10, 20)),
  news TEXT NOT NULL CHECK (news IN ('failed', 'evidence-gone', 'brought-in')),
  revision INTEGER NOT NULL REFERENCES revision (id),
  wash_test INTEGER REFERENCES wash_test (id),
  cycles INTEGER CHECK (cycles BETWEEN 0 AND 500),
  person INTEGER REFERENCES person (id),
  seen_at TEXT CHECK (length (seen_at) IN (10, 20)),
  seen_by INTEGER REFERENCES person (id)
) STRICT;
CREATE INDEX notice_revision ON notice (revision);

-- Who decided that a revision is proven signed for it.
INSERT INTO signature (revision, signed_at, person, overruled, reason, passed, failed, needed)
SELECT revision, since, person, 1, substr ('Proven before signatures were kept. ' || COALESCE (reason, ''), 1, 400), 0, 0, 1
FROM standing WHERE state = 'proven' AND person IS NOT NULL;

-- There is one shop.
CREATE TRIGGER shop_insert BEFORE INSERT ON shop
WHEN EXISTS (SELECT 1 FROM shop)
BEGIN
  SELECT RAISE (ABORT, 'The book has a shop already.');
END;

-- A plan that a specimen is washed to says the same for ever.
CREATE VIEW used_plan AS
  SELECT plan AS wash_plan FROM wash_test WHERE plan IS NOT NULL;

CREATE TRIGGER wash_plan_update BEFORE UPDATE OF id, code, standard, publication, procedure, wash_c, wash_s, liquor_ml,
  steel_balls, detergent, drying, launderings ON wash_plan
WHEN EXISTS (SELECT 1 FROM used_plan u WHERE u.wash_plan = OLD.id)
  AND (NEW.id <> OLD.id OR NEW.code <> OLD.code OR NEW.standard <> OLD.standard
       OR NEW.publication IS NOT OLD.publication OR NEW.procedure IS NOT OLD.procedure
       OR NEW.wash_c IS NOT OLD.wash_c OR NEW.wash_s IS NOT OLD.wash_s OR NEW.liquor_ml IS NOT OLD.liquor_ml
       OR NEW.steel_balls IS NOT OLD.steel_balls OR NEW.detergent IS NOT OLD.detergent
       OR NEW.drying IS NOT OLD.drying OR NEW.launderings <> OLD.launderings)
BEGIN
  SELECT RAISE (ABORT, 'A wash plan in use cannot be changed: add another, and withdraw this one.');
END;

CREATE TRIGGER wash_plan_insert_over BEFORE INSERT ON wash_plan
WHEN EXISTS (
  SELECT 1 FROM wash_plan p JOIN used_plan u ON u.wash_plan = p.id WHERE p.id = NEW.id OR p.code = NEW.code
)
BEGIN
  SELECT RAISE (ABORT, 'There is a wash plan with this code already.');
END;

CREATE TRIGGER wash_plan_update_over BEFORE UPDATE ON wash_plan
WHEN EXISTS (
  SELECT 1 FROM wash_plan p JOIN used_plan u ON u.wash_plan = p.id
  WHERE p.id <> OLD.id AND (p.id = NEW.id OR p.code = NEW.code)
)
BEGIN
  SELECT RAISE (ABORT, 'There is a wash plan with this code already.');
END;

CREATE TRIGGER wash_plan_grade_at_insert BEFORE INSERT ON wash_plan_grade_at
WHEN EXISTS (SELECT 1 FROM used_plan u WHERE u.wash_plan = NEW.wash_plan)
BEGIN
  SELECT RAISE (ABORT, 'A wash plan in use cannot be changed: add another, and withdraw this one.');
END;

CREATE TRIGGER wash_plan_grade_at_update BEFORE UPDATE ON wash_plan_grade_at
WHEN EXISTS (SELECT 1 FROM used_plan u WHERE u.wash_plan IN (OLD.wash_plan, NEW.wash_plan))
BEGIN
  SELECT RAISE (ABORT, 'A wash plan in use cannot be changed: add another, and withdraw this one.');
END;

CREATE TRIGGER wash_plan_grade_at_delete BEFORE DELETE ON wash_plan_grade_at
WHEN EXISTS (SELECT 1 FROM used_plan u WHERE u.wash_plan = OLD.wash_plan)
BEGIN
  SELECT RAISE (ABORT, 'A wash plan in use cannot be changed: add another, and withdraw this one.');
END;

-- A specimen with a plan is washed as the plan says.
CREATE VIEW plan_end AS
  SELECT wash_plan, MAX (cycles) AS cycles FROM wash_plan_grade_at GROUP BY wash_plan;

CREATE TRIGGER wash_test_insert_plan BEFORE INSERT ON wash_test
WHEN EXISTS (
  SELECT 1 FROM wash_plan p LEFT JOIN plan_end e ON e.wash_plan = p.id
  WHERE p.id = NEW.plan
    AND (p.standard <> NEW.method OR e.cycles IS NULL OR e.cycles <> NEW.plan_cycles
         OR (p.wash_c IS NOT NULL AND (NEW.wash_c IS NULL OR NEW.wash_c <> p.wash_c)))
)
BEGIN
  SELECT RAISE (ABORT, 'Method, temperature and cycles of a specimen have to be those of its wash plan.');
END;

CREATE TRIGGER wash_test_update_plan BEFORE UPDATE ON wash_test
WHEN EXISTS (
  SELECT 1 FROM wash_plan p LEFT JOIN plan_end e ON e.wash_plan = p.id
  WHERE p.id = NEW.plan
    AND (p.standard <> NEW.method OR e.cycles IS NULL OR e.cycles <> NEW.plan_cycles
         OR (p.wash_c IS NOT NULL AND (NEW.wash_c IS NULL OR NEW.wash_c <> p.wash_c)))
)
BEGIN
  SELECT RAISE (ABORT, 'Method, temperature and cycles of a specimen have to be those of its wash plan.');
END;

-- What a specimen was made by is a fact once it was read.
CREATE TRIGGER wash_test_revision BEFORE UPDATE OF revision ON wash_test
WHEN NEW.revision <> OLD.revision
  AND EXISTS (SELECT 1 FROM reading r WHERE r.wash_test = OLD.id)
  AND EXISTS (SELECT 1 FROM revision v WHERE v.id = NEW.revision)
BEGIN
  SELECT RAISE (ABORT, 'A specimen that was read stays with its revision.');
END;

-- The verdict, as src/calc has it; a test holds both together. First and last figure of a grade add up to twice its
-- number. A specimen counts where it is not withdrawn and was washed by the method that its revision asks for; what
-- was read after it had stood its plan changes nothing.
CREATE VIEW ending_reading AS
  SELECT r.id AS reading, r.wash_test AS wash_test, r.cycles AS cycles
  FROM reading r
  JOIN wash_test t ON t.id = r.wash_test
  JOIN revision v ON v.id = t.revision
  WHERE r.cycles >= t.plan_cycles AND r.cycles >= v.proof_cycles
    AND (r.stain IS NOT NULL OR v.proof_stain IS NULL OR v.proof_stain = '1');

CREATE VIEW failed_reading AS
  SELECT r.id AS reading, r.wash_test AS wash_test, t.revision AS revision, r.cycles AS cycles
  FROM reading r
  JOIN wash_test t ON t.id = r.wash_test
  JOIN revision v ON v.id = t.revision
  WHERE t.withdrawn_at IS NULL AND t.method = v.proof_method
    AND (
      CAST (substr (r.change, 1, 1) AS INTEGER) + CAST (substr (r.change, length (r.change), 1) AS INTEGER)
        < CAST (substr (v.proof_change, 1, 1) AS INTEGER)
          + CAST (substr (v.proof_change, length (v.proof_change), 1) AS INTEGER)
      OR CAST (substr (r.stain, 1, 1) AS INTEGER) + CAST (substr (r.stain, length (r.stain), 1) AS INTEGER)
        < CAST (substr (v.proof_stain, 1, 1) AS INTEGER)
          + CAST (substr (v.proof_stain, length (v.proof_stain), 1) AS INTEGER)
      OR (r.crack = 'hairline' AND v.proof_crack = 'none')
      OR (r.crack = 'visible' AND v.proof_crack <> 'visible')
    )
    AND NOT EXISTS (
      SELECT 1 FROM ending_reading e WHERE e.wash_test = r.wash_test AND e.cycles < r.cycles
    );

CREATE VIEW passed_test AS
  SELECT t.id AS wash_test, t.revision AS revision
  FROM wash_test t
  JOIN revision v ON v.id = t.revision
  WHERE t.withdrawn_at IS NULL AND t.method = v.proof_method
    AND NOT EXISTS (SELECT 1 FROM failed_reading f WHERE f.wash_test = t.id)
    AND EXISTS (SELECT 1 FROM ending_reading e WHERE e.wash_test = t.id);

-- Proofs that fewer specimens bear out than were asked for when they were signed.
CREATE VIEW short_proof AS
  SELECT s.revision AS revision
  FROM standing s
  JOIN signature g ON g.revision = s.revision AND g.signed_at = s.since AND g.overruled = 0
  WHERE s.state = 'proven'
    AND (SELECT COUNT (*) FROM passed_test p WHERE p.revision = s.revision) < g.needed;

-- A signature is given once.
CREATE TRIGGER signature_insert BEFORE INSERT ON signature
WHEN NEW.overruled = 1
  AND (trim (COALESCE (NEW.reason, '')) = ''
       OR EXISTS (SELECT 1 FROM person p WHERE p.id = NEW.person AND p.role NOT IN ('lead', 'owner')))
BEGIN
  SELECT RAISE (ABORT, 'Only a lead or the owner can overrule the rule of the shop, and has to say why.');
END;

CREATE TRIGGER signature_insert_over BEFORE INSERT ON signature
WHEN EXISTS (
  SELECT 1 FROM signature WHERE id = NEW.id OR (revision = NEW.revision AND signed_at = NEW.signed_at)
)
BEGIN
  SELECT RAISE (ABORT, 'This signature is in the book already.');
END;

CREATE TRIGGER signature_update BEFORE UPDATE ON signature
BEGIN
  SELECT RAISE (ABORT, 'A signature cannot be changed.');
END;

CREATE TRIGGER signature_delete BEFORE DELETE ON signature
BEGIN
  SELECT RAISE (ABORT, 'A signature cannot be deleted.');
END;

-- Proven is what is signed, and borne out by specimens or overruled; whoever proves it here by the rule of this shop.
CREATE TRIGGER standing_insert_signed BEFORE INSERT ON standing
WHEN NEW.state = 'proven'
  AND NOT EXISTS (
    SELECT 1 FROM signature g
    WHERE g.revision = NEW.revision AND g.signed_at = NEW.since AND g.person = NEW.person
  )
BEGIN
  SELECT RAISE (ABORT, 'A proof needs the signature of a person.');
END;

CREATE TRIGGER standing_insert_borne_out BEFORE INSERT ON standing
WHEN NEW.state = 'proven'
  AND EXISTS (
    SELECT 1 FROM signature g
    WHERE g.revision = NEW.revision AND g.signed_at = NEW.since AND g.overruled = 0
      AND ((SELECT COUNT (*) FROM passed_test p WHERE p.revision = g.revision) < g.needed
           OR EXISTS (SELECT 1 FROM failed_reading f WHERE f.revision = g.revision))
  )
BEGIN
  SELECT RAISE (ABORT, 'The specimens do not bear out a proof by the rule of the shop.');
END;

CREATE TRIGGER standing_update_signed BEFORE UPDATE ON standing
WHEN NEW.state = 'proven'
  AND (OLD.state <> 'proven' OR NEW.since <> OLD.since OR NEW.person IS NOT OLD.person)
  AND NOT EXISTS (
    SELECT 1 FROM signature g
    WHERE g.revision = NEW.revision AND g.signed_at = NEW.since AND g.person = NEW.person
  )
BEGIN
  SELECT RAISE (ABORT, 'A proof needs the signature of a person.');
END;

CREATE TRIGGER standing_update_borne_out BEFORE UPDATE ON standing
WHEN NEW.state = 'proven'
  AND (OLD.state <> 'proven' OR NEW.since <> OLD.since)
  AND EXISTS (
    SELECT 1 FROM signature g
    WHERE g.revision = NEW.revision AND g.signed_at = NEW.since AND g.overruled = 0
      AND ((SELECT COUNT (*) FROM passed_test p WHERE p.revision = g.revision) < g.needed
           OR (SELECT COUNT (*) FROM passed_test p WHERE p.revision = g.revision)
             < COALESCE ((SELECT proof_specimens FROM shop), 3)
           OR EXISTS (SELECT 1 FROM failed_reading f WHERE f.revision = g.revision))
  )
BEGIN
  SELECT RAISE (ABORT, 'The specimens do not bear out a proof by the rule of the shop.');
END;

-- What takes a proof away is not written while the revision still counts as proven. The program puts it back on trial
-- in the same transaction.
CREATE TRIGGER reading_insert_proof AFTER INSERT ON reading
BEGIN
  SELECT RAISE (ABORT, 'A specimen of a proven revision fails: the revision has to go back on trial first.')
  FROM failed_reading f JOIN standing s ON s.revision = f.revision
  WHERE f.reading = NEW.id AND s.state = 'proven';
  SELECT RAISE (ABORT, 'The proof of a revision rests on this specimen: the revision has to go back on trial first.')
  FROM short_proof p JOIN wash_test t ON t.revision = p.revision
  WHERE t.id = NEW.wash_test;
END;

CREATE TRIGGER reading_update_proof AFTER UPDATE ON reading
BEGIN
  SELECT RAISE (ABORT, 'A specimen of a proven revision fails: the revision has to go back on trial first.')
  FROM failed_reading f JOIN standing s ON s.revision = f.revision
  WHERE f.reading = NEW.id AND s.state = 'proven'
    AND (NEW.wash_test <> OLD.wash_test OR NEW.change <> OLD.change OR NEW.stain IS NOT OLD.stain
         OR NEW.crack <> OLD.crack);
  SELECT RAISE (ABORT, 'The proof of a revision rests on this specimen: the revision has to go back on trial first.')
  FROM short_proof p JOIN wash_test t ON t.revision = p.revision
  WHERE t.id IN (OLD.wash_test, NEW.wash_test);
END;

CREATE TRIGGER reading_delete_proof AFTER DELETE ON reading
BEGIN
  SELECT RAISE (ABORT, 'The proof of a revision rests on this specimen: the revision has to go back on trial first.')
  FROM short_proof p JOIN wash_test t ON t.revision = p.revision
  WHERE t.id = OLD.wash_test;
END;

CREATE TRIGGER wash_test_insert_proof AFTER INSERT ON wash_test
BEGIN
  SELECT RAISE (ABORT, 'The proof of a revision rests on this specimen: the revision has to go back on trial first.')
  FROM short_proof p WHERE p.revision = NEW.revision;
END;

CREATE TRIGGER wash_test_update_proof AFTER UPDATE ON wash_test
BEGIN
  SELECT RAISE (ABORT, 'A specimen of a proven revision fails: the revision has to go back on trial first.')
  FROM failed_reading f JOIN standing s ON s.revision = f.revision
  WHERE f.wash_test = NEW.id AND s.state = 'proven'
    AND (NEW.method <> OLD.method OR (OLD.withdrawn_at IS NOT NULL AND NEW.withdrawn_at IS NULL));
  SELECT RAISE (ABORT, 'The proof of a revision rests on this specimen: the revision has to go back on trial first.')
  FROM short_proof p WHERE p.revision IN (OLD.revision, NEW.revision);
END;

CREATE TRIGGER wash_test_delete_proof AFTER DELETE ON wash_test
BEGIN
  SELECT RAISE (ABORT, 'The proof of a revision rests on this specimen: the revision has to go back on trial first.')
  FROM short_proof p WHERE p.revision = OLD.revision;
END;

-- News stays; that somebody took note of it is added.
CREATE TRIGGER notice_delete BEFORE DELETE ON notice
BEGIN
  SELECT RAISE (ABORT, 'A notice cannot be deleted.');
END;

CREATE TRIGGER notice_update BEFORE UPDATE ON notice
WHEN NEW.id <> OLD.id OR NEW.at <> OLD.at OR NEW.news <> OLD.news OR NEW.revision <> OLD.revision
  OR NEW.wash_test IS NOT OLD.wash_test OR NEW.cycles IS NOT OLD.cycles OR NEW.person IS NOT OLD.person
  OR OLD.seen_at IS NOT NULL
BEGIN
  SELECT RAISE (ABORT, 'A notice cannot be changed, but for who took note of it.');
END;

CREATE TRIGGER notice_insert_over BEFORE INSERT ON notice
WHEN EXISTS (SELECT 1 FROM notice WHERE id = NEW.id)
BEGIN
  SELECT RAISE (ABORT, 'This notice is in the book already.');
END;
