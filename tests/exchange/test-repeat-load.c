/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-repeat-load.h"

#include <string.h>

#include "store-helpers.h"

typedef struct {
  BbBook *book;
  Shop *shop;
} Bench;

static const BbUnitContext metric = { .system = BB_UNITS_METRIC };

static void
set_up (Bench         *self,
        gconstpointer  data)
{
  g_autofree char *path = helper_new_path ();

  (void) data;
  self->book = helper_create (path);
  self->shop = helper_fill (self->book);
  helper_prove (self->book, self->shop->revision->id);
  helper_fill_jobs (self->book, self->shop);
}

static void
tear_down (Bench         *self,
           gconstpointer  data)
{
  (void) data;
  helper_shop_free (self->shop);
  helper_close (self->book);
}

/* The findings as one text, a line each. */
static char *
find (Bench      *self,
      const char *today)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) parts = bb_repeat_load (self->book, self->shop->job->id, today, &metric, &error);
  g_autoptr (GString) out = g_string_new (NULL);
  const BbRepeatPart *part = NULL;

  g_assert_no_error (error);
  g_assert_cmpuint (parts->len, ==, 1);
  part = parts->pdata[0];
  g_assert_cmpint (part->revision->id, ==, self->shop->revision->id);
  for (guint i = 0; i < part->findings->len; i++)
    {
      g_autofree char *sentence = bb_finding_describe (part->findings->pdata[i], NULL);

      g_string_append_printf (out, "%s\n", sentence);
    }
  g_test_message ("%s", out->str);

  return g_string_free (g_steal_pointer (&out), FALSE);
}

static void
test_nothing (Bench         *self,
              gconstpointer  data)
{
  g_autofree char *text = find (self, "2025-03-20");

  (void) data;
  g_assert_cmpstr (text, ==, "");
}

static void
change_everything (Bench *self)
{
  Shop *shop = self->shop;
  g_autoptr (BbWashTest) test = helper_make_wash_test ("F-1", shop->revision->id);
  g_autoptr (BbReading) reading = NULL;
  g_autoptr (GError) error = NULL;

  shop->blank->mass_g_per_m2 = 211;
  helper_save (self->book, &bb_blank_table, shop->blank);
  g_free (shop->press->calibrated_at);
  shop->press->calibrated_at = g_strdup ("2099-01-01");
  helper_save (self->book, &bb_equipment_table, shop->press);
  helper_save (self->book, &bb_wash_test_table, test);
  reading = helper_make_reading (test->id, 5);
  reading->change = BB_GRADE_1;
  g_free (reading->read_at);
  reading->read_at = g_strdup ("2099-01-02");
  helper_save (self->book, &bb_reading_table, reading);
  g_assert_true (bb_book_withdraw (self->book, &bb_lot_table, shop->lot->id, &error));
  g_assert_no_error (error);
}

static void
test_everything (Bench         *self,
                 gconstpointer  data)
{
  g_autofree char *text = NULL;
  const char * const parts[] = {
    " is on trial since ", "Specimen F-1 of ", "after 5 washes, on 2099-01-02", "Nothing is left of what L-1 held.",
    "The garment's description was edited.", "now 211", "was calibrated on 2099-01-01",
  };

  (void) data;
  change_everything (self);
  text = find (self, "2025-03-20");
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    if (strstr (text, parts[i]) == NULL)
      g_error ("“%s” is not in: %s", parts[i], text);
}

/* A later revision that is proven is told of, and given to choose. */
static void
test_newer (Bench         *self,
            gconstpointer  data)
{
  g_autoptr (BbRevision) next = helper_make_revision (self->shop->recipe->id, self->shop->pretreat->id);
  g_autoptr (GPtrArray) parts = NULL;
  g_autofree char *text = NULL;

  (void) data;
  next->reason = g_strdup ("Hotter.");
  g_assert_true (bb_book_save_revision (self->book, next, NULL));
  helper_prove (self->book, next->id);
  text = find (self, "2025-03-20");
  g_assert_nonnull (strstr (text, "has been followed by"));
  parts = bb_repeat_load (self->book, self->shop->job->id, "2025-03-20", &metric, NULL);
  g_assert_cmpint (((const BbRepeatPart *) parts->pdata[0])->newer->id, ==, next->id);
}

static void
test_no_job (Bench         *self,
             gconstpointer  data)
{
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_null (bb_repeat_load (self->book, 99, "2025-03-20", &metric, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

#define ADD(path, func) g_test_add (path, Bench, NULL, set_up, func, tear_down)
  ADD ("/repeat-load/nothing", test_nothing);
  ADD ("/repeat-load/everything", test_everything);
  ADD ("/repeat-load/newer", test_newer);
  ADD ("/repeat-load/no-job", test_no_job);
#undef ADD

  return g_test_run ();
}
