/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "store-helpers.h"

#include <string.h>

/* SHA-256 of "abc", from FIPS 180-2, appendix B.1. */
#define ABC "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"

typedef struct {
  char *path;
  BbBook *book;
  Shop *shop;
} Fixture;

static void
set_up (Fixture      *self,
        gconstpointer unused G_GNUC_UNUSED)
{
  self->path = helper_new_path ();
  self->book = helper_create (self->path);
  self->shop = helper_fill (self->book);
}

static void
tear_down (Fixture      *self,
           gconstpointer unused G_GNUC_UNUSED)
{
  helper_shop_free (self->shop);
  helper_close (self->book);
  g_free (self->path);
}

static BbPicture *
add (Fixture    *self,
     const char *name,
     GBytes     *content)
{
  BbPicture *picture = helper_make_picture (name);
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_book_add_picture (self->book, picture, content, &error));
  g_assert_no_error (error);

  return picture;
}

static void
assert_holds (Fixture *self,
              gint64   picture,
              GBytes  *content)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) found = bb_book_load_content (self->book, picture, &error);

  g_assert_no_error (error);
  g_assert_true (g_bytes_equal (found, content));
}

static void
test_bytes_come_back (Fixture      *self,
                      gconstpointer unused G_GNUC_UNUSED)
{
  g_autoptr (GBytes) abc = g_bytes_new_static ("abc", 3);
  g_autoptr (GBytes) zeros = g_bytes_new_take (g_malloc0 (70000), 70000);
  g_autoptr (BbPicture) first = add (self, "abc.png", abc);
  g_autoptr (BbPicture) second = add (self, "zeros.png", zeros);

  g_assert_cmpstr (first->code, ==, ABC);
  g_assert_cmpint (first->n_bytes, ==, 3);
  assert_holds (self, first->id, abc);
  assert_holds (self, second->id, zeros);
}

static void
test_the_same_is_stored_once (Fixture      *self,
                              gconstpointer unused G_GNUC_UNUSED)
{
  g_autoptr (GBytes) abc = g_bytes_new_static ("abc", 3);
  g_autoptr (BbPicture) first = add (self, "abc.png", abc);
  g_autoptr (BbPicture) again = add (self, "a copy.png", abc);
  sqlite3 *plain = helper_open_plain (self->path);

  g_assert_cmpint (again->id, ==, first->id);
  g_assert_cmpint (helper_count_plain (plain, "SELECT count(*) FROM picture WHERE code = '" ABC "'"), ==, 1);
  g_assert_cmpint (helper_count_plain (plain, "SELECT count(*) FROM picture_content"), ==, 2);
  sqlite3_close (plain);
}

/* As a file of records brings it in: the record alone. */
static void
test_bytes_can_follow (Fixture      *self,
                       gconstpointer unused G_GNUC_UNUSED)
{
  g_autoptr (GBytes) abc = g_bytes_new_static ("abc", 3);
  g_autoptr (BbPicture) known = helper_make_picture ("abc.png");
  g_autoptr (BbPicture) added = NULL;
  g_autoptr (GError) error = NULL;

  known->code = g_strdup (ABC);
  known->n_bytes = 3;
  helper_save (self->book, &bb_picture_table, known);
  g_assert_null (bb_book_load_content (self->book, known->id, &error));
  g_assert_no_error (error);

  added = add (self, "found again.png", abc);
  g_assert_cmpint (added->id, ==, known->id);
  assert_holds (self, known->id, abc);
}

static void
test_limits (Fixture      *self,
             gconstpointer unused G_GNUC_UNUSED)
{
  g_autoptr (GBytes) empty = g_bytes_new_static ("", 0);
  g_autoptr (GBytes) large = g_bytes_new_take (g_malloc0 (BB_PICTURE_BYTES + 1), BB_PICTURE_BYTES + 1);
  GBytes *refused[] = { empty, large };

  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (BbPicture) picture = helper_make_picture ("scan.png");
      g_autoptr (GError) error = NULL;

      g_assert_false (bb_book_add_picture (self->book, picture, refused[i], &error));
      g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
      g_assert_nonnull (strstr (error->message, "scan.png"));
    }
}

static void
test_unknown (Fixture      *self,
              gconstpointer unused G_GNUC_UNUSED)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (bb_book_load_content (self->book, 999, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
}

static void
test_a_changed_byte_is_found (Fixture      *self,
                              gconstpointer unused G_GNUC_UNUSED)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GError) broken = NULL;
  g_autoptr (GPtrArray) findings = NULL;
  sqlite3 *plain = helper_open_plain (self->path);

  g_assert_cmpint (helper_run_plain (plain, "UPDATE picture_content SET content = x'00'"), ==,
                   SQLITE_CONSTRAINT_TRIGGER);
  g_assert_cmpint (helper_run_plain (plain, "UPDATE picture SET n_bytes = 1"), ==, SQLITE_CONSTRAINT_TRIGGER);
  g_assert_cmpint (helper_run_plain (plain, "INSERT OR REPLACE INTO picture SELECT id, code, name, 1, 1, 1, added_at "
                                     "FROM picture"), ==, SQLITE_CONSTRAINT_TRIGGER);
  g_assert_cmpint (helper_run_plain (plain, "INSERT OR REPLACE INTO picture_content SELECT picture, "
                                     "CAST (upper (CAST (content AS TEXT)) AS BLOB) FROM picture_content"), ==,
                   SQLITE_CONSTRAINT_TRIGGER);
  g_assert_cmpint (helper_run_plain (plain, "DROP TRIGGER picture_content_update"), ==, SQLITE_OK);
  g_assert_cmpint (helper_run_plain (plain, "UPDATE picture_content SET content = CAST ('A picture' AS BLOB)"), ==,
                   SQLITE_OK);
  sqlite3_close (plain);

  g_assert_null (bb_book_load_content (self->book, self->shop->picture->id, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED);

  findings = bb_book_check (self->book, NULL, &broken);
  g_assert_no_error (broken);
  /* That a trigger is gone is the other. */
  g_assert_cmpuint (findings->len, ==, 2);
  g_assert_true (strstr (findings->pdata[0], "before.png") != NULL ||
                 strstr (findings->pdata[1], "before.png") != NULL);
}

static void
test_scans_in_order (Fixture      *self,
                     gconstpointer unused G_GNUC_UNUSED)
{
  const gint64 cycles[] = { 20, 5, 10 };
  g_autoptr (GPtrArray) scans = NULL;
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (cycles); i++)
    {
      g_autoptr (BbScan) scan = helper_make_scan (self->shop->wash_test->id, self->shop->picture->id, cycles[i]);
      g_autoptr (BbScan) cloth = helper_make_scan (self->shop->wash_test->id, self->shop->picture->id, cycles[i]);

      cloth->subject = BB_SUBJECT_CLOTH;
      helper_save (self->book, &bb_scan_table, cloth);
      helper_save (self->book, &bb_scan_table, scan);
    }

  scans = bb_book_load_scans (self->book, self->shop->wash_test->id, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (scans->len, ==, 7);
  for (guint i = 0; i < scans->len; i++)
    {
      const struct {
        int subject;
        gint64 cycles;
      } wanted[] = {
        { BB_SUBJECT_PRINT, 0 }, { BB_SUBJECT_PRINT, 5 }, { BB_SUBJECT_PRINT, 10 }, { BB_SUBJECT_PRINT, 20 },
        { BB_SUBJECT_CLOTH, 5 }, { BB_SUBJECT_CLOTH, 10 }, { BB_SUBJECT_CLOTH, 20 },
      };
      const BbScan *scan = scans->pdata[i];

      g_assert_cmpint (scan->subject, ==, wanted[i].subject);
      g_assert_cmpint (scan->cycles, ==, wanted[i].cycles);
    }
}

static void
test_one_scan_at_a_time (Fixture      *self,
                         gconstpointer unused G_GNUC_UNUSED)
{
  g_autoptr (BbScan) again = helper_make_scan (self->shop->wash_test->id, self->shop->picture->id, 0);
  g_autoptr (BbScan) half = helper_make_scan (self->shop->wash_test->id, self->shop->picture->id, 5);
  g_autoptr (GError) taken = NULL;
  g_autoptr (GError) incomplete = NULL;

  g_assert_false (bb_book_save (self->book, &bb_scan_table, again, &taken));
  g_assert_error (taken, BB_STORE_ERROR, BB_STORE_ERROR_EXISTS);
  half->patch_l = 50;
  g_assert_false (bb_book_save (self->book, &bb_scan_table, half, &incomplete));
  g_assert_error (incomplete, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
}

#define ADD(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  ADD ("/pictures/bytes-come-back", test_bytes_come_back);
  ADD ("/pictures/the-same-is-stored-once", test_the_same_is_stored_once);
  ADD ("/pictures/bytes-can-follow", test_bytes_can_follow);
  ADD ("/pictures/limits", test_limits);
  ADD ("/pictures/unknown", test_unknown);
  ADD ("/pictures/a-changed-byte-is-found", test_a_changed_byte_is_found);
  ADD ("/pictures/scans-in-order", test_scans_in_order);
  ADD ("/pictures/one-scan-at-a-time", test_one_scan_at_a_time);

  return g_test_run ();
}
