/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-exchange"

#include "bb-exchange.h"

#include <string.h>

#include "bb-book-pictures.h"
#include "bb-demo-resource.h"
#include "bb-json.h"

/* What is built into the program: the wash plans after published methods, and the invented demo shop. */
#define PLANS "/io/blankbook/Blankbook/plans/wash-plans.json"
#define DEMO_SHOP "/io/blankbook/Blankbook/demo/demo-shop.json"
#define DEMO_SCANS "/io/blankbook/Blankbook/demo/demo-scans/"

/* What the functions that fill a new book are given. */
typedef struct {
  const BbExchangeWatch *watch;
  BbImported *imported;
} Filling;

/* 1 if the book has a plan of that code, 0 if not, -1 with an error. */
static int
find_plan (BbBook     *book,
           const char *code,
           GError    **error)
{
  GError *local = NULL;
  g_autoptr (BbWashPlan) plan = bb_book_load_by_code (book, &bb_wash_plan_table, code, &local);

  if (plan != NULL)
    return 1;
  if (g_error_matches (local, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND))
    {
      g_error_free (local);
      return 0;
    }
  g_propagate_error (error, local);

  return -1;
}

/* A plan that the book has already is the shop's, whatever it has made of it. */
static gboolean
leave_out_known (BbBook    *book,
                 JsonArray *plans,
                 GError   **error)
{
  for (guint i = json_array_get_length (plans); i-- > 0;)
    {
      JsonObject *plan = json_array_get_object_element (plans, i);
      int found = find_plan (book, json_object_get_string_member (plan, "code"), error);

      if (found < 0)
        return FALSE;
      if (found == 1)
        json_array_remove_element (plans, i);
    }

  return TRUE;
}

static gboolean
add_plans (BbBook   *book,
           gpointer  data,
           GError  **error)
{
  const Filling *self = data;
  g_autoptr (GBytes) file = g_resource_lookup_data (bb_demo_get_resource (), PLANS, G_RESOURCE_LOOKUP_FLAGS_NONE,
                                                    error);
  g_autoptr (JsonNode) node = NULL;
  g_autofree char *text = NULL;

  if (file == NULL)
    return FALSE;
  node = bb_json_parse (g_bytes_get_data (file, NULL), g_bytes_get_size (file), error);
  if (node == NULL ||
      !leave_out_known (book, json_object_get_array_member (json_node_get_object (node), bb_wash_plan_table.name),
                        error))
    return FALSE;
  text = json_to_string (node, FALSE);

  return bb_exchange_import (book, text, strlen (text), self->watch, self->imported, error);
}

/**
 * bb_exchange_add_plans:
 * @book: a book
 * @imported: (out) (optional): what was done
 * @error: return location for a #GError
 *
 * Adds the wash plans after published methods that the book does not have, by their codes: parameters only, each with
 * the standard to buy, and how far its numbers can be trusted.
 *
 * Returns: %FALSE with an error as bb_exchange_import()
 */
gboolean
bb_exchange_add_plans (BbBook      *book,
                       BbImported  *imported,
                       GError     **error)
{
  Filling filling = { .imported = imported };

  g_return_val_if_fail (BB_IS_BOOK (book), FALSE);

  return add_plans (book, &filling, error);
}

/**
 * bb_exchange_make_book:
 * @path: where the book shall be
 * @error: return location for a #GError
 *
 * Makes a new book with nothing in it but the wash plans after published methods.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_EXISTS where there is a file already, or an error as bb_exchange_import();
 *   no new file is left then
 */
gboolean
bb_exchange_make_book (const char  *path,
                       GError     **error)
{
  Filling filling = { NULL, NULL };

  g_return_val_if_fail (path != NULL, FALSE);

  return bb_book_make (path, add_plans, &filling, error);
}

/* A file of records names pictures; the bytes of the demo shop's are built in beside it. */
static gboolean
add_demo_scans (BbBook  *book,
                GError **error)
{
  g_auto (GStrv) names = g_resource_enumerate_children (bb_demo_get_resource (), DEMO_SCANS,
                                                        G_RESOURCE_LOOKUP_FLAGS_NONE, error);

  for (guint i = 0; names != NULL && names[i] != NULL; i++)
    {
      g_autofree char *path = g_strconcat (DEMO_SCANS, names[i], NULL);
      g_autoptr (GBytes) content = g_resource_lookup_data (bb_demo_get_resource (), path, G_RESOURCE_LOOKUP_FLAGS_NONE,
                                                           error);
      g_autoptr (BbPicture) picture = bb_picture_new ();

      picture->name = g_strdup (names[i]);
      if (content == NULL || !bb_book_add_picture (book, picture, content, error))
        return FALSE;
    }

  return names != NULL;
}

static gboolean
add_demo (BbBook   *book,
          gpointer  data,
          GError  **error)
{
  const Filling *self = data;
  g_autoptr (GBytes) shop = g_resource_lookup_data (bb_demo_get_resource (), DEMO_SHOP, G_RESOURCE_LOOKUP_FLAGS_NONE,
                                                    error);

  return shop != NULL &&
         bb_exchange_import (book, g_bytes_get_data (shop, NULL), g_bytes_get_size (shop), self->watch, self->imported,
                             error) &&
         add_demo_scans (book, error);
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
  Filling filling = { .watch = watch, .imported = imported };

  g_return_val_if_fail (path != NULL, FALSE);

  return bb_book_make (path, add_demo, &filling, error);
}
