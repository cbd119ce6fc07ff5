/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "store-helpers.h"

#include <glib/gstdio.h>

#include "bb-text.h"

char *
helper_new_path (void)
{
  /* The test's own, and gone with it: see %G_TEST_OPTION_ISOLATE_DIRS. */
  g_autofree char *folder = g_build_filename (g_get_user_data_dir (), "book-XXXXXX", NULL);

  g_assert_cmpint (g_mkdir_with_parents (g_get_user_data_dir (), 0700), ==, 0);
  g_assert_nonnull (g_mkdtemp (folder));

  return g_build_filename (folder, "shop.book", NULL);
}

/* An empty book as a file. Making one goes through every migration, which under the sanitizers takes seconds: a program
 * makes its first, and copies that. */
static GBytes *
get_empty_book (const char *path)
{
  static GBytes *empty;
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) file = g_file_new_for_path (path);
  BbBook *book = NULL;

  if (empty != NULL)
    return empty;

  book = bb_book_create (path, &error);
  g_assert_no_error (error);
  g_assert_true (bb_book_close (book, &error));
  g_object_unref (book);
  empty = g_file_load_bytes (file, NULL, NULL, &error);
  g_assert_no_error (error);

  return empty;
}

BbBook *
helper_create (const char *path)
{
  g_autoptr (GError) error = NULL;
  GBytes *empty = get_empty_book (path);

  g_file_set_contents_full (path, g_bytes_get_data (empty, NULL), (gssize) g_bytes_get_size (empty),
                            G_FILE_SET_CONTENTS_NONE, 0600, &error);
  g_assert_no_error (error);

  return helper_open (path);
}

BbBook *
helper_open (const char *path)
{
  g_autoptr (GError) error = NULL;
  BbBook *book = bb_book_open (path, &error);

  g_assert_no_error (error);
  g_assert_nonnull (book);

  return book;
}

void
helper_close (BbBook *book)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_book_close (book, &error));
  g_assert_no_error (error);
  g_assert_finalize_object (book);
}

BbPerson *
helper_make_person (const char *code)
{
  BbPerson *person = bb_person_new ();

  person->code = g_strdup (code);
  person->name = g_strdup ("Ilka Morgenroth");
  person->role = BB_ROLE_LEAD;

  return person;
}

BbBlank *
helper_make_blank (const char *code,
                   const char *name)
{
  BbBlank *blank = bb_blank_new ();
  const BbField *composition = bb_table_find_field (&bb_blank_table, "composition");
  BbFibreShare *share = bb_field_append_item (composition, blank);

  share->fibre = BB_FIBRE_COTTON;
  share->fraction = 0.6;
  share = bb_field_append_item (composition, blank);
  share->fibre = BB_FIBRE_POLYESTER;
  share->fraction = 0.4;
  blank->code = g_strdup (code);
  blank->name = g_strdup (name);
  blank->maker = g_strdup ("Quellenhof Mill");
  blank->mass_g_per_m2 = 180;
  blank->knit = BB_KNIT_JERSEY;
  blank->note = g_strdup ("Shrinks in the first wash.\nSecond line.");

  return blank;
}

BbColourway *
helper_make_colourway (const char *code,
                       gint64      blank,
                       const char *name)
{
  BbColourway *colourway = bb_colourway_new ();

  colourway->code = g_strdup (code);
  colourway->blank = blank;
  colourway->name = g_strdup (name);
  colourway->srgb = g_strdup ("#1b2a49");

  return colourway;
}

BbSupply *
helper_make_supply (const char   *code,
                    BbSupplyKind  kind)
{
  BbSupply *supply = bb_supply_new ();

  supply->code = g_strdup (code);
  supply->name = g_strdup ("Fixer No 3");
  supply->kind = (int) kind;
  supply->density_g_per_ml = 1.04;

  return supply;
}

BbRecipe *
helper_make_recipe (const char *code,
                    const char *name,
                    gint64      blank)
{
  BbRecipe *recipe = bb_recipe_new ();

  recipe->code = g_strdup (code);
  recipe->name = g_strdup (name);
  recipe->blank = blank;

  return recipe;
}

BbRevision *
helper_make_revision (gint64 recipe,
                      gint64 pretreat)
{
  BbRevision *revision = bb_revision_new ();

  revision->recipe = recipe;
  revision->pretreat_product = pretreat;
  revision->pretreat_parts_concentrate = 1;
  revision->pretreat_parts_water = 3;
  revision->pretreat_laydown_g_per_m2 = 165.55555555555554;
  revision->dry_c = 165;
  revision->dry_s = 35;
  revision->print_mode = BB_PRINT_UNDERBASE;
  revision->print_white_g_per_m2 = 180;
  revision->cure_c = 165.55555555555554;
  revision->cure_s = 35;
  revision->proof_cycles = 25;

  return revision;
}

BbWashPlan *
helper_make_wash_plan (const char *code)
{
  BbWashPlan *plan = bb_wash_plan_new ();
  const gint64 stops[] = { 5, 25 };

  plan->code = g_strdup (code);
  plan->name = g_strdup ("Household machine");
  plan->wash_c = 40;
  for (guint i = 0; i < G_N_ELEMENTS (stops); i++)
    ((BbPlanStop *) bb_field_append_item (bb_table_find_field (&bb_wash_plan_table, "grade_at"), plan))->cycles =
      stops[i];

  return plan;
}

BbWashTest *
helper_make_wash_test (const char *code,
                       gint64      revision)
{
  BbWashTest *test = bb_wash_test_new ();

  test->code = g_strdup (code);
  test->revision = revision;
  test->method = BB_WASH_SHOP;
  test->plan_cycles = 25;
  test->made_at = g_strdup ("2025-03-14");

  return test;
}

BbPicture *
helper_make_picture (const char *name)
{
  BbPicture *self = bb_picture_new ();

  self->name = g_strdup (name);
  self->width_px = 40;
  self->height_px = 30;
  self->added_at = g_strdup ("2025-03-14");

  return self;
}

BbScan *
helper_make_scan (gint64 wash_test,
                  gint64 picture,
                  gint64 cycles)
{
  BbScan *self = bb_scan_new ();

  self->wash_test = wash_test;
  self->picture = picture;
  self->cycles = cycles;
  self->x_px = 10;
  self->y_px = 5;
  self->width_px = 20;
  self->height_px = 15;
  self->l = 42.5;
  self->a = 31.25;
  self->b = -8.0;
  self->scanned_at = g_strdup ("2025-03-14");

  return self;
}

BbReading *
helper_make_reading (gint64 wash_test,
                     gint64 cycles)
{
  BbReading *reading = bb_reading_new ();

  reading->wash_test = wash_test;
  reading->cycles = cycles;
  reading->change = BB_GRADE_4_5;
  reading->read_at = g_strdup ("2025-03-20");

  return reading;
}

BbCustomer *
helper_make_customer (const char *code,
                      const char *name)
{
  BbCustomer *customer = bb_customer_new ();

  customer->code = g_strdup (code);
  customer->name = g_strdup (name);

  return customer;
}

BbEquipment *
helper_make_equipment (const char      *code,
                       BbEquipmentKind  kind)
{
  BbEquipment *equipment = bb_equipment_new ();

  equipment->code = g_strdup (code);
  equipment->name = g_strdup ("Bench machine");
  equipment->kind = (int) kind;

  return equipment;
}

BbLot *
helper_make_lot (const char *code,
                 gint64      supply)
{
  BbLot *lot = bb_lot_new ();

  lot->code = g_strdup (code);
  lot->supply = supply;
  lot->start_g = 1000;
  lot->container_g = 80;

  return lot;
}

BbJob *
helper_make_job (const char *code,
                 gint64      customer)
{
  BbJob *job = bb_job_new ();

  job->code = g_strdup (code);
  job->customer = customer;
  job->ordered_at = g_strdup ("2025-03-10");

  return job;
}

BbJobLine *
helper_make_line (gint64 job,
                  gint64 colourway,
                  gint64 revision)
{
  BbJobLine *line = bb_job_line_new ();

  line->job = job;
  line->colourway = colourway;
  line->count = 24;
  line->artwork = g_strdup ("heron.png");
  line->print_width_mm = 280;
  line->print_height_mm = 300;
  line->revision = revision;

  return line;
}

void
helper_save (BbBook        *book,
             const BbTable *table,
             gpointer       record)
{
  g_autoptr (GError) error = NULL;

  bb_book_save (book, table, record, &error);
  g_assert_no_error (error);
}

GArray *
helper_search (BbBook        *book,
               const BbTable *table,
               const char    *text,
               guint          limit)
{
  const BbQuery query = { .text = text, .limit = limit };
  g_autoptr (GError) error = NULL;
  GArray *ids = bb_book_search (book, table, &query, &error);

  g_assert_no_error (error);

  return ids;
}

Shop *
helper_fill (BbBook *book)
{
  Shop *shop = g_new0 (Shop, 1);
  g_autoptr (GBytes) content = NULL;
  g_autoptr (GError) error = NULL;

  shop->person = helper_make_person ("IM");
  helper_save (book, &bb_person_table, shop->person);
  bb_book_set_person (book, shop->person->id);
  shop->blank = helper_make_blank ("TEE-1", "Bench tee");
  helper_save (book, &bb_blank_table, shop->blank);
  shop->colourway = helper_make_colourway ("TEE-1-NAVY", shop->blank->id, "Deep navy");
  helper_save (book, &bb_colourway_table, shop->colourway);
  shop->pretreat = helper_make_supply ("PT-1", BB_SUPPLY_PRETREAT);
  helper_save (book, &bb_supply_table, shop->pretreat);
  shop->sheet = helper_make_supply ("SH-1", BB_SUPPLY_SHEET);
  helper_save (book, &bb_supply_table, shop->sheet);
  shop->recipe = helper_make_recipe ("R-1", "Dark tees", shop->blank->id);
  helper_save (book, &bb_recipe_table, shop->recipe);
  shop->revision = helper_make_revision (shop->recipe->id, shop->pretreat->id);
  g_assert_true (bb_book_save_revision (book, shop->revision, &error));
  g_assert_no_error (error);
  shop->wash_test = helper_make_wash_test ("W-1", shop->revision->id);
  helper_save (book, &bb_wash_test_table, shop->wash_test);
  shop->reading = helper_make_reading (shop->wash_test->id, 5);
  helper_save (book, &bb_reading_table, shop->reading);
  shop->picture = helper_make_picture ("before.png");
  content = g_bytes_new_static ("a picture", 9);
  g_assert_true (bb_book_add_picture (book, shop->picture, content, &error));
  g_assert_no_error (error);
  shop->scan = helper_make_scan (shop->wash_test->id, shop->picture->id, 0);
  helper_save (book, &bb_scan_table, shop->scan);
  shop->plan = helper_make_wash_plan ("PLAN-1");
  helper_save (book, &bb_wash_plan_table, shop->plan);

  return shop;
}

/* A job that runs: one run of it has not ended, with a lot and a remark. */
void
helper_fill_jobs (BbBook *book,
                  Shop   *shop)
{
  g_autoptr (GError) error = NULL;
  BbWeighed *weighed = NULL;
  BbDeparture *departure = NULL;

  shop->customer = helper_make_customer ("HERON", "Heron Street Choir");
  helper_save (book, &bb_customer_table, shop->customer);
  shop->press = helper_make_equipment ("PRESS-1", BB_EQUIPMENT_PRESS);
  helper_save (book, &bb_equipment_table, shop->press);
  shop->lot = helper_make_lot ("L-1", shop->pretreat->id);
  helper_save (book, &bb_lot_table, shop->lot);
  shop->job = helper_make_job ("2503-01", shop->customer->id);
  helper_save (book, &bb_job_table, shop->job);
  shop->line = helper_make_line (shop->job->id, shop->colourway->id, shop->revision->id);
  g_assert_true (bb_book_save_job_line (book, shop->line, &error));
  g_assert_no_error (error);

  shop->run = bb_run_new ();
  shop->run->line = shop->line->id;
  shop->run->curer = shop->press->id;
  shop->run->good = 10;
  shop->run->spoiled = 1;
  shop->run->spoilt_by = BB_SPOILT_PLACE;
  weighed = bb_field_append_item (bb_table_find_field (&bb_run_table, "weighed"), shop->run);
  *weighed = (BbWeighed) { .tare_g = 160, .wet_g = 176.5, .box_area_m2 = 0.1 };
  departure = bb_field_append_item (bb_table_find_field (&bb_run_table, "departures"), shop->run);
  *departure = (BbDeparture) { .setting = g_strdup ("cure_s"), .done = g_strdup ("40") };
  g_assert_true (bb_book_start_run (book, shop->run, &error));
  g_assert_no_error (error);
  g_assert_true (bb_book_use_lot (book, shop->lot->id, shop->run->id, 250, &error));
  g_assert_true (bb_book_annotate_run (book, shop->run->id, "The press was cold at first.", &error));
  g_assert_no_error (error);
}

void
helper_put_on_trial (BbBook *book,
                     gint64  revision)
{
  g_autoptr (GError) error = NULL;

  bb_book_set_state (book, revision, BB_STATE_ON_TRIAL, "Trial.", &error);
  g_assert_no_error (error);
}

typedef struct {
  gint64 revision;
  guint n;
} Passed;

static gboolean
add_passed (BbBook   *book,
            gpointer  data,
            GError  **error)
{
  const Passed *self = data;

  (void) error;
  for (guint i = 0; i < self->n; i++)
    {
      g_autofree char *code = g_strdup_printf ("P-%" G_GINT64_FORMAT "-%u", self->revision, i + 1);
      g_autoptr (BbWashTest) test = helper_make_wash_test (code, self->revision);
      g_autoptr (BbReading) reading = NULL;

      helper_save (book, &bb_wash_test_table, test);
      reading = helper_make_reading (test->id, 25);
      reading->stain = BB_GRADE_4_5;
      helper_save (book, &bb_reading_table, reading);
    }

  return TRUE;
}

/* Specimens that stood 25 washes, with nothing to say against them. */
void
helper_add_passed (BbBook *book,
                   gint64  revision,
                   guint   n)
{
  g_assert_true (bb_book_in_transaction (book, add_passed, &(Passed) { revision, n }, NULL));
}

/* On trial, three specimens passed, signed. */
void
helper_prove (BbBook *book,
              gint64  revision)
{
  g_autoptr (GError) error = NULL;

  helper_put_on_trial (book, revision);
  helper_add_passed (book, revision, 3);
  bb_book_sign (book, revision, FALSE, "3 of 3.", &error);
  g_assert_no_error (error);
}

void
helper_shop_free (Shop *shop)
{
  bb_customer_free (shop->customer);
  bb_equipment_free (shop->press);
  bb_lot_free (shop->lot);
  bb_job_free (shop->job);
  bb_job_line_free (shop->line);
  bb_run_free (shop->run);
  bb_person_free (shop->person);
  bb_blank_free (shop->blank);
  bb_colourway_free (shop->colourway);
  bb_supply_free (shop->pretreat);
  bb_supply_free (shop->sheet);
  bb_recipe_free (shop->recipe);
  bb_revision_free (shop->revision);
  bb_wash_test_free (shop->wash_test);
  bb_reading_free (shop->reading);
  bb_picture_free (shop->picture);
  bb_scan_free (shop->scan);
  bb_wash_plan_free (shop->plan);
  g_free (shop);
}

void
helper_assert_line (const char *message)
{
  g_assert_true (*message != '\0');
  if (!bb_text_is_plain (message, FALSE))
    g_error ("“%s” is not one line of text", message);
}

sqlite3 *
helper_open_plain (const char *path)
{
  sqlite3 *plain = NULL;

  g_assert_cmpint (sqlite3_open (path, &plain), ==, SQLITE_OK);
  sqlite3_extended_result_codes (plain, 1);

  return plain;
}

int
helper_run_plain (sqlite3    *plain,
                  const char *sql)
{
  return sqlite3_exec (plain, sql, NULL, NULL, NULL);
}

char *
helper_query_plain (sqlite3    *plain,
                    const char *sql)
{
  sqlite3_stmt *statement = NULL;
  char *value = NULL;

  g_assert_cmpint (sqlite3_prepare_v2 (plain, sql, -1, &statement, NULL), ==, SQLITE_OK);
  if (sqlite3_step (statement) == SQLITE_ROW)
    value = g_strdup ((const char *) sqlite3_column_text (statement, 0));
  sqlite3_finalize (statement);

  return value;
}

gint64
helper_count_plain (sqlite3    *plain,
                    const char *sql)
{
  g_autofree char *value = helper_query_plain (plain, sql);

  return value != NULL ? g_ascii_strtoll (value, NULL, 10) : 0;
}
