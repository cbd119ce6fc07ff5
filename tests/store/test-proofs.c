/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "store-helpers.h"

#include <string.h>

/* What "proven" rests on: the rule and its signature, and how a proof is lost; what the database holds by itself is
 * tried by plain SQL, on a connection without our settings. */

typedef struct {
  BbBook *book;
  Shop *shop;
  sqlite3 *plain;
  gint64 revision;
} Proofs;

static void
set_up (Proofs        *self,
        gconstpointer  data)
{
  g_autofree char *path = helper_new_path ();

  (void) data;
  self->book = helper_create (path);
  self->shop = helper_fill (self->book);
  self->revision = self->shop->revision->id;
  self->plain = helper_open_plain (path);
  g_assert_cmpint (helper_run_plain (self->plain, "PRAGMA foreign_keys = ON"), ==, SQLITE_OK);
}

static void
tear_down (Proofs        *self,
           gconstpointer  data)
{
  (void) data;
  sqlite3_close (self->plain);
  helper_shop_free (self->shop);
  helper_close (self->book);
}

static int
get_state (Proofs *self)
{
  g_autoptr (BbStanding) standing = bb_book_load_standing (self->book, self->revision, NULL);

  return standing->state;
}

static void
expect_refused (Proofs     *self,
                gboolean    overrule,
                const char *reason,
                GQuark      domain,
                int         code,
                const char *part)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (bb_book_sign (self->book, self->revision, overrule, reason, &error));
  g_assert_error (error, domain, code);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, part));
  g_assert_cmpint (get_state (self), !=, BB_STATE_PROVEN);
  g_assert_cmpint (helper_count_plain (self->plain, "SELECT COUNT(*) FROM signature"), ==, 0);
}

static void
sign (Proofs     *self,
      gboolean    overrule,
      const char *reason)
{
  g_autoptr (GError) error = NULL;

  bb_book_sign (self->book, self->revision, overrule, reason, &error);
  g_assert_no_error (error);
  g_assert_cmpint (get_state (self), ==, BB_STATE_PROVEN);
}

G_GNUC_PRINTF (3, 4) static void
expect (Proofs     *self,
        int         wanted,
        const char *format,
        ...)
{
  g_autofree char *sql = NULL;
  va_list args;
  int found = 0;

  va_start (args, format);
  sql = g_strdup_vprintf (format, args);
  va_end (args);
  found = helper_run_plain (self->plain, sql);
  if (found != wanted)
    g_error ("%s: %d, expected %d (%s)", sql, found, wanted, sqlite3_errmsg (self->plain));
}

static gint64
find_passed (Proofs *self)
{
  return helper_count_plain (self->plain, "SELECT MIN (wash_test) FROM passed_test");
}

static BbReading *
make_failure (gint64 wash_test,
              gint64 cycles)
{
  BbReading *reading = helper_make_reading (wash_test, cycles);

  reading->change = BB_GRADE_3;

  return reading;
}

static void
test_rule_and_signature (Proofs        *self,
                         gconstpointer  data)
{
  g_autoptr (BbSignature) signature = NULL;
  g_autoptr (BbStanding) standing = NULL;

  (void) data;
  expect_refused (self, FALSE, NULL, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED, "on trial");
  helper_put_on_trial (self->book, self->revision);
  expect_refused (self, FALSE, NULL, BB_STORE_ERROR, BB_STORE_ERROR_UNPROVEN, "asks for 3 specimens");
  helper_add_passed (self->book, self->revision, 3);
  bb_book_set_person (self->book, 0);
  expect_refused (self, FALSE, NULL, BB_STORE_ERROR, BB_STORE_ERROR_UNPROVEN, "who you are");
  bb_book_set_person (self->book, self->shop->person->id);
  g_assert_cmpint (bb_book_find_signature (self->book, self->revision, &signature, NULL), ==, 0);

  sign (self, FALSE, "3 of 3.");
  g_assert_cmpint (bb_book_find_signature (self->book, self->revision, &signature, NULL), ==, 1);
  standing = bb_book_load_standing (self->book, self->revision, NULL);
  g_assert_cmpstr (standing->since, ==, signature->signed_at);
  g_assert_cmpint (standing->person, ==, self->shop->person->id);
  g_assert_cmpint (signature->person, ==, self->shop->person->id);
  g_assert_cmpint (signature->overruled, ==, 0);
  g_assert_cmpint (signature->passed, ==, 3);
  g_assert_cmpint (signature->failed, ==, 0);
  g_assert_cmpint (signature->needed, ==, 3);
  g_assert_cmpstr (signature->reason, ==, "3 of 3.");
}

static void
test_rule_of_the_shop (Proofs        *self,
                       gconstpointer  data)
{
  g_autoptr (BbShop) shop = bb_book_load_shop (self->book, NULL);
  g_autoptr (BbShop) stored = NULL;
  g_autoptr (BbShop) second = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_cmpint (shop->id, ==, BB_INTEGER_NONE);
  g_assert_cmpint (shop->proof_specimens, ==, 3);
  shop->name = g_strdup ("Quellenhof Prints");
  shop->proof_specimens = 4;
  helper_save (self->book, &bb_shop_table, shop);
  stored = bb_book_load_shop (self->book, NULL);
  g_assert_cmpint (stored->proof_specimens, ==, 4);

  helper_put_on_trial (self->book, self->revision);
  helper_add_passed (self->book, self->revision, 3);
  expect_refused (self, FALSE, NULL, BB_STORE_ERROR, BB_STORE_ERROR_UNPROVEN, "asks for 4 specimens");
  shop->proof_specimens = 3;
  helper_save (self->book, &bb_shop_table, shop);
  sign (self, FALSE, NULL);

  second = bb_shop_new ();
  second->name = g_strdup ("Another");
  g_assert_false (bb_book_save (self->book, &bb_shop_table, second, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_EXISTS);

  /* A stricter rule is for proofs to come. */
  shop->proof_specimens = 10;
  helper_save (self->book, &bb_shop_table, shop);
  g_assert_cmpint (get_state (self), ==, BB_STATE_PROVEN);
}

static void
test_lead_overrules (Proofs        *self,
                     gconstpointer  data)
{
  g_autoptr (BbPerson) operator = helper_make_person ("OP");
  g_autoptr (BbSignature) signature = NULL;

  (void) data;
  operator->role = BB_ROLE_OPERATOR;
  helper_save (self->book, &bb_person_table, operator);
  helper_put_on_trial (self->book, self->revision);
  expect_refused (self, TRUE, NULL, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "reason: ");
  expect_refused (self, TRUE, "  ", BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "reason: ");
  bb_book_set_person (self->book, operator->id);
  expect_refused (self, TRUE, "It will do.", BB_STORE_ERROR, BB_STORE_ERROR_REFUSED, "Only a lead");
  bb_book_set_person (self->book, self->shop->person->id);
  sign (self, TRUE, "Ten years of the same shirt.");

  g_assert_cmpint (bb_book_find_signature (self->book, self->revision, &signature, NULL), ==, 1);
  g_assert_cmpint (signature->overruled, ==, 1);
  g_assert_cmpstr (signature->reason, ==, "Ten years of the same shirt.");
}

/* The revision is back on trial in the transaction of the reading, with a notice and the events of both. */
static void
test_failure_takes_the_proof_back (Proofs        *self,
                                   gconstpointer  data)
{
  g_autoptr (BbReading) failure = NULL;
  g_autoptr (BbStanding) standing = NULL;
  g_autoptr (GPtrArray) notices = NULL;
  g_autofree char *news = NULL;
  g_autofree char *log = NULL;
  const BbNotice *notice = NULL;

  (void) data;
  helper_prove (self->book, self->revision);
  failure = make_failure (self->shop->wash_test->id, 10);
  helper_save (self->book, &bb_reading_table, failure);

  standing = bb_book_load_standing (self->book, self->revision, NULL);
  g_assert_cmpint (standing->state, ==, BB_STATE_ON_TRIAL);
  notices = bb_book_load_notices (self->book, FALSE, NULL);
  g_assert_cmpuint (notices->len, ==, 1);
  notice = notices->pdata[0];
  g_assert_cmpint (notice->news, ==, BB_NEWS_FAILED);
  g_assert_cmpint (notice->revision, ==, self->revision);
  g_assert_cmpint (notice->wash_test, ==, failure->wash_test);
  g_assert_cmpint (notice->person, ==, self->shop->person->id);
  news = bb_book_describe_notice (self->book, notice, NULL);
  g_assert_cmpstr (news, ==, "R-1.1 is back on trial: specimen W-1 failed after 10 washes.");
  g_assert_cmpstr (standing->reason, ==, news);
  log = helper_query_plain (self->plain, "SELECT group_concat (subject || ' ' || deed) FROM (SELECT * FROM event "
                                         "ORDER BY id DESC LIMIT 3)");
  g_assert_cmpstr (log, ==, "reading added,notice added,standing state");

  /* A further failure of what is on trial is no news. */
  g_clear_pointer (&failure, bb_reading_free);
  failure = make_failure (find_passed (self), 20);
  helper_save (self->book, &bb_reading_table, failure);
  g_assert_cmpint (helper_count_plain (self->plain, "SELECT COUNT(*) FROM notice"), ==, 1);
  g_assert_cmpint (helper_count_plain (self->plain, "SELECT COUNT(DISTINCT wash_test) FROM failed_reading"), ==, 2);
}

/* A specimen that stood its plan has stood it, however long it is washed on. */
static void
test_failure_after_the_plan_is_none (Proofs        *self,
                                     gconstpointer  data)
{
  g_autoptr (BbReading) late = NULL;

  (void) data;
  helper_prove (self->book, self->revision);
  late = make_failure (find_passed (self), 60);
  helper_save (self->book, &bb_reading_table, late);
  g_assert_cmpint (get_state (self), ==, BB_STATE_PROVEN);
}

static void
test_what_is_not_saved_takes_nothing_back (Proofs        *self,
                                           gconstpointer  data)
{
  g_autoptr (BbReading) failure = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  helper_prove (self->book, self->revision);
  /* There is a reading at 25 already. */
  failure = make_failure (find_passed (self), 25);
  g_assert_false (bb_book_save (self->book, &bb_reading_table, failure, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_EXISTS);
  g_assert_cmpint (get_state (self), ==, BB_STATE_PROVEN);
  g_assert_cmpint (helper_count_plain (self->plain, "SELECT COUNT(*) FROM notice"), ==, 0);
}

static void
test_corrected_reading_takes_the_proof_back (Proofs        *self,
                                             gconstpointer  data)
{
  g_autoptr (GPtrArray) readings = NULL;
  BbReading *reading = NULL;

  (void) data;
  helper_prove (self->book, self->revision);
  readings = bb_book_load_referring (self->book, &bb_reading_table, &bb_wash_test_table, find_passed (self), NULL);
  reading = readings->pdata[0];
  reading->note = g_strdup ("Looked at again.");
  helper_save (self->book, &bb_reading_table, reading);
  g_assert_cmpint (get_state (self), ==, BB_STATE_PROVEN);

  reading->crack = BB_CRACK_HAIRLINE;
  helper_save (self->book, &bb_reading_table, reading);
  g_assert_cmpint (get_state (self), ==, BB_STATE_ON_TRIAL);
}

/* Without its specimens a proof is none; with the rule overruled it never rested on them. */
static void
test_evidence_withdrawn (Proofs        *self,
                         gconstpointer  data)
{
  g_autoptr (GPtrArray) notices = NULL;
  g_autoptr (GError) error = NULL;
  gint64 specimen = 0;

  (void) data;
  helper_prove (self->book, self->revision);
  specimen = find_passed (self);
  g_assert_true (bb_book_withdraw (self->book, &bb_wash_test_table, specimen, &error));
  g_assert_no_error (error);
  g_assert_cmpint (get_state (self), ==, BB_STATE_ON_TRIAL);
  notices = bb_book_load_notices (self->book, FALSE, NULL);
  g_assert_cmpint (((const BbNotice *) notices->pdata[0])->news, ==, BB_NEWS_EVIDENCE_GONE);

  sign (self, TRUE, "Two will do: the third label fell off.");
  g_assert_true (bb_book_withdraw (self->book, &bb_wash_test_table, find_passed (self), &error));
  g_assert_cmpint (get_state (self), ==, BB_STATE_PROVEN);
}

static void
assert_line_failed (Proofs *self,
                    gint64  n_failed)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) lines = bb_book_load_lines (self->book, &bb_recipe_table, &self->shop->recipe->id, 1, &error);

  g_assert_no_error (error);
  g_assert_cmpint (((const BbRecipeLine *) g_ptr_array_index (lines, 0))->failed, ==, n_failed);
}

static void
test_failed_specimen_restored (Proofs        *self,
                               gconstpointer  data)
{
  g_autoptr (BbReading) failure = make_failure (self->shop->wash_test->id, 10);
  g_autoptr (GError) error = NULL;

  (void) data;
  helper_save (self->book, &bb_reading_table, failure);
  helper_put_on_trial (self->book, self->revision);
  helper_add_passed (self->book, self->revision, 3);
  expect_refused (self, FALSE, NULL, BB_STORE_ERROR, BB_STORE_ERROR_UNPROVEN, "1 specimen of this revision failed");
  assert_line_failed (self, 1);
  g_assert_true (bb_book_withdraw (self->book, &bb_wash_test_table, self->shop->wash_test->id, &error));
  assert_line_failed (self, 0);
  sign (self, FALSE, NULL);

  g_assert_true (bb_book_restore (self->book, &bb_wash_test_table, self->shop->wash_test->id, &error));
  g_assert_no_error (error);
  g_assert_cmpint (get_state (self), ==, BB_STATE_ON_TRIAL);
}

/* Overruled once, a failure that comes later takes it back all the same; the one that was overruled does not. */
static void
test_overruled_proof_is_taken_back (Proofs        *self,
                                    gconstpointer  data)
{
  g_autoptr (BbReading) failure = make_failure (self->shop->wash_test->id, 10);
  g_autoptr (BbReading) later = NULL;

  (void) data;
  helper_save (self->book, &bb_reading_table, failure);
  helper_put_on_trial (self->book, self->revision);
  sign (self, TRUE, "It was the wrong detergent.");
  failure->note = g_strdup ("Wrong detergent.");
  helper_save (self->book, &bb_reading_table, failure);
  g_assert_cmpint (get_state (self), ==, BB_STATE_PROVEN);
  later = make_failure (self->shop->wash_test->id, 15);
  helper_save (self->book, &bb_reading_table, later);
  g_assert_cmpint (get_state (self), ==, BB_STATE_ON_TRIAL);
}

static void
test_withdrawal_undone (Proofs        *self,
                        gconstpointer  data)
{
  g_autoptr (BbSignature) before = NULL;
  g_autoptr (BbSignature) after = NULL;
  g_autoptr (BbReading) failure = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  helper_prove (self->book, self->revision);
  g_assert_cmpint (bb_book_find_signature (self->book, self->revision, &before, NULL), ==, 1);
  g_assert_true (bb_book_set_state (self->book, self->revision, BB_STATE_WITHDRAWN, NULL, &error));
  g_assert_true (bb_book_undo_withdrawal (self->book, self->revision, &error));
  g_assert_cmpint (bb_book_find_signature (self->book, self->revision, &after, NULL), ==, 1);
  g_assert_cmpint (after->id, ==, before->id);

  g_assert_true (bb_book_set_state (self->book, self->revision, BB_STATE_WITHDRAWN, NULL, &error));
  failure = make_failure (self->shop->wash_test->id, 10);
  helper_save (self->book, &bb_reading_table, failure);
  g_assert_cmpint (get_state (self), ==, BB_STATE_WITHDRAWN);
  g_assert_true (bb_book_undo_withdrawal (self->book, self->revision, &error));
  g_assert_no_error (error);
  g_assert_cmpint (get_state (self), ==, BB_STATE_ON_TRIAL);
}

static void
test_open_jobs_are_named (Proofs        *self,
                          gconstpointer  data)
{
  g_autoptr (GPtrArray) open = NULL;
  g_autoptr (GPtrArray) struck = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  helper_fill_jobs (self->book, self->shop);
  open = bb_book_load_open_jobs (self->book, self->revision, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (open->len, ==, 1);
  g_assert_cmpstr (((const BbJob *) open->pdata[0])->code, ==, self->shop->job->code);
  g_assert_true (bb_book_withdraw (self->book, &bb_job_line_table, self->shop->line->id, &error));
  struck = bb_book_load_open_jobs (self->book, self->revision, &error);
  g_assert_cmpuint (struck->len, ==, 0);
}

static void
test_notice_is_seen_once (Proofs        *self,
                          gconstpointer  data)
{
  g_autoptr (BbReading) failure = NULL;
  g_autoptr (GPtrArray) notices = NULL;
  g_autoptr (GPtrArray) unseen = NULL;
  g_autoptr (GPtrArray) all = NULL;
  g_autoptr (GError) error = NULL;
  gint64 id = 0;

  (void) data;
  helper_prove (self->book, self->revision);
  failure = make_failure (self->shop->wash_test->id, 10);
  helper_save (self->book, &bb_reading_table, failure);
  notices = bb_book_load_notices (self->book, FALSE, NULL);
  id = ((const BbNotice *) notices->pdata[0])->id;
  g_assert_true (bb_book_see_notice (self->book, id, &error));
  g_assert_true (bb_book_see_notice (self->book, id, &error));
  unseen = bb_book_load_notices (self->book, FALSE, NULL);
  all = bb_book_load_notices (self->book, TRUE, NULL);
  g_assert_cmpuint (unseen->len, ==, 0);
  g_assert_cmpuint (all->len, ==, 1);
  g_assert_cmpint (((const BbNotice *) all->pdata[0])->seen_by, ==, self->shop->person->id);
  g_assert_false (bb_book_see_notice (self->book, 999, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
}

/* Plain SQL: nobody comes to a proof by the back door. */
static void
test_no_way_around_the_signature (Proofs        *self,
                                  gconstpointer  data)
{
  (void) data;
  helper_put_on_trial (self->book, self->revision);
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "UPDATE standing SET state = 'proven'");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "UPDATE standing SET state = 'proven', person = NULL");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "INSERT INTO signature (revision, signed_at, person, overruled, passed, "
          "failed, needed) VALUES (1, '2025-03-14', 1, 1, 0, 0, 1)");
  expect (self, SQLITE_CONSTRAINT_NOTNULL, "INSERT INTO signature (revision, signed_at, overruled, passed, failed, "
          "needed) VALUES (1, '2025-03-14', 0, 0, 0, 1)");

  /* Signed, and not borne out; then borne out by fewer than the shop asks for. */
  expect (self, SQLITE_OK, "INSERT INTO signature (revision, signed_at, person, overruled, passed, failed, needed) "
          "VALUES (1, '2025-03-14', 1, 0, 0, 0, 1)");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "UPDATE standing SET state = 'proven', since = '2025-03-14', person = 1");
  helper_add_passed (self->book, self->revision, 2);
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "UPDATE standing SET state = 'proven', since = '2025-03-14', person = 1");
  expect (self, SQLITE_OK, "INSERT INTO wash_test (code, revision, method, plan_cycles, made_at) "
          "VALUES ('X', 1, 'shop', 25, '2025-03-14')");
  expect (self, SQLITE_OK, "INSERT INTO reading (wash_test, cycles, change, stain, crack, read_at) "
          "SELECT id, 25, '5', '5', 'none', '2025-03-14' FROM wash_test WHERE code = 'X'");
  /* Another person's signature is not this person's. */
  expect (self, SQLITE_OK, "INSERT INTO person (code, name, role) VALUES ('ZZ', 'Zed', 'lead')");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "UPDATE standing SET state = 'proven', since = '2025-03-14', person = 2");
  expect (self, SQLITE_OK, "UPDATE standing SET state = 'proven', since = '2025-03-14', person = 1");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "UPDATE standing SET since = '2025-03-15'");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "UPDATE standing SET person = 2");
}

/* Nor by adding the state, as a whole book is brought in. */
static void
test_no_way_around_by_adding (Proofs        *self,
                              gconstpointer  data)
{
  (void) data;
  expect (self, SQLITE_OK, "DELETE FROM standing");
#define ADD_PROVEN "INSERT INTO standing (revision, state, since, person) VALUES (1, 'proven', '2025-03-14', 1)"
  expect (self, SQLITE_CONSTRAINT_TRIGGER, ADD_PROVEN);
  expect (self, SQLITE_OK, "INSERT INTO signature (revision, signed_at, person, overruled, passed, failed, needed) "
          "VALUES (1, '2025-03-14', 1, 0, 2, 0, 2)");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, ADD_PROVEN);
  helper_add_passed (self->book, self->revision, 2);
  /* Two were enough then, or where it is from. */
  expect (self, SQLITE_OK, ADD_PROVEN);
#undef ADD_PROVEN
}

static void
test_signatures_and_notices_are_kept (Proofs        *self,
                                      gconstpointer  data)
{
  g_autoptr (BbReading) failure = NULL;

  (void) data;
  helper_prove (self->book, self->revision);
  failure = make_failure (self->shop->wash_test->id, 10);
  helper_save (self->book, &bb_reading_table, failure);
  for (guint i = 0; i < bb_signature_table.n_fields; i++)
    expect (self, SQLITE_CONSTRAINT_TRIGGER, "UPDATE signature SET %s = %s", bb_signature_table.fields[i].name,
            bb_signature_table.fields[i].name);
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "DELETE FROM signature");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "INSERT OR REPLACE INTO signature SELECT * FROM signature");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "DELETE FROM notice");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "INSERT OR REPLACE INTO notice SELECT * FROM notice");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "UPDATE notice SET cycles = 1");
  expect (self, SQLITE_OK, "UPDATE notice SET seen_at = '2025-03-14'");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "UPDATE notice SET seen_at = NULL");
}

/* Plain SQL: what would take a proof away is refused while the revision still counts as proven. */
static void
test_no_way_past_the_proof (Proofs        *self,
                            gconstpointer  data)
{
  gint64 specimen = 0;
  gint64 reading = 0;

  (void) data;
  helper_prove (self->book, self->revision);
  specimen = find_passed (self);
  reading = helper_count_plain (self->plain, "SELECT MAX (id) FROM reading");
#define READING(head, change, stain, crack) \
  head " INTO reading (wash_test, cycles, change, stain, crack, read_at) VALUES (%" G_GINT64_FORMAT \
  ", %d, '" change "', '" stain "', '" crack "', '2025-05-01')"
  expect (self, SQLITE_CONSTRAINT_TRIGGER, READING ("INSERT", "3-4", "5", "none"), specimen, 20);
  expect (self, SQLITE_CONSTRAINT_TRIGGER, READING ("INSERT", "5", "3-4", "none"), specimen, 20);
  expect (self, SQLITE_CONSTRAINT_TRIGGER, READING ("INSERT", "5", "5", "hairline"), specimen, 20);
  expect (self, SQLITE_CONSTRAINT_TRIGGER, READING ("INSERT OR REPLACE", "1", "5", "none"), specimen, 25);
  expect (self, SQLITE_CONSTRAINT_TRIGGER, READING ("INSERT OR IGNORE", "1", "5", "none"), specimen, 20);
  expect (self, SQLITE_OK, READING ("INSERT", "4", "4", "none"), specimen, 30);
#undef READING
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "INSERT OR REPLACE INTO reading (id, wash_test, cycles, change, crack, "
          "read_at) VALUES (%" G_GINT64_FORMAT ", 1, 99, '5', 'none', '2025-05-01')", reading);
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "INSERT OR REPLACE INTO wash_test (id, code, revision, method, plan_cycles, "
          "made_at) VALUES (%" G_GINT64_FORMAT ", 'Y', 1, 'iso-6330', 25, '2025-05-01')", specimen);
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "UPDATE reading SET change = '1'");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "UPDATE reading SET stain = NULL");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "UPDATE reading SET cycles = 24 WHERE id = %" G_GINT64_FORMAT, reading);
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "DELETE FROM reading");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "UPDATE wash_test SET withdrawn_at = '2025-05-01'");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "UPDATE wash_test SET method = 'iso-6330'");
  expect (self, SQLITE_CONSTRAINT_TRIGGER, "UPDATE wash_test SET plan_cycles = 40");
  g_assert_cmpint (helper_count_plain (self->plain, "SELECT COUNT(*) FROM passed_test"), ==, 3);
  g_assert_cmpint (get_state (self), ==, BB_STATE_PROVEN);

  /* Once it is on trial again, all of it is allowed: the same statements, so that they are known to be able to work. */
  expect (self, SQLITE_OK, "UPDATE standing SET state = 'on-trial'");
  expect (self, SQLITE_OK, "UPDATE reading SET change = '1', stain = NULL");
  expect (self, SQLITE_OK, "UPDATE wash_test SET method = 'iso-6330', plan_cycles = 40, withdrawn_at = '2025-05-01'");
  expect (self, SQLITE_OK, "DELETE FROM reading");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

#define ADD(path, func) g_test_add (path, Proofs, NULL, set_up, func, tear_down)
  ADD ("/proofs/rule-and-signature", test_rule_and_signature);
  ADD ("/proofs/rule-of-the-shop", test_rule_of_the_shop);
  ADD ("/proofs/lead-overrules", test_lead_overrules);
  ADD ("/proofs/failure-takes-the-proof-back", test_failure_takes_the_proof_back);
  ADD ("/proofs/failure-after-the-plan-is-none", test_failure_after_the_plan_is_none);
  ADD ("/proofs/what-is-not-saved-takes-nothing-back", test_what_is_not_saved_takes_nothing_back);
  ADD ("/proofs/corrected-reading-takes-the-proof-back", test_corrected_reading_takes_the_proof_back);
  ADD ("/proofs/evidence-withdrawn", test_evidence_withdrawn);
  ADD ("/proofs/failed-specimen-restored", test_failed_specimen_restored);
  ADD ("/proofs/overruled-proof-is-taken-back", test_overruled_proof_is_taken_back);
  ADD ("/proofs/withdrawal-undone", test_withdrawal_undone);
  ADD ("/proofs/open-jobs-are-named", test_open_jobs_are_named);
  ADD ("/proofs/notice-is-seen-once", test_notice_is_seen_once);
  ADD ("/proofs/no-way-around-the-signature", test_no_way_around_the_signature);
  ADD ("/proofs/no-way-around-by-adding", test_no_way_around_by_adding);
  ADD ("/proofs/signatures-and-notices-are-kept", test_signatures_and_notices_are_kept);
  ADD ("/proofs/no-way-past-the-proof", test_no_way_past_the_proof);
#undef ADD

  return g_test_run ();
}
