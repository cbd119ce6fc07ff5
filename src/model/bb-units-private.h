/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-quantity.h"

G_BEGIN_DECLS

/*
 * BbUnitFlags:
 * CANONICAL: stored and computed in this unit
 * METRIC, US: shown, and meant where a text names no unit, in this system
 * STEPS: may follow a larger one of the same kind, like `1 ft 2 in`
 * PER_BOX: the denominator is the area of the box in hand
 * EXACT: upper and lower case differ in meaning (MPa is not mPa)
 */
typedef enum {
  BB_UNIT_CANONICAL = 1 << 0,
  BB_UNIT_METRIC = 1 << 1,
  BB_UNIT_US = 1 << 2,
  BB_UNIT_STEPS = 1 << 3,
  BB_UNIT_PER_BOX = 1 << 4,
  BB_UNIT_EXACT = 1 << 5,
} BbUnitFlags;

/*
 * BbUnit:
 * @quantity: what it measures
 * @symbol: how it is shown
 * @words: how it may be typed, separated by '|', squares and cubes written as 2 and 3
 * @numerator, @denominator, @offset: canonical = (value − offset) · numerator / denominator. A ratio,
 *   because 14 · 127 / 5 is 355.6 to the last bit, and 14 · 25.4 is not
 * @decimals: to how many a value is rounded that has no short form in this unit
 */
typedef struct {
  BbQuantity quantity;
  const char *symbol;
  const char *words;
  double numerator;
  double denominator;
  double offset;
  int decimals;
  guint flags;
} BbUnit;

const BbUnit *_bb_unit_get_canonical  (BbQuantity    quantity);
const BbUnit *_bb_unit_get_shown      (BbQuantity    quantity,
                                       BbUnitSystem  system);
const BbUnit *_bb_unit_find           (BbQuantity    quantity,
                                       const char   *word);
const BbUnit *_bb_unit_find_any       (const char   *word);
double        _bb_unit_to_canonical   (const BbUnit *self,
                                       double        value);
double        _bb_unit_from_canonical (const BbUnit *self,
                                       double        canonical);
const char   *_bb_quantity_get_name    (BbQuantity    quantity);
const char   *_bb_quantity_get_example (BbQuantity    quantity);

G_END_DECLS
