-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- How often a machine has to be calibrated.

ALTER TABLE equipment ADD COLUMN calibrate_days INTEGER CHECK (calibrate_days BETWEEN 1 AND 5000);
