/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "store-helpers.h"

#include <glib/gstdio.h>
#include <string.h>

static void
check_reads_back (BbBook         *book,
                  const BbTable  *table,
                  gconstpointer   record)
{
  g_autoptr (GError) error = NULL;
  gpointer again = bb_book_load (book, table, bb_field_get_integer (bb_table_find_field (table, "id"), record), &error);

  g_assert_no_error (error);
  g_assert_true (bb_record_equal (table, record, again));
  bb_record_free (table, again);
}

static void
test_every_record_reads_back (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);

  helper_close (book);
  book = helper_open (path);
  check_reads_back (book, &bb_person_table, shop->person);
  check_reads_back (book, &bb_blank_table, shop->blank);
  check_reads_back (book, &bb_colourway_table, shop->colourway);
  check_reads_back (book, &bb_supply_table, shop->pretreat);
  check_reads_back (book, &bb_recipe_table, shop->recipe);
  check_reads_back (book, &bb_revision_table, shop->revision);
  check_reads_back (book, &bb_wash_test_table, shop->wash_test);
  check_reads_back (book, &bb_reading_table, shop->reading);
  helper_close (book);
}

/* Fills every column of a record with what its kind and limits allow, so that no column is forgotten. */
static void
fill_field (const BbField *field,
            gpointer       record)
{
  double middle = field->limits.set ? (field->limits.minimum + field->limits.maximum) / 2 : 1;

  if (field->derived || bb_field_is_set (field, record))
    return;

  switch ((int) field->kind)
    {
    case BB_KIND_NUMBER:
      bb_field_set_number (field, record, middle + 0.015625);
      break;
    case BB_KIND_INTEGER:
      bb_field_set_integer (field, record, (gint64) middle);
      break;
    case BB_KIND_CHOICE:
      bb_field_set_choice (field, record, (int) field->choices->n_items - 1);
      break;
    case BB_KIND_REFERENCE:
      bb_field_set_integer (field, record, 1);
      break;
    case BB_KIND_DATE:
      bb_field_set_text (field, record, "2025-03-14T09:26:53Z");
      break;
    case BB_KIND_TEXT:
      bb_field_set_text (field, record, "Grüße, “quoted” 'n \\ back");
      break;
    default:
      break;
    }
}

static void
test_every_column_reads_back (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbRevision) revision = helper_make_revision (shop->recipe->id, shop->pretreat->id);
  g_autoptr (GError) error = NULL;

  revision->dry_sheet = shop->sheet->id;
  revision->cure_sheet = shop->sheet->id;
  for (guint i = 0; i < bb_revision_table.n_fields; i++)
    fill_field (&bb_revision_table.fields[i], revision);
  g_assert_true (bb_book_save_revision (book, revision, &error));
  g_assert_no_error (error);
  for (guint i = 0; i < bb_revision_table.n_fields; i++)
    g_assert_true (bb_field_is_set (&bb_revision_table.fields[i], revision));
  check_reads_back (book, &bb_revision_table, revision);

  for (guint i = 0; i < bb_supply_table.n_fields; i++)
    fill_field (&bb_supply_table.fields[i], shop->pretreat);
  helper_save (book, &bb_supply_table, shop->pretreat);
  check_reads_back (book, &bb_supply_table, shop->pretreat);

  for (guint i = 0; i < bb_wash_test_table.n_fields; i++)
    fill_field (&bb_wash_test_table.fields[i], shop->wash_test);
  /* These follow from the plan. */
  shop->wash_test->wash_c = shop->plan->wash_c;
  shop->wash_test->wet_g = shop->wash_test->tare_g + 5;
  helper_save (book, &bb_wash_test_table, shop->wash_test);
  check_reads_back (book, &bb_wash_test_table, shop->wash_test);

  for (guint i = 0; i < bb_reading_table.n_fields; i++)
    fill_field (&bb_reading_table.fields[i], shop->reading);
  helper_save (book, &bb_reading_table, shop->reading);
  check_reads_back (book, &bb_reading_table, shop->reading);
  helper_close (book);
}

static void
test_lists_keep_order_and_are_replaced (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (BbBlank) blank = helper_make_blank ("TEE-1", "Bench tee");
  BbFibreShare *share = NULL;
  g_autoptr (GPtrArray) all = NULL;
  g_autoptr (GError) error = NULL;

  helper_save (book, &bb_blank_table, blank);
  g_array_index (blank->composition, BbFibreShare, 0).fraction = 0.25;
  share = bb_field_append_item (bb_table_find_field (&bb_blank_table, "composition"), blank);
  share->fibre = BB_FIBRE_ELASTANE;
  share->fraction = 0.35;
  helper_save (book, &bb_blank_table, blank);
  check_reads_back (book, &bb_blank_table, blank);

  g_array_set_size (blank->composition, 1);
  g_array_index (blank->composition, BbFibreShare, 0).fraction = 1;
  helper_save (book, &bb_blank_table, blank);
  check_reads_back (book, &bb_blank_table, blank);

  all = bb_book_load_all (book, &bb_blank_table, FALSE, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (all->len, ==, 1);
  g_assert_true (bb_record_equal (&bb_blank_table, g_ptr_array_index (all, 0), blank));
  helper_close (book);
}

static void
test_no_row_is_not_found (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (BbBlank) blank = helper_make_blank ("TEE-1", "Bench tee");
  g_autoptr (GPtrArray) none = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_null (bb_book_load (book, &bb_blank_table, 17, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
  g_assert_cmpstr (error->message, ==, "Blank 17 is not in this book.");
  g_clear_error (&error);

  g_assert_null (bb_book_load_by_code (book, &bb_blank_table, "NONE", &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);

  blank->id = 17;
  g_assert_false (bb_book_save (book, &bb_blank_table, blank, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
  g_assert_cmpint (blank->id, ==, 17);
  g_clear_error (&error);

  none = bb_book_load_all (book, &bb_blank_table, TRUE, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (none->len, ==, 0);
  helper_close (book);
}

static void
test_messages_name_the_cause (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbBlank) twin = helper_make_blank ("TEE-1", "Other tee");
  g_autoptr (BbColourway) stray = helper_make_colourway ("X", 99, "Sand");
  g_autoptr (BbReading) again = helper_make_reading (shop->wash_test->id, 5);
  g_autoptr (GError) error = NULL;

  g_assert_false (bb_book_save (book, &bb_blank_table, twin, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_EXISTS);
  g_assert_nonnull (strstr (error->message, "TEE-1"));
  g_assert_cmpint (twin->id, ==, BB_INTEGER_NONE);
  g_clear_error (&error);

  g_assert_false (bb_book_save (book, &bb_colourway_table, stray, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
  g_assert_cmpstr (error->message, ==, "blank: Blank 99 is not in this book.");
  g_clear_error (&error);

  g_assert_false (bb_book_save (book, &bb_reading_table, again, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_EXISTS);
  g_clear_error (&error);

  twin->mass_g_per_m2 = 5000;
  g_assert_false (bb_book_save (book, &bb_blank_table, twin, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_clear_error (&error);

  bb_book_set_person (book, 99);
  g_free (twin->code);
  twin->code = g_strdup ("TEE-2");
  twin->mass_g_per_m2 = 150;
  g_assert_false (bb_book_save (book, &bb_blank_table, twin, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
  g_assert_cmpstr (error->message, ==, "person: Person 99 is not in this book.");
  g_assert_cmpint (twin->id, ==, BB_INTEGER_NONE);
  helper_close (book);
}

static void
test_withdraw_and_restore (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (GPtrArray) out = NULL;
  g_autoptr (GPtrArray) all = NULL;
  g_autoptr (GPtrArray) back = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_book_withdraw (book, &bb_blank_table, shop->blank->id, &error));
  g_assert_true (bb_book_withdraw (book, &bb_blank_table, shop->blank->id, &error));
  g_assert_no_error (error);
  out = bb_book_load_all (book, &bb_blank_table, FALSE, &error);
  all = bb_book_load_all (book, &bb_blank_table, TRUE, &error);
  g_assert_cmpuint (out->len, ==, 0);
  g_assert_cmpuint (all->len, ==, 1);
  g_assert_nonnull (((const BbBlank *) g_ptr_array_index (all, 0))->withdrawn_at);

  /* Who had it open before and saves it does not put it back into use. */
  helper_save (book, &bb_blank_table, shop->blank);
  g_ptr_array_unref (g_steal_pointer (&out));
  out = bb_book_load_all (book, &bb_blank_table, FALSE, &error);
  g_assert_cmpuint (out->len, ==, 0);

  g_assert_true (bb_book_restore (book, &bb_blank_table, shop->blank->id, &error));
  back = bb_book_load_all (book, &bb_blank_table, FALSE, &error);
  g_assert_cmpuint (back->len, ==, 1);
  g_assert_null (((const BbBlank *) g_ptr_array_index (back, 0))->withdrawn_at);

  g_assert_false (bb_book_withdraw (book, &bb_reading_table, shop->reading->id, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_false (bb_book_withdraw (book, &bb_blank_table, 99, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
  helper_close (book);
}

static void
check_event (GPtrArray  *events,
             guint       index,
             BbDeed      deed,
             const char *subject,
             gint64      id,
             gint64      person)
{
  const BbEvent *event = g_ptr_array_index (events, index);

  g_assert_cmpint (event->deed, ==, (int) deed);
  g_assert_cmpstr (event->subject, ==, subject);
  g_assert_cmpint (event->subject_id, ==, id);
  g_assert_cmpint (event->person, ==, person);
  g_assert_cmpuint (strlen (event->at), ==, 20);
}

static void
test_every_write_is_an_event (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (BbPerson) person = helper_make_person ("IM");
  g_autoptr (BbBlank) blank = helper_make_blank ("TEE-1", "Bench tee");
  g_autoptr (BbSupply) supply = helper_make_supply ("PT-1", BB_SUPPLY_PRETREAT);
  g_autoptr (GPtrArray) events = NULL;
  g_autoptr (GError) error = NULL;

  helper_save (book, &bb_person_table, person);
  bb_book_set_person (book, person->id);
  helper_save (book, &bb_blank_table, blank);
  helper_save (book, &bb_blank_table, blank);
  g_assert_true (bb_book_withdraw (book, &bb_blank_table, blank->id, &error));
  g_assert_true (bb_book_restore (book, &bb_blank_table, blank->id, &error));
  bb_book_set_importing (book, TRUE);
  helper_save (book, &bb_supply_table, supply);

  events = bb_book_load_all (book, &bb_event_table, TRUE, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (events->len, ==, 6);
  check_event (events, 0, BB_DEED_ADDED, "person", person->id, 0);
  check_event (events, 1, BB_DEED_ADDED, "blank", blank->id, person->id);
  check_event (events, 2, BB_DEED_CHANGED, "blank", blank->id, person->id);
  check_event (events, 3, BB_DEED_WITHDRAWN, "blank", blank->id, person->id);
  check_event (events, 4, BB_DEED_RESTORED, "blank", blank->id, person->id);
  check_event (events, 5, BB_DEED_IMPORTED, "supply", supply->id, person->id);
  g_assert_nonnull (strstr (((const BbEvent *) g_ptr_array_index (events, 1))->detail, "\"code\":\"TEE-1\""));
  helper_close (book);
}

static gboolean
save_two_then_fail (BbBook    *book,
                    gpointer   data,
                    GError   **error)
{
  g_autoptr (BbBlank) blank = helper_make_blank ("TEE-2", "Second");

  (void) data;
  helper_save (book, &bb_blank_table, blank);
  g_free (blank->code);
  blank->code = g_strdup ("TEE-3");
  blank->id = BB_INTEGER_NONE;
  helper_save (book, &bb_blank_table, blank);
  g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED, "no");

  return FALSE;
}

static gboolean
fail_within (BbBook    *book,
             gpointer   data,
             GError   **error)
{
  g_autoptr (BbBlank) blank = helper_make_blank ("TEE-4", "Fourth");
  g_autoptr (BbBlank) twin = helper_make_blank ("TEE-4", "Twin");
  g_autoptr (GError) inner = NULL;

  (void) data;
  (void) error;
  helper_save (book, &bb_blank_table, blank);
  g_assert_false (bb_book_in_transaction (book, save_two_then_fail, NULL, &inner));
  g_assert_error (inner, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  g_clear_error (&inner);
  g_assert_false (bb_book_save (book, &bb_blank_table, twin, &inner));
  g_assert_error (inner, BB_STORE_ERROR, BB_STORE_ERROR_EXISTS);

  return TRUE;
}

static void
test_failure_leaves_nothing (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  sqlite3 *plain = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_false (bb_book_in_transaction (book, save_two_then_fail, NULL, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  plain = helper_open_plain (path);
  g_assert_cmpint (helper_count_plain (plain, "SELECT COUNT(*) FROM blank"), ==, 0);
  g_assert_cmpint (helper_count_plain (plain, "SELECT COUNT(*) FROM blank_composition"), ==, 0);
  g_assert_cmpint (helper_count_plain (plain, "SELECT COUNT(*) FROM event"), ==, 0);
  g_clear_error (&error);

  g_assert_true (bb_book_in_transaction (book, fail_within, NULL, &error));
  g_assert_no_error (error);
  g_assert_cmpint (helper_count_plain (plain, "SELECT COUNT(*) FROM blank"), ==, 1);
  g_assert_cmpint (helper_count_plain (plain, "SELECT COUNT(*) FROM blank_composition"), ==, 2);
  g_assert_cmpint (helper_count_plain (plain, "SELECT COUNT(*) FROM event"), ==, 1);
  sqlite3_close (plain);
  helper_close (book);
}

static void
test_referring (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbRevision) second = helper_make_revision (shop->recipe->id, shop->pretreat->id);
  g_autoptr (GPtrArray) revisions = NULL;
  g_autoptr (GPtrArray) pressed = NULL;
  g_autoptr (GPtrArray) none = NULL;
  g_autoptr (GError) error = NULL;

  second->dry_sheet = shop->sheet->id;
  second->reason = g_strdup ("Less glaze.");
  g_assert_true (bb_book_save_revision (book, second, &error));
  revisions = bb_book_load_referring (book, &bb_revision_table, &bb_recipe_table, shop->recipe->id, &error);
  pressed = bb_book_load_referring (book, &bb_revision_table, &bb_supply_table, shop->sheet->id, &error);
  none = bb_book_load_referring (book, &bb_wash_test_table, &bb_revision_table, second->id, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (revisions->len, ==, 2);
  g_assert_true (bb_record_equal (&bb_revision_table, g_ptr_array_index (revisions, 1), second));
  g_assert_cmpuint (pressed->len, ==, 1);
  g_assert_cmpuint (none->len, ==, 0);
  helper_close (book);
}

static void
test_forms (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (GError) error = NULL;
  g_autofree char *none = bb_book_dup_form (book, "recipe/new", &error);
  g_autofree char *kept = NULL;
  g_autofree char *dropped = NULL;

  g_assert_null (none);
  g_assert_no_error (error);
  g_assert_true (bb_book_keep_form (book, "recipe/new", "{\"name\":\"Da\"}", &error));
  g_assert_true (bb_book_keep_form (book, "recipe/new", "{\"name\":\"Dark\"}", &error));
  helper_close (book);

  book = helper_open (path);
  kept = bb_book_dup_form (book, "recipe/new", &error);
  g_assert_cmpstr (kept, ==, "{\"name\":\"Dark\"}");
  g_assert_true (bb_book_drop_form (book, "recipe/new", &error));
  g_assert_true (bb_book_drop_form (book, "recipe/new", &error));
  dropped = bb_book_dup_form (book, "recipe/new", &error);
  g_assert_null (dropped);
  g_assert_no_error (error);
  helper_close (book);
}

static void
test_create_over_nothing (void)
{
  g_autofree char *path = helper_new_path ();
  g_autofree char *nowhere = g_strconcat (path, ".d/none/shop.book", NULL);
  g_autoptr (GError) error = NULL;
  GStatBuf info;

  g_assert_true (g_file_set_contents (path, "mine", -1, NULL));
  g_assert_null (bb_book_create (path, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_EXISTS);
  g_assert_nonnull (strstr (error->message, path));
  g_clear_error (&error);
  g_assert_null (bb_book_create (nowhere, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_IO);
  g_clear_error (&error);

  g_unlink (path);
  helper_close (helper_create (path));
  g_assert_cmpint (g_stat (path, &info), ==, 0);
  g_assert_cmpint (info.st_mode & 0777, ==, 0600);
}

static guint
count_files (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;

  return n;
}

/* Until it is filled there is no book of that name. */
static gboolean
fill_unseen (BbBook    *book,
             gpointer   data,
             GError   **error)
{
  g_autoptr (BbBlank) blank = helper_make_blank ("B-1", "Tee");

  g_assert_false (g_file_test (data, G_FILE_TEST_EXISTS));

  return bb_book_save (book, &bb_blank_table, blank, error);
}

static gboolean
fill_and_fail (BbBook    *book,
               gpointer   data,
               GError   **error)
{
  g_assert_true (fill_unseen (book, data, error));
  g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED, "no");

  return FALSE;
}

/* Somebody else was quicker. */
static gboolean
fill_too_late (BbBook    *book,
               gpointer   data,
               GError   **error)
{
  (void) book;

  return g_file_set_contents (data, "mine", -1, error);
}

static void
test_make_whole_or_not_at_all (void)
{
  g_autofree char *path = helper_new_path ();
  g_autofree char *contents = NULL;
  g_autoptr (GArray) blanks = NULL;
  g_autoptr (GError) error = NULL;
  BbBook *book = NULL;

  g_assert_false (bb_book_make (path, fill_and_fail, path, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  g_assert_cmpuint (count_files (path), ==, 0);
  g_clear_error (&error);

  g_assert_false (bb_book_make (path, fill_too_late, path, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_EXISTS);
  g_assert_nonnull (strstr (error->message, path));
  g_assert_cmpuint (count_files (path), ==, 1);
  g_assert_true (g_file_get_contents (path, &contents, NULL, NULL));
  g_assert_cmpstr (contents, ==, "mine");
  g_clear_error (&error);

  g_unlink (path);
  g_assert_true (bb_book_make (path, fill_unseen, path, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (count_files (path), ==, 1);
  book = helper_open (path);
  blanks = helper_search (book, &bb_blank_table, "", 0);
  g_assert_cmpuint (blanks->len, ==, 1);
  helper_close (book);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/book/every-record-reads-back", test_every_record_reads_back);
  g_test_add_func ("/book/every-column-reads-back", test_every_column_reads_back);
  g_test_add_func ("/book/lists-keep-order-and-are-replaced", test_lists_keep_order_and_are_replaced);
  g_test_add_func ("/book/no-row-is-not-found", test_no_row_is_not_found);
  g_test_add_func ("/book/messages-name-the-cause", test_messages_name_the_cause);
  g_test_add_func ("/book/withdraw-and-restore", test_withdraw_and_restore);
  g_test_add_func ("/book/every-write-is-an-event", test_every_write_is_an_event);
  g_test_add_func ("/book/failure-leaves-nothing", test_failure_leaves_nothing);
  g_test_add_func ("/book/referring", test_referring);
  g_test_add_func ("/book/forms", test_forms);
  g_test_add_func ("/book/create-over-nothing", test_create_over_nothing);
  g_test_add_func ("/book/make-whole-or-not-at-all", test_make_whole_or_not_at_all);

  return g_test_run ();
}
