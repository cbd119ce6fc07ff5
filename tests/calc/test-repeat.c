/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-repeat.h"

#include <string.h>

#define SINCE "2025-03-14T10:00:00Z"
#define TODAY "2026-03-14"

typedef struct {
  BbJobLine *line;
  BbRevision *revision;
  BbRevision *newer;
  BbStanding *standing;
  BbBlank *blank;
  BbBlank *blank_then;
  BbColourway *colourway;
  GPtrArray *lots;
  GPtrArray *stock;
  GPtrArray *machines;
  BbRepeatFailure failures[1];
  BbRepeatCase then_and_now;
} Bench;

static BbBlank *
make_blank (void)
{
  BbBlank *blank = bb_blank_new ();
  BbFibreShare *share = bb_field_append_item (bb_table_find_field (&bb_blank_table, "composition"), blank);

  *share = (BbFibreShare) { .fibre = BB_FIBRE_COTTON, .fraction = 1 };
  blank->name = g_strdup ("Bench tee");
  blank->mass_g_per_m2 = 180;
  blank->knit = BB_KNIT_JERSEY;

  return blank;
}

static BbRevision *
make_revision (const char *code,
               gint64      number)
{
  BbRevision *revision = bb_revision_new ();

  revision->code = g_strdup (code);
  revision->number = number;
  revision->made_at = g_strdup ("2025-09-01T08:00:00Z");

  return revision;
}

static void
add_lot (Bench  *bench,
         gint64  id,
         gint64  supply)
{
  BbLot *lot = bb_lot_new ();

  lot->id = id;
  lot->code = g_strdup_printf ("L-%" G_GINT64_FORMAT, id);
  lot->supply = supply;
  g_ptr_array_add (bench->lots, lot);
}

static BbStock *
add_stock (Bench      *bench,
           gint64      id,
           gint64      supply,
           const char *last_day)
{
  BbStock *stock = bb_stock_new ();

  stock->id = id;
  stock->code = g_strdup_printf ("L-%" G_GINT64_FORMAT, id);
  stock->name = g_strdup (supply == 1 ? "Fixer" : "White");
  stock->supply = supply;
  stock->left_g = 500;
  stock->last_day = g_strdup (last_day);
  g_ptr_array_add (bench->stock, stock);

  return stock;
}

/* Nothing has changed. */
static void
set_up (Bench         *bench,
        gconstpointer  data)
{
  BbEquipment *press = bb_equipment_new ();

  (void) data;
  bench->line = bb_job_line_new ();
  bench->line->code = g_strdup ("2503-01.1");
  bench->revision = make_revision ("R-1.3", 3);
  bench->newer = make_revision ("R-1.4", 4);
  bench->standing = bb_standing_new ();
  bench->standing->state = BB_STATE_PROVEN;
  bench->standing->since = g_strdup ("2025-10-02T09:00:00Z");
  bench->blank = make_blank ();
  bench->blank_then = make_blank ();
  bench->colourway = bb_colourway_new ();
  bench->colourway->name = g_strdup ("Navy");
  bench->lots = g_ptr_array_new_with_free_func (bb_lot_table.free_record);
  bench->stock = g_ptr_array_new_with_free_func (bb_stock_table.free_record);
  bench->machines = g_ptr_array_new_with_free_func (bb_equipment_table.free_record);
  add_lot (bench, 1, 1);
  add_stock (bench, 1, 1, "2026-12-31");
  press->name = g_strdup ("Press, left");
  press->calibrated_at = g_strdup ("2025-03-14");
  g_ptr_array_add (bench->machines, press);
  bench->failures[0] = (BbRepeatFailure) { "W-7", 20, "2025-10-01" };
  bench->then_and_now = (BbRepeatCase) {
    .line = bench->line, .since = SINCE, .today = TODAY, .revision = bench->revision, .standing = bench->standing,
    .failures = bench->failures, .blank_then = bench->blank_then, .blank = bench->blank,
    .colourway = bench->colourway, .lots = bench->lots, .stock = bench->stock, .machines = bench->machines,
  };
}

static void
tear_down (Bench         *bench,
           gconstpointer  data)
{
  (void) data;
  bb_job_line_free (bench->line);
  bb_revision_free (bench->revision);
  bb_revision_free (bench->newer);
  bb_standing_free (bench->standing);
  bb_blank_free (bench->blank);
  bb_blank_free (bench->blank_then);
  bb_colourway_free (bench->colourway);
  g_ptr_array_unref (bench->lots);
  g_ptr_array_unref (bench->stock);
  g_ptr_array_unref (bench->machines);
}

/* What is found, as sentences, one a line. */
static void
expect (Bench      *bench,
        const char *wanted)
{
  const BbUnitContext context = { .system = BB_UNITS_METRIC };
  g_autoptr (GPtrArray) findings = g_ptr_array_new_with_free_func (bb_finding_table.free_record);
  g_autoptr (GString) text = g_string_new (NULL);

  bb_repeat_find (&bench->then_and_now, &context, findings);
  for (guint i = 0; i < findings->len; i++)
    {
      g_autofree char *sentence = bb_finding_describe (findings->pdata[i], NULL);

      g_assert_cmpstr (((const BbFinding *) findings->pdata[i])->line, ==, "2503-01.1");
      g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", sentence);
    }
  g_assert_cmpstr (text->str, ==, wanted);
}

static void
test_nothing_changed (Bench         *bench,
                      gconstpointer  data)
{
  (void) data;
  expect (bench, "");
  /* An earlier one of the recipe is no news. */
  bench->newer->number = 2;
  bench->then_and_now.newer = bench->newer;
  expect (bench, "");
}

static void
test_recipe (Bench         *bench,
             gconstpointer  data)
{
  (void) data;
  bench->then_and_now.newer = bench->newer;
  expect (bench, "R-1.3 has been followed by R-1.4, which is proven.");
  bench->standing->state = BB_STATE_ON_TRIAL;
  expect (bench, "R-1.3 is on trial since 2025-10-02.\nR-1.3 has been followed by R-1.4, which is proven.");
  bench->then_and_now.newer = NULL;
  bench->standing->state = BB_STATE_DRAFT;
  expect (bench, "R-1.3 is a draft since 2025-10-02.");
  bench->standing->state = BB_STATE_WITHDRAWN;
  expect (bench, "R-1.3 was withdrawn on 2025-10-02.");
  bench->standing->reason = g_strdup ("Cracks.");
  expect (bench, "R-1.3 was withdrawn on 2025-10-02: Cracks.");
}

static void
test_failures (Bench         *bench,
               gconstpointer  data)
{
  (void) data;
  bench->then_and_now.n_failures = 1;
  expect (bench, "Specimen W-7 of R-1.3 failed after 20 washes, on 2025-10-01.");
  bench->failures[0].cycles = 1;
  expect (bench, "Specimen W-7 of R-1.3 failed after 1 wash, on 2025-10-01.");
}

static void
test_lots (Bench         *bench,
           gconstpointer  data)
{
  BbStock *stock = bench->stock->pdata[0];
  BbStock *other = NULL;

  (void) data;
  /* The same container, but not before another that has to be used up. */
  other = add_stock (bench, 2, 1, "2026-11-30");
  expect (bench, "");
  bench->stock->pdata[0] = other;
  bench->stock->pdata[1] = stock;
  expect (bench, "Fixer: then from L-1, now from L-2.");

  g_free (other->last_day);
  other->last_day = g_strdup ("2026-03-13");
  stock->left_g = 0;
  expect (bench, "Lot L-2 of Fixer is past its date, 2026-03-13, and there is no other.");
  other->left_g = -3;
  expect (bench, "Nothing is left of what L-1 held.");
  /* What is not counted has something left. */
  other->left_g = (double) NAN;
  g_free (other->last_day);
  other->last_day = g_strdup (TODAY);
  expect (bench, "Fixer: then from L-1, now from L-2.");
}

/* Two lots of one supply are one finding, two supplies two. */
static void
test_lots_of_several_supplies (Bench         *bench,
                               gconstpointer  data)
{
  (void) data;
  add_lot (bench, 5, 1);
  add_lot (bench, 6, 2);
  ((BbStock *) bench->stock->pdata[0])->id = 9;
  g_free (((BbStock *) bench->stock->pdata[0])->code);
  ((BbStock *) bench->stock->pdata[0])->code = g_strdup ("L-9");
  expect (bench, "Fixer: then from L-1, L-5, now from L-9.\nNothing is left of what L-6 held.");
}

static void
test_garment (Bench         *bench,
              gconstpointer  data)
{
  (void) data;
  bench->blank->mass_g_per_m2 = 200;
  bench->blank->finish = BB_FINISH_SOFTENED;
  expect (bench, "The garment's description was edited. Fabric mass: then 180 g/m², now 200 g/m².\n"
                 "The garment's description was edited. Finish: then None known, now Heavily softened.");
  /* Where it is not known how it was described then, nothing is claimed. */
  bench->then_and_now.blank_then = NULL;
  expect (bench, "");
  bench->colourway->withdrawn_at = g_strdup ("2025-12-24T10:00:00Z");
  expect (bench, "Bench tee in Navy is out of use since 2025-12-24.");
}

static void
test_fibres (Bench         *bench,
             gconstpointer  data)
{
  BbFibreShare *share = bb_field_append_item (bb_table_find_field (&bb_blank_table, "composition"), bench->blank);

  (void) data;
  *share = (BbFibreShare) { .fibre = BB_FIBRE_POLYESTER, .fraction = 0.4 };
  g_array_index (bench->blank->composition, BbFibreShare, 0).fraction = 0.6;
  expect (bench, "The garment's description was edited. Fibres: then 100 % Cotton, now 60 % Cotton, 40 % Polyester.");
}

static void
test_machines (Bench         *bench,
               gconstpointer  data)
{
  BbEquipment *press = bench->machines->pdata[0];

  (void) data;
  press->calibrated_at[9] = '5';
  expect (bench, "Press, left was calibrated on 2025-03-15.");
  press->withdrawn_at = g_strdup ("2025-08-01T10:00:00Z");
  expect (bench, "Press, left is out of use since 2025-08-01.");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

#define ADD(path, func) g_test_add (path, Bench, NULL, set_up, func, tear_down)
  ADD ("/repeat/nothing-changed", test_nothing_changed);
  ADD ("/repeat/recipe", test_recipe);
  ADD ("/repeat/failures", test_failures);
  ADD ("/repeat/lots", test_lots);
  ADD ("/repeat/lots-of-several-supplies", test_lots_of_several_supplies);
  ADD ("/repeat/garment", test_garment);
  ADD ("/repeat/fibres", test_fibres);
  ADD ("/repeat/machines", test_machines);
#undef ADD

  return g_test_run ();
}
