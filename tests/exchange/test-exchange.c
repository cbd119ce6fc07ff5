/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-exchange.h"

#include <glib/gstdio.h>
#include <sqlite3.h>
#include <string.h>
#include <unistd.h>

#include "bb-error.h"
#include "bb-json.h"

/* Each test has a book in a folder of its own, which goes with the test: an empty one, or a copy of the demo shop's. */
typedef struct {
  char *folder;
  BbBook *book;
} Fixture;

static BbBook *
make_book (Fixture    *self,
           const char *name)
{
  g_autofree char *path = g_build_filename (self->folder, name, NULL);
  g_autoptr (GError) error = NULL;
  BbBook *book = bb_book_create (path, &error);

  g_assert_no_error (error);

  return book;
}

static void
set_up (Fixture       *self,
        gconstpointer  data)
{
  g_autofree char *path = NULL;
  g_autofree char *demo = NULL;
  gsize length = 0;

  self->folder = g_dir_make_tmp ("blankbook-exchange-XXXXXX", NULL);
  if (data == NULL)
    {
      self->book = make_book (self, "shop.book");
      return;
    }

  path = g_build_filename (self->folder, "shop.book", NULL);
  g_assert_true (g_file_get_contents (data, &demo, &length, NULL));
  g_assert_true (g_file_set_contents (path, demo, (gssize) length, NULL));
  self->book = bb_book_open (path, NULL);
  g_assert_nonnull (self->book);
}

static void
tear_down (Fixture       *self,
           gconstpointer  data)
{
  g_autoptr (GDir) dir = g_dir_open (self->folder, 0, NULL);
  const char *base = NULL;

  (void) data;
  g_assert_finalize_object (self->book);
  while ((base = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (self->folder, base, NULL);

      g_unlink (path);
    }
  g_rmdir (self->folder);
  g_free (self->folder);
}

static char *
load_demo (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", "demo-shop.json", NULL);
  g_autoptr (GError) error = NULL;
  char *text = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);

  return text;
}

static BbImported
import (BbBook     *book,
        const char *text)
{
  BbImported imported = { 0, 0 };
  g_autoptr (GError) error = NULL;

  bb_exchange_import (book, text, strlen (text), NULL, &imported, &error);
  g_assert_no_error (error);

  return imported;
}

static char *
export (BbBook *book)
{
  g_autoptr (GError) error = NULL;
  char *text = bb_exchange_export (book, NULL, 0, NULL, &error);

  g_assert_no_error (error);

  return text;
}

static guint
count (BbBook        *book,
       const BbTable *table)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) records = bb_book_load_all (book, table, TRUE, &error);

  g_assert_no_error (error);

  return records->len;
}

static void
assert_empty (BbBook *book)
{
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  for (guint t = 0; t < n_tables; t++)
    g_assert_cmpuint (count (book, tables[t]), ==, 0);
}

/* A small shop with everything in it once; %s stands for what a test wants to add. */
#define SHOP_HEAD \
  "{\"format\":\"blankbook-book\",\"version\":1,\"about\":\"a test\"," \
  "\"person\":[{\"code\":\"AB\",\"name\":\"Abel Bench\",\"role\":\"lead\"}]," \
  "\"blank\":[{\"code\":\"TEE\",\"name\":\"Tee\",\"composition\":[{\"fibre\":\"cotton\",\"fraction\":1}]," \
  "\"mass_g_per_m2\":180,\"knit\":\"jersey\"}]," \
  "\"colourway\":[{\"code\":\"TEE-NAVY\",\"blank\":\"TEE\",\"name\":\"Navy\",\"srgb\":\"#1b2a49\"}]," \
  "\"supply\":[{\"code\":\"PT\",\"name\":\"Pretreat\",\"kind\":\"pretreat\"}]," \
  "\"recipe\":[{\"code\":\"R\",\"name\":\"Navy tee\",\"blank\":\"TEE\",\"shade\":\"dark\"}],"
#define SHOP_REVISION(code, number, more) \
  "{\"code\":\"" code "\",\"recipe\":\"R\",\"number\":" number ",\"made_at\":\"2025-03-14\",\"made_by\":\"AB\"," \
  "\"pretreat_product\":\"PT\",\"pretreat_parts_concentrate\":1,\"pretreat_parts_water\":2," \
  "\"pretreat_laydown_g_per_m2\":120,\"dry_c\":150,\"dry_s\":40,\"print_mode\":\"underbase\"," \
  "\"print_white_g_per_m2\":150,\"cure_c\":160,\"cure_s\":90,\"proof_cycles\":20" more "}"
#define SHOP_REVISIONS "\"revision\":[" SHOP_REVISION ("R.1", "1", ",\"proof_stain\":null") "],"
#define SHOP_TAIL \
  "\"standing\":[{\"revision\":\"R.1\",\"state\":\"proven\",\"since\":\"2025-04-01\",\"person\":\"AB\"}]," \
  "\"wash_test\":[{\"code\":\"S-1\",\"revision\":\"R.1\",\"colourway\":\"TEE-NAVY\",\"method\":\"shop\"," \
  "\"plan_cycles\":20,\"made_at\":\"2025-03-15\",\"person\":\"AB\"}]," \
  "\"reading\":[{\"wash_test\":\"S-1\",\"cycles\":5,\"change\":\"4-5\",\"read_at\":\"2025-03-20\",\"person\":\"AB\"}]}"
#define SHOP SHOP_HEAD SHOP_REVISIONS SHOP_TAIL

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
    if (tables[t] != &bb_event_table)
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
test_export_comes_in_as_the_same (Fixture       *self,
                                  gconstpointer  data)
{
  g_autoptr (BbBook) second = make_book (self, "second.book");
  g_autofree char *first_text = NULL;
  g_autofree char *second_text = NULL;

  (void) data;
  first_text = export (self->book);
  import (second, first_text);
  second_text = export (second);
  g_assert_cmpstr (first_text, ==, second_text);
}

static void
test_what_is_known_is_passed_over (Fixture       *self,
                                   gconstpointer  data)
{
  BbImported first = import (self->book, SHOP);
  BbImported again = import (self->book, SHOP);

  (void) data;
  g_assert_cmpuint (first.n_added, ==, 9);
  g_assert_cmpuint (first.n_same, ==, 0);
  g_assert_cmpuint (again.n_added, ==, 0);
  g_assert_cmpuint (again.n_same, ==, 9);
}

static void
test_an_emptied_default_stays_empty (Fixture       *self,
                                     gconstpointer  data)
{
  g_autoptr (BbRevision) revision = NULL;
  g_autofree char *text = NULL;

  (void) data;
  import (self->book, SHOP);
  revision = bb_book_load_by_code (self->book, &bb_revision_table, "R.1", NULL);
  g_assert_cmpint (revision->proof_stain, ==, BB_CHOICE_NONE);
  g_assert_cmpint (revision->proof_change, ==, BB_GRADE_4);
  text = export (self->book);
  g_assert_nonnull (strstr (text, "\"proof_stain\":null"));
  g_assert_null (strstr (text, "\"seal\""));
  g_assert_null (strstr (text, "\"id\""));
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

static void
test_imports_are_logged_as_such (Fixture       *self,
                                 gconstpointer  data)
{
  g_autoptr (GPtrArray) events = NULL;

  (void) data;
  import (self->book, SHOP);
  events = bb_book_load_all (self->book, &bb_event_table, TRUE, NULL);
  g_assert_cmpuint (events->len, ==, 9);
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
test_stopped_export (Fixture       *self,
                     gconstpointer  data)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  const BbExchangeWatch watch = { .cancellable = cancellable };
  g_autoptr (GError) error = NULL;

  (void) data;
  import (self->book, SHOP);
  g_cancellable_cancel (cancellable);
  g_assert_null (bb_exchange_export (self->book, NULL, 0, &watch, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

static void
test_one_recipe_with_what_belongs_to_it (Fixture       *self,
                                         gconstpointer  data)
{
  g_autoptr (BbBook) second = make_book (self, "second.book");
  g_autoptr (BbRecipe) recipe = NULL;
  g_autoptr (BbRecipe) copy = NULL;
  g_autoptr (GPtrArray) revisions = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  recipe = bb_book_load_by_code (self->book, &bb_recipe_table, "MUD-BLACK", &error);
  g_assert_no_error (error);
  revisions = bb_book_load_referring (self->book, &bb_revision_table, &bb_recipe_table, recipe->id, NULL);
  text = bb_exchange_export (self->book, &recipe->id, 1, NULL, &error);
  g_assert_no_error (error);

  import (second, text);
  g_assert_cmpuint (count (second, &bb_recipe_table), ==, 1);
  g_assert_cmpuint (count (second, &bb_revision_table), ==, revisions->len);
  g_assert_cmpuint (count (second, &bb_standing_table), ==, revisions->len);
  g_assert_cmpuint (count (second, &bb_blank_table), <, count (self->book, &bb_blank_table));
  g_assert_cmpuint (count (second, &bb_wash_test_table), >, 0);
  g_assert_cmpuint (count (second, &bb_wash_test_table), <, count (self->book, &bb_wash_test_table));
  g_assert_cmpuint (count (second, &bb_reading_table), >, count (second, &bb_wash_test_table));
  copy = bb_book_load_by_code (second, &bb_recipe_table, "MUD-BLACK", NULL);
  g_assert_cmpstr (copy->note, ==, recipe->note);

  /* And the book it came from has all of it already. */
  g_assert_cmpuint (import (self->book, text).n_added, ==, 0);
}

static void
test_export_finds_a_changed_byte (Fixture       *self,
                                  gconstpointer  data)
{
  g_autofree char *path = g_strdup (bb_book_get_path (self->book));
  g_autoptr (GError) error = NULL;
  sqlite3 *db = NULL;

  (void) data;
  import (self->book, SHOP);
  g_assert_true (bb_book_close (self->book, NULL));
  g_clear_object (&self->book);

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (db, "DROP TRIGGER revision_update; UPDATE revision SET cure_c = 161", NULL, NULL,
                                 NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_close (db), ==, SQLITE_OK);

  self->book = bb_book_open (path, &error);
  g_assert_no_error (error);
  g_assert_null (bb_exchange_export (self->book, NULL, 0, NULL, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED);
  g_assert_nonnull (strstr (error->message, "R.1"));
}

static void
test_every_table_as_csv (Fixture       *self,
                         gconstpointer  data)
{
  g_autoptr (BbBook) second = make_book (self, "second.book");
  g_autofree char *first_text = NULL;
  g_autofree char *second_text = NULL;
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  (void) data;
  for (guint t = 0; t < n_tables; t++)
    if (tables[t] != &bb_event_table && tables[t] != &bb_standing_table)
      {
        g_autoptr (GError) error = NULL;
        g_autofree char *text = bb_exchange_export_csv (self->book, tables[t], &error);
        BbImported imported = { 0, 0 };

        g_assert_no_error (error);
        bb_exchange_import_csv (second, tables[t], text, strlen (text), NULL, &imported, &error);
        g_assert_no_error (error);
        g_assert_cmpuint (imported.n_added, ==, count (self->book, tables[t]));
      }

  /* Whatever state they had, revisions alone come in as drafts, and are else the same. */
  first_text = bb_exchange_export_csv (self->book, &bb_revision_table, NULL);
  second_text = bb_exchange_export_csv (second, &bb_revision_table, NULL);
  g_assert_cmpstr (first_text, ==, second_text);
  g_assert_cmpuint (count (second, &bb_standing_table), ==, count (self->book, &bb_standing_table));
}

static void
test_csv_names_the_row (Fixture       *self,
                        gconstpointer  data)
{
  const char *text = "code,name,role\nA,Ann,lead\nB,Bo,boss\n";
  const char *short_code = "code,name,role\nA,Ann,lead\nB,,lead\n";
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_false (bb_exchange_import_csv (self->book, &bb_person_table, text, strlen (text), NULL, NULL, &error));
  g_assert_true (g_str_has_prefix (error->message, "row 3: role: \"boss\" is not one of: operator"));
  g_clear_error (&error);
  g_assert_false (bb_exchange_import_csv (self->book, &bb_person_table, short_code, strlen (short_code), NULL, NULL,
                                          &error));
  g_assert_true (g_str_has_prefix (error->message, "row 3: name: missing"));
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

#define ADD(path, func) g_test_add ("/exchange/" path, Fixture, NULL, set_up, func, tear_down)
#define ADD_IN_DEMO(path, func) g_test_add ("/exchange/" path, Fixture, demo, set_up, func, tear_down)

int
main (int   argc,
      char *argv[])
{
  g_autofree char *demo = g_strdup_printf ("%s/blankbook-exchange-%d.book", g_get_tmp_dir (), (int) getpid ());
  int status = 0;

  g_test_init (&argc, &argv, NULL);
  g_assert_true (bb_exchange_make_demo (demo, NULL, NULL, NULL));

  ADD ("demo-comes-in-whole", test_demo_comes_in_whole);
  ADD_IN_DEMO ("export-comes-in-as-the-same", test_export_comes_in_as_the_same);
  ADD ("what-is-known-is-passed-over", test_what_is_known_is_passed_over);
  ADD ("an-emptied-default-stays-empty", test_an_emptied_default_stays_empty);
  ADD ("a-revision-without-state-is-a-draft", test_a_revision_without_state_is_a_draft);
  ADD ("imports-are-logged-as-such", test_imports_are_logged_as_such);
  ADD ("refusals-leave-nothing", test_refusals_leave_nothing);
  ADD ("another-record-of-the-code-is-a-conflict", test_another_record_of_the_code_is_a_conflict);
  ADD ("progress", test_progress);
  ADD ("stopped-import-leaves-nothing", test_stopped_import_leaves_nothing);
  ADD ("stopped-export", test_stopped_export);
  ADD_IN_DEMO ("one-recipe-with-what-belongs-to-it", test_one_recipe_with_what_belongs_to_it);
  ADD ("export-finds-a-changed-byte", test_export_finds_a_changed_byte);
  ADD_IN_DEMO ("every-table-as-csv", test_every_table_as_csv);
  ADD ("csv-names-the-row", test_csv_names_the_row);
  ADD_IN_DEMO ("demo-makes-a-book", test_demo_makes_a_book);
  ADD ("stopped-demo-leaves-no-file", test_stopped_demo_leaves_no_file);

  status = g_test_run ();
  g_unlink (demo);

  return status;
}
