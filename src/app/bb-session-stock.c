/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-session-stock.h"

#include "bb-book-jobs.h"
#include "bb-moment.h"

/* What is done to a record, and on which day. */
typedef struct {
  gint64 id;
  char *day;
} Deed;

static Deed *
deed_new (gint64 id)
{
  Deed *self = g_new0 (Deed, 1);

  self->id = id;
  self->day = bb_dup_today ();

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
  g_return_if_fail (BB_IS_SESSION (self));

  bb_session_write (self, write_opening, deed_new (lot), deed_free);
}

/**
 * bb_session_note_calibration:
 * @self: a session
 * @equipment: key of a machine
 *
 * Enters that it was calibrated today.
 */
void
bb_session_note_calibration (BbSession *self,
                             gint64     equipment)
{
  g_return_if_fail (BB_IS_SESSION (self));

  bb_session_write (self, write_calibration, deed_new (equipment), deed_free);
}
