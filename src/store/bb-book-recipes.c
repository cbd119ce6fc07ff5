/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

#include <glib/gi18n-lib.h>

#include "bb-book-current.h"
#include "bb-moment.h"

static gboolean
add_draft (BbBook  *self,
           gint64   revision,
           GError **error)
{
  g_autoptr (BbStanding) standing = bb_standing_new ();

  standing->revision = revision;
  standing->since = bb_dup_now ();
  standing->person = self->person;

  return _bb_book_save_within (self, &bb_standing_table, standing, error);
}

static gboolean
add_revision (BbBook      *self,
              BbRevision  *revision,
              GError     **error)
{
  revision->id = BB_INTEGER_NONE;
  g_clear_pointer (&revision->code, g_free);
  g_free (revision->made_at);
  revision->made_at = bb_dup_now ();
  revision->made_by = self->person;

  return _bb_book_find_next_number (self, &bb_revision_table, revision->recipe, &revision->number, error) &&
         _bb_book_save_within (self, &bb_revision_table, revision, error) &&
         add_draft (self, revision->id, error);
}

static gboolean
save_revision (BbBook      *self,
               BbRevision  *revision,
               GError     **error)
{
  int used = 0;

  if (revision->id != BB_INTEGER_NONE)
    {
      used = bb_book_revision_is_used (self, revision->id, error);
      if (used < 0)
        return FALSE;
      if (used == 0)
        return _bb_book_keep_derived (self, &bb_revision_table, revision, error) &&
               _bb_book_save_within (self, &bb_revision_table, revision, error);
    }

  return add_revision (self, revision, error);
}

/**
 * bb_book_save_revision:
 * @self: a book
 * @revision: a revision; gets its key, number, code, date, person and seal
 * @error: return location for a #GError
 *
 * Writes a revision as a person does: one without a key becomes the recipe's next, as a draft; an unused one is
 * changed; one in use is followed by the recipe's next, which needs its reason.
 *
 * Returns: %FALSE with %BB_MODEL_ERROR where a value is not allowed or the reason is missing, or another error;
 *   @revision is then as it was
 */
gboolean
bb_book_save_revision (BbBook      *self,
                       BbRevision  *revision,
                       GError     **error)
{
  g_autoptr (BbRevision) copy = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && revision != NULL, FALSE);

  copy = bb_record_copy (&bb_revision_table, revision);
  if (!_bb_book_begin (self, error) || !_bb_book_end (self, save_revision (self, copy, error), error))
    return FALSE;

  _bb_record_copy_derived (&bb_revision_table, copy, revision);

  return TRUE;
}

/**
 * bb_book_revision_is_used:
 * @self: a book
 * @revision: the key of a revision
 * @error: return location for a #GError
 *
 * A revision is in use once a wash test, a job or a run refers to it, or it is no draft any more.
 *
 * Returns: 1 if it is in use, 0 if not, -1 with an error
 */
int
bb_book_revision_is_used (BbBook  *self,
                          gint64   revision,
                          GError **error)
{
  g_autoptr (BbStatement) statement = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), -1);

  statement = bb_db_prepare (self->db, "SELECT 1 FROM used_revision WHERE revision = ?1 LIMIT 1", error);
  if (statement == NULL)
    return -1;

  bb_statement_bind_integer (statement, 1, revision);
  switch (bb_statement_step (statement, error))
    {
    case BB_STEP_ROW:
      return 1;
    case BB_STEP_DONE:
      return 0;
    case BB_STEP_ERROR:
    default:
      return -1;
    }
}

/**
 * bb_book_load_current:
 * @self: a book
 * @recipe: the key of a recipe
 * @error: return location for a #GError
 *
 * Loads the revision that counts now: the newest proven one, else the newest that is not withdrawn, else the newest.
 *
 * Returns: (transfer full) (nullable): the revision; %NULL with %BB_STORE_ERROR_NOT_FOUND where there is none, or
 *   another error
 */
BbRevision *
bb_book_load_current (BbBook  *self,
                      gint64   recipe,
                      GError **error)
{
  GError *local = NULL;
  BbRevision *revision = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  revision = _bb_book_load_where (self, &bb_revision_table, "WHERE id = (" BB_SQL_CURRENT_OF ("?1") ")", recipe,
                                  &local);
  if (g_error_matches (local, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND))
    {
      g_clear_error (&local);
      g_set_error_literal (&local, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND, _("This recipe has no revision yet."));
    }
  if (local != NULL)
    g_propagate_error (error, local);

  return revision;
}
