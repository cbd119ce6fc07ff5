/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-pictures.h"

#include <glib/gi18n-lib.h>

#include "bb-book-private.h"
#include "bb-error.h"

/* The key of the picture with these bytes; 0 where the book has none. */
static gboolean
find_picture (BbBook      *self,
              const char  *code,
              gint64      *id,
              GError     **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, "SELECT id FROM picture WHERE code = ?1", error);
  BbStep step = BB_STEP_ERROR;

  *id = 0;
  if (statement == NULL)
    return FALSE;

  bb_statement_bind_text (statement, 1, code);
  step = bb_statement_step (statement, error);
  if (step == BB_STEP_ROW)
    *id = bb_statement_get_integer (statement, 0);

  return step != BB_STEP_ERROR;
}

static gboolean
write_content (BbBook  *self,
               gint64   picture,
               GBytes  *content,
               GError **error)
{
  g_autoptr (BbStatement) statement = NULL;

  statement = bb_db_prepare (self->db,
                             "INSERT INTO picture_content (picture, content) VALUES (?1, ?2) "
                             "ON CONFLICT (picture) DO NOTHING",
                             error);
  if (statement == NULL)
    return FALSE;

  bb_statement_bind_integer (statement, 1, picture);
  bb_statement_bind_bytes (statement, 2, content);

  return bb_statement_run (statement, error);
}

static gboolean
add_within (BbBook     *self,
            BbPicture  *picture,
            GBytes     *content,
            GError    **error)
{
  gint64 id = 0;

  if (!find_picture (self, picture->code, &id, error))
    return FALSE;

  if (id != 0)
    picture->id = id;
  else if (!_bb_book_save_within (self, &bb_picture_table, picture, error))
    return FALSE;

  return write_content (self, picture->id, content, error);
}

/**
 * bb_book_add_picture:
 * @self: a book
 * @picture: its name and size in pixels; gets its key, its SHA-256 and its size in bytes
 * @content: its bytes
 * @error: return location for a #GError
 *
 * Takes a picture into the book. Bytes that the book has already are not stored again, whatever they are called now;
 * a picture that came into the book without its bytes gets them.
 *
 * Returns: %FALSE with a %BB_STORE_ERROR, or with %BB_MODEL_ERROR_VALUE where it is empty or larger than
 *   %BB_PICTURE_BYTES
 */
gboolean
bb_book_add_picture (BbBook     *self,
                     BbPicture  *picture,
                     GBytes     *content,
                     GError    **error)
{
  const gsize n_bytes = content != NULL ? g_bytes_get_size (content) : 0;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && picture != NULL && content != NULL, FALSE);

  if (n_bytes == 0 || n_bytes > BB_PICTURE_BYTES)
    {
      g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
                   _("“%s” has %" G_GSIZE_FORMAT " bytes; a picture in the book has 1 to %d."), picture->name, n_bytes,
                   BB_PICTURE_BYTES);
      return FALSE;
    }

  g_free (picture->code);
  picture->code = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, content);
  picture->n_bytes = (gint64) n_bytes;

  return _bb_book_begin (self, error) && _bb_book_end (self, add_within (self, picture, content, error), error);
}

/* Whether bytes are those that the picture had when it was taken in. */
static gboolean
check_content (GBytes      *content,
               const char  *code,
               GError     **error)
{
  g_autofree char *found = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, content);

  if (g_str_equal (found, code))
    return TRUE;

  g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED,
               _("The picture %.12s… is damaged: its bytes are not those that were stored."), code);
  return FALSE;
}

/**
 * bb_book_load_content:
 * @self: a book
 * @picture: a picture's key
 * @error: return location for a #GError
 *
 * Reads a picture's bytes, and holds them against its SHA-256.
 *
 * Returns: (transfer full) (nullable): the bytes; %NULL without an error where the book knows the picture but not its
 *   bytes, because it was brought in from a file of records; %NULL with a %BB_STORE_ERROR otherwise
 */
GBytes *
bb_book_load_content (BbBook  *self,
                      gint64   picture,
                      GError **error)
{
  g_autoptr (BbStatement) statement = NULL;
  g_autoptr (GBytes) content = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  statement = bb_db_prepare (self->db,
                             "SELECT p.code, c.picture, c.content FROM picture p "
                             "LEFT JOIN picture_content c ON c.picture = p.id WHERE p.id = ?1",
                             error);
  if (statement == NULL)
    return NULL;

  bb_statement_bind_integer (statement, 1, picture);
  switch (bb_statement_step (statement, error))
    {
    case BB_STEP_ROW:
      if (bb_statement_is_null (statement, 1))
        return NULL;
      content = bb_statement_dup_bytes (statement, 2);
      return check_content (content, bb_statement_get_text (statement, 0), error) ? g_steal_pointer (&content) : NULL;
    case BB_STEP_DONE:
      _bb_book_set_missing (&bb_picture_table, picture, error);
      return NULL;
    case BB_STEP_ERROR:
    default:
      return NULL;
    }
}

/**
 * bb_book_load_scans:
 * @self: a book
 * @wash_test: a specimen's key
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable) (element-type BbScan): the specimen's scans, print before fabric and each from
 *   few washes to many; %NULL with a %BB_STORE_ERROR
 */
GPtrArray *
bb_book_load_scans (BbBook  *self,
                    gint64   wash_test,
                    GError **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  return _bb_book_load_many (self, &bb_scan_table, "WHERE wash_test = ?1 ORDER BY subject DESC, cycles", wash_test,
                             error);
}
