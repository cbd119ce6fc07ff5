/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-job-sheet.h"

#include <string.h>

#include "bb-worksheet.h"

/*
 * One job reckoned by hand, with round numbers: a box of 300 × 400 mm makes 0.12 m², at 100 g/m² 12 g on the garment
 * and with a fifth of overspray 15 g from the nozzles. 50 garments and 10 % spares are 55.
 */

#define DAY "2025-03-14"

typedef struct {
  BbJob *job;
  BbJobLine *line;
  BbJobLine *back;
  BbBlank *blank;
  BbRevision *revision;
  BbSupply *pretreat;
  BbSupply *sheet;
  BbEquipment *sprayer;
  BbEquipment *press;
  BbEquipment *printer;
  BbShop *shop;
  GPtrArray *stock;
  BbSheetLine lines[2];
} Bench;

static BbJobLine *
make_line (const char *code)
{
  BbJobLine *line = bb_job_line_new ();

  line->code = g_strdup (code);
  line->count = 50;
  line->print_width_mm = 280;
  line->print_height_mm = 380;
  line->white_fraction = 0.5;

  return line;
}

static void
make_revision (Bench *bench)
{
  BbRevision *revision = bb_revision_new ();

  revision->pretreat_product = 7;
  revision->pretreat_parts_concentrate = 1;
  revision->pretreat_parts_water = 3;
  revision->pretreat_basis = BB_BASIS_MASS;
  revision->pretreat_laydown_g_per_m2 = 100;
  revision->pretreat_margin_mm = 10;
  revision->dry_s = 40;
  revision->dry_presses = 2;
  revision->print_mode = BB_PRINT_UNDERBASE;
  revision->print_white_g_per_m2 = 200;
  revision->print_passes = 2;
  revision->cure_s = 90;
  bench->revision = revision;
}

static void
make_machines (Bench *bench)
{
  bench->sprayer = bb_equipment_new ();
  bench->sprayer->handling_s = 30;
  bench->press = bb_equipment_new ();
  bench->press->stations = 2;
  bench->press->handling_s = 20;
  bench->press->power_w = 2000;
  bench->printer = bb_equipment_new ();
  bench->printer->handling_s = 40;
  bench->printer->print_s_per_m2 = 500;
}

static void
make_shop (Bench *bench)
{
  bench->shop = bb_shop_new ();
  bench->shop->overspray_fraction = 0.2;
  bench->shop->line_loss_g = 25;
  bench->shop->reserve_fraction = 0.1;
  bench->shop->round_up_to_g = 50;
  bench->shop->labour_price_per_h = 36;
  bench->shop->energy_price_per_kwh = 0.36;
  bench->shop->white_price_per_kg = 100;
}

static void
set_up (Bench         *bench,
        gconstpointer  data)
{
  (void) data;
  bench->job = bb_job_new ();
  bench->job->spoilage_fraction = 0.1;
  bench->line = make_line ("J.1");
  bench->back = make_line ("J.2");
  bench->back->same_garments = 1;
  bench->blank = bb_blank_new ();
  bench->blank->price = 3;
  make_revision (bench);
  bench->pretreat = bb_supply_new ();
  bench->pretreat->id = 7;
  bench->pretreat->name = g_strdup ("Fixer");
  bench->pretreat->price_per_kg = 8;
  bench->pretreat->density_g_per_ml = 1.25;
  bench->sheet = bb_supply_new ();
  bench->sheet->sheet_price = 1;
  bench->sheet->sheet_uses = 10;
  make_machines (bench);
  make_shop (bench);
  bench->stock = g_ptr_array_new_with_free_func (bb_stock_table.free_record);
  for (guint i = 0; i < 2; i++)
    bench->lines[i] = (BbSheetLine) { i == 0 ? bench->line : bench->back, bench->blank, bench->revision,
                                      bench->pretreat, bench->sheet, bench->sheet, bench->sprayer, bench->press,
                                      bench->printer, bench->press };
}

static void
tear_down (Bench         *bench,
           gconstpointer  data)
{
  (void) data;
  bb_job_free (bench->job);
  bb_job_line_free (bench->line);
  bb_job_line_free (bench->back);
  bb_blank_free (bench->blank);
  bb_revision_free (bench->revision);
  bb_supply_free (bench->pretreat);
  bb_supply_free (bench->sheet);
  bb_equipment_free (bench->sprayer);
  bb_equipment_free (bench->press);
  bb_equipment_free (bench->printer);
  bb_shop_free (bench->shop);
  g_ptr_array_unref (bench->stock);
}

static BbJobSheet *
compute (Bench *bench,
         guint  n_lines)
{
  BbJobSheet *sheet = bb_job_sheet_new ();

  bb_job_sheet_compute (sheet, bench->job, bench->lines, n_lines, bench->shop, bench->stock, DAY);

  return sheet;
}

static const BbLineSheet *
line_of (const BbJobSheet *sheet,
         guint             nth)
{
  return &g_array_index (sheet->lines, BbLineSheet, nth);
}

static const BbMixSheet *
mix_of (const BbJobSheet *sheet,
        guint             nth)
{
  return &g_array_index (sheet->mixes, BbMixSheet, nth);
}

static void
assert_close (double actual,
              double wanted)
{
  g_assert_cmpfloat_with_epsilon (actual, wanted, 1e-9 * fmax (1.0, fabs (wanted)));
}

static void
add_lot (Bench      *bench,
         gint64      id,
         const char *code,
         const char *last_day,
         double      left_g)
{
  BbStock *lot = bb_stock_new ();

  lot->id = id;
  lot->code = g_strdup (code);
  lot->supply = 7;
  lot->last_day = g_strdup (last_day);
  lot->left_g = left_g;
  g_ptr_array_add (bench->stock, lot);
}

static void
test_one_line (Bench         *bench,
               gconstpointer  data)
{
  g_autoptr (BbJobSheet) sheet = compute (bench, 1);
  const BbLineSheet *line = line_of (sheet, 0);

  (void) data;
  g_assert_null (line->missing);
  g_assert_cmpint (line->garments, ==, 55);
  g_assert_cmpint (line->spares, ==, 5);
  assert_close (line->box_area_m2, 0.12);
  assert_close (line->wet_g, 12);
  assert_close (line->used_g, 15);
  assert_close (line->needed_g, 825);
  /* A tenth of a sheet when drying and one when curing. */
  assert_close (line->sheets, 11);
  g_assert_cmpint (sheet->sheets, ==, 11);
  g_assert_cmpint (sheet->whole, ==, 1);
}

/* (825 + 25) · 1.1 = 935, rounded up 950; a quarter of the mass is concentrate, of 1.25 g/ml. */
static void
test_mix (Bench         *bench,
          gconstpointer  data)
{
  g_autoptr (BbJobSheet) sheet = compute (bench, 1);
  const BbMixSheet *mix = mix_of (sheet, 0);

  (void) data;
  g_assert_cmpuint (sheet->mixes->len, ==, 1);
  assert_close (mix->total_g, 950);
  assert_close (mix->concentrate_g, 237.5);
  assert_close (mix->concentrate_ml, 190);
  assert_close (mix->water_g, 712.5);
  assert_close (mix->short_g, 237.5);
  g_assert_null (mix->takes);
}

/* The bench's sheet for the same garments comes to the same, as long as nobody changes the shop's figures on it. */
static void
test_worksheet_agrees (Bench         *bench,
                       gconstpointer  data)
{
  g_autoptr (BbJob) job = bb_job_new ();
  g_autoptr (BbWorksheetIn) in = bb_worksheet_in_new ();
  g_autoptr (BbJobSheet) sheet = NULL;
  g_autofree char *own = NULL;
  g_autofree char *changed = NULL;
  g_autoptr (GError) error = NULL;
  BbWorksheet worksheet;

  (void) data;
  bench->job->spoilage_fraction = job->spoilage_fraction;
  sheet = compute (bench, 1);
  bb_worksheet_take_shop (in, bench->shop);
  bb_worksheet_take_revision (in, bench->revision, bench->pretreat);
  in->print_width_mm = bench->line->print_width_mm;
  in->print_height_mm = bench->line->print_height_mm;
  in->count = bench->line->count;
  g_assert_true (bb_worksheet_compute (in, &worksheet, &error));
  g_assert_no_error (error);
  assert_close (worksheet.batch.total_g, mix_of (sheet, 0)->total_g);
  assert_close (worksheet.mix.concentrate_g, mix_of (sheet, 0)->concentrate_g);
  g_assert_cmpint (worksheet.batch.garments, ==, line_of (sheet, 0)->garments);
  /* 50 and one spare, 12 g / 0.8 each, and 25 g: 790 g, and a tenth: 869 g, in steps of 50 g. */
  assert_close (worksheet.batch.total_g, 900);

  own = bb_worksheet_describe_own_losses (in, bench->shop);
  g_assert_null (own);
  in->overspray_fraction = 0.1;
  in->reserve_fraction = (double) NAN;
  changed = bb_worksheet_describe_own_losses (in, bench->shop);
  g_assert_cmpstr (changed, ==, "Overspray, Reserve");
}

/*
 * Spray 30 s; dry 2 · 40 + 20 = 100 s on two stations; print 40 + 500 · 0.1064 · 2 = 146.4 s; cure 90 + 20 = 110 s on
 * two. Printing sets the pace: 386.4 s through the line, then 54 · 146.4 s.
 */
static void
test_time (Bench         *bench,
           gconstpointer  data)
{
  g_autoptr (BbJobSheet) sheet = compute (bench, 1);
  const BbLineSheet *line = line_of (sheet, 0);
  g_autofree char *finish = NULL;

  (void) data;
  g_assert_cmpuint (line->stages->len, ==, 4);
  assert_close (g_array_index (line->stages, BbStageTime, 2).seconds_s, 146.4);
  g_assert_cmpstr (line->bottleneck, ==, bb_station_get_title (BB_STATION_PRINT));
  assert_close (line->time_s, 386.4 + 54 * 146.4);
  g_assert_cmpstr (sheet->bottleneck, ==, line->bottleneck);
  /* 8292 s are 2 h 18 min 12 s. */
  finish = bb_job_sheet_dup_finish (sheet, "2025-03-14T09:00:00Z");
  g_assert_cmpstr (finish, ==, "2025-03-14T11:18:12Z");
}

/*
 * One garment: blank 3; pretreat 15 g · 8 · 1/4 / 1000 = 0.03; white 0.0532 m² · 200 g/m² · 100 / 1000 = 1.064;
 * sheets 0.2; labour (30 + 20 + 40 + 20) s · 36 / 3600 = 1.1; energy (80 + 90) s · 2 kW / 2 stations = 170 kJ, 0.017.
 * Together 5.411; 55 of them for 50 delivered.
 */
static void
test_cost (Bench         *bench,
           gconstpointer  data)
{
  g_autoptr (BbJobSheet) sheet = compute (bench, 1);

  (void) data;
  assert_close (line_of (sheet, 0)->cost, 55 * 5.411);
  assert_close (sheet->cost, 55 * 5.411);
  assert_close (sheet->cost_per_garment, 55 * 5.411 / 50);
}

/* Garments that come twice are set out once, and paid once; all else is taken twice. One mix for both places. */
static void
test_second_place (Bench         *bench,
                   gconstpointer  data)
{
  g_autoptr (BbJobSheet) one = compute (bench, 1);
  g_autoptr (BbJobSheet) two = compute (bench, 2);

  (void) data;
  g_assert_cmpint (two->garments, ==, 55);
  g_assert_cmpint (two->spares, ==, 5);
  assert_close (two->cost, 2 * one->cost - 55 * 3);
  assert_close (two->cost_per_garment, two->cost / 50);
  assert_close (two->time_s, 2 * one->time_s);
  g_assert_cmpuint (two->mixes->len, ==, 1);
  g_assert_cmpint (mix_of (two, 0)->garments, ==, 110);
  assert_close (mix_of (two, 0)->total_g, 1850);
}

/* First what has to be used first, nothing that is past its day, and no more than there is. */
static void
test_lots (Bench         *bench,
           gconstpointer  data)
{
  g_autoptr (BbJobSheet) sheet = NULL;
  const BbMixSheet *mix = NULL;

  (void) data;
  add_lot (bench, 1, "PAST", "2025-03-13", 500);
  add_lot (bench, 2, "EMPTY", "2025-03-20", -3);
  add_lot (bench, 3, "FIRST", "2025-03-20", 100);
  add_lot (bench, 4, "NEXT", "2025-09-01", 600);
  add_lot (bench, 5, "LAST", NULL, 1000);
  bench->pretreat->low_stock_g = 1500;
  sheet = compute (bench, 1);
  mix = mix_of (sheet, 0);
  g_assert_cmpuint (mix->takes->len, ==, 2);
  g_assert_cmpstr (g_array_index (mix->takes, BbTake, 0).code, ==, "FIRST");
  assert_close (g_array_index (mix->takes, BbTake, 0).amount_g, 100);
  assert_close (g_array_index (mix->takes, BbTake, 0).left_g, 0);
  assert_close (g_array_index (mix->takes, BbTake, 1).amount_g, 137.5);
  assert_close (g_array_index (mix->takes, BbTake, 1).left_g, 462.5);
  assert_close (mix->short_g, 0);
  g_assert_cmpuint (g_strv_length (mix->past), ==, 1);
  g_assert_cmpstr (mix->past[0], ==, "PAST");
  /* 1462.5 g are left then. */
  g_assert_cmpint (mix->low, ==, 1);
}

static void
test_lots_run_out (Bench         *bench,
                   gconstpointer  data)
{
  g_autoptr (BbJobSheet) sheet = NULL;
  g_autoptr (BbJobSheet) open_ended = NULL;

  (void) data;
  add_lot (bench, 1, "ONLY", "2026-03-13", 200);
  sheet = compute (bench, 1);
  assert_close (mix_of (sheet, 0)->short_g, 37.5);
  g_assert_cmpint (mix_of (sheet, 0)->low, ==, 0);

  /* A container that nobody weighs has enough, as far as anyone knows. */
  add_lot (bench, 2, "UNCOUNTED", NULL, (double) NAN);
  open_ended = compute (bench, 1);
  assert_close (mix_of (open_ended, 0)->short_g, 0);
  assert_close (g_array_index (mix_of (open_ended, 0)->takes, BbTake, 1).amount_g, 37.5);
  g_assert_true (isnan (g_array_index (mix_of (open_ended, 0)->takes, BbTake, 1).left_g));
}

/* What nobody counts can't be said to be low; what is counted beside it can. */
static void
test_low_needs_counting (Bench         *bench,
                         gconstpointer  data)
{
  g_autoptr (BbJobSheet) uncounted = NULL;
  g_autoptr (BbJobSheet) counted = NULL;

  (void) data;
  bench->pretreat->low_stock_g = 500;
  add_lot (bench, 1, "UNCOUNTED", NULL, (double) NAN);
  uncounted = compute (bench, 1);
  g_assert_cmpint (mix_of (uncounted, 0)->low, ==, 0);

  add_lot (bench, 2, "COUNTED", NULL, 400);
  counted = compute (bench, 1);
  g_assert_cmpint (mix_of (counted, 0)->low, ==, 1);
}

/* Two dilutions of one pretreat are two mixes from the same containers: what the first takes is gone for the second. */
static void
test_two_mixes (Bench         *bench,
                gconstpointer  data)
{
  g_autoptr (BbRevision) thinner = bb_record_copy (&bb_revision_table, bench->revision);
  g_autoptr (BbJobSheet) sheet = NULL;

  (void) data;
  thinner->pretreat_parts_water = 4;
  bench->lines[1].revision = thinner;
  add_lot (bench, 1, "ONLY", NULL, 300);
  sheet = compute (bench, 2);
  g_assert_cmpuint (sheet->mixes->len, ==, 2);
  assert_close (g_array_index (mix_of (sheet, 0)->takes, BbTake, 0).left_g, 62.5);
  assert_close (mix_of (sheet, 1)->concentrate_g, 190);
  assert_close (mix_of (sheet, 1)->short_g, 127.5);
}

/* 2:6 is the same mix as 1:3. */
static void
test_same_dilution (Bench         *bench,
                    gconstpointer  data)
{
  g_autoptr (BbRevision) same = bb_record_copy (&bb_revision_table, bench->revision);
  g_autoptr (BbJobSheet) sheet = NULL;

  (void) data;
  same->pretreat_parts_concentrate = 2;
  same->pretreat_parts_water = 6;
  bench->lines[1].revision = same;
  sheet = compute (bench, 2);
  g_assert_cmpuint (sheet->mixes->len, ==, 1);
}

static void
expect_missing (Bench      *bench,
                const char *wanted)
{
  g_autoptr (BbJobSheet) sheet = compute (bench, 2);

  g_assert_nonnull (line_of (sheet, 0)->missing);
  g_test_message ("%s", line_of (sheet, 0)->missing);
  g_assert_nonnull (strstr (line_of (sheet, 0)->missing, wanted));
  g_assert_cmpint (sheet->whole, ==, 0);
  /* The other line is computed all the same. */
  g_assert_null (line_of (sheet, 1)->missing);
  g_assert_cmpint (line_of (sheet, 0)->garments, ==, 55);
}

static void
test_what_is_missing (Bench         *bench,
                      gconstpointer  data)
{
  (void) data;
  bench->lines[0].revision = NULL;
  expect_missing (bench, "no recipe");
  bench->lines[0].revision = bench->revision;
  bench->line->print_height_mm = (double) NAN;
  expect_missing (bench, "no print size");
  bench->line->print_height_mm = 4000;
  bench->sprayer->reach_height_mm = 500;
  expect_missing (bench, "print_height_mm");
}

static void
test_no_pretreat (Bench         *bench,
                  gconstpointer  data)
{
  g_autoptr (BbJobSheet) sheet = NULL;

  (void) data;
  bench->revision->pretreat_method = BB_PRETREAT_NONE;
  sheet = compute (bench, 1);
  g_assert_null (line_of (sheet, 0)->missing);
  g_assert_true (isnan (line_of (sheet, 0)->wet_g));
  g_assert_cmpuint (sheet->mixes->len, ==, 0);
  g_assert_cmpuint (line_of (sheet, 0)->stages->len, ==, 2);
  assert_close (line_of (sheet, 0)->sheets, 5.5);
}

static void
assert_no_time (Bench *bench)
{
  g_autoptr (BbJobSheet) sheet = compute (bench, 1);

  g_assert_true (isnan (sheet->time_s));
  g_assert_true (isnan (line_of (sheet, 0)->time_s));
  g_assert_null (line_of (sheet, 0)->bottleneck);
}

/* A job is not done before the line whose time nobody knows: no time in all, no moment, no pace. */
static void
test_unknown_time (Bench         *bench,
                   gconstpointer  data)
{
  g_autoptr (BbJobSheet) sheet = NULL;
  g_autofree char *finish = NULL;

  (void) data;
  bench->lines[1].printer = NULL;
  sheet = compute (bench, 2);
  g_assert_cmpint (sheet->whole, ==, 1);
  assert_close (line_of (sheet, 0)->time_s, 386.4 + 54 * 146.4);
  g_assert_true (isnan (line_of (sheet, 1)->time_s));
  g_assert_true (isnan (sheet->time_s));
  g_assert_null (sheet->bottleneck);
  finish = bb_job_sheet_dup_finish (sheet, "2025-03-14T09:00:00Z");
  g_assert_null (finish);
}

/* Each stage that takes place has to be timed; one may take no time, and by hand none is asked. */
static void
test_stages_unknown (Bench         *bench,
                     gconstpointer  data)
{
  g_autoptr (BbJobSheet) no_handling = NULL;
  g_autoptr (BbJobSheet) by_hand = NULL;

  (void) data;
  bench->sprayer->handling_s = 0;
  no_handling = compute (bench, 1);
  g_assert_cmpuint (line_of (no_handling, 0)->stages->len, ==, 3);
  assert_close (no_handling->time_s, 356.4 + 54 * 146.4);
  bench->revision->pretreat_method = BB_PRETREAT_ROLLER;
  bench->lines[0].sprayer = NULL;
  by_hand = compute (bench, 1);
  assert_close (by_hand->time_s, 356.4 + 54 * 146.4);
  bench->revision->cure_s = (double) NAN;
  assert_no_time (bench);
}

/* Nobody's silence is no time: what hands take at any machine has to be known, and by which machine it is done. */
static void
test_machines_unknown (Bench         *bench,
                       gconstpointer  data)
{
  double *handlings[] = { &bench->sprayer->handling_s, &bench->press->handling_s, &bench->printer->handling_s };
  BbSheetLine *line = &bench->lines[0];
  const BbEquipment **machines[] = { &line->sprayer, &line->dryer, &line->printer, &line->curer };

  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (handlings); i++)
    {
      double handling_s = *handlings[i];

      *handlings[i] = (double) NAN;
      assert_no_time (bench);
      *handlings[i] = handling_s;
    }
  for (guint i = 0; i < G_N_ELEMENTS (machines); i++)
    {
      const BbEquipment *machine = *machines[i];

      *machines[i] = NULL;
      assert_no_time (bench);
      *machines[i] = machine;
    }
}

static void
test_no_lines (Bench         *bench,
               gconstpointer  data)
{
  g_autoptr (BbJobSheet) sheet = compute (bench, 0);

  (void) data;
  g_assert_cmpint (sheet->garments, ==, 0);
  assert_close (sheet->cost, 0);
  g_assert_true (isnan (sheet->cost_per_garment));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

#define ADD(path, func) g_test_add (path, Bench, NULL, set_up, func, tear_down)
  ADD ("/job-sheet/one-line", test_one_line);
  ADD ("/job-sheet/mix", test_mix);
  ADD ("/job-sheet/worksheet-agrees", test_worksheet_agrees);
  ADD ("/job-sheet/time", test_time);
  ADD ("/job-sheet/cost", test_cost);
  ADD ("/job-sheet/second-place", test_second_place);
  ADD ("/job-sheet/lots", test_lots);
  ADD ("/job-sheet/lots-run-out", test_lots_run_out);
  ADD ("/job-sheet/low-needs-counting", test_low_needs_counting);
  ADD ("/job-sheet/two-mixes", test_two_mixes);
  ADD ("/job-sheet/same-dilution", test_same_dilution);
  ADD ("/job-sheet/what-is-missing", test_what_is_missing);
  ADD ("/job-sheet/no-pretreat", test_no_pretreat);
  ADD ("/job-sheet/unknown-time", test_unknown_time);
  ADD ("/job-sheet/stages-unknown", test_stages_unknown);
  ADD ("/job-sheet/machines-unknown", test_machines_unknown);
  ADD ("/job-sheet/no-lines", test_no_lines);
#undef ADD

  return g_test_run ();
}
