/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-propose.h"

#include <string.h>

#include "bb-problem.h"

typedef struct {
  BbBlank *blank;
  BbSupply *pretreat;
  BbRevision *near;
  BbRevision *far;
  BbProposeFrom from[2];
  GPtrArray *reasons;
} Bench;

static BbRevision *
make_revision (const char *code,
               double      laydown,
               double      cure_c)
{
  BbRevision *revision = bb_revision_new ();

  revision->id = 5;
  revision->code = g_strdup (code);
  revision->recipe = 3;
  revision->number = 4;
  revision->made_at = g_strdup ("2025-03-14");
  revision->reason = g_strdup ("Warmer.");
  revision->note = g_strdup ("Of that garment only.");
  revision->pretreat_product = 7;
  revision->pretreat_parts_concentrate = 1;
  revision->pretreat_parts_water = 3;
  revision->pretreat_laydown_g_per_m2 = laydown;
  revision->dry_c = 160;
  revision->dry_s = 35;
  revision->print_mode = BB_PRINT_UNDERBASE;
  revision->print_white_g_per_m2 = 180;
  revision->cure_c = cure_c;
  revision->cure_s = 90;
  revision->proof_cycles = 25;

  return revision;
}

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
  bench->near = make_revision ("A.2", 150, 160);
  bench->far = make_revision ("B.1", 110, 150);
  /* Weights 10 and 5. */
  bench->from[0] = (BbProposeFrom) { bench->near, 0.08 };
  bench->from[1] = (BbProposeFrom) { bench->far, 0.18 };
  bench->reasons = g_ptr_array_new_with_free_func (g_free);
}

static void
tear_down (Bench         *bench,
           gconstpointer  data)
{
  (void) data;
  bb_blank_free (bench->blank);
  bb_supply_free (bench->pretreat);
  bb_revision_free (bench->near);
  bb_revision_free (bench->far);
  g_ptr_array_unref (bench->reasons);
}

static BbRevision *
propose (Bench *bench,
         guint  n_from)
{
  const BbUnitContext context = { .system = BB_UNITS_METRIC };

  g_ptr_array_set_size (bench->reasons, 0);

  return bb_propose_revision (bench->blank, bench->from, n_from, bench->pretreat, &context, bench->reasons);
}

/* (10 · 150 + 5 · 110) / 15 = 136.67, to the next 5: 135; (10 · 160 + 5 · 150) / 15 = 156.67, to the degree: 157. */
static void
test_mean (Bench         *bench,
           gconstpointer  data)
{
  g_autoptr (BbRevision) revision = propose (bench, 2);

  (void) data;
  g_assert_cmpfloat (revision->pretreat_laydown_g_per_m2, ==, 135);
  g_assert_cmpfloat (revision->cure_c, ==, 157);
  g_assert_cmpfloat (revision->cure_s, ==, 90);
  g_assert_cmpfloat (revision->pretreat_parts_water, ==, 3);
  g_assert_cmpuint (bench->reasons->len, ==, 1);
  g_assert_cmpstr (bench->reasons->pdata[0], ==, "Proposed from A.2, B.1. Not proven on this garment.");
}

/* Nothing of where it comes from stays but the settings, and it can be saved once it has a recipe and a number. */
static void
test_is_a_new_one (Bench         *bench,
                   gconstpointer  data)
{
  g_autoptr (BbRevision) revision = propose (bench, 1);
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_cmpint (revision->id, ==, BB_INTEGER_NONE);
  g_assert_cmpint (revision->recipe, ==, 0);
  g_assert_null (revision->code);
  g_assert_null (revision->note);
  g_assert_cmpstr (revision->reason, ==, "Proposed from A.2. Not proven on this garment.");
  revision->recipe = 1;
  revision->number = 1;
  revision->code = g_strdup ("X.1");
  revision->made_at = g_strdup ("2025-03-14");
  revision->seal = g_strnfill (64, 'a');
  bb_record_validate (&bb_revision_table, revision, &error);
  g_assert_no_error (error);
}

/* What is made in another way is no number to average with. */
static void
test_only_alike (Bench         *bench,
                 gconstpointer  data)
{
  g_autoptr (BbRevision) revision = NULL;

  (void) data;
  bench->far->cure_method = BB_HEAT_TUNNEL;
  revision = propose (bench, 2);
  g_assert_cmpfloat (revision->pretreat_laydown_g_per_m2, ==, 150);
  g_assert_cmpstr (revision->reason, ==, "Proposed from A.2. Not proven on this garment.");
}

static void
expect_reason (Bench      *bench,
               const char *wanted)
{
  for (guint i = 0; i < bench->reasons->len; i++)
    if (strstr (bench->reasons->pdata[i], wanted) != NULL)
      return;
  g_error ("nothing says “%s”", wanted);
}

static void
test_within_the_supplies_limits (Bench         *bench,
                                 gconstpointer  data)
{
  g_autoptr (BbRevision) least = NULL;
  g_autoptr (BbRevision) most = NULL;

  (void) data;
  bench->pretreat->laydown_least_g_per_m2 = 160;
  bench->pretreat->water_parts_most = 2;
  least = propose (bench, 1);
  g_assert_cmpfloat (least->pretreat_laydown_g_per_m2, ==, 160);
  g_assert_cmpfloat (least->pretreat_parts_water, ==, 2);
  expect_reason (bench, "raised to 160 g/m²");
  expect_reason (bench, "set to 1:2");

  bench->pretreat->laydown_least_g_per_m2 = 60;
  bench->pretreat->laydown_most_g_per_m2 = 120;
  bench->pretreat->water_parts_most = 6;
  bench->pretreat->water_parts_least = 4;
  most = propose (bench, 1);
  g_assert_cmpfloat (most->pretreat_laydown_g_per_m2, ==, 120);
  g_assert_cmpfloat (most->pretreat_parts_water, ==, 4);
  expect_reason (bench, "lowered to 120 g/m²");
}

/* How hot is for bb-heat-limit.h to say; it is less than cotton bears. */
static void
test_within_what_the_garment_bears (Bench         *bench,
                                    gconstpointer  data)
{
  g_autoptr (BbRevision) revision = NULL;

  (void) data;
  g_array_index (bench->blank->composition, BbFibreShare, 0).fibre = BB_FIBRE_POLYESTER;
  bench->blank->finish = BB_FINISH_WATER_REPELLENT;
  revision = propose (bench, 1);
  g_assert_cmpfloat (revision->cure_c, <, 160);
  g_assert_cmpfloat (revision->dry_c, ==, revision->cure_c);
  expect_reason (bench, "Cure lowered to");
  expect_reason (bench, "Drying lowered to");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

#define ADD(path, func) g_test_add (path, Bench, NULL, set_up, func, tear_down)
  ADD ("/propose/mean", test_mean);
  ADD ("/propose/is-a-new-one", test_is_a_new_one);
  ADD ("/propose/only-alike", test_only_alike);
  ADD ("/propose/within-the-supplies-limits", test_within_the_supplies_limits);
  ADD ("/propose/within-what-the-garment-bears", test_within_what_the_garment_bears);
#undef ADD

  return g_test_run ();
}
