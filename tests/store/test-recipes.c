/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "store-helpers.h"

#include <string.h>

#include "bb-canonical.h"

static void
save_revision (BbBook     *book,
               BbRevision *revision)
{
  g_autoptr (GError) error = NULL;

  bb_book_save_revision (book, revision, &error);
  g_assert_no_error (error);
}

static void
set_state (BbBook  *book,
           gint64   revision,
           BbState  state)
{
  g_autoptr (GError) error = NULL;

  bb_book_set_state (book, revision, state, "Because.", &error);
  g_assert_no_error (error);
}

static int
get_state (BbBook *book,
           gint64  revision)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbStanding) standing = bb_book_load_standing (book, revision, &error);

  g_assert_no_error (error);

  return standing->state;
}

static void
test_first_revision_is_a_draft (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autofree char *seal = bb_record_seal (&bb_revision_table, shop->revision);

  g_assert_cmpint (shop->revision->number, ==, 1);
  g_assert_cmpstr (shop->revision->code, ==, "R-1.1");
  g_assert_cmpuint (strlen (shop->revision->made_at), ==, 20);
  g_assert_true (g_str_has_suffix (shop->revision->made_at, "Z"));
  g_assert_cmpint (shop->revision->made_by, ==, shop->person->id);
  g_assert_cmpstr (shop->revision->seal, ==, seal);
  g_assert_cmpint (get_state (book, shop->revision->id), ==, BB_STATE_DRAFT);
  helper_close (book);
}

static void
test_unused_draft_is_changed (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbRevision) draft = helper_make_revision (shop->recipe->id, shop->pretreat->id);
  g_autofree char *seal = NULL;
  gint64 id = 0;

  draft->reason = g_strdup ("Warmer.");
  save_revision (book, draft);
  g_assert_cmpint (bb_book_revision_is_used (book, draft->id, NULL), ==, 0);
  id = draft->id;
  seal = g_strdup (draft->seal);

  draft->cure_c = 170;
  /* What nobody enters is not taken from the record in hand. */
  draft->number = 40;
  draft->made_by = 0;
  save_revision (book, draft);
  g_assert_cmpint (draft->id, ==, id);
  g_assert_cmpint (draft->number, ==, 2);
  g_assert_cmpint (draft->made_by, ==, shop->person->id);
  g_assert_cmpstr (draft->seal, !=, seal);
  helper_close (book);

  book = helper_open (path);
  {
    g_autoptr (BbRevision) again = bb_book_load (book, &bb_revision_table, id, NULL);

    g_assert_true (bb_record_equal (&bb_revision_table, draft, again));
  }
  helper_close (book);
}

static void
test_used_revision_is_followed (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbRevision) before = bb_record_copy (&bb_revision_table, shop->revision);
  g_autoptr (BbRevision) stored = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (bb_book_revision_is_used (book, shop->revision->id, NULL), ==, 1);
  shop->revision->cure_c = 170;
  g_assert_false (bb_book_save_revision (book, shop->revision, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_assert_true (g_str_has_prefix (error->message, "reason:"));
  g_assert_cmpint (shop->revision->id, ==, before->id);
  g_assert_cmpstr (shop->revision->code, ==, "R-1.1");
  g_assert_cmpstr (shop->revision->seal, ==, before->seal);

  shop->revision->reason = g_strdup ("It cracked.");
  save_revision (book, shop->revision);
  g_assert_cmpint (shop->revision->id, !=, before->id);
  g_assert_cmpstr (shop->revision->code, ==, "R-1.2");
  g_assert_cmpint (get_state (book, shop->revision->id), ==, BB_STATE_DRAFT);

  stored = bb_book_load (book, &bb_revision_table, before->id, NULL);
  g_assert_true (bb_record_equal (&bb_revision_table, stored, before));
  helper_close (book);
}

static void
test_states_and_undo (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  gint64 id = shop->revision->id;
  g_autoptr (GError) error = NULL;

  g_assert_false (bb_book_set_state (book, id, BB_STATE_PROVEN, NULL, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_false (bb_book_undo_withdrawal (book, id, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  g_clear_error (&error);

  set_state (book, id, BB_STATE_ON_TRIAL);
  set_state (book, id, BB_STATE_WITHDRAWN);
  /* A withdrawal is no way around the trial. */
  g_assert_false (bb_book_set_state (book, id, BB_STATE_PROVEN, NULL, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_cmpint (get_state (book, id), ==, BB_STATE_WITHDRAWN);
  g_assert_true (bb_book_undo_withdrawal (book, id, &error));
  g_assert_cmpint (get_state (book, id), ==, BB_STATE_ON_TRIAL);

  helper_add_passed (book, id, 3);
  set_state (book, id, BB_STATE_PROVEN);
  g_assert_true (bb_book_set_state (book, id, BB_STATE_WITHDRAWN, "Says \"state\":\"draft\" in it.", &error));
  set_state (book, id, BB_STATE_PROVEN);
  set_state (book, id, BB_STATE_ON_TRIAL);

  g_assert_false (bb_book_set_state (book, 999, BB_STATE_ON_TRIAL, NULL, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
  helper_close (book);
}

static void
test_current_revision (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbRecipe) empty = helper_make_recipe ("R-2", "Nothing yet", shop->blank->id);
  gint64 ids[4] = { shop->revision->id };
  g_autoptr (GError) error = NULL;

  for (guint i = 1; i < G_N_ELEMENTS (ids); i++)
    {
      g_autoptr (BbRevision) next = helper_make_revision (shop->recipe->id, shop->pretreat->id);

      next->reason = g_strdup ("Warmer.");
      save_revision (book, next);
      ids[i] = next->id;
    }

#define CURRENT(wanted) \
  G_STMT_START { \
    g_autoptr (BbRevision) current = bb_book_load_current (book, shop->recipe->id, &error); \
    g_assert_no_error (error); \
    g_assert_cmpint (current->id, ==, wanted); \
  } G_STMT_END
  CURRENT (ids[3]);
  set_state (book, ids[3], BB_STATE_WITHDRAWN);
  CURRENT (ids[2]);
  set_state (book, ids[0], BB_STATE_ON_TRIAL);
  CURRENT (ids[2]);
  helper_add_passed (book, ids[0], 3);
  set_state (book, ids[0], BB_STATE_PROVEN);
  CURRENT (ids[0]);
  for (guint i = 0; i < 3; i++)
    set_state (book, ids[i], BB_STATE_WITHDRAWN);
  CURRENT (ids[3]);
#undef CURRENT

  helper_save (book, &bb_recipe_table, empty);
  g_assert_null (bb_book_load_current (book, empty->id, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
  helper_close (book);
}

static void
add_signature (BbBook           *book,
               const BbStanding *standing)
{
  g_autoptr (BbSignature) signature = bb_signature_new ();

  signature->revision = standing->revision;
  signature->signed_at = g_strdup (standing->since);
  signature->person = standing->person;
  signature->overruled = 1;
  signature->reason = g_strdup ("Years of shirts.");
  signature->passed = 0;
  signature->failed = 0;
  signature->needed = 3;
  helper_save (book, &bb_signature_table, signature);
}

/* As a whole book is brought in: numbers, dates and states are what they were. */
static void
test_bring_in (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbRecipe) recipe = helper_make_recipe ("OLD", "From elsewhere", shop->blank->id);
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (BbStanding) standing = bb_standing_new ();
  g_autoptr (BbStanding) twin = NULL;
  g_autoptr (GError) error = NULL;

  helper_save (book, &bb_recipe_table, recipe);
  revision = helper_make_revision (recipe->id, shop->pretreat->id);
  revision->number = 7;
  revision->reason = g_strdup ("Warmer.");
  revision->made_at = g_strdup ("2019-05-06T07:08:09Z");
  helper_save (book, &bb_revision_table, revision);
  g_assert_cmpstr (revision->code, ==, "OLD.7");
  g_assert_cmpstr (revision->made_at, ==, "2019-05-06T07:08:09Z");
  g_assert_cmpuint (strlen (revision->seal), ==, 64);
  g_assert_cmpint (bb_book_revision_is_used (book, revision->id, NULL), ==, 0);

  standing->revision = revision->id;
  standing->state = BB_STATE_PROVEN;
  standing->since = g_strdup ("2019-06-07");
  standing->person = shop->person->id;
  add_signature (book, standing);
  helper_save (book, &bb_standing_table, standing);
  g_assert_cmpint (bb_book_revision_is_used (book, revision->id, NULL), ==, 1);

  twin = bb_record_copy (&bb_standing_table, standing);
  twin->id = BB_INTEGER_NONE;
  g_assert_false (bb_book_save (book, &bb_standing_table, twin, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_EXISTS);
  g_clear_error (&error);
  standing->state = BB_STATE_DRAFT;
  g_assert_false (bb_book_save (book, &bb_standing_table, standing, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  g_clear_error (&error);

  set_state (book, revision->id, BB_STATE_WITHDRAWN);
  g_assert_true (bb_book_undo_withdrawal (book, revision->id, &error));
  g_assert_cmpint (get_state (book, revision->id), ==, BB_STATE_PROVEN);

  /* The next one that a person writes counts on from there. */
  save_revision (book, revision);
  g_assert_cmpstr (revision->code, ==, "OLD.8");
  helper_close (book);
}

static void
test_drafts_take_a_new_code (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbRecipe) recipe = helper_make_recipe ("NEW", "Not tried yet", shop->blank->id);
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (BbRevision) again = NULL;
  g_autoptr (GError) error = NULL;

  helper_save (book, &bb_recipe_table, recipe);
  revision = helper_make_revision (recipe->id, shop->pretreat->id);
  save_revision (book, revision);
  g_free (recipe->code);
  recipe->code = g_strdup ("NAMED");
  helper_save (book, &bb_recipe_table, recipe);
  again = bb_book_load_by_code (book, &bb_revision_table, "NAMED.1", &error);
  g_assert_no_error (error);
  g_assert_cmpint (again->id, ==, revision->id);
  helper_close (book);
}

static void
test_changed_byte_is_found (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbRevision) draft = helper_make_revision (shop->recipe->id, shop->pretreat->id);
  g_autoptr (GPtrArray) findings = NULL;
  sqlite3 *plain = NULL;
  g_autoptr (GError) error = NULL;

  draft->reason = g_strdup ("Warmer.");
  save_revision (book, draft);
  plain = helper_open_plain (path);
  g_assert_cmpint (helper_run_plain (plain, "UPDATE revision SET cure_c = 161 WHERE number = 2"), ==, SQLITE_OK);
  sqlite3_close (plain);

  g_assert_null (bb_book_load (book, &bb_revision_table, draft->id, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED);
  g_assert_nonnull (strstr (error->message, "R-1.2"));
  g_clear_error (&error);
  g_assert_null (bb_book_load_referring (book, &bb_revision_table, &bb_recipe_table, shop->recipe->id, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED);
  g_clear_error (&error);
  g_assert_null (bb_book_load_current (book, shop->recipe->id, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED);
  g_clear_error (&error);

  findings = bb_book_check (book, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (findings->len, ==, 1);
  g_assert_nonnull (strstr (g_ptr_array_index (findings, 0), "R-1.2"));
  helper_close (book);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/recipes/first-revision-is-a-draft", test_first_revision_is_a_draft);
  g_test_add_func ("/recipes/unused-draft-is-changed", test_unused_draft_is_changed);
  g_test_add_func ("/recipes/used-revision-is-followed", test_used_revision_is_followed);
  g_test_add_func ("/recipes/states-and-undo", test_states_and_undo);
  g_test_add_func ("/recipes/current-revision", test_current_revision);
  g_test_add_func ("/recipes/bring-in", test_bring_in);
  g_test_add_func ("/recipes/drafts-take-a-new-code", test_drafts_take_a_new_code);
  g_test_add_func ("/recipes/changed-byte-is-found", test_changed_byte_is_found);

  return g_test_run ();
}
