/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-like-load.h"

#include "bb-likest.h"

/* More than these nobody tells apart from one another. */
#define MOST_COLOURWAYS 50

/**
 * bb_load_colourways_like:
 * @book: a book
 * @srgb: a colour as `#rrggbb`
 * @error: return location for a #GError
 *
 * Finds which garments are of a colour like another one, for bb_book_recall(): also those that are withdrawn, since
 * they were printed once.
 *
 * Returns: (transfer full) (nullable) (element-type gint64): their keys, the likest first; %NULL with an error
 */
GArray *
bb_load_colourways_like (BbBook      *book,
                         const char  *srgb,
                         GError     **error)
{
  g_autoptr (GPtrArray) colourways = NULL;

  g_return_val_if_fail (BB_IS_BOOK (book) && srgb != NULL, NULL);

  colourways = bb_book_load_all (book, &bb_colourway_table, TRUE, error);

  return colourways != NULL ? bb_colourways_like (colourways, srgb, MOST_COLOURWAYS) : NULL;
}
