/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-moment.h"
#include "bb-problem.h"

/**
 * bb_book_load_standing:
 * @self: a book
 * @revision: the key of a revision
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): where the revision stands; %NULL with %BB_STORE_ERROR_NOT_FOUND or another error
 */
BbStanding *
bb_book_load_standing (BbBook  *self,
                       gint64   revision,
                       GError **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  return _bb_book_load_where (self, &bb_standing_table, "WHERE revision = ?1", revision, error);
}

/*
 * The state that a record's event wrote. The event's text is canonical JSON, in which a quotation mark inside a
 * text is escaped, so that this can only be the key and its value.
 */
static int
find_state (const BbChoices *states,
            const char      *detail)
{
  for (guint i = 0; detail != NULL && i < states->n_items; i++)
    {
      g_autofree char *pair = g_strdup_printf ("\"state\":\"%s\"", states->items[i].key);

      if (strstr (detail, pair) != NULL)
        return (int) i;
    }

  return BB_CHOICE_NONE;
}

/**
 * _bb_book_find_state_before:
 * @self: a book
 * @table: a table of the book whose records have a state
 * @id: the key of a record that was put away
 * @away: the state in which it is put away
 * @state: (inout): the state in which such records begin; the state before it was put away
 * @error: return location for a #GError
 *
 * Finds out to which state a record goes back; it is where it began if it was put away from the first.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_book_find_state_before (BbBook         *self,
                            const BbTable  *table,
                            gint64          id,
                            int             away,
                            int            *state,
                            GError        **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db,
                                                     "SELECT detail FROM event WHERE subject = ?1 AND subject_id = ?2 "
                                                     "ORDER BY id DESC", error);
  const BbChoices *states = bb_table_find_field (table, "state")->choices;
  BbStep step = BB_STEP_ERROR;

  if (statement == NULL)
    return FALSE;

  bb_statement_bind_text (statement, 1, table->name);
  bb_statement_bind_integer (statement, 2, id);
  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    {
      int found = find_state (states, bb_statement_get_text (statement, 0));

      if (found != BB_CHOICE_NONE && found != away)
        {
          *state = found;
          break;
        }
    }

  return step != BB_STEP_ERROR;
}

/* The state before the withdrawal; a draft if the revision was withdrawn from the first. */
static gboolean
find_state_before (BbBook            *self,
                   const BbStanding  *standing,
                   BbState           *state,
                   GError           **error)
{
  int found = BB_STATE_DRAFT;
  gboolean done = _bb_book_find_state_before (self, &bb_standing_table, standing->id, BB_STATE_WITHDRAWN, &found,
                                              error);

  *state = (BbState) found;

  return done;
}

static gboolean
check_step (BbBook            *self,
            const BbStanding  *standing,
            BbState            state,
            GError           **error)
{
  BbState before = state;

  if (standing->state == BB_STATE_WITHDRAWN && !find_state_before (self, standing, &before, error))
    return FALSE;
  if (bb_state_may_become ((BbState) standing->state, state) && state == before)
    return TRUE;

  /* Translators: two states of a revision, like "Draft" and "Proven". */
  g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED, _("A revision cannot go from “%s” to “%s”."),
               bb_choices_get_title (&bb_state_choices, standing->state),
               bb_choices_get_title (&bb_state_choices, (int) state));
  return FALSE;
}

/**
 * _bb_book_take_step:
 * @self: a book, within a transaction
 * @standing: where a revision stands
 * @state: the state it comes to
 * @reason: (nullable): on what grounds
 * @error: return location for a #GError
 *
 * Writes a step in the life of a revision, which the caller knows to be allowed, with its event.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_book_take_step (BbBook      *self,
                    BbStanding  *standing,
                    BbState      state,
                    const char  *reason,
                    GError     **error)
{
  standing->state = (int) state;
  standing->person = self->person;
  g_free (standing->since);
  standing->since = bb_dup_now ();
  g_free (standing->reason);
  standing->reason = g_strdup (reason);

  return bb_record_validate (&bb_standing_table, standing, error) &&
         _bb_book_write_row (self, &bb_standing_table, standing, BB_DEED_STATE, error);
}

static gboolean
set_state (BbBook      *self,
           gint64       revision,
           BbState      state,
           const char  *reason,
           GError     **error)
{
  g_autoptr (BbStanding) standing = bb_book_load_standing (self, revision, error);

  if (standing == NULL || !check_step (self, standing, state, error))
    return FALSE;
  if (state == BB_STATE_PROVEN)
    return standing->state == BB_STATE_WITHDRAWN ? _bb_book_restore_proof (self, standing, error)
                                                 : _bb_book_sign_within (self, standing, FALSE, reason, error);

  return _bb_book_take_step (self, standing, state, reason, error);
}

/**
 * bb_book_set_state:
 * @self: a book
 * @revision: the key of a revision
 * @state: the state it shall come to
 * @reason: (nullable): on what grounds
 * @error: return location for a #GError
 *
 * Moves a revision on in its life, as bb_state_may_become() allows; a withdrawn one only back to the state that it was
 * withdrawn from. To come to %BB_STATE_PROVEN is to sign, as bb_book_sign() does.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_REFUSED where the step is not allowed, %BB_STORE_ERROR_UNPROVEN where a proof
 *   lacks what it needs, or another error
 */
gboolean
bb_book_set_state (BbBook      *self,
                   gint64       revision,
                   BbState      state,
                   const char  *reason,
                   GError     **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), FALSE);

  return _bb_book_begin (self, error) &&
         _bb_book_end (self, set_state (self, revision, state, reason, error), error);
}

static gboolean
undo_withdrawal (BbBook  *self,
                 gint64   revision,
                 GError **error)
{
  g_autoptr (BbStanding) standing = bb_book_load_standing (self, revision, error);
  BbState before = BB_STATE_DRAFT;

  if (standing == NULL)
    return FALSE;
  if (standing->state != BB_STATE_WITHDRAWN)
    {
      g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED, _("This revision is not withdrawn."));
      return FALSE;
    }

  if (!find_state_before (self, standing, &before, error))
    return FALSE;

  return before == BB_STATE_PROVEN ? _bb_book_restore_proof (self, standing, error)
                                   : _bb_book_take_step (self, standing, before, NULL, error);
}

/**
 * bb_book_undo_withdrawal:
 * @self: a book
 * @revision: the key of a withdrawn revision
 * @error: return location for a #GError
 *
 * Takes a revision back to the state that it was withdrawn from; where that was proven, and the proof does not hold
 * any more, on trial.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_REFUSED where it is not withdrawn, or another error
 */
gboolean
bb_book_undo_withdrawal (BbBook  *self,
                         gint64   revision,
                         GError **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), FALSE);

  return _bb_book_begin (self, error) && _bb_book_end (self, undo_withdrawal (self, revision, error), error);
}
