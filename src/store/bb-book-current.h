/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The key of the revision of @recipe that counts now: the newest proven one, else the newest that is not withdrawn,
 * else the newest. A revision without a standing counts as a draft. */
#define BB_SQL_CURRENT_OF(recipe) \
  "SELECT cv.id FROM revision cv LEFT JOIN standing cs ON cs.revision = cv.id WHERE cv.recipe = " recipe \
  " ORDER BY CASE cs.state WHEN 'proven' THEN 0 WHEN 'withdrawn' THEN 2 ELSE 1 END, cv.number DESC LIMIT 1"
