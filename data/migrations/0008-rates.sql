-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- What the quantities and the cost of a job are reckoned with, for the whole shop.

ALTER TABLE shop ADD COLUMN overspray_fraction REAL CHECK (overspray_fraction >= 0 AND overspray_fraction < 1);
ALTER TABLE shop ADD COLUMN line_loss_g REAL CHECK (line_loss_g BETWEEN 0 AND 1000000);
ALTER TABLE shop ADD COLUMN reserve_fraction REAL CHECK (reserve_fraction BETWEEN 0 AND 1);
ALTER TABLE shop ADD COLUMN round_up_to_g REAL CHECK (round_up_to_g BETWEEN 0 AND 1000000);
ALTER TABLE shop ADD COLUMN labour_price_per_h REAL CHECK (labour_price_per_h BETWEEN 0 AND 1000000);
ALTER TABLE shop ADD COLUMN energy_price_per_kwh REAL CHECK (energy_price_per_kwh BETWEEN 0 AND 1000000);
ALTER TABLE shop ADD COLUMN white_price_per_kg REAL CHECK (white_price_per_kg BETWEEN 0 AND 1000000);
ALTER TABLE shop ADD COLUMN colour_price_per_kg REAL CHECK (colour_price_per_kg BETWEEN 0 AND 1000000);
ALTER TABLE shop ADD COLUMN colour_g_per_m2 REAL CHECK (colour_g_per_m2 BETWEEN 0 AND 600);
