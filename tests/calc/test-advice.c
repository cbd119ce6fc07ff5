/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-advice.h"

/* The figures are invented: the supplier's are whatever stands on its data sheet. Heat limits are those of ISO 3758. */

typedef struct {
  BbRevision *revision;
  BbSupply *pretreat;
  BbBlank *blank;
} Bench;

static void
set_up (Bench         *bench,
        gconstpointer  data)
{
  BbFibreShare *share = NULL;

  (void) data;
  bench->blank = bb_blank_new ();
  share = bb_field_append_item (bb_table_find_field (&bb_blank_table, "composition"), bench->blank);
  *share = (BbFibreShare) { .fibre = BB_FIBRE_COTTON, .fraction = 1 };
  bench->pretreat = bb_supply_new ();
  bench->pretreat->water_parts_least = 2;
  bench->pretreat->water_parts_most = 4;
  bench->pretreat->laydown_least_g_per_m2 = 120;
  bench->pretreat->laydown_most_g_per_m2 = 305;
  bench->revision = bb_revision_new ();
  bench->revision->pretreat_parts_concentrate = 1;
  bench->revision->pretreat_parts_water = 3;
  bench->revision->pretreat_laydown_g_per_m2 = 150;
  bench->revision->dry_c = 160;
  bench->revision->dry_s = 35;
  bench->revision->print_mode = BB_PRINT_UNDERBASE;
  bench->revision->print_white_g_per_m2 = 180;
  bench->revision->cure_c = 160;
  bench->revision->cure_s = 90;
}

static void
tear_down (Bench         *bench,
           gconstpointer  data)
{
  (void) data;
  bb_revision_free (bench->revision);
  bb_supply_free (bench->pretreat);
  bb_blank_free (bench->blank);
}

/* What is said of one setting, and that nothing is said of any other. */
static void
assert_only (Bench      *bench,
             const char *field,
             const char *text)
{
  g_autoptr (GPtrArray) advice = bb_advise (bench->revision, bench->pretreat, bench->blank, NULL);

  g_assert_cmpuint (advice->len, ==, 1);
  g_assert_cmpstr (bb_advice_find (advice, bb_table_find_field (&bb_revision_table, field)), ==, text);
}

static void
assert_nothing (Bench *bench)
{
  g_autoptr (GPtrArray) advice = bb_advise (bench->revision, bench->pretreat, bench->blank, NULL);

  g_assert_cmpuint (advice->len, ==, 0);
}

static void
test_inside (Bench         *bench,
             gconstpointer  data)
{
  (void) data;
  assert_nothing (bench);

  /* The ends belong to the range, also where 1:4 is written in numbers that have no exact binary form. */
  bench->revision->pretreat_parts_concentrate = 0.3;
  bench->revision->pretreat_parts_water = 1.2;
  bench->revision->pretreat_laydown_g_per_m2 = 305;
  bench->revision->cure_c = 200;
  assert_nothing (bench);
  bench->revision->pretreat_parts_water = 0.6;
  bench->revision->pretreat_laydown_g_per_m2 = 120;
  assert_nothing (bench);
}

static void
test_water (Bench         *bench,
            gconstpointer  data)
{
  (void) data;
  bench->revision->pretreat_parts_water = 9;
  assert_only (bench, "pretreat_parts_concentrate",
               "The supplier allows 2 to 4 parts of water to 1 part; this is 9.");
  bench->revision->pretreat_parts_concentrate = 2;
  bench->revision->pretreat_parts_water = 1;
  assert_only (bench, "pretreat_parts_concentrate",
               "The supplier allows 2 to 4 parts of water to 1 part; this is 0.5.");
  bench->pretreat->water_parts_most = (double) NAN;
  assert_only (bench, "pretreat_parts_concentrate",
               "The supplier allows no less than 2 parts of water to 1 part; this is 0.5.");
  bench->pretreat->water_parts_least = (double) NAN;
  assert_nothing (bench);
  bench->pretreat->water_parts_most = 0;
  assert_only (bench, "pretreat_parts_concentrate",
               "The supplier allows no water: it is ready to use. This is 0.5 parts of water to 1 part.");
}

static void
test_laydown (Bench         *bench,
              gconstpointer  data)
{
  (void) data;
  bench->revision->pretreat_laydown_g_per_m2 = 500;
  assert_only (bench, "pretreat_laydown_g_per_m2", "The supplier advises 120 g/m² to 305 g/m²; this is 500 g/m².");
  bench->pretreat->laydown_least_g_per_m2 = (double) NAN;
  assert_only (bench, "pretreat_laydown_g_per_m2", "The supplier advises no more than 305 g/m²; this is 500 g/m².");

  /* Without pretreat, none of its figures matter. */
  bench->revision->pretreat_method = BB_PRETREAT_NONE;
  assert_nothing (bench);
}

static void
test_heat (Bench         *bench,
           gconstpointer  data)
{
  g_autoptr (GPtrArray) advice = NULL;

  (void) data;
  bench->revision->cure_c = 210;
  assert_only (bench, "cure_c",
               "This garment should meet nothing hotter than 200 °C; this is 210 °C. Care labels allow cotton no "
               "hotter iron than this.");

  /* For how long a fibre bears it, nobody has published: that is not judged. */
  bench->revision->cure_c = 160;
  bench->revision->cure_s = 3000;
  assert_nothing (bench);

  /* A garment of unknown fibres has no limit. */
  bench->revision->cure_c = 210;
  advice = bb_advise (bench->revision, bench->pretreat, NULL, NULL);
  g_assert_cmpuint (advice->len, ==, 0);
}

static void
test_itself (Bench         *bench,
             gconstpointer  data)
{
  (void) data;
  bench->revision->print_mode = BB_PRINT_COLOUR_ONLY;
  assert_only (bench, "print_white_g_per_m2", "“Colour only” prints no white: the 180 g/m² here are not printed.");
  bench->revision->print_white_g_per_m2 = 0;
  assert_nothing (bench);
  bench->revision->cure_method = BB_HEAT_TUNNEL;
  bench->revision->cure_kpa = 280;
  assert_only (bench, "cure_kpa", "“Tunnel dryer” does not press: this pressure can't be set.");
  bench->revision->cure_method = BB_HEAT_PRESS;
  bench->revision->cure_belt_mm_per_s = 20;
  assert_only (bench, "cure_belt_mm_per_s", "“Heat press” has no belt: this speed can't be set.");
}

/* All that is said of one step, in the order of the chain. */
static void
test_join (Bench         *bench,
           gconstpointer  data)
{
  g_autoptr (GPtrArray) advice = NULL;
  g_autofree char *pretreat = NULL;
  g_autofree char *dry = NULL;
  g_autofree char *all = NULL;

  (void) data;
  bench->revision->pretreat_parts_water = 9;
  bench->revision->pretreat_laydown_g_per_m2 = 500;
  bench->revision->print_mode = BB_PRINT_COLOUR_ONLY;
  advice = bb_advise (bench->revision, bench->pretreat, bench->blank, NULL);
  pretreat = bb_advice_join (advice, BB_STATION_PRETREAT, "\n");
  dry = bb_advice_join (advice, BB_STATION_DRY, "\n");
  all = bb_advice_join (advice, BB_STATION_NONE, " ");
  g_assert_cmpstr (pretreat, ==, "The supplier allows 2 to 4 parts of water to 1 part; this is 9.\n"
                                 "The supplier advises 120 g/m² to 305 g/m²; this is 500 g/m².");
  g_assert_null (dry);
  g_assert_true (g_str_has_suffix (all, "500 g/m². “Colour only” prints no white: the 180 g/m² here are not printed."));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add ("/advice/inside", Bench, NULL, set_up, test_inside, tear_down);
  g_test_add ("/advice/water", Bench, NULL, set_up, test_water, tear_down);
  g_test_add ("/advice/laydown", Bench, NULL, set_up, test_laydown, tear_down);
  g_test_add ("/advice/heat", Bench, NULL, set_up, test_heat, tear_down);
  g_test_add ("/advice/itself", Bench, NULL, set_up, test_itself, tear_down);
  g_test_add ("/advice/join", Bench, NULL, set_up, test_join, tear_down);

  return g_test_run ();
}
