/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-exchange.h"

#include <glib/gstdio.h>

#include "bb-demo-resource.h"

#define DEMO_SHOP "/io/blankbook/Blankbook/demo/demo-shop.json"

static void
remove_book (const char *path)
{
  const char * const endings[] = { "", "-wal", "-shm" };

  for (guint i = 0; i < G_N_ELEMENTS (endings); i++)
    {
      g_autofree char *file = g_strconcat (path, endings[i], NULL);

      g_unlink (file);
    }
}

/**
 * bb_exchange_make_demo:
 * @path: where the book shall be
 * @watch: (nullable): how to follow and stop the work
 * @imported: (out) (optional): what was done
 * @error: return location for a #GError
 *
 * Makes a new book and takes the invented demo shop into it, which is built into the program.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_EXISTS where there is a file already, or an error as bb_exchange_import();
 *   no new file is left then
 */
gboolean
bb_exchange_make_demo (const char            *path,
                       const BbExchangeWatch *watch,
                       BbImported            *imported,
                       GError               **error)
{
  g_autoptr (GBytes) shop = NULL;
  g_autoptr (BbBook) book = NULL;
  const char *text = NULL;
  gsize length = 0;

  g_return_val_if_fail (path != NULL, FALSE);

  shop = g_resource_lookup_data (bb_demo_get_resource (), DEMO_SHOP, G_RESOURCE_LOOKUP_FLAGS_NONE, error);
  if (shop == NULL)
    return FALSE;
  book = bb_book_create (path, error);
  if (book == NULL)
    return FALSE;

  text = g_bytes_get_data (shop, &length);
  if (bb_exchange_import (book, text, length, watch, imported, error))
    return bb_book_close (book, error);

  bb_book_close (book, NULL);
  remove_book (path);

  return FALSE;
}
