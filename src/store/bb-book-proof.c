/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

#include <glib/gi18n-lib.h>

#include "bb-problem.h"

/* What a proof rests on. The database itself refuses one without its signature and specimens: 0005-proof.sql. */

typedef struct {
  gint64 passed;
  gint64 failed;
} Specimens;

static gboolean
count_of (BbBook      *self,
          const char  *sql,
          gint64       revision,
          gint64      *count,
          GError     **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, sql, error);

  if (statement == NULL)
    return FALSE;

  bb_statement_bind_integer (statement, 1, revision);
  if (bb_statement_step (statement, error) != BB_STEP_ROW)
    return FALSE;
  *count = bb_statement_get_integer (statement, 0);

  return TRUE;
}

static gboolean
count_specimens (BbBook     *self,
                 gint64      revision,
                 Specimens  *specimens,
                 GError    **error)
{
  return count_of (self, "SELECT COUNT(*) FROM passed_test WHERE revision = ?1", revision, &specimens->passed, error) &&
         count_of (self, "SELECT COUNT(DISTINCT wash_test) FROM failed_reading WHERE revision = ?1", revision,
                   &specimens->failed, error);
}

/**
 * bb_book_load_shop:
 * @self: a book
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): what holds for the whole shop, or the defaults, without a key, where nothing
 *   was decided yet; save it by bb_book_save(). %NULL with an error
 */
BbShop *
bb_book_load_shop (BbBook  *self,
                   GError **error)
{
  g_autoptr (GPtrArray) shops = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  shops = _bb_book_load_many (self, &bb_shop_table, "LIMIT 1", 0, error);
  if (shops == NULL)
    return NULL;

  return shops->len > 0 ? bb_record_copy (&bb_shop_table, shops->pdata[0]) : bb_shop_new ();
}

static gboolean
is_borne_out (const Specimens *specimens,
              gint64           needed)
{
  return specimens->failed == 0 && specimens->passed >= needed;
}

static void
set_not_borne_out (const Specimens *specimens,
                   gint64           needed,
                   GError         **error)
{
  if (specimens->failed > 0)
    g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_UNPROVEN,
                 ngettext ("%d specimen of this revision failed, so it can't be signed as proven.",
                           "%d specimens of this revision failed, so it can't be signed as proven.",
                           (gulong) specimens->failed),
                 (int) specimens->failed);
  else
    g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_UNPROVEN,
                 ngettext ("The shop's rule asks for %d specimen that passed at its plan's last cycle; there are %d.",
                           "The shop's rule asks for %d specimens that passed at their plan's last cycle; "
                           "there are %d.",
                           (gulong) needed),
                 (int) needed, (int) specimens->passed);
}

/* Now, but after the revision's last signature: there can be two within a second. */
static char *
dup_moment_after (const char *last)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  g_autoptr (GTimeZone) utc = g_time_zone_new_utc ();
  g_autoptr (GDateTime) before = last != NULL ? g_date_time_new_from_iso8601 (last, utc) : NULL;
  g_autoptr (GDateTime) next = before != NULL ? g_date_time_add_seconds (before, 1) : NULL;

  return g_date_time_format (next != NULL && g_date_time_compare (next, now) > 0 ? next : now, "%Y-%m-%dT%H:%M:%SZ");
}

static int
find_last_signature (BbBook       *self,
                     gint64        revision,
                     BbSignature **signature,
                     GError      **error)
{
  g_autoptr (GPtrArray) found = _bb_book_load_many (self, &bb_signature_table,
                                                    "WHERE revision = ?1 ORDER BY signed_at DESC LIMIT 1", revision,
                                                    error);

  *signature = found != NULL && found->len > 0 ? bb_record_copy (&bb_signature_table, found->pdata[0]) : NULL;

  return found == NULL ? -1 : *signature != NULL ? 1 : 0;
}

static gboolean
write_signed (BbBook             *self,
              BbStanding         *standing,
              const BbSignature  *signature,
              GError            **error)
{
  standing->state = BB_STATE_PROVEN;
  standing->person = signature->person;
  g_free (standing->since);
  standing->since = g_strdup (signature->signed_at);
  g_free (standing->reason);
  standing->reason = g_strdup (signature->reason);

  return bb_record_validate (&bb_standing_table, standing, error) &&
         _bb_book_write_row (self, &bb_standing_table, standing, BB_DEED_STATE, error);
}

/**
 * _bb_book_sign_within:
 * @self: a book, within a transaction
 * @standing: where the revision stands: on trial
 * @overrule: whether it shall be proven although the shop's rule is not met
 * @reason: (nullable): on what grounds
 * @error: return location for a #GError
 *
 * Does what bb_book_sign() does, without a transaction of its own.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_book_sign_within (BbBook      *self,
                      BbStanding  *standing,
                      gboolean     overrule,
                      const char  *reason,
                      GError     **error)
{
  g_autoptr (BbShop) shop = bb_book_load_shop (self, error);
  g_autoptr (BbSignature) last = NULL;
  g_autoptr (BbSignature) signature = bb_signature_new ();
  Specimens specimens = { 0 };

  if (shop == NULL || !count_specimens (self, standing->revision, &specimens, error) ||
      find_last_signature (self, standing->revision, &last, error) < 0)
    return FALSE;
  if (!overrule && !is_borne_out (&specimens, shop->proof_specimens))
    {
      set_not_borne_out (&specimens, shop->proof_specimens, error);
      return FALSE;
    }
  if (self->person == 0)
    {
      g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_UNPROVEN,
                           _("A proof needs the signature of a person: say first who you are."));
      return FALSE;
    }

  signature->revision = standing->revision;
  signature->signed_at = dup_moment_after (last != NULL ? last->signed_at : NULL);
  signature->person = self->person;
  signature->overruled = is_borne_out (&specimens, shop->proof_specimens) ? 0 : 1;
  signature->reason = g_strdup (reason);
  signature->passed = specimens.passed;
  signature->failed = specimens.failed;
  signature->needed = shop->proof_specimens;

  return _bb_book_save_within (self, &bb_signature_table, signature, error) &&
         write_signed (self, standing, signature, error);
}

static gboolean
sign (BbBook      *self,
      gint64       revision,
      gboolean     overrule,
      const char  *reason,
      GError     **error)
{
  g_autoptr (BbStanding) standing = bb_book_load_standing (self, revision, error);

  if (standing == NULL)
    return FALSE;
  if (standing->state != BB_STATE_ON_TRIAL)
    {
      g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED,
                   _("Only a revision on trial can be signed as proven; this one is in the state “%s”."),
                   bb_choices_get_title (&bb_state_choices, standing->state));
      return FALSE;
    }

  return _bb_book_sign_within (self, standing, overrule, reason, error);
}

/**
 * bb_book_sign:
 * @self: a book
 * @revision: the key of a revision on trial
 * @overrule: whether it shall be proven although the shop's rule is not met
 * @reason: (nullable): on what grounds; to overrule needs one
 * @error: return location for a #GError
 *
 * Signs, in the name of the person who writes the book, that a revision is proven. By the shop's rule enough specimens
 * have to have passed at their plan's last cycle, and none failed. A lead or the owner may overrule it, for a reason
 * that is kept.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_UNPROVEN where the rule is not met or nobody signs, %BB_STORE_ERROR_REFUSED
 *   where the person may not overrule it or the revision is not on trial, %BB_MODEL_ERROR without a reason to overrule,
 *   or another error
 */
gboolean
bb_book_sign (BbBook      *self,
              gint64       revision,
              gboolean     overrule,
              const char  *reason,
              GError     **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), FALSE);

  return _bb_book_begin (self, error) &&
         _bb_book_end (self, sign (self, revision, overrule, reason, error), error);
}

/**
 * bb_book_find_signature:
 * @self: a book
 * @revision: the key of a revision
 * @signature: (out) (nullable) (transfer full): the signature that its proof rests on, or %NULL
 * @error: return location for a #GError
 *
 * Returns: 1 if the revision is proven by a signature, 0 if not, -1 with an error
 */
int
bb_book_find_signature (BbBook       *self,
                        gint64        revision,
                        BbSignature **signature,
                        GError      **error)
{
  g_autoptr (GPtrArray) found = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && signature != NULL, -1);

  *signature = NULL;
  found = _bb_book_load_many (self, &bb_signature_table,
                              "WHERE revision = ?1 AND signed_at = (SELECT s.since FROM standing s "
                              "WHERE s.revision = ?1 AND s.state = 'proven')", revision, error);
  if (found == NULL)
    return -1;
  if (found->len == 0)
    return 0;
  *signature = bb_record_copy (&bb_signature_table, found->pdata[0]);

  return 1;
}

/**
 * _bb_book_restore_proof:
 * @self: a book, within a transaction
 * @standing: where a revision stands that was withdrawn while it was proven
 * @error: return location for a #GError
 *
 * Takes a revision back to its last signature. Where that does not hold any more, by the specimens that there are now
 * or by a stricter rule of the shop, the revision is on trial.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_book_restore_proof (BbBook      *self,
                        BbStanding  *standing,
                        GError     **error)
{
  g_autoptr (BbSignature) signature = NULL;
  GError *local = NULL;
  int found = find_last_signature (self, standing->revision, &signature, error);

  if (found < 0)
    return FALSE;
  if (found == 1)
    {
      if (write_signed (self, standing, signature, &local))
        return TRUE;
      if (!g_error_matches (local, BB_STORE_ERROR, BB_STORE_ERROR_UNPROVEN))
        {
          g_propagate_error (error, local);
          return FALSE;
        }
      g_clear_error (&local);
    }

  return _bb_book_take_step (self, standing, BB_STATE_ON_TRIAL, _("The proof that it had does not hold any more."),
                             error);
}

/**
 * _bb_book_fill_from_plan:
 * @self: a book, within a transaction
 * @test: a wash test
 * @error: return location for a #GError
 *
 * Gives a wash test what follows from its plan, where it does not say it itself. What contradicts the plan the
 * database refuses.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_NOT_FOUND where there is no such plan, or another error
 */
gboolean
_bb_book_fill_from_plan (BbBook      *self,
                         BbWashTest  *test,
                         GError     **error)
{
  g_autoptr (BbWashPlan) plan = NULL;

  if (test->plan == 0)
    return TRUE;
  plan = bb_book_load (self, &bb_wash_plan_table, test->plan, error);
  if (plan == NULL)
    {
      g_prefix_error (error, "plan: ");
      return FALSE;
    }

  if (test->method == BB_CHOICE_NONE)
    test->method = plan->standard;
  if (test->plan_cycles == BB_INTEGER_NONE)
    test->plan_cycles = bb_wash_plan_get_last (plan);
  if (isnan (test->wash_c))
    test->wash_c = plan->wash_c;

  return TRUE;
}
