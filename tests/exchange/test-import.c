/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop.h"

#include <string.h>

#include "bb-error.h"
#include "bb-json.h"

static void
test_demo_comes_in_whole (Fixture       *self,
                          gconstpointer  data)
{
  g_autofree char *demo = load_demo ();
  g_autoptr (JsonNode) node = bb_json_parse (demo, strlen (demo), NULL);
  BbImported imported = import (self->book, demo);
  guint total = 0;
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  (void) data;
  for (guint t = 0; t < n_tables; t++)
    if (bb_book_table_is_exchanged (tables[t]))
      {
        guint n = json_array_get_length (json_object_get_array_member (json_node_get_object (node), tables[t]->name));

        g_assert_cmpuint (n, >, 0);
        g_assert_cmpuint (count (self->book, tables[t]), ==, n);
        total += n;
      }
  g_assert_cmpuint (imported.n_added, ==, total);
  g_assert_cmpuint (imported.n_same, ==, 0);
}

static void
test_what_is_known_is_passed_over (Fixture       *self,
                                   gconstpointer  data)
{
  BbImported first = import (self->book, SHOP);
  BbImported again = import (self->book, SHOP);

  (void) data;
  g_assert_cmpuint (first.n_added, ==, 10);
  g_assert_cmpuint (first.n_same, ==, 0);
  g_assert_cmpuint (again.n_added, ==, 0);
  g_assert_cmpuint (again.n_same, ==, 10);
}

static void
test_a_revision_without_state_is_a_draft (Fixture       *self,
                                          gconstpointer  data)
{
  const char *text = SHOP_HEAD "\"revision\":[" SHOP_REVISION ("R.1", "1", "") "]}";
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (BbStanding) standing = NULL;

  (void) data;
  import (self->book, text);
  revision = bb_book_load_by_code (self->book, &bb_revision_table, "R.1", NULL);
  standing = bb_book_load_standing (self->book, revision->id, NULL);
  g_assert_nonnull (standing);
  g_assert_cmpint (standing->state, ==, BB_STATE_DRAFT);
  g_assert_cmpstr (standing->since, ==, "2025-03-14");
}

/* Proven by a file alone: without a signature, or without the specimens that it was signed for. */
static void
test_a_proof_has_to_be_borne_out (Fixture       *self,
                                  gconstpointer  data)
{
  const char *cut = "\"overruled\":true,\"reason\":\"Years of shirts.\"";
  g_autoptr (GString) text = g_string_new (SHOP);
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (BbStanding) standing = NULL;
  g_autoptr (GPtrArray) notices = NULL;
  g_autofree char *news = NULL;
  guint replaced = g_string_replace (text, cut, "\"overruled\":false", 1);

  (void) data;
  g_assert_cmpuint (replaced, ==, 1);
  import (self->book, text->str);
  revision = bb_book_load_by_code (self->book, &bb_revision_table, "R.1", NULL);
  standing = bb_book_load_standing (self->book, revision->id, NULL);
  g_assert_cmpint (standing->state, ==, BB_STATE_ON_TRIAL);
  notices = bb_book_load_notices (self->book, FALSE, NULL);
  g_assert_cmpuint (notices->len, ==, 1);
  news = bb_book_describe_notice (self->book, notices->pdata[0], NULL);
  g_assert_cmpstr (news, ==, standing->reason);

  /* Once more, it is passed over: the book knows better. */
  g_assert_cmpuint (import (self->book, text->str).n_added, ==, 0);
}

static void
test_a_failure_from_a_file_takes_a_proof_back (Fixture       *self,
                                               gconstpointer  data)
{
  const char *failure = "{\"format\":\"blankbook-book\",\"version\":1,\"reading\":[{\"wash_test\":\"S-1\",\"cycles\":9,"
                        "\"change\":\"2\",\"read_at\":\"2025-03-21\"}]}";
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (BbStanding) standing = NULL;

  (void) data;
  import (self->book, SHOP);
  import (self->book, failure);
  revision = bb_book_load_by_code (self->book, &bb_revision_table, "R.1", NULL);
  standing = bb_book_load_standing (self->book, revision->id, NULL);
  g_assert_cmpint (standing->state, ==, BB_STATE_ON_TRIAL);
  g_assert_cmpstr (standing->reason, ==, "R.1 is back on trial: specimen S-1 failed after 9 washes.");
}

static void
test_imports_are_logged_as_such (Fixture       *self,
                                 gconstpointer  data)
{
  g_autoptr (GPtrArray) events = NULL;

  (void) data;
  import (self->book, SHOP);
  events = bb_book_load_all (self->book, &bb_event_table, TRUE, NULL);
  g_assert_cmpuint (events->len, ==, 10);
  for (guint i = 0; i < events->len; i++)
    g_assert_cmpint (((const BbEvent *) events->pdata[i])->deed, ==, BB_DEED_IMPORTED);
}

/* What is refused, and how the message begins. Nothing of it stays in the book. */
static const struct {
  const char *text;
  const char *message;
} refused[] = {
  { "[]", "This is no book written by Blankbook: its format" },
  { "{\"version\":1}", "This is no book written by Blankbook: its format" },
  { "{\"format\":7,\"version\":1}", "This is no book written by Blankbook: its format" },
  { "{\"format\":\"blankbook-book\"}", "This is no book written by Blankbook: it does not tell its version" },
  { "{\"format\":\"blankbook-book\",\"version\":\"1\"}", "This is no book written by Blankbook: it does not tell" },
  { "{\"format\":\"blankbook-book\",\"version\":2}", "This file was written by a newer Blankbook" },
  { "{\"format\":\"blankbook-book\",\"version\":1,\"events\":[]}", "events: unknown key" },
  { "{\"format\":\"blankbook-book\",\"version\":1,\"event\":[]}", "event: unknown key" },
  { "{\"format\":\"blankbook-book\",\"version\":1,\"blank\":{}}", "blank: is not a list" },
  { "{\"format\":\"blankbook-book\",\"version\":1,\"blank\":[3]}", "blank[0]: is not an object" },
  { "{\"format\":\"blankbook-book\",\"version\":1,\"person\":[{\"id\":1}]}", "person[0].id: unknown key" },
  { "{\"format\":\"blankbook-book\",\"version\":1,\"person\":[{\"code\":\"A\",\"name\":\"B\"}]}",
    "person[0].role: missing" },
  { "{\"format\":\"blankbook-book\",\"version\":1,\"person\":[{\"code\":\"A\",\"name\":\"B\\u202eC\","
    "\"role\":\"lead\"}]}",
    "person[0].name: has control characters" },
  { "{\"format\":\"blankbook-book\",\"version\":1,\"person\":[{\"code\":\"A\",\"name\":NaN}]}",
    "person[0].name: NaN is not a finite number" },
  { "{\"format\":\"blankbook-book\",\"version\":1,\"colourway\":[{\"code\":\"A\",\"blank\":\"NONE\"}]}",
    "colourway[0].blank: There is no Blank with the code 'NONE'." },
  { SHOP_HEAD "\"reading\":[{\"wash_test\":\"S-9\"}]}", "reading[0].wash_test: There is no Wash test" },
  { SHOP_HEAD "\"revision\":[" SHOP_REVISION ("R.2", "1", "") "]}", "revision[0].code: R.2 does not fit" },
  { SHOP_HEAD "\"revision\":[" SHOP_REVISION ("R.1", "1", "") "," SHOP_REVISION ("R.2", "2", "") "]}",
    "revision[1].reason: " },
  { SHOP_HEAD "\"revision\":[" SHOP_REVISION ("R.1", "1", ",\"dry_kpa\":1e4") "]}",
    "revision[0].dry_kpa: 10000 is above the maximum 1000" },
  { SHOP_HEAD "\"revision\":[" SHOP_REVISION ("R.1", "1", "") "," SHOP_REVISION ("R.1", "1", ",\"note\":\"x\"") "]}",
    "revision[1].note: the book already holds R.1 with another value." },
  { SHOP_HEAD "\"revision\":[" SHOP_REVISION ("R.1", "1", ",\"dry_sheet\":\"PT\"") "]}",
    "revision[0].dry_sheet: The record is of the kind 'Pretreat', and has to be 'Cover sheet'." },
  { SHOP_HEAD "\"recipe\":[]}", "recipe: the key is given twice" },
};

static void
test_refusals_leave_nothing (Fixture       *self,
                             gconstpointer  data)
{
  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_false (bb_exchange_import (self->book, refused[i].text, strlen (refused[i].text), NULL, NULL, &error));
      g_test_message ("%s", error->message);
      g_assert_true (g_str_has_prefix (error->message, refused[i].message));
      assert_empty (self->book);
    }
}

static void
test_another_record_of_the_code_is_a_conflict (Fixture       *self,
                                               gconstpointer  data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) text = g_string_new (SHOP);
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  (void) data;
  import (self->book, SHOP);
  before = export (self->book);
  g_string_replace (text, "\"cycles\":5,\"change\":\"4-5\"", "\"cycles\":5,\"change\":\"3\"", 1);
  g_string_replace (text, "\"person\":[", "\"person\":[{\"code\":\"NEW\",\"name\":\"New\",\"role\":\"lead\"},", 1);
  g_assert_false (bb_exchange_import (self->book, text->str, text->len, NULL, NULL, &error));
  g_assert_error (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_CONFLICT);
  g_assert_true (g_str_has_prefix (error->message, "reading[0].change: "));
  after = export (self->book);
  g_assert_cmpstr (before, ==, after);
}

typedef struct {
  GCancellable *cancellable;
  guint last;
  guint total;
  guint n_calls;
} Following;

static void
follow (guint    done,
        guint    total,
        gpointer data)
{
  Following *self = data;

  g_assert_cmpuint (done, >=, self->last);
  g_assert_cmpuint (done, <=, total);
  self->last = done;
  self->total = total;
  self->n_calls++;
  if (self->cancellable != NULL && done >= 100)
    g_cancellable_cancel (self->cancellable);
}

/* A file of many small records. */
static char *
make_crowd (void)
{
  GString *text = g_string_new ("{\"format\":\"blankbook-book\",\"version\":1,\"person\":[");

  for (guint i = 0; i < 500; i++)
    g_string_append_printf (text, "%s{\"code\":\"P%u\",\"name\":\"Person %u\",\"role\":\"operator\"}",
                            i > 0 ? "," : "", i, i);
  g_string_append (text, "]}");

  return g_string_free (text, FALSE);
}

static void
test_progress (Fixture       *self,
               gconstpointer  data)
{
  g_autofree char *crowd = make_crowd ();
  Following following = { NULL, 0, 0, 0 };
  const BbExchangeWatch watch = { .progress = follow, .data = &following };
  BbImported imported = { 0, 0 };
  g_autofree char *text = NULL;

  (void) data;
  g_assert_true (bb_exchange_import (self->book, crowd, strlen (crowd), &watch, &imported, NULL));
  g_assert_cmpuint (imported.n_added, ==, 500);
  g_assert_cmpuint (following.last, ==, imported.n_added);
  g_assert_cmpuint (following.total, ==, imported.n_added);
  g_assert_cmpuint (following.n_calls, >, 5);

  following = (Following) { NULL, 0, 0, 0 };
  text = bb_exchange_export (self->book, NULL, 0, &watch, NULL);
  g_assert_nonnull (text);
  g_assert_cmpuint (following.last, ==, imported.n_added);
}

static void
test_stopped_import_leaves_nothing (Fixture       *self,
                                    gconstpointer  data)
{
  g_autofree char *crowd = make_crowd ();
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  Following following = { cancellable, 0, 0, 0 };
  const BbExchangeWatch watch = { .progress = follow, .data = &following, .cancellable = cancellable };
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_false (bb_exchange_import (self->book, crowd, strlen (crowd), &watch, NULL, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_cmpuint (following.last, >=, 100);
  g_assert_cmpuint (following.last, <, following.total);
  assert_empty (self->book);
}

static void
test_demo_makes_a_book (Fixture       *self,
                        gconstpointer  data)
{
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_cmpuint (count (self->book, &bb_recipe_table), >=, 15);
  before = export (self->book);

  g_assert_false (bb_exchange_make_demo (bb_book_get_path (self->book), NULL, NULL, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_EXISTS);
  after = export (self->book);
  g_assert_cmpstr (before, ==, after);
}

static void
test_stopped_demo_leaves_no_file (Fixture       *self,
                                  gconstpointer  data)
{
  g_autofree char *path = g_build_filename (self->folder, "demo.book", NULL);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  const BbExchangeWatch watch = { .cancellable = cancellable };
  g_autoptr (GError) error = NULL;

  (void) data;
  g_cancellable_cancel (cancellable);
  g_assert_false (bb_exchange_make_demo (path, &watch, NULL, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
}

static void
add (const char *demo)
{
  ADD ("/import/demo-comes-in-whole", test_demo_comes_in_whole);
  ADD ("/import/what-is-known-is-passed-over", test_what_is_known_is_passed_over);
  ADD ("/import/a-revision-without-state-is-a-draft", test_a_revision_without_state_is_a_draft);
  ADD ("/import/a-proof-has-to-be-borne-out", test_a_proof_has_to_be_borne_out);
  ADD ("/import/a-failure-from-a-file-takes-a-proof-back", test_a_failure_from_a_file_takes_a_proof_back);
  ADD ("/import/imports-are-logged-as-such", test_imports_are_logged_as_such);
  ADD ("/import/refusals-leave-nothing", test_refusals_leave_nothing);
  ADD ("/import/another-record-of-the-code-is-a-conflict", test_another_record_of_the_code_is_a_conflict);
  ADD ("/import/progress", test_progress);
  ADD ("/import/stopped-import-leaves-nothing", test_stopped_import_leaves_nothing);
  ADD_IN_DEMO ("/import/demo-makes-a-book", test_demo_makes_a_book);
  ADD ("/import/stopped-demo-leaves-no-file", test_stopped_demo_leaves_no_file);
}

int
main (int   argc,
      char *argv[])
{
  return run_tests (argc, argv, add);
}
