/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-problem.h"
#include "bb-wash.h"

#include <string.h>

static const BbField *
field (const char *name)
{
  return bb_table_find_field (&bb_wash_plan_table, name);
}

static BbWashPlan *
make_published (void)
{
  BbWashPlan *plan = bb_wash_plan_new ();
  const gint64 stops[] = { 1, 5, 20 };

  plan->id = 7;
  plan->code = g_strdup ("6330-4N-F");
  plan->name = g_strdup ("Home wash 40 °C");
  plan->standard = BB_WASH_ISO_6330;
  plan->publication = g_strdup ("ISO 6330:2021");
  plan->procedure = g_strdup ("4N");
  plan->wash_c = 40;
  plan->origin = BB_PLAN_ORIGIN_MEMORY;
  for (guint i = 0; i < G_N_ELEMENTS (stops); i++)
    ((BbPlanStop *) bb_field_append_item (field ("grade_at"), plan))->cycles = stops[i];

  return plan;
}

static void
expect_refused (const BbWashPlan *plan,
                const char       *name)
{
  g_autofree char *prefix = g_strconcat (name, ": ", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_false (bb_record_validate (&bb_wash_plan_table, plan, &error));
  g_assert_true (g_str_has_prefix (error->message, prefix));
}

/* Numbers of a published method are somebody else's; the shop's own are nobody else's. */
static void
test_origin (void)
{
  g_autoptr (BbWashPlan) plan = make_published ();

  g_assert_true (bb_record_validate (&bb_wash_plan_table, plan, NULL));
  plan->origin = BB_PLAN_ORIGIN_SHOP;
  expect_refused (plan, "origin");
  plan->standard = BB_WASH_SHOP;
  g_assert_true (bb_record_validate (&bb_wash_plan_table, plan, NULL));
  plan->origin = BB_PLAN_ORIGIN_STANDARD;
  expect_refused (plan, "origin");
}

static guint
count_settled (const BbWashPlan *plan,
               const BbWashPlan *draft,
               gboolean          is_used)
{
  guint n = 0;

  for (guint i = 0; i < bb_wash_plan_table.n_fields; i++)
    n += bb_wash_plan_is_settled (plan, draft, is_used, &bb_wash_plan_table.fields[i]) ? 1 : 0;

  return n;
}

static void
test_settled (void)
{
  g_autoptr (BbWashPlan) plan = make_published ();
  g_autoptr (BbWashPlan) draft = bb_record_copy (&bb_wash_plan_table, plan);

  g_assert_true (bb_wash_plan_is_settled (plan, draft, FALSE, field ("wash_c")));
  g_assert_true (bb_wash_plan_is_settled (plan, draft, FALSE, field ("publication")));
  g_assert_false (bb_wash_plan_is_settled (plan, draft, FALSE, field ("grade_at")));
  g_assert_false (bb_wash_plan_is_settled (plan, draft, FALSE, field ("origin")));

  /* Whoever has the standard in hand puts its numbers right, unless specimens were washed by them. */
  draft->origin = BB_PLAN_ORIGIN_STANDARD;
  g_assert_cmpuint (count_settled (plan, draft, FALSE), ==, 0);
  g_assert_true (bb_wash_plan_is_settled (plan, draft, TRUE, field ("wash_c")));
  g_assert_true (bb_wash_plan_is_settled (plan, draft, TRUE, field ("grade_at")));
  g_assert_true (bb_wash_plan_is_settled (plan, draft, TRUE, field ("rest_days")));
  g_assert_false (bb_wash_plan_is_settled (plan, draft, TRUE, field ("note")));
  g_assert_false (bb_wash_plan_is_settled (plan, draft, TRUE, field ("grace_days")));

  /* What is typed anew can claim a standard; what is the shop's own is free until it is used. */
  plan->id = BB_INTEGER_NONE;
  draft->origin = BB_PLAN_ORIGIN_MEMORY;
  g_assert_cmpuint (count_settled (plan, draft, FALSE), ==, 0);
  plan->id = 7;
  plan->standard = BB_WASH_SHOP;
  g_assert_cmpuint (count_settled (plan, draft, FALSE), ==, 0);
}

static void
test_own_copy (void)
{
  g_autoptr (BbWashPlan) plan = make_published ();
  g_autoptr (BbWashPlan) own = NULL;
  g_autoptr (BbWashPlan) second = NULL;

  plan->note = g_strdup ("No softener.");
  plan->withdrawn_at = g_strdup ("2025-03-14T09:00:00Z");
  own = bb_wash_plan_dup_as_own (plan);
  g_assert_cmpint (own->id, ==, BB_INTEGER_NONE);
  g_assert_null (own->code);
  g_assert_null (own->publication);
  g_assert_null (own->procedure);
  g_assert_null (own->withdrawn_at);
  g_assert_false (bb_wash_plan_is_published (own));
  g_assert_cmpfloat (own->wash_c, ==, 40);
  g_assert_cmpint (bb_wash_plan_get_last (own), ==, 20);
  g_assert_cmpstr (own->note, ==, "After 6330-4N-F: ISO 6330:2021, 4N.\nNo softener.");

  own->code = g_strdup ("OUR-40");
  g_assert_true (bb_record_validate (&bb_wash_plan_table, own, NULL));
  second = bb_wash_plan_dup_as_own (own);
  g_assert_true (g_str_has_prefix (second->note, "After OUR-40.\n"));
}

/* What stands in the plan all the same is shown. */
static void
test_asked_for (void)
{
  g_autoptr (BbWashPlan) plan = make_published ();

  g_assert_true (bb_wash_plan_asks_for (plan, field ("steel_balls")));
  plan->standard = BB_WASH_SHOP;
  g_assert_true (bb_wash_plan_asks_for (plan, field ("wash_c")));
  g_assert_true (bb_wash_plan_asks_for (plan, field ("publication")));
  g_assert_false (bb_wash_plan_asks_for (plan, field ("steel_balls")));
  g_assert_false (bb_wash_plan_asks_for (plan, field ("liquor_ml")));
  plan->steel_balls = 10;
  g_assert_true (bb_wash_plan_asks_for (plan, field ("steel_balls")));
}

/* The fields that a specimen has from its plan, as they stand in the table. */
static void
assert_followed (const BbWashPlan *plan,
                 const char       *wanted)
{
  g_autoptr (GString) found = g_string_new (NULL);

  for (guint i = 0; i < bb_wash_test_table.n_fields; i++)
    if (bb_wash_test_is_followed (plan, &bb_wash_test_table.fields[i]))
      g_string_append_printf (found, "%s ", bb_wash_test_table.fields[i].name);
  g_assert_cmpstr (found->str, ==, wanted);
}

static void
test_followed (void)
{
  g_autoptr (BbWashPlan) plan = make_published ();

  assert_followed (plan, "method wash_c plan_cycles ");
  plan->standard = BB_WASH_SHOP;
  assert_followed (plan, "method wash_c plan_cycles ");
  /* What the plan does not say stays open. */
  plan->wash_c = (double) NAN;
  assert_followed (plan, "method plan_cycles ");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/wash-plan/origin", test_origin);
  g_test_add_func ("/wash-plan/settled", test_settled);
  g_test_add_func ("/wash-plan/own-copy", test_own_copy);
  g_test_add_func ("/wash-plan/asked-for", test_asked_for);
  g_test_add_func ("/wash-plan/followed", test_followed);

  return g_test_run ();
}
