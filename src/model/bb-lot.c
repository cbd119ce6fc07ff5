/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-lot.h"

#include <math.h>
#include <string.h>

#include "bb-day.h"
#include "bb-error.h"

static gboolean
check_lot (gconstpointer record,
           GError      **error)
{
  const BbLot *self = record;

  if (self->opened_at != NULL && self->received_at != NULL && strncmp (self->opened_at, self->received_at, 10) < 0)
    return bb_refuse_value (error, _("opened_at: the container was opened before it came into the shop."));

  return TRUE;
}

/* It is a slip of the pen as a rule; a book that holds such a container keeps it. */
static gboolean
check_written_lot (gconstpointer record,
                   GError      **error)
{
  const BbLot *self = record;

  if (self->expires_at != NULL && self->received_at != NULL && strncmp (self->expires_at, self->received_at, 10) < 0)
    return bb_refuse_value (error,
                            _("expires_at: its last day of use lies before the day on which it came into the shop."));

  return TRUE;
}

/**
 * bb_lot_dup_last_day:
 * @self: a lot
 * @supply: what is in it
 *
 * The maker's date, or the end of the days that the supply keeps once opened, whichever comes first.
 *
 * Returns: (transfer full) (nullable): the last day of use as `YYYY-MM-DD`, or %NULL if none is known
 */
char *
bb_lot_dup_last_day (const BbLot    *self,
                     const BbSupply *supply)
{
  g_autofree char *printed = NULL;
  g_autofree char *opened = NULL;

  g_return_val_if_fail (self != NULL && supply != NULL, NULL);

  if (self->expires_at != NULL)
    printed = g_strndup (self->expires_at, 10);
  if (self->opened_at != NULL && supply->open_life_days != BB_INTEGER_NONE)
    opened = bb_day_after (self->opened_at, supply->open_life_days);

  /* Days in this form are ordered as their texts are. */
  if (opened == NULL || (printed != NULL && strcmp (printed, opened) <= 0))
    return g_steal_pointer (&printed);

  return g_steal_pointer (&opened);
}

/**
 * bb_stock_is_past:
 * @self: a lot as it stands
 * @day: a day as `YYYY-MM-DD`
 *
 * Returns: %TRUE if its last day of use lies before @day
 */
gboolean
bb_stock_is_past (const BbStock *self,
                  const char    *day)
{
  return self->last_day != NULL && strncmp (self->last_day, day, strlen ("YYYY-MM-DD")) < 0;
}

/**
 * bb_stock_compare:
 * @a: a lot as it stands
 * @b: another
 *
 * The order in which lots are used up: first the one that has to be used first, of equals the one that is open, then
 * the one that came first. A lot without a last day keeps.
 *
 * Returns: less than, equal to or greater than 0, as for sorting
 */
int
bb_stock_compare (const BbStock *a,
                  const BbStock *b)
{
  int days = 0;

  if (a->last_day != NULL && b->last_day != NULL)
    days = strcmp (a->last_day, b->last_day);
  else if (a->last_day != NULL || b->last_day != NULL)
    days = a->last_day != NULL ? -1 : 1;
  if (days != 0)
    return days;
  if ((a->opened_at != NULL) != (b->opened_at != NULL))
    return a->opened_at != NULL ? -1 : 1;

  return (a->id > b->id) - (a->id < b->id);
}

/**
 * bb_stock_sum_left:
 * @stock: (element-type BbStock): lots of one supply as they stand
 * @day: a day as `YYYY-MM-DD`
 *
 * Returns: what is left in all of them that may still be used on @day, in g; NaN where there are such lots and none of
 *   them is counted
 */
double
bb_stock_sum_left (const GPtrArray *stock,
                   const char      *day)
{
  double sum_g = 0;
  guint n_usable = 0;
  guint n_counted = 0;

  for (guint i = 0; i < stock->len; i++)
    {
      const BbStock *lot = stock->pdata[i];

      if (bb_stock_is_past (lot, day))
        continue;
      n_usable++;
      if (isnan (lot->left_g))
        continue;
      n_counted++;
      sum_g += fmax (lot->left_g, 0.0);
    }

  return n_usable > 0 && n_counted == 0 ? (double) NAN : sum_g;
}

/**
 * bb_supply_is_low:
 * @self: a supply
 * @left_g: what is left of it, in g, or NaN where that is not known
 *
 * Returns: %TRUE if the shop wants to have more of it; %FALSE where it does not say how much
 */
gboolean
bb_supply_is_low (const BbSupply *self,
                  double          left_g)
{
  /* A comparison with NaN is false. */
  return left_g < self->low_stock_g;
}

BB_DEFINE_TABLE_WRITTEN (BbLot, bb_lot, "lot", N_("Lot"), BB_LOT_FIELDS, check_lot, check_written_lot)
BB_DEFINE_TABLE (BbStock, bb_stock, "stock", N_("Lot"), BB_STOCK_FIELDS, NULL)
BB_DEFINE_TABLE (BbWeighing, bb_weighing, "weighing", N_("Weigh the container"), BB_WEIGHING_FIELDS, NULL)
BB_DEFINE_TABLE (BbDisposal, bb_disposal, "disposal", N_("Use up or throw away"), BB_DISPOSAL_FIELDS, NULL)
