/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "store-helpers.h"

#include <string.h>

/* What the lists of blanks, supplies and wash tests find and show; recipes have a test of their own. */

static guint
count (BbBook        *book,
       const BbTable *table,
       const char    *text)
{
  g_autoptr (GArray) ids = helper_search (book, table, text, 0);

  return ids->len;
}

static void
replace_text (char       **text,
              const char  *by)
{
  g_free (*text);
  *text = g_strdup (by);
}

static void
test_words (void)
{
  static const struct {
    const BbTable *table;
    const char *text;
    guint n;
  } cases[] = {
    { &bb_blank_table, "", 1 }, { &bb_blank_table, "tee-1", 1 }, { &bb_blank_table, "bench", 1 },
    { &bb_blank_table, "quell mill", 1 }, { &bb_blank_table, "cott", 1 }, { &bb_blank_table, "polyester jers", 1 },
    { &bb_blank_table, "navy", 1 }, { &bb_blank_table, "shrinks line", 1 }, { &bb_blank_table, "wool", 0 },
    { &bb_blank_table, "mill cotton wool", 0 }, { &bb_blank_table, "ench", 0 },
    { &bb_supply_table, "", 2 }, { &bb_supply_table, "PT-1", 1 }, { &bb_supply_table, "fixer", 2 },
    { &bb_supply_table, "pretr", 1 }, { &bb_supply_table, "sheet", 1 }, { &bb_supply_table, "ink", 0 },
    { &bb_wash_test_table, "", 1 }, { &bb_wash_test_table, "w-1", 1 }, { &bb_wash_test_table, "R-1.1", 1 },
    { &bb_wash_test_table, "dark tees", 1 }, { &bb_wash_test_table, "bench", 1 }, { &bb_wash_test_table, "navy", 0 },
    { &bb_wash_test_table, "R-2", 0 },
  };
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    if (count (book, cases[i].table, cases[i].text) != cases[i].n)
      g_error ("%s: “%s” finds %u, expected %u", cases[i].table->name, cases[i].text,
               count (book, cases[i].table, cases[i].text), cases[i].n);
  helper_close (book);
}

/* What stands on the screen finds it too, whatever word the book holds for it. */
static void
test_titles_of_choices (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbBlank) blank = helper_make_blank ("B-2", "Zither");

  g_array_index (blank->composition, BbFibreShare, 1).fibre = BB_FIBRE_POLYAMIDE;
  blank->knit = BB_KNIT_PIQUE;
  helper_save (book, &bb_blank_table, blank);

  g_assert_cmpuint (count (book, &bb_supply_table, "cover"), ==, 1);
  g_assert_cmpuint (count (book, &bb_supply_table, "cover fix"), ==, 1);
  g_assert_cmpuint (count (book, &bb_supply_table, "cover pretreat"), ==, 0);
  g_assert_cmpuint (count (book, &bb_blank_table, "nylon"), ==, 1);
  g_assert_cmpuint (count (book, &bb_blank_table, "piqué"), ==, 1);
  g_assert_cmpuint (count (book, &bb_blank_table, "SINGLE"), ==, 1);
  g_assert_cmpuint (count (book, &bb_blank_table, "french"), ==, 0);
  helper_close (book);
}

/* A list that says which, in which order, or which not; words narrow it further. */
static void
test_among (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbWashTest) second = helper_make_wash_test ("W-2", shop->revision->id);
  g_autoptr (BbWashTest) third = helper_make_wash_test ("X-3", shop->revision->id);
  g_autoptr (GArray) keys = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autoptr (GArray) none = g_array_new (FALSE, FALSE, sizeof (gint64));
  BbQuery query = { .among = keys, .limit = 2 };
  g_autoptr (GArray) both = NULL;
  g_autoptr (GArray) one = NULL;
  g_autoptr (GArray) nothing = NULL;
  g_autoptr (GArray) rest = NULL;
  const gint64 gone = 999;

  helper_save (book, &bb_wash_test_table, second);
  helper_save (book, &bb_wash_test_table, third);
  g_array_append_val (keys, gone);
  g_array_append_val (keys, shop->wash_test->id);
  g_array_append_val (keys, third->id);

  both = bb_book_search (book, &bb_wash_test_table, &query, NULL);
  g_assert_cmpuint (both->len, ==, 2);
  g_assert_cmpint (g_array_index (both, gint64, 0), ==, shop->wash_test->id);
  g_assert_cmpint (g_array_index (both, gint64, 1), ==, third->id);
  query.text = "x-";
  one = bb_book_search (book, &bb_wash_test_table, &query, NULL);
  g_assert_cmpuint (one->len, ==, 1);
  query.among = none;
  nothing = bb_book_search (book, &bb_wash_test_table, &query, NULL);
  g_assert_cmpuint (nothing->len, ==, 0);
  query = (BbQuery) { .apart_from = keys };
  rest = bb_book_search (book, &bb_wash_test_table, &query, NULL);
  g_assert_cmpuint (rest->len, ==, 1);
  g_assert_cmpint (g_array_index (rest, gint64, 0), ==, second->id);
  helper_close (book);
}

static void
add_machine (BbBook     *book,
             const char *code,
             const char *calibrated_at,
             gint64      days)
{
  g_autoptr (BbEquipment) machine = helper_make_equipment (code, BB_EQUIPMENT_SPRAYER);

  machine->calibrated_at = g_strdup (calibrated_at);
  machine->calibrate_days = days;
  helper_save (book, &bb_equipment_table, machine);
}

/* What waits for calibration stands first, and of that what has waited longest. */
static void
test_machines_that_are_due (void)
{
  static const char *const codes[] = { "NEVER", "LONGEST", "TODAY", "RESTING", "NO-PLAN" };
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (GArray) ids = NULL;
  g_autoptr (GPtrArray) lines = NULL;

  add_machine (book, "TODAY", "2025-05-01", 30);
  add_machine (book, "NEVER", NULL, 30);
  add_machine (book, "LONGEST", "2025-05-30", 1);
  add_machine (book, "NO-PLAN", "2020-01-01", BB_INTEGER_NONE);
  add_machine (book, "RESTING", "2025-05-02", 30);

  ids = bb_book_find_machines (book, "2025-05-31", NULL);
  g_assert_cmpuint (ids->len, ==, G_N_ELEMENTS (codes));
  lines = bb_book_load_lines (book, &bb_equipment_table, (const gint64 *) (gpointer) ids->data, ids->len, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (codes); i++)
    g_assert_cmpstr (((const BbEquipment *) lines->pdata[i])->code, ==, codes[i]);
  helper_close (book);
}

static void
test_of_recipe (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbRecipe) other = helper_make_recipe ("R-2", "Pale tees", shop->blank->id);
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (BbWashTest) second = NULL;
  g_autoptr (BbWashTest) third = NULL;
  g_autoptr (GError) error = NULL;
  BbQuery query = { .text = "" };
  g_autoptr (GArray) all = NULL;
  g_autoptr (GArray) some = NULL;
  g_autoptr (GArray) none = NULL;

  helper_save (book, &bb_recipe_table, other);
  revision = helper_make_revision (other->id, shop->pretreat->id);
  g_assert_true (bb_book_save_revision (book, revision, &error));
  second = helper_make_wash_test ("W-2", revision->id);
  third = helper_make_wash_test ("X-3", revision->id);
  helper_save (book, &bb_wash_test_table, second);
  helper_save (book, &bb_wash_test_table, third);

  query.recipe = other->id;
  all = bb_book_search (book, &bb_wash_test_table, &query, &error);
  g_assert_cmpuint (all->len, ==, 2);
  g_assert_cmpint (g_array_index (all, gint64, 0), ==, third->id);
  query.text = "w";
  some = bb_book_search (book, &bb_wash_test_table, &query, &error);
  g_assert_cmpuint (some->len, ==, 1);
  g_assert_cmpint (g_array_index (some, gint64, 0), ==, second->id);
  query.recipe = 999;
  none = bb_book_search (book, &bb_wash_test_table, &query, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (none->len, ==, 0);
  helper_close (book);
}

static void
test_withdrawn_are_left_out (void)
{
  const BbTable * const tables[] = { &bb_blank_table, &bb_supply_table, &bb_wash_test_table };
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (tables); i++)
    {
      const guint all = count (book, tables[i], "");
      const guint found = count (book, tables[i], "1");

      g_assert_cmpuint (found, >, 0);
      g_assert_true (bb_book_withdraw (book, tables[i], 1, &error));
      g_assert_cmpuint (count (book, tables[i], ""), ==, all - 1);
      g_assert_cmpuint (count (book, tables[i], "1"), ==, found - 1);
      g_assert_true (bb_book_restore (book, tables[i], 1, &error));
      g_assert_no_error (error);
      g_assert_cmpuint (count (book, tables[i], ""), ==, all);
      g_assert_cmpuint (count (book, tables[i], "1"), ==, found);
    }
  helper_close (book);
}

/* Whatever a record takes its words from, a change of it changes the words. */
static void
test_follows_every_change (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbBlank) other = helper_make_blank ("HOOD-1", "Heavy hood");
  g_autoptr (GPtrArray) findings = NULL;
  g_autoptr (GError) error = NULL;

  replace_text (&shop->blank->name, "Garnet");
  helper_save (book, &bb_blank_table, shop->blank);
  g_assert_cmpuint (count (book, &bb_blank_table, "garnet"), ==, 1);
  g_assert_cmpuint (count (book, &bb_wash_test_table, "garnet"), ==, 1);

  helper_save (book, &bb_blank_table, other);
  shop->colourway->blank = other->id;
  replace_text (&shop->colourway->name, "Opal");
  helper_save (book, &bb_colourway_table, shop->colourway);
  g_assert_cmpuint (count (book, &bb_blank_table, "navy"), ==, 0);
  g_assert_cmpuint (count (book, &bb_blank_table, "garnet opal"), ==, 0);
  g_assert_cmpuint (count (book, &bb_blank_table, "hood opal"), ==, 1);

  shop->wash_test->colourway = shop->colourway->id;
  helper_save (book, &bb_wash_test_table, shop->wash_test);
  g_assert_cmpuint (count (book, &bb_wash_test_table, "hood opal"), ==, 1);
  replace_text (&other->name, "Zither");
  helper_save (book, &bb_blank_table, other);
  g_assert_cmpuint (count (book, &bb_wash_test_table, "zither"), ==, 1);

  replace_text (&shop->recipe->name, "Ruby");
  helper_save (book, &bb_recipe_table, shop->recipe);
  g_assert_cmpuint (count (book, &bb_wash_test_table, "ruby"), ==, 1);
  shop->reading->note = g_strdup ("Fibres come through.");
  helper_save (book, &bb_reading_table, shop->reading);
  g_assert_cmpuint (count (book, &bb_wash_test_table, "fibr through"), ==, 1);

  shop->pretreat->hazards = g_strdup ("H319");
  helper_save (book, &bb_supply_table, shop->pretreat);
  g_assert_cmpuint (count (book, &bb_supply_table, "h319"), ==, 1);

  findings = bb_book_check (book, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (findings->len, ==, 0);
  helper_close (book);
}

static void
test_lines_of_records (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  gint64 ids[150];
  g_autoptr (GPtrArray) lines = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_book_get_line_table (&bb_blank_table) == &bb_blank_table);
  for (guint i = 0; i < G_N_ELEMENTS (ids) - 1; i++)
    {
      g_autofree char *code = g_strdup_printf ("B-%u", i);
      g_autoptr (BbBlank) blank = helper_make_blank (code, "Tee");

      helper_save (book, &bb_blank_table, blank);
      ids[i] = blank->id;
    }
  ids[G_N_ELEMENTS (ids) - 1] = 99999;

  lines = bb_book_load_lines (book, &bb_blank_table, ids, G_N_ELEMENTS (ids), &error);
  g_assert_no_error (error);
  g_assert_cmpuint (lines->len, ==, G_N_ELEMENTS (ids) - 1);
  for (guint i = 0; i < lines->len; i++)
    {
      const BbBlank *blank = g_ptr_array_index (lines, i);

      g_assert_cmpint (blank->id, ==, ids[i]);
      g_assert_cmpuint (blank->composition->len, ==, 2);
    }
  helper_close (book);
}

static void
test_wash_lines (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbWashTest) second = helper_make_wash_test ("W-2", shop->revision->id);
  g_autoptr (BbReading) before = helper_make_reading (shop->wash_test->id, 1);
  g_autoptr (GPtrArray) lines = NULL;
  const BbWashLine *line = NULL;
  g_autoptr (GError) error = NULL;
  gint64 ids[2];

  helper_save (book, &bb_reading_table, before);
  second->colourway = shop->colourway->id;
  helper_save (book, &bb_wash_test_table, second);
  ids[0] = second->id;
  ids[1] = shop->wash_test->id;

  lines = bb_book_load_lines (book, &bb_wash_test_table, ids, G_N_ELEMENTS (ids), &error);
  g_assert_no_error (error);
  g_assert_cmpuint (lines->len, ==, 2);

  line = g_ptr_array_index (lines, 0);
  g_assert_cmpint (line->id, ==, second->id);
  g_assert_true (bb_record_equal (&bb_wash_test_table, line->test, second));
  g_assert_true (bb_record_equal (&bb_revision_table, line->revision, shop->revision));
  g_assert_cmpstr (line->recipe, ==, shop->recipe->name);
  g_assert_cmpstr (line->colourway, ==, "Deep navy");
  g_assert_cmpstr (line->srgb, ==, shop->colourway->srgb);
  g_assert_cmpuint (line->readings->len, ==, 0);

  line = g_ptr_array_index (lines, 1);
  g_assert_null (line->colourway);
  g_assert_cmpuint (line->readings->len, ==, 2);
  g_assert_true (bb_record_equal (&bb_reading_table, &g_array_index (line->readings, BbReading, 0), before));
  g_assert_true (bb_record_equal (&bb_reading_table, &g_array_index (line->readings, BbReading, 1), shop->reading));
  helper_close (book);
}

/* A verdict by a revision that is not as it was written would be no verdict. */
static void
test_wash_line_without_its_revision (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  sqlite3 *plain = helper_open_plain (path);
  g_autoptr (GPtrArray) lines = NULL;
  const BbWashLine *line = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (helper_run_plain (plain, "DROP TRIGGER revision_update; UPDATE revision SET cure_c = 170"), ==,
                   SQLITE_OK);
  sqlite3_close (plain);
  lines = bb_book_load_lines (book, &bb_wash_test_table, &shop->wash_test->id, 1, &error);
  g_assert_no_error (error);
  line = g_ptr_array_index (lines, 0);
  g_assert_nonnull (line->test);
  g_assert_null (line->revision);
  helper_close (book);
}

static guint
count_names (BbBook        *book,
             const BbTable *table,
             const char    *name)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) names = bb_book_load_names (book, bb_table_find_field (table, name), &error);

  g_assert_no_error (error);

  return names->len;
}

/* What can be chosen for a reference: of its kind, in use, by name and code. */
static void
test_names (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  const BbField *product = bb_table_find_field (&bb_revision_table, "pretreat_product");
  const BbField *revision = bb_table_find_field (&bb_wash_test_table, "revision");
  g_autoptr (GPtrArray) pretreats = NULL;
  g_autoptr (GPtrArray) revisions = NULL;
  g_autoptr (GPtrArray) colourways = NULL;
  g_autoptr (GError) error = NULL;

  pretreats = bb_book_load_names (book, product, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (pretreats->len, ==, 1);
  g_assert_cmpint (((const BbNameLine *) pretreats->pdata[0])->id, ==, shop->pretreat->id);
  g_assert_cmpstr (((const BbNameLine *) pretreats->pdata[0])->code, ==, "PT-1");
  g_assert_cmpstr (((const BbNameLine *) pretreats->pdata[0])->name, ==, "Fixer No 3");

  revisions = bb_book_load_names (book, revision, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (revisions->len, ==, 1);
  g_assert_cmpstr (((const BbNameLine *) revisions->pdata[0])->code, ==, "R-1.1");
  g_assert_null (((const BbNameLine *) revisions->pdata[0])->name);

  colourways = bb_book_load_names (book, bb_table_find_field (&bb_job_line_table, "colourway"), &error);
  g_assert_no_error (error);
  g_assert_true (g_str_has_prefix (((const BbNameLine *) colourways->pdata[0])->name, shop->blank->name));
  g_assert_true (g_str_has_suffix (((const BbNameLine *) colourways->pdata[0])->name, shop->colourway->name));

  g_assert_cmpuint (count_names (book, &bb_recipe_table, "blank"), ==, 1);
  g_assert_true (bb_book_withdraw (book, &bb_blank_table, shop->blank->id, &error));
  g_assert_cmpuint (count_names (book, &bb_recipe_table, "blank"), ==, 0);
  helper_close (book);
}

static gint64
add_due (BbBook     *book,
         const Shop *shop,
         const char *code,
         const char *due_at,
         BbJobState  state)
{
  g_autoptr (BbJob) job = helper_make_job (code, shop->customer->id);
  g_autoptr (GError) error = NULL;

  job->due_at = g_strdup (due_at);
  helper_save (book, &bb_job_table, job);
  for (BbJobState s = BB_JOB_RUNNING; s <= state; s++)
    g_assert_true (bb_book_set_job_state (book, job->id, s, &error));
  g_assert_no_error (error);

  return job->id;
}

static guint
find_place (const GArray *ids,
            gint64        key)
{
  for (guint i = 0; i < ids->len; i++)
    if (g_array_index (ids, gint64, i) == key)
      return i;

  return G_MAXUINT;
}

/* Work that waits stands before what is over, with the next due first. */
static void
test_jobs_by_due (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  const guint open = (1u << BB_JOB_PLANNED) | (1u << BB_JOB_RUNNING);
  gint64 some_day = 0;
  gint64 first = 0;
  gint64 done = 0;
  gint64 second = 0;
  g_autoptr (GArray) waiting = NULL;
  g_autoptr (GArray) overdue = NULL;
  g_autoptr (GArray) over = NULL;
  g_autoptr (GArray) every = NULL;

  helper_fill_jobs (book, shop);
  some_day = add_due (book, shop, "D-1", NULL, BB_JOB_PLANNED);
  first = add_due (book, shop, "D-2", "2031-03-01", BB_JOB_RUNNING);
  done = add_due (book, shop, "D-3", "2031-01-01", BB_JOB_DONE);
  second = add_due (book, shop, "D-4", "2031-03-02", BB_JOB_PLANNED);
  waiting = bb_book_list_jobs_by_due (book, open, NULL, NULL);
  g_assert_cmpuint (find_place (waiting, first), <, find_place (waiting, second));
  g_assert_cmpuint (find_place (waiting, second), <, find_place (waiting, some_day));
  g_assert_cmpuint (find_place (waiting, done), ==, G_MAXUINT);
  overdue = bb_book_list_jobs_by_due (book, open, "2031-03-02", NULL);
  g_assert_cmpuint (find_place (overdue, first), <, overdue->len);
  g_assert_cmpuint (find_place (overdue, second), ==, G_MAXUINT);
  g_assert_cmpuint (find_place (overdue, some_day), ==, G_MAXUINT);
  over = bb_book_list_jobs_by_due (book, 1u << BB_JOB_DONE, NULL, NULL);
  g_assert_cmpuint (over->len, ==, 1);
  g_assert_cmpint (g_array_index (over, gint64, 0), ==, done);
  every = bb_book_list_jobs_by_due (book, open | (1u << BB_JOB_DONE), NULL, NULL);
  g_assert_cmpuint (find_place (every, done), ==, every->len - 1);
  helper_close (book);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/lists/words", test_words);
  g_test_add_func ("/lists/titles-of-choices", test_titles_of_choices);
  g_test_add_func ("/lists/among", test_among);
  g_test_add_func ("/lists/machines-that-are-due", test_machines_that_are_due);
  g_test_add_func ("/lists/jobs-by-due", test_jobs_by_due);
  g_test_add_func ("/lists/of-recipe", test_of_recipe);
  g_test_add_func ("/lists/withdrawn-are-left-out", test_withdrawn_are_left_out);
  g_test_add_func ("/lists/follows-every-change", test_follows_every_change);
  g_test_add_func ("/lists/lines-of-records", test_lines_of_records);
  g_test_add_func ("/lists/wash-lines", test_wash_lines);
  g_test_add_func ("/lists/names", test_names);
  g_test_add_func ("/lists/wash-line-without-its-revision", test_wash_line_without_its_revision);

  return g_test_run ();
}
