/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-session-stock.h"

#include "bb-book-jobs.h"
#include "bb-moment.h"

/* What is done to a record, and on which day; NULL for never. */
typedef struct {
  gint64 id;
  char *day;
} Deed;

static Deed *
deed_new (gint64      id,
          const char *day)
{
  Deed *self = g_new0 (Deed, 1);

  self->id = id;
  self->day = g_strdup (day);

  return self;
}

static void
deed_free (gpointer data)
{
  g_free (((Deed *) data)->day);
  g_free (data);
}

static gboolean
write_opening (BbBook   *book,
               gpointer  data,
               GError  **error)
{
  const Deed *deed = data;

  return bb_book_open_lot (book, deed->id, deed->day, error);
}

static gboolean
write_calibration (BbBook   *book,
                   gpointer  data,
                   GError  **error)
{
  const Deed *deed = data;

  return bb_book_note_calibration (book, deed->id, deed->day, error);
}

/**
 * bb_session_open_lot:
 * @self: a session
 * @lot: key of a lot
 *
 * Enters that its container was opened today.
 */
void
bb_session_open_lot (BbSession *self,
                     gint64     lot)
{
  g_autofree char *today = bb_dup_today ();

  g_return_if_fail (BB_IS_SESSION (self));

  bb_session_write (self, write_opening, deed_new (lot, today), deed_free);
}

static void
calibrated_cb (GObject      *source,
               GAsyncResult *result,
               gpointer      data)
{
  BbSession *self = BB_SESSION (source);
  BbEquipment *before = data;
  g_autoptr (GError) error = NULL;

  if (bb_session_write_finish (self, result, &error))
    g_signal_emit_by_name (self, "calibrated", before->name, before->id,
                           before->calibrated_at != NULL ? before->calibrated_at : "");
  else
    bb_session_report (self, error);

  bb_equipment_free (before);
}

/**
 * bb_session_note_calibration:
 * @self: a session
 * @machine: a machine
 *
 * Enters that it was calibrated today by the person at the bench, and offers to undo that.
 */
void
bb_session_note_calibration (BbSession         *self,
                             const BbEquipment *machine)
{
  g_autofree char *today = bb_dup_today ();

  g_return_if_fail (BB_IS_SESSION (self) && machine != NULL);

  bb_session_write_async (self, write_calibration, deed_new (machine->id, today), deed_free, calibrated_cb,
                          bb_record_copy (&bb_equipment_table, machine));
}

/**
 * bb_session_undo_calibration:
 * @self: a session
 * @equipment: key of a machine
 * @day: (nullable): the day on which it was calibrated before, as `YYYY-MM-DD`; %NULL where it never was
 *
 * Undoes bb_session_note_calibration().
 */
void
bb_session_undo_calibration (BbSession  *self,
                             gint64      equipment,
                             const char *day)
{
  g_return_if_fail (BB_IS_SESSION (self));

  bb_session_write (self, write_calibration, deed_new (equipment, day), deed_free);
}
