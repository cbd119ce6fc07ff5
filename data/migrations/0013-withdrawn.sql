-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- What is withdrawn is found again by whoever asks for it. Its words stand in the searches too, under its key made
-- negative; the program writes them after the last migration.

CREATE INDEX recipe_withdrawn ON recipe (id) WHERE withdrawn_at IS NOT NULL;
CREATE INDEX blank_withdrawn ON blank (id) WHERE withdrawn_at IS NOT NULL;
CREATE INDEX supply_withdrawn ON supply (id) WHERE withdrawn_at IS NOT NULL;
CREATE INDEX wash_test_withdrawn ON wash_test (id) WHERE withdrawn_at IS NOT NULL;
CREATE INDEX customer_withdrawn ON customer (id) WHERE withdrawn_at IS NOT NULL;
CREATE INDEX equipment_withdrawn ON equipment (id) WHERE withdrawn_at IS NOT NULL;
CREATE INDEX lot_withdrawn ON lot (id) WHERE withdrawn_at IS NOT NULL;
CREATE INDEX wash_plan_withdrawn ON wash_plan (id) WHERE withdrawn_at IS NOT NULL;
