/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-format.h"

#include "bb-records.h"

static void
assert_shown (const BbTable *table,
              gconstpointer  record,
              const char    *field,
              BbUnitSystem   system,
              const char    *expected)
{
  const BbUnitContext context = { .system = system };
  g_autofree char *text = bb_field_format (table, bb_table_find_field (table, field), record, &context);

  g_assert_cmpstr (text, ==, expected);
}

static void
test_values (void)
{
  g_autoptr (BbRevision) revision = bb_revision_new ();

  revision->code = g_strdup ("R.1");
  revision->number = 3;
  revision->made_at = g_strdup ("2025-03-14");
  revision->pretreat_product = 9;
  revision->pretreat_parts_concentrate = 1;
  revision->pretreat_parts_water = 3;
  revision->dry_c = 160;

  assert_shown (&bb_revision_table, revision, "code", BB_UNITS_METRIC, "R.1");
  assert_shown (&bb_revision_table, revision, "number", BB_UNITS_METRIC, "3");
  assert_shown (&bb_revision_table, revision, "made_at", BB_UNITS_METRIC, "2025-03-14");
  assert_shown (&bb_revision_table, revision, "pretreat_parts_concentrate", BB_UNITS_METRIC, "1:3");
  assert_shown (&bb_revision_table, revision, "pretreat_method", BB_UNITS_METRIC, "Spray machine");
  assert_shown (&bb_revision_table, revision, "dry_c", BB_UNITS_METRIC, "160 °C");
  /* 160 · 9/5 + 32 = 320, by hand. */
  assert_shown (&bb_revision_table, revision, "dry_c", BB_UNITS_US, "320 °F");
}

static void
test_nothing_is_empty (void)
{
  g_autoptr (BbRevision) revision = bb_revision_new ();
  const char * const fields[] = { "code", "number", "made_at", "made_by", "pretreat_parts_concentrate", "dry_c" };

  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    assert_shown (&bb_revision_table, revision, fields[i], BB_UNITS_METRIC, "");
}

/* Half a dilution is no dilution: the one part stands as the number that it is. */
static void
test_half_a_dilution (void)
{
  g_autoptr (BbRevision) revision = bb_revision_new ();

  revision->pretreat_parts_concentrate = 2;
  assert_shown (&bb_revision_table, revision, "pretreat_parts_concentrate", BB_UNITS_METRIC, "2");
}

static void
test_fibres (void)
{
  g_autoptr (BbBlank) blank = bb_blank_new ();
  BbFibreShare *share = bb_field_append_item (bb_table_find_field (&bb_blank_table, "composition"), blank);

  share->fibre = BB_FIBRE_COTTON;
  share->fraction = 1;
  assert_shown (&bb_blank_table, blank, "composition", BB_UNITS_METRIC, "100 % Cotton");
}

/* Of a list of single values each is shown; of other lists how long they are. */
static void
test_lists (void)
{
  g_autoptr (BbWashPlan) plan = bb_wash_plan_new ();
  const gint64 stops[] = { 1, 5, 20 };

  for (guint i = 0; i < G_N_ELEMENTS (stops); i++)
    ((BbPlanStop *) bb_field_append_item (bb_table_find_field (&bb_wash_plan_table, "grade_at"), plan))->cycles =
      stops[i];
  assert_shown (&bb_wash_plan_table, plan, "grade_at", BB_UNITS_METRIC, "1, 5, 20");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/format/values", test_values);
  g_test_add_func ("/format/nothing-is-empty", test_nothing_is_empty);
  g_test_add_func ("/format/half-a-dilution", test_half_a_dilution);
  g_test_add_func ("/format/fibres", test_fibres);
  g_test_add_func ("/format/lists", test_lists);

  return g_test_run ();
}
