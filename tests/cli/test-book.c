/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <sqlite3.h>
#include <string.h>
#include <unistd.h>

#include "bb-exchange.h"
#include "bb-json.h"
#include "run.h"

static guint
count_lines (const char *text)
{
  guint n = 0;

  for (const char *p = text; *p != '\0'; p++)
    n += *p == '\n' ? 1 : 0;

  return n;
}

static void
test_new (Fixture       *self,
          gconstpointer  data)
{
  g_autofree char *path = g_build_filename (self->folder, "new one.book", NULL);
  g_autofree char *nowhere = g_build_filename (self->folder, "none", "new.book", NULL);
  g_autoptr (Answer) first = run_cli ("", 0, "book", "new", path, NULL);
  g_autoptr (Answer) again = run_cli ("", 0, "book", "new", path, NULL);
  g_autoptr (Answer) no_folder = run_cli ("", 0, "book", "new", nowhere, NULL);
  g_autoptr (Answer) two = run_cli ("", 0, "book", "new", path, nowhere, NULL);
  g_autoptr (Answer) list = run_cli ("", 0, "recipe", "list", "--book", path, NULL);
  g_autoptr (Answer) json = run_cli ("", 0, "recipe", "list", "--book", path, "--json", NULL);

  (void) data;
  assert_told (first, "Made the empty book");
  assert_refused (again, 1, path);
  assert_refused (no_folder, 1, nowhere);
  assert_refused (two, 2, "one file");
  assert_told (list, "There is no recipe in this book yet.");
  g_assert_cmpstr (json->out, ==, "[\n]\n");
}

static void
test_own_book (Fixture       *self,
               gconstpointer  data)
{
  g_autofree char *own = g_build_filename (g_get_user_data_dir (), "blankbook", "shop.book", NULL);
  g_autoptr (Answer) none = NULL;
  g_autoptr (Answer) made = NULL;
  g_autoptr (Answer) check = NULL;

  (void) self;
  (void) data;
  none = run_cli ("", 0, "recipe", "list", NULL);
  assert_refused (none, 3, own);
  g_assert_nonnull (strstr (none->err, "'book new'"));
  made = run_cli ("", 0, "book", "new", NULL);
  assert_told (made, own);
  check = run_cli ("", 0, "book", "check", NULL);
  assert_told (check, "is sound");
  g_assert_cmpint (g_unlink (own), ==, 0);
}

static void
test_demo (Fixture       *self,
           gconstpointer  data)
{
  g_autofree char *path = g_build_filename (self->folder, "second.book", NULL);
  g_autoptr (Answer) json = run_cli ("", 0, "book", "demo", path, "--json", NULL);
  g_autoptr (Answer) again = run_cli ("", 0, "book", "demo", path, NULL);
  g_autoptr (Answer) no_name = run_cli ("", 0, "book", "demo", NULL);
  g_autoptr (JsonNode) node = parse (json);

  (void) data;
  g_assert_cmpstr (json_object_get_string_member (json_node_get_object (node), "book"), ==, path);
  g_assert_cmpint (json_object_get_int_member (json_node_get_object (node), "added"), >, 200);
  assert_refused (again, 1, path);
  assert_refused (no_name, 2, "one file");
}

static void
test_check (Fixture       *self,
            gconstpointer  data)
{
  g_autofree char *missing = g_build_filename (self->folder, "missing.book", NULL);
  g_autofree char *other = g_build_filename (self->folder, "other.book", NULL);
  g_autoptr (Answer) sound = run_cli ("", 0, "book", "check", self->book, NULL);
  g_autoptr (Answer) json = run_cli ("", 0, "book", "check", "--book", self->book, "--json", NULL);
  g_autoptr (Answer) none = run_cli ("", 0, "book", "check", missing, NULL);
  g_autoptr (Answer) no_book = NULL;
  g_autoptr (JsonNode) node = parse (json);

  (void) data;
  assert_told (sound, "is sound");
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (json_node_get_object (node), "findings")), ==,
                    0);
  assert_refused (none, 3, missing);
  g_assert_true (g_file_set_contents (other, "this is a shopping list", -1, NULL));
  no_book = run_cli ("", 0, "book", "check", other, NULL);
  assert_refused (no_book, 3, other);
}

static void
test_check_finds_a_changed_byte (Fixture       *self,
                                 gconstpointer  data)
{
  g_autoptr (Answer) text = NULL;
  g_autoptr (Answer) json = NULL;
  g_autoptr (Answer) export = NULL;
  sqlite3 *db = NULL;

  (void) data;
  g_assert_cmpint (sqlite3_open (self->book, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (db, "PRAGMA trusted_schema = 1; DROP TRIGGER revision_update;"
                                     "UPDATE revision SET cure_c = cure_c + 1 WHERE code = 'MUD-BLACK.1'", NULL, NULL,
                                 NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_close (db), ==, SQLITE_OK);

  text = run_cli ("", 0, "book", "check", self->book, NULL);
  g_assert_cmpint (text->status, ==, 1);
  g_assert_nonnull (strstr (text->out, "MUD-BLACK.1"));
  g_assert_nonnull (strstr (text->err, "not sound"));
  json = run_cli ("", 0, "book", "check", self->book, "--json", NULL);
  g_assert_cmpint (json->status, ==, 1);
  g_assert_nonnull (strstr (json->out, "\"findings\":[\""));
  export = run_cli ("", 0, "export", "--book", self->book, NULL);
  assert_refused (export, 1, "MUD-BLACK.1");
}

static void
test_list (Fixture       *self,
           gconstpointer  data)
{
  g_autoptr (Answer) text = run_cli ("", 0, "recipe", "list", "--book", self->book, NULL);
  g_autoptr (Answer) json = run_cli ("", 0, "recipe", "list", "--json", "--book", self->book, NULL);
  g_autoptr (Answer) extra = run_cli ("", 0, "recipe", "list", "black", "--book", self->book, NULL);
  g_autoptr (JsonNode) node = parse (json);
  JsonArray *lines = json_node_get_array (node);

  (void) data;
  assert_told (text, "\nMUD-BLACK ");
  g_assert_cmpuint (json_array_get_length (lines), >=, 15);
  g_assert_cmpuint (count_lines (text->out), ==, json_array_get_length (lines) + 1);
  g_assert_true (json_object_has_member (json_array_get_object_element (lines, 0), "state"));
  g_assert_false (json_object_has_member (json_array_get_object_element (lines, 0), "id"));
  assert_refused (extra, 2, "takes no arguments");
}

static void
test_show (Fixture       *self,
           gconstpointer  data)
{
  g_autoptr (Answer) text = run_cli ("", 0, "recipe", "show", "MUD-BLACK", "--book", self->book, NULL);
  g_autoptr (Answer) old = run_cli ("", 0, "--book", self->book, "recipe", "show", "MUD-BLACK.1", NULL);
  g_autoptr (Answer) undiluted = run_cli ("", 0, "--book", self->book, "recipe", "show", "MUD-WHITE.2", NULL);
  g_autoptr (Answer) hot = run_cli ("", 0, "--book", self->book, "recipe", "show", "OAT-TRI", NULL);
  g_autoptr (Answer) unknown = run_cli ("", 0, "recipe", "show", "NOPE", "--book", self->book, NULL);
  g_autoptr (Answer) no_code = run_cli ("", 0, "recipe", "show", "--book", self->book, NULL);

  (void) data;
  assert_told (text, "MUD-BLACK.3  ");
  assert_told (text, "\n  Laydown ");
  assert_told (undiluted, " undiluted\n");
  assert_told (text, " 150 g/m²\n");
  assert_told (text, "Bittern pretreat concentrate");
  assert_told (text, "\nPretreat\n");
  assert_told (text, "\nProof\n");
  assert_told (text, "\n  MUD-BLACK.1  Withdrawn  ");
  g_assert_null (strstr (text->out, "To look at before printing"));
  assert_told (hot, "\nTo look at before printing\n  Cure: This garment should meet nothing hotter than 140 °C; "
                    "this is 152 °C. ");
  assert_told (old, "MUD-BLACK.1  ");
  assert_told (old, "Withdrawn since 2025-06-02");
  assert_refused (unknown, 1, "NOPE");
  assert_refused (no_code, 2, "code of one recipe");
}

static void
test_show_as_json (Fixture       *self,
                   gconstpointer  data)
{
  g_autoptr (Answer) answer = run_cli ("", 0, "recipe", "show", "MUD-BLACK", "--json", "--book", self->book, NULL);
  g_autoptr (JsonNode) node = parse (answer);
  JsonObject *object = json_node_get_object (node);
  JsonObject *revision = json_object_get_object_member (object, "revision");

  (void) data;
  g_assert_cmpstr (json_object_get_string_member (json_object_get_object_member (object, "recipe"), "blank"), ==,
                   "MUDWHISTLE");
  g_assert_cmpstr (json_object_get_string_member (revision, "code"), ==, "MUD-BLACK.3");
  g_assert_cmpstr (json_object_get_string_member (revision, "pretreat_product"), ==, "PT-BITTERN");
  g_assert_cmpfloat (json_object_get_double_member (revision, "pretreat_laydown_g_per_m2"), ==, 150);
  g_assert_cmpstr (json_object_get_string_member (json_object_get_object_member (object, "standing"), "state"), ==,
                   "proven");
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (object, "revisions")), ==, 4);
}

static void
test_wash (Fixture       *self,
           gconstpointer  data)
{
  g_autoptr (Answer) specimen = run_cli ("", 0, "wash", "new", "X-1", "--revision", "MUD-BLACK.3", "--colourway",
                                         "MUDWHISTLE-BLACK", "--person", "SL", "--tare-g=165", "--wet-g=186.2",
                                         "--book", self->book, NULL);
  g_autoptr (Answer) reading = run_cli ("", 0, "wash", "add", "X-1", "--cycles", "5", "--change", "4-5", "--stain", "5",
                                        "--person", "SL", "--crack", "hairline", "--note",
                                        "-5 °C, \"odd\"\nbut fine", "--book", self->book, NULL);
  g_autoptr (Answer) json = run_cli ("", 0, "wash", "add", "X-1", "--cycles", "10", "--change", "4", "--read-at",
                                     "2026-01-05", "--person", "SL", "--json", "--book", self->book, NULL);
  g_autoptr (Answer) check = run_cli ("", 0, "book", "check", self->book, NULL);
  g_autoptr (BbBook) book = NULL;
  g_autoptr (BbWashTest) test = NULL;
  g_autoptr (GPtrArray) readings = NULL;
  const BbReading *first = NULL;

  (void) data;
  assert_told (specimen, "Added the specimen X-1, to be washed 20 times.");
  assert_told (reading, "Added the reading of X-1 after 5 washes: change 4-5, cracking: Hairline, when stretched.");
  g_assert_cmpstr (json->out, ==,
                   "{\"wash_test\":\"X-1\",\"cycles\":10,\"change\":\"4\",\"crack\":\"none\","
                   "\"read_at\":\"2026-01-05\",\"person\":\"SL\"}\n");
  assert_told (check, "is sound");

  book = bb_book_open (self->book, NULL);
  test = bb_book_load_by_code (book, &bb_wash_test_table, "X-1", NULL);
  g_assert_cmpint (test->method, ==, BB_WASH_ISO_6330);
  g_assert_cmpfloat (test->wet_g, ==, 186.2);
  readings = bb_book_load_referring (book, &bb_reading_table, &bb_wash_test_table, test->id, NULL);
  g_assert_cmpuint (readings->len, ==, 2);
  first = readings->pdata[0];
  g_assert_cmpstr (first->note, ==, "-5 °C, \"odd\"\nbut fine");
  g_assert_cmpint (first->change, ==, BB_GRADE_4_5);
  g_assert_cmpint (first->crack, ==, BB_CRACK_HAIRLINE);
}

/* What another shop wrote without a grader can be brought in; what is graded here needs one, and how to name one is
 * said where nobody has a name. */
static void
test_no_grader (Fixture       *self,
                gconstpointer  data)
{
  const char *foreign = "wash_test,cycles,change,crack,read_at\n2505-01,76,4-5,none,2026-01-05\n";
  g_autoptr (Answer) import = run_cli (foreign, -1, "import", "--table", "reading", "--book", self->book, NULL);
  g_autoptr (Answer) added = NULL;
  g_autoptr (BbBook) book = bb_book_open (self->book, NULL);
  g_autoptr (GPtrArray) people = bb_book_load_all (book, &bb_person_table, FALSE, NULL);

  (void) data;
  assert_told (import, "Records added: 1.");
  for (guint i = 0; i < people->len; i++)
    g_assert_true (bb_book_withdraw (book, &bb_person_table, ((const BbPerson *) people->pdata[i])->id, NULL));
  added = run_cli ("", 0, "wash", "add", "2505-01", "--cycles", "77", "--change", "4", "--book", self->book, NULL);
  assert_refused (added, 2, "say who graded it. Nobody is named in this book yet: ");
}

/* Every value of the command line is held against its field, and named by it. */
static void
test_wash_refusals (Fixture       *self,
                    gconstpointer  data)
{
  const struct {
    const char *arguments[8];
    int status;
    const char *part;
  } refused[] = {
    { { "new", "X-2" }, 2, "revision: missing" },
    { { "new", "X-2", "--revision", "MUD-BLACK.9" }, 2, "revision: There is no Revision with the code 'MUD-BLACK.9'" },
    { { "new", "2505-01", "--revision", "MUD-BLACK.3" }, 1, "2505-01" },
    { { "new", "X-2", "--revision", "MUD-BLACK.3", "--wash-c", "101" }, 2, "wash_c: 101 is above the maximum 100" },
    { { "new", "X-2", "--revision", "MUD-BLACK.3", "--wash-c", "hot" }, 2, "wash_c: \"hot\" is not a number" },
    { { "new", "X-2", "--revision", "MUD-BLACK.3", "--wash-c", "NaN" }, 2, "wash_c: \"NaN\" is not a number" },
    { { "new", "X\n2", "--revision", "MUD-BLACK.3" }, 2, "code: " },
    { { "add", "NOPE", "--cycles", "5", "--change", "4" }, 1, "NOPE" },
    { { "add", "2505-01", "--change", "4" }, 2, "cycles: missing" },
    { { "add", "2505-01", "--cycles", "501", "--change", "4" }, 2, "cycles: 501 is above the maximum 500" },
    { { "add", "2505-01", "--cycles", "2.5", "--change", "4" }, 2, "cycles: 2.5 is not a whole number" },
    { { "add", "2505-01", "--cycles", "77", "--change", "6" }, 2, "change: \"6\" is not one of: 5, 4-5, 4" },
    { { "add", "2505-01", "--cycles", "77", "--change", "4", "--read-at", "today" }, 2, "read_at: " },
    { { "add", "2505-01", "--cycles", "77", "--change", "4" }, 2, "person: a grade without a grader proves nothing" },
    { { "add", "2505-01", "--cycles", "77", "--change", "4", "--person", "XX" }, 2, "person: " },
    { { "add", "2505-01", "--cycles", "1", "--change", "4", "--person", "SL" }, 1,
      "already has a reading of 2505-01 after 1 wash." },
    { { "add", "2505-01", "--cyles", "1", "--change", "4" }, 2, "--cyles" },
    { { "add" }, 2, "the code of one specimen" },
  };

  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      const char * const *a = refused[i].arguments;
      g_autoptr (Answer) answer = run_cli ("", 0, "--book", self->book, "wash", a[0], a[1], a[2], a[3], a[4], a[5],
                                           a[6], a[7], NULL);

      assert_refused (answer, refused[i].status, refused[i].part);
    }
}

static void
test_export_and_import (Fixture       *self,
                        gconstpointer  data)
{
  g_autofree char *file = g_build_filename (self->folder, "all.json", NULL);
  g_autofree char *second = g_build_filename (self->folder, "second.book", NULL);
  g_autoptr (Answer) export = run_cli ("", 0, "export", file, "--book", self->book, NULL);
  g_autoptr (Answer) again = run_cli ("", 0, "export", file, "--book", self->book, NULL);
  g_autoptr (Answer) one = run_cli ("", 0, "export", "--recipe", "MUD-BLACK", "--book", self->book, NULL);
  g_autoptr (Answer) made = run_cli ("", 0, "book", "new", second, NULL);
  g_autoptr (Answer) import = run_cli ("", 0, "import", file, "--book", second, NULL);
  g_autoptr (Answer) same = run_cli ("", 0, "import", file, "--book", second, "--json", NULL);
  g_autoptr (Answer) check = run_cli ("", 0, "book", "check", second, NULL);
  g_autoptr (Answer) copy = run_cli ("", 0, "export", "--recipe", "MUD-BLACK", "--book", second, NULL);

  (void) data;
  g_assert_cmpint (export->status, ==, 0);
  assert_refused (again, 1, file);
  assert_told (made, "Made");
  assert_told (import, "The same in the book already: 4.");
  g_assert_true (g_str_has_prefix (same->out, "{\"added\":0,\"same\":"));
  assert_told (check, "is sound");
  g_assert_cmpstr (copy->out, ==, one->out);
}

static void
test_csv (Fixture       *self,
          gconstpointer  data)
{
  const char *text = "code,name,role\nNEW,\"New, and =keen\",operator\n";
  g_autoptr (Answer) import = run_cli (text, -1, "import", "--table", "person", "--book", self->book, NULL);
  g_autoptr (Answer) export = run_cli ("", 0, "export", "--table", "person", "--book", self->book, NULL);
  g_autoptr (Answer) bad = run_cli ("code,name,role\nA,B,boss\n", -1, "import", "--table", "person", "--book",
                                    self->book, NULL);
  g_autoptr (Answer) broken = run_cli ("code,\"name", -1, "import", "--table", "person", "--book", self->book, NULL);
  g_autoptr (Answer) no_table = run_cli ("", 0, "export", "--table", "people", "--book", self->book, NULL);
  g_autoptr (Answer) both = run_cli ("", 0, "export", "--table", "person", "--recipe", "R", "--book", self->book, NULL);

  (void) data;
  assert_told (import, "Records added: 1.");
  assert_told (export, "NEW,\"New, and =keen\",operator,\r\n");
  assert_refused (bad, 2, "row 2: role: \"boss\" is not one of");
  assert_refused (broken, 3, "standard input: not CSV");
  assert_refused (no_table, 2, "'people' is not one of: shop, person, blank");
  assert_refused (both, 2, "either recipes or a table");
}

static void
test_hostile_imports (Fixture       *self,
                      gconstpointer  data)
{
  const struct {
    const char *text;
    int status;
    const char *part;
  } refused[] = {
    { "", 3, "standard input: not JSON" },
    { "{\"format\":\"blankbook-book\",\"version\":1,", 3, "standard input: not JSON" },
    { "{\"format\":\"other\",\"version\":1}", 3, "standard input: This is no book" },
    { "{\"format\":\"blankbook-book\",\"version\":99}", 3, "newer Blankbook" },
    { "{\"format\":\"blankbook-book\",\"version\":1,\"version\":1}", 2, "version: the key is given twice" },
    { "{\"format\":\"blankbook-book\",\"version\":1,\"person\":[{\"code\":\"A\",\"name\":\"a\\u202eb\","
      "\"role\":\"lead\"}]}",
      2, "person[0].name: has control characters" },
    { "{\"format\":\"blankbook-book\",\"version\":1,\"person\":[{\"code\":\"\xff\"}]}", 3, "not UTF-8" },
    { "{\"format\":\"blankbook-book\",\"version\":1,\"supply\":[{\"code\":\"A\",\"density_g_per_ml\":1e999}]}", 2,
      "supply[0].density_g_per_ml: 1e999" },
    { "{\"format\":\"blankbook-book\",\"version\":1,\"person\":[{\"code\":\"SL\",\"name\":\"Else\","
      "\"role\":\"lead\"}]}", 1, "person[0].name: the book already holds SL" },
  };

  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (Answer) answer = run_cli (refused[i].text, -1, "import", "--book", self->book, NULL);

      assert_refused (answer, refused[i].status, refused[i].part);
    }
}

static void
test_help_of_every_command (Fixture       *self,
                            gconstpointer  data)
{
  const char * const commands[][2] = {
    { "calc", NULL }, { "recall", NULL }, { "export", NULL }, { "import", NULL }, { "book", "new" },
    { "book", "check" }, { "book", "demo" }, { "recipe", "list" }, { "recipe", "show" }, { "wash", "new" },
    { "wash", "add" }, { "wash", "due" }, { "wash", "plans" }, { "recipe", "sign" }, { "report", "wash" },
    { "report", "chart" },
  };
  g_autoptr (Answer) all = run_cli ("", 0, "--help", NULL);

  (void) self;
  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    {
      g_autofree char *name = g_strjoin (" ", commands[i][0], commands[i][1], NULL);
      g_autofree char *listed = g_strconcat ("\n  ", name, " ", NULL);
      g_autoptr (Answer) answer = commands[i][1] != NULL
                                    ? run_cli ("", 0, commands[i][0], commands[i][1], "--help", NULL)
                                    : run_cli ("", 0, commands[i][0], "--help", NULL);

      assert_told (answer, name);
      assert_told (all, listed);
    }
}

#define ADD(path, func) g_test_add ("/cli-book/" path, Fixture, demo, set_up, func, tear_down)

int
main (int   argc,
      char *argv[])
{
  g_autofree char *demo = NULL;
  int status = 0;

  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  demo = g_strdup_printf ("%s/blankbook-cli-%d.book", g_get_tmp_dir (), (int) getpid ());

  ADD ("new", test_new);
  ADD ("own-book", test_own_book);
  ADD ("demo", test_demo);
  ADD ("check", test_check);
  ADD ("check-finds-a-changed-byte", test_check_finds_a_changed_byte);
  ADD ("list", test_list);
  ADD ("show", test_show);
  ADD ("show-as-json", test_show_as_json);
  ADD ("wash", test_wash);
  ADD ("no-grader", test_no_grader);
  ADD ("wash-refusals", test_wash_refusals);
  ADD ("export-and-import", test_export_and_import);
  ADD ("csv", test_csv);
  ADD ("hostile-imports", test_hostile_imports);
  ADD ("help-of-every-command", test_help_of_every_command);

  status = g_test_run ();
  g_unlink (demo);

  return status;
}
