/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-jobs.h"

#include <glib/gi18n-lib.h>

#include "bb-book-private.h"
#include "bb-error.h"
#include "bb-moment.h"
#include "bb-problem.h"

/* Less than nothing is left where more was drawn than was there: somebody has to weigh the container. */
#define LEFT "SELECT l.start_g + COALESCE ((SELECT SUM (change_g) FROM lot_entry WHERE lot = l.id), 0) FROM lot l "

/**
 * bb_book_get_lot_left:
 * @self: a book
 * @lot: the key of a lot
 * @left_g: (out): what is left in it by its entries, in g; less than 0 where more was drawn than was there, and NaN
 *   where the lot is not counted
 * @error: return location for a #GError
 *
 * Returns: %FALSE with %BB_STORE_ERROR_NOT_FOUND, or another error
 */
gboolean
bb_book_get_lot_left (BbBook  *self,
                      gint64   lot,
                      double  *left_g,
                      GError **error)
{
  g_autoptr (BbStatement) statement = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && left_g != NULL, FALSE);

  statement = bb_db_prepare (self->db, LEFT "WHERE l.id = ?1", error);
  if (statement == NULL)
    return FALSE;

  bb_statement_bind_integer (statement, 1, lot);
  switch (bb_statement_step (statement, error))
    {
    case BB_STEP_ROW:
      *left_g = bb_statement_is_null (statement, 0) ? (double) NAN : bb_statement_get_number (statement, 0);
      return TRUE;
    case BB_STEP_DONE:
      _bb_book_set_missing (&bb_lot_table, lot, error);
      return FALSE;
    case BB_STEP_ERROR:
    default:
      return FALSE;
    }
}

static gboolean
add_entry (BbBook      *self,
           BbLotEntry  *entry,
           GError     **error)
{
  entry->at = bb_dup_now ();
  entry->person = self->person;

  return _bb_book_find_next_number (self, &bb_lot_entry_table, entry->lot, &entry->number, error) &&
         _bb_book_save_within (self, &bb_lot_entry_table, entry, error);
}

/* Nothing is counted where it is not known what there was at first. */
static gboolean
take_out (BbBook      *self,
          BbLotEntry  *entry,
          double       amount_g,
          GError     **error)
{
  double left_g = 0;

  if (!bb_book_get_lot_left (self, entry->lot, &left_g, error))
    return FALSE;
  if (!isnan (left_g) && !isnan (amount_g))
    entry->change_g = -amount_g;

  return add_entry (self, entry, error);
}

/**
 * bb_book_use_lot:
 * @self: a book
 * @lot: the key of a lot
 * @run: the key of the run that it is used for, or 0
 * @amount_g: how much is taken out, or NaN where nobody weighed it
 * @error: return location for a #GError
 *
 * Enters that something was drawn from a lot. More may be drawn than was left, because the shelf is right and the book
 * is not: bb_book_weigh_lot() puts it right.
 *
 * Returns: %FALSE with %BB_MODEL_ERROR where the amount is not allowed, or another error
 */
gboolean
bb_book_use_lot (BbBook  *self,
                 gint64   lot,
                 gint64   run,
                 double   amount_g,
                 GError **error)
{
  g_autoptr (BbLotEntry) entry = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), FALSE);

  entry = bb_lot_entry_new ();
  entry->lot = lot;
  entry->run = run;
  entry->deed = BB_LOT_USED;

  return _bb_book_begin (self, error) && _bb_book_end (self, take_out (self, entry, amount_g, error), error);
}

/**
 * bb_book_waste_lot:
 * @self: a book
 * @lot: the key of a lot
 * @amount_g: how much was poured away or spilt
 * @note: (nullable): why
 * @error: return location for a #GError
 *
 * Enters that something was lost from a lot.
 *
 * Returns: %FALSE with %BB_MODEL_ERROR where the amount is not allowed, or another error
 */
gboolean
bb_book_waste_lot (BbBook      *self,
                   gint64       lot,
                   double       amount_g,
                   const char  *note,
                   GError     **error)
{
  g_autoptr (BbLotEntry) entry = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), FALSE);

  entry = bb_lot_entry_new ();
  entry->lot = lot;
  entry->deed = BB_LOT_WASTED;
  entry->note = g_strdup (note);

  return _bb_book_begin (self, error) && _bb_book_end (self, take_out (self, entry, amount_g, error), error);
}

static gboolean
weigh (BbBook      *self,
       BbLotEntry  *entry,
       GError     **error)
{
  g_autoptr (BbLot) lot = bb_book_load (self, &bb_lot_table, entry->lot, error);
  double left_g = 0;

  if (lot == NULL || !bb_book_get_lot_left (self, lot->id, &left_g, error))
    return FALSE;
  if (isnan (left_g))
    return bb_refuse_value (error, _("start_g: say how much the lot held at first, then what is left can be weighed."));
  if (isnan (lot->container_g))
    return bb_refuse_value (error,
                            _("container_g: say what the empty container weighs, then what is left can be weighed."));
  if (!(entry->scale_g >= lot->container_g))
    return bb_refuse_value (error, _("scale_g: the scale shows less than the empty container."));
  entry->change_g = entry->scale_g - lot->container_g - left_g;

  return add_entry (self, entry, error);
}

/**
 * bb_book_weigh_lot:
 * @self: a book
 * @lot: the key of a lot
 * @scale_g: what the scale shows, with the container, in g
 * @note: (nullable): what else was noticed
 * @error: return location for a #GError
 *
 * Corrects what is left in a lot by weighing its container.
 *
 * Returns: %FALSE with %BB_MODEL_ERROR where the lot's masses are not known or the scale shows too little, or another
 *   error
 */
gboolean
bb_book_weigh_lot (BbBook      *self,
                   gint64       lot,
                   double       scale_g,
                   const char  *note,
                   GError     **error)
{
  g_autoptr (BbLotEntry) entry = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), FALSE);

  entry = bb_lot_entry_new ();
  entry->lot = lot;
  entry->deed = BB_LOT_WEIGHED;
  entry->scale_g = scale_g;
  entry->note = g_strdup (note);

  return _bb_book_begin (self, error) && _bb_book_end (self, weigh (self, entry, error), error);
}

static gboolean
open_lot (BbBook      *self,
          gint64       id,
          const char  *day,
          GError     **error)
{
  g_autoptr (BbLot) lot = bb_book_load (self, &bb_lot_table, id, error);

  if (lot == NULL)
    return FALSE;
  if (lot->opened_at != NULL)
    return bb_refuse_value (error, _("opened_at: the container is open already."));
  lot->opened_at = g_strdup (day);

  return _bb_book_save_within (self, &bb_lot_table, lot, error);
}

/**
 * bb_book_open_lot:
 * @self: a book
 * @lot: the key of a lot
 * @day: the day on which its seal was broken, as `YYYY-MM-DD`
 * @error: return location for a #GError
 *
 * Enters that a container was opened: from then on it keeps no longer than its supply does once opened.
 *
 * Returns: %FALSE with %BB_MODEL_ERROR where it is open already or was not there yet, or another error
 */
gboolean
bb_book_open_lot (BbBook      *self,
                  gint64       lot,
                  const char  *day,
                  GError     **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && day != NULL, FALSE);

  return _bb_book_begin (self, error) && _bb_book_end (self, open_lot (self, lot, day, error), error);
}

static gboolean
dispose (BbBook            *self,
         const BbDisposal  *disposal,
         GError           **error)
{
  return bb_record_validate (&bb_disposal_table, disposal, error) &&
         bb_book_waste_lot (self, disposal->lot, disposal->amount_g, disposal->note, error) &&
         (disposal->finished != 1 || bb_book_withdraw (self, &bb_lot_table, disposal->lot, error));
}

/**
 * bb_book_dispose_of_lot:
 * @self: a book
 * @disposal: what was poured away and why, and whether the container is off the shelf
 * @error: return location for a #GError
 *
 * Enters that something was poured away, or that a container is used up; bb_book_restore() puts it back on the shelf.
 *
 * Returns: %FALSE with %BB_MODEL_ERROR where something is missing or not allowed, or another error
 */
gboolean
bb_book_dispose_of_lot (BbBook            *self,
                        const BbDisposal  *disposal,
                        GError           **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && disposal != NULL, FALSE);

  return _bb_book_begin (self, error) && _bb_book_end (self, dispose (self, disposal, error), error);
}

static BbStock *
make_stock (BbBook       *self,
            const BbLot  *lot,
            GError      **error)
{
  g_autoptr (BbStock) stock = bb_stock_new ();
  g_autoptr (BbSupply) supply = bb_book_load (self, &bb_supply_table, lot->supply, error);

  if (supply == NULL || !bb_book_get_lot_left (self, lot->id, &stock->left_g, error))
    return NULL;

  stock->id = lot->id;
  stock->code = g_strdup (lot->code);
  stock->supply = lot->supply;
  stock->name = g_strdup (supply->name);
  stock->batch = g_strdup (lot->batch);
  stock->received_at = g_strdup (lot->received_at);
  stock->start_g = lot->start_g;
  stock->opened_at = g_strdup (lot->opened_at);
  stock->last_day = bb_lot_dup_last_day (lot, supply);

  return g_steal_pointer (&stock);
}

static int
compare_stock (gconstpointer a,
               gconstpointer b)
{
  return bb_stock_compare (*(const BbStock * const *) a, *(const BbStock * const *) b);
}

/**
 * bb_book_load_stock:
 * @self: a book
 * @supply: the key of a supply, or 0 for all
 * @error: return location for a #GError
 *
 * Loads the lots that are in the shop, as they stand now.
 *
 * Returns: (transfer full) (nullable) (element-type BbStock): the lots, in the order in which they are to be used up;
 *   the array frees them. %NULL with an error
 */
GPtrArray *
bb_book_load_stock (BbBook  *self,
                    gint64   supply,
                    GError **error)
{
  g_autoptr (GPtrArray) stock = NULL;
  g_autoptr (GPtrArray) lots = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  stock = g_ptr_array_new_with_free_func (bb_stock_table.free_record);
  lots = supply != 0 ? bb_book_load_referring (self, &bb_lot_table, &bb_supply_table, supply, error)
                     : bb_book_load_all (self, &bb_lot_table, FALSE, error);
  for (guint i = 0; lots != NULL && i < lots->len; i++)
    {
      const BbLot *lot = lots->pdata[i];
      BbStock *line = NULL;

      if (lot->withdrawn_at != NULL)
        continue;
      line = make_stock (self, lot, error);
      if (line == NULL)
        return NULL;
      g_ptr_array_add (stock, line);
    }
  if (lots == NULL)
    return NULL;
  g_ptr_array_sort (stock, compare_stock);

  return g_steal_pointer (&stock);
}
