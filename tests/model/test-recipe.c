/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-error.h"
#include "bb-problem.h"
#include "bb-recipe.h"
#include "bb-supply.h"
#include "bb-wash.h"

#include <math.h>

/* A revision that is whole, invented: every rule below is broken starting from it. */
static BbRevision *
make_revision (void)
{
  BbRevision *self = bb_revision_new ();

  self->code = g_strdup ("TEE-DARK/1");
  self->recipe = 1;
  self->number = 1;
  self->made_at = g_strdup ("2025-03-14T08:30:00Z");
  self->pretreat_product = 4;
  self->pretreat_parts_concentrate = 1;
  self->pretreat_parts_water = 3;
  self->pretreat_laydown_g_per_m2 = 120;
  self->dry_c = 165;
  self->dry_s = 35;
  self->print_mode = BB_PRINT_UNDERBASE;
  self->print_white_g_per_m2 = 90;
  self->cure_c = 160;
  self->cure_s = 90;
  self->proof_cycles = 20;
  self->seal = g_strnfill (64, 'a');

  return self;
}

static void
assert_refused (const BbTable *table,
                gconstpointer  record,
                const char    *message)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (bb_record_validate (table, record, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_assert_cmpstr (error->message, ==, message);
}

static void
assert_allowed (const BbTable *table,
                gconstpointer  record)
{
  g_autoptr (GError) error = NULL;

  bb_record_validate (table, record, &error);
  g_assert_no_error (error);
}

static void
test_states (void)
{
  /* Rows: from draft, on trial, proven, withdrawn; columns the same, to. */
  const gboolean allowed[4][4] = {
    { FALSE, TRUE, FALSE, TRUE },
    { FALSE, FALSE, TRUE, TRUE },
    { FALSE, TRUE, FALSE, TRUE },
    { TRUE, TRUE, TRUE, FALSE },
  };

  g_assert_cmpuint (bb_state_choices.n_items, ==, 4);
  for (int from = 0; from < 4; from++)
    for (int to = 0; to < 4; to++)
      g_assert_cmpint (bb_state_may_become ((BbState) from, (BbState) to), ==, allowed[from][to]);
}

static void
test_pretreat_rules (void)
{
  g_autoptr (BbRevision) self = make_revision ();

  assert_allowed (&bb_revision_table, self);

  self->pretreat_product = 0;
  assert_refused (&bb_revision_table, self,
                  "pretreat_product: choose the pretreat, or set the method to no pretreat.");
  self->pretreat_product = 4;
  self->pretreat_parts_water = (double) NAN;
  assert_refused (&bb_revision_table, self, "pretreat_parts_concentrate: give the dilution, like 1:3.");
  self->pretreat_parts_water = 0;
  self->pretreat_parts_concentrate = (double) NAN;
  assert_refused (&bb_revision_table, self, "pretreat_parts_concentrate: give the dilution, like 1:3.");
  self->pretreat_parts_concentrate = 0;
  assert_refused (&bb_revision_table, self,
                  "pretreat_parts_concentrate: 0 is not allowed, it must be more than 0");
  self->pretreat_parts_concentrate = 1;
  self->pretreat_laydown_g_per_m2 = (double) NAN;
  assert_refused (&bb_revision_table, self, "pretreat_laydown_g_per_m2: give the laydown.");

  self->pretreat_method = BB_PRETREAT_NONE;
  self->pretreat_product = 0;
  self->dry_c = (double) NAN;
  self->dry_s = (double) NAN;
  assert_allowed (&bb_revision_table, self);
}

static void
test_heat_rules (void)
{
  g_autoptr (BbRevision) self = make_revision ();

  self->dry_s = (double) NAN;
  assert_refused (&bb_revision_table, self, "dry_s: give the dwell.");
  self->dry_c = (double) NAN;
  assert_refused (&bb_revision_table, self, "dry_c: give the temperature.");
  self->dry_method = BB_HEAT_AIR;
  assert_allowed (&bb_revision_table, self);

  self->cure_method = BB_HEAT_AIR;
  assert_refused (&bb_revision_table, self,
                  "cure_method: pigment ink does not cure in air; choose a press or a tunnel.");
  self->cure_method = BB_HEAT_TUNNEL;
  self->cure_c = 231;
  assert_refused (&bb_revision_table, self, "cure_c: 231 is above the maximum 230");
}

static void
test_print_rules (void)
{
  g_autoptr (BbRevision) self = make_revision ();

  self->print_white_g_per_m2 = (double) NAN;
  assert_refused (&bb_revision_table, self, "print_white_g_per_m2: an underbase needs its white.");
  self->print_white_g_per_m2 = 0;
  assert_refused (&bb_revision_table, self, "print_white_g_per_m2: an underbase needs its white.");
  self->print_mode = BB_PRINT_UNDERBASE_KNOCKOUT;
  assert_refused (&bb_revision_table, self, "print_white_g_per_m2: an underbase needs its white.");
  self->print_mode = BB_PRINT_COLOUR_ONLY;
  assert_allowed (&bb_revision_table, self);
  self->print_mode = BB_CHOICE_NONE;
  assert_refused (&bb_revision_table, self, "print_mode: missing, and it has no default");
}

static void
test_a_later_revision_says_why (void)
{
  g_autoptr (BbRevision) self = make_revision ();

  self->number = 2;
  assert_refused (&bb_revision_table, self, "reason: say why this revision differs from the one before.");
  self->reason = g_strdup ("");
  assert_refused (&bb_revision_table, self, "reason: say why this revision differs from the one before.");
  g_free (self->reason);
  self->reason = g_strdup ("The white sank in");
  assert_allowed (&bb_revision_table, self);
  g_free (self->reason);
  self->reason = g_strdup ("\u202eThe white sank in");
  assert_refused (&bb_revision_table, self, "reason: has control characters or is not valid UTF-8");
}

static void
test_a_recipe_is_for_something (void)
{
  g_autoptr (BbRecipe) self = bb_recipe_new ();

  self->code = g_strdup ("TEE-DARK");
  self->name = g_strdup ("Dark tees");
  assert_refused (&bb_recipe_table, self,
                  "blank: choose the blank it is for, or name the family of garments.");
  self->family = g_strdup ("");
  assert_refused (&bb_recipe_table, self,
                  "blank: choose the blank it is for, or name the family of garments.");
  g_free (self->family);
  self->family = g_strdup ("Ring-spun tees");
  assert_allowed (&bb_recipe_table, self);
  g_clear_pointer (&self->family, g_free);
  self->blank = 1;
  assert_allowed (&bb_recipe_table, self);
}

static void
test_supply_ranges (void)
{
  g_autoptr (BbSupply) self = bb_supply_new ();

  self->code = g_strdup ("PT-1");
  self->name = g_strdup ("Pretreat of the demo shop");
  self->kind = 0;
  assert_allowed (&bb_supply_table, self);
  self->water_parts_least = 3;
  assert_allowed (&bb_supply_table, self);
  self->water_parts_most = 2;
  assert_refused (&bb_supply_table, self, "water_parts_most: the most water is less than the least.");
  self->water_parts_most = 3;
  assert_allowed (&bb_supply_table, self);
  self->laydown_least_g_per_m2 = 100;
  self->laydown_most_g_per_m2 = 90;
  assert_refused (&bb_supply_table, self, "laydown_most_g_per_m2: the most laydown is less than the least.");
}

static void
test_wet_is_heavier (void)
{
  g_autoptr (BbWashTest) self = bb_wash_test_new ();

  self->code = g_strdup ("S-1");
  self->revision = 1;
  self->method = BB_WASH_SHOP;
  self->plan_cycles = 20;
  self->made_at = g_strdup ("2025-03-14");
  self->tare_g = 150;
  assert_allowed (&bb_wash_test_table, self);
  self->wet_g = 149.9;
  assert_refused (&bb_wash_test_table, self,
                  "wet_g: the garment can't be lighter with pretreat than without.");
  self->wet_g = 150;
  assert_allowed (&bb_wash_test_table, self);
}

static void
test_grades (void)
{
  /* The nine steps of ISO 105-A02 as half steps; a grade between two steps counts as the worse one. */
  const struct {
    double number;
    BbGrade grade;
  } rows[] = {
    { 5, BB_GRADE_5 }, { 4.76, BB_GRADE_5 }, { 4.75, BB_GRADE_4_5 }, { 4.5, BB_GRADE_4_5 },
    { 4.25, BB_GRADE_4 },
    { 3.1, BB_GRADE_3 }, { 1, BB_GRADE_1 }, { 0, BB_GRADE_1 }, { -7, BB_GRADE_1 }, { 6, BB_GRADE_5 },
    { (double) INFINITY, BB_GRADE_5 }, { -(double) INFINITY, BB_GRADE_1 }, { (double) NAN, BB_GRADE_1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_assert_cmpint (bb_grade_from_number (rows[i].number), ==, rows[i].grade);

  g_assert_cmpuint (bb_grade_choices.n_items, ==, 9);
  for (int grade = BB_GRADE_5; grade <= BB_GRADE_1; grade++)
    {
      double number = bb_grade_to_number ((BbGrade) grade);
      const char *key = bb_choices_get_key (&bb_grade_choices, grade);

      g_assert_cmpint (bb_grade_from_number (number), ==, grade);
      g_assert_cmpfloat (floor (number), ==, g_ascii_digit_value (key[0]));
      g_assert_cmpint (number > floor (number), ==, key[1] == '-');
    }

  g_assert_true (isnan (bb_grade_to_number ((BbGrade) BB_CHOICE_NONE)));
  g_assert_true (isnan (bb_grade_to_number ((BbGrade) 9)));
}

static void
test_grades_meet (void)
{
  g_assert_true (bb_grade_meets (BB_GRADE_4, BB_GRADE_4));
  g_assert_true (bb_grade_meets (BB_GRADE_5, BB_GRADE_4));
  g_assert_false (bb_grade_meets (BB_GRADE_3_4, BB_GRADE_4));
  g_assert_false (bb_grade_meets ((BbGrade) BB_CHOICE_NONE, BB_GRADE_1));
  g_assert_false (bb_grade_meets ((BbGrade) BB_CHOICE_NONE, (BbGrade) BB_CHOICE_NONE));
  g_assert_true (bb_grade_meets (BB_GRADE_1, (BbGrade) BB_CHOICE_NONE));
}

static void
test_next_revision (void)
{
  g_autoptr (BbRevision) before = bb_revision_new ();
  g_autoptr (BbRevision) next = NULL;

  before->id = 7;
  before->recipe = 3;
  before->number = 2;
  before->code = g_strdup ("TEE.2");
  before->reason = g_strdup ("Too stiff");
  before->seal = g_strdup ("0123");
  before->cure_c = 160;
  next = bb_revision_new_next (before, 5);
  g_assert_cmpint (next->id, ==, BB_INTEGER_NONE);
  g_assert_cmpint (next->recipe, ==, 3);
  g_assert_cmpint (next->number, ==, 5);
  g_assert_cmpfloat (next->cure_c, ==, 160);
  g_assert_null (next->code);
  g_assert_null (next->reason);
  g_assert_null (next->seal);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/recipe/states", test_states);
  g_test_add_func ("/recipe/pretreat-rules", test_pretreat_rules);
  g_test_add_func ("/recipe/heat-rules", test_heat_rules);
  g_test_add_func ("/recipe/print-rules", test_print_rules);
  g_test_add_func ("/recipe/a-later-revision-says-why", test_a_later_revision_says_why);
  g_test_add_func ("/recipe/a-recipe-is-for-something", test_a_recipe_is_for_something);
  g_test_add_func ("/recipe/next-revision", test_next_revision);
  g_test_add_func ("/recipe/supply-ranges", test_supply_ranges);
  g_test_add_func ("/recipe/wet-is-heavier", test_wet_is_heavier);
  g_test_add_func ("/recipe/grades", test_grades);
  g_test_add_func ("/recipe/grades-meet", test_grades_meet);

  return g_test_run ();
}
