/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-quantity.h"
const char *
bb_quantity_get_canonical_unit (BbQuantity quantity)
{
  return quantity == BB_QUANTITY_NONE ? "" : "?";
}
char *
bb_quantity_format_with_unit (BbQuantity quantity, double canonical, const BbUnitContext *context)
{
  (void) quantity; (void) context;
  return g_strdup_printf ("%g", canonical);
}
