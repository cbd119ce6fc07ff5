/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

static gboolean
run_form (BbBook      *self,
          const char  *sql,
          const char  *key,
          const char  *json,
          GError     **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, sql, error);

  if (statement == NULL)
    return FALSE;

  bb_statement_bind_text (statement, 1, key);
  if (json != NULL)
    bb_statement_bind_text (statement, 2, json);

  return bb_statement_run (statement, error);
}

/**
 * bb_book_keep_form:
 * @self: a book
 * @key: which form, up to 200 characters
 * @json: what was typed so far
 * @error: return location for a #GError
 *
 * Keeps a half-typed form until it is saved or dropped, in place of what was kept before.
 *
 * Returns: %FALSE with a %BB_STORE_ERROR
 */
gboolean
bb_book_keep_form (BbBook      *self,
                   const char  *key,
                   const char  *json,
                   GError     **error)
{
  const char *sql = "INSERT INTO form_draft (form, body) VALUES (?1, ?2) "
                    "ON CONFLICT (form) DO UPDATE SET body = excluded.body";

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && key != NULL && json != NULL, FALSE);

  return _bb_book_begin (self, error) && _bb_book_end (self, run_form (self, sql, key, json, error), error);
}

/**
 * bb_book_dup_form:
 * @self: a book
 * @key: which form
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): what was kept of a half-typed form; %NULL without an error where nothing was,
 *   and with one where it could not be read
 */
char *
bb_book_dup_form (BbBook      *self,
                  const char  *key,
                  GError     **error)
{
  g_autoptr (BbStatement) statement = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && key != NULL, NULL);

  statement = bb_db_prepare (self->db, "SELECT body FROM form_draft WHERE form = ?1", error);
  if (statement == NULL)
    return NULL;
  bb_statement_bind_text (statement, 1, key);

  return bb_statement_step (statement, error) == BB_STEP_ROW ? g_strdup (bb_statement_get_text (statement, 0)) : NULL;
}

/**
 * bb_book_drop_form:
 * @self: a book
 * @key: which form
 * @error: return location for a #GError
 *
 * Forgets a half-typed form, if one is kept.
 *
 * Returns: %FALSE with a %BB_STORE_ERROR
 */
gboolean
bb_book_drop_form (BbBook      *self,
                   const char  *key,
                   GError     **error)
{
  const char *sql = "DELETE FROM form_draft WHERE form = ?1";

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && key != NULL, FALSE);

  return _bb_book_begin (self, error) && _bb_book_end (self, run_form (self, sql, key, NULL, error), error);
}
