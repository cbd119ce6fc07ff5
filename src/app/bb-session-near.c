/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-session-near.h"

/* As many as a person compares. */
#define MOST_NEAR 8

typedef struct {
  gint64 blank;
  gint64 colourway;
} Garment;

static gpointer
read_near (BbBook    *book,
           gpointer   data,
           GError   **error)
{
  const Garment *garment = data;

  return bb_near_recipes_load (book, garment->blank, garment->colourway, MOST_NEAR, error);
}

/**
 * bb_session_load_near_async:
 * @self: a session
 * @blank: key of a garment; 0 for that of @colourway
 * @colourway: key of the garment in a colour; 0 for any colour
 * @cancellable: (nullable): drops the result, and the reading where it has not begun
 * @callback: what to call with it
 * @data: for @callback
 *
 * Finds the recipes nearest to a garment, off the main loop: all recipes are read for it.
 */
void
bb_session_load_near_async (BbSession           *self,
                            gint64               blank,
                            gint64               colourway,
                            GCancellable        *cancellable,
                            GAsyncReadyCallback  callback,
                            gpointer             data)
{
  Garment *garment = NULL;

  g_return_if_fail (BB_IS_SESSION (self) && (blank != 0 || colourway != 0));

  garment = g_new0 (Garment, 1);
  *garment = (Garment) { blank, colourway };
  bb_session_read_async (self, read_near, garment, g_free, (GDestroyNotify) bb_near_recipes_free, cancellable, callback,
                         data);
}

/**
 * bb_session_load_near_finish:
 * @self: a session
 * @result: what the callback was given
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): what was found; %NULL with an error
 */
BbNearRecipes *
bb_session_load_near_finish (BbSession     *self,
                             GAsyncResult  *result,
                             GError       **error)
{
  return bb_session_read_finish (self, result, error);
}
