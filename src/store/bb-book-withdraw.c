/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

#include <glib/gi18n-lib.h>

#include "bb-moment.h"

static gboolean
move_out (BbBook         *self,
          const BbTable  *table,
          gint64          id,
          gboolean        out,
          GError        **error)
{
  const BbField *field = bb_table_find_field (table, "withdrawn_at");
  g_autofree char *moment = out ? bb_dup_now () : NULL;
  gpointer record = bb_book_load (self, table, id, error);
  gboolean done = FALSE;

  if (record == NULL)
    return FALSE;

  if (bb_field_is_set (field, record) == out)
    done = TRUE;
  else
    {
      bb_field_set_text (field, record, moment);
      done = _bb_book_write_steps (self, table, record, out ? BB_DEED_WITHDRAWN : BB_DEED_RESTORED, error);
    }
  bb_record_free (table, record);

  return done;
}

static gboolean
set_withdrawn (BbBook         *self,
               const BbTable  *table,
               gint64          id,
               gboolean        out,
               GError        **error)
{
  if (bb_table_find_field (table, "withdrawn_at") == NULL)
    {
      /* Translators: a kind of record, like "Reading". */
      g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED, _("%s: a record of this kind can't be withdrawn."),
                   _(table->title));
      return FALSE;
    }

  return _bb_book_begin (self, error) && _bb_book_end (self, move_out (self, table, id, out, error), error);
}

/**
 * bb_book_withdraw:
 * @self: a book
 * @table: a table of the book
 * @id: a record's key
 * @error: return location for a #GError
 *
 * Takes a record out of use. Nothing is deleted: bb_book_restore() takes it back. A revision is withdrawn by
 * bb_book_set_state().
 *
 * Returns: %FALSE with %BB_STORE_ERROR_NOT_FOUND, %BB_STORE_ERROR_REFUSED for a table without that, or another error
 */
gboolean
bb_book_withdraw (BbBook         *self,
                  const BbTable  *table,
                  gint64          id,
                  GError        **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), FALSE);

  return set_withdrawn (self, table, id, TRUE, error);
}

/**
 * bb_book_restore:
 * @self: a book
 * @table: a table of the book
 * @id: a record's key
 * @error: return location for a #GError
 *
 * Takes a withdrawn record back into use.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_NOT_FOUND, %BB_STORE_ERROR_REFUSED for a table without that, or another error
 */
gboolean
bb_book_restore (BbBook         *self,
                 const BbTable  *table,
                 gint64          id,
                 GError        **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), FALSE);

  return set_withdrawn (self, table, id, FALSE, error);
}
