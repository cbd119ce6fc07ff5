/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-jobs.h"

#include "bb-book-private.h"

static gboolean
note_calibration (BbBook      *self,
                  gint64       id,
                  const char  *day,
                  GError     **error)
{
  g_autoptr (BbEquipment) machine = bb_book_load (self, &bb_equipment_table, id, error);

  if (machine == NULL)
    return FALSE;
  g_free (machine->calibrated_at);
  machine->calibrated_at = g_strdup (day);

  return _bb_book_save_within (self, &bb_equipment_table, machine, error);
}

/**
 * bb_book_note_calibration:
 * @self: a book
 * @equipment: the key of a machine
 * @day: (nullable): the day on which it was measured and put right, as `YYYY-MM-DD`; %NULL where that was a mistake
 *   and it never was
 * @error: return location for a #GError
 *
 * Returns: %FALSE with %BB_STORE_ERROR_NOT_FOUND, or another error
 */
gboolean
bb_book_note_calibration (BbBook      *self,
                          gint64       equipment,
                          const char  *day,
                          GError     **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), FALSE);

  return _bb_book_begin (self, error) && _bb_book_end (self, note_calibration (self, equipment, day, error), error);
}

/**
 * bb_book_load_events:
 * @self: a book
 * @table: a table of the book
 * @id: the key of a record
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable) (element-type BbEvent): what was done to the record, and by whom, in that order;
 *   the array frees it. %NULL with an error
 */
GPtrArray *
bb_book_load_events (BbBook         *self,
                     const BbTable  *table,
                     gint64          id,
                     GError        **error)
{
  /* The name of a table is the program's own. */
  g_autofree char *rest = g_strdup_printf ("WHERE subject = '%s' AND subject_id = ?1 ORDER BY id", table->name);

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  return _bb_book_load_many (self, &bb_event_table, rest, id, error);
}
