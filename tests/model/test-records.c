/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-problem.h"
#include "bb-records.h"

#include <string.h>

/* What holds of every table of the book, whatever fields come to it later. */

typedef void (*EachField) (const BbTable *table,
                           const BbField *field);

static void
for_each_field (EachField func)
{
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  g_assert_cmpuint (n_tables, >, 0);
  for (guint t = 0; t < n_tables; t++)
    for (guint f = 0; f < tables[t]->n_fields; f++)
      func (tables[t], &tables[t]->fields[f]);
}

static int
get_place (const BbTable *table)
{
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  for (guint t = 0; t < n_tables; t++)
    if (tables[t] == table)
      return (int) t;

  return -1;
}

static void
test_tables_are_found (void)
{
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  for (guint t = 0; t < n_tables; t++)
    g_assert_true (bb_book_find_table (tables[t]->name) == tables[t]);
  g_assert_null (bb_book_find_table ("no such table"));
}

static void
check_target (const BbTable *table,
              const BbField *field)
{
  if (field->target == NULL)
    return;

  g_assert_cmpint (get_place (field->target), >=, 0);
  /* A record may refer to one of its own table, which was there before it. */
  if (field->target != table)
    g_assert_cmpint (get_place (field->target), <, get_place (table));
}

static void
test_references_point_back (void)
{
  for_each_field (check_target);
}

static void
check_limits (G_GNUC_UNUSED const BbTable *table,
              const BbField               *field)
{
  if (field->limits.set)
    g_assert_cmpfloat (field->limits.minimum, <=, field->limits.maximum);
  if (field->count.set)
    g_assert_cmpfloat (field->count.minimum, <=, field->count.maximum);
}

static void
test_limits_leave_room (void)
{
  for_each_field (check_limits);
}

static void
check_default (const BbTable *table,
               const BbField *field)
{
  gpointer record = bb_record_new (table);
  BbProblem problem;

  if (field->fallback.set)
    {
      g_assert_true (bb_field_is_set (field, record));
      g_assert_false (bb_field_find_problem (field, record, &problem));
    }
  bb_record_free (table, record);
}

static void
test_defaults_are_allowed (void)
{
  for_each_field (check_default);
}

/* The unit stands at the end of a key, so that a number in a file can't be taken for another. */
static void
check_unit_in_name (const BbTable *table,
                    const BbField *field)
{
  const struct {
    BbQuantity quantity;
    const char *suffix;
  } rows[] = {
    { BB_QUANTITY_LENGTH, "_mm" }, { BB_QUANTITY_AREA, "_m2" }, { BB_QUANTITY_MASS, "_g" },
    { BB_QUANTITY_VOLUME, "_ml" }, { BB_QUANTITY_MASS_PER_AREA, "_g_per_m2" },
    { BB_QUANTITY_DENSITY, "_g_per_ml" }, { BB_QUANTITY_TEMPERATURE, "_c" }, { BB_QUANTITY_TIME, "_s" },
    { BB_QUANTITY_PRESSURE, "_kpa" }, { BB_QUANTITY_SPEED, "_mm_per_s" },
    { BB_QUANTITY_FRACTION, "fraction" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (field->quantity == rows[i].quantity)
      {
        g_test_message ("%s.%s ends with %s", table->name, field->name, rows[i].suffix);
        g_assert_true (g_str_has_suffix (field->name, rows[i].suffix));
      }
}

static void
test_keys_carry_their_units (void)
{
  for_each_field (check_unit_in_name);
}

static void
test_empty_records_are_refused (void)
{
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  for (guint t = 0; t < n_tables; t++)
    {
      gpointer record = bb_record_new (tables[t]);
      g_autoptr (GError) error = NULL;

      g_assert_false (bb_record_validate (tables[t], record, &error));
      g_assert_nonnull (strchr (error->message, ':'));
      bb_record_free (tables[t], record);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/records/tables-are-found", test_tables_are_found);
  g_test_add_func ("/records/references-point-back", test_references_point_back);
  g_test_add_func ("/records/limits-leave-room", test_limits_leave_room);
  g_test_add_func ("/records/defaults-are-allowed", test_defaults_are_allowed);
  g_test_add_func ("/records/keys-carry-their-units", test_keys_carry_their_units);
  g_test_add_func ("/records/empty-records-are-refused", test_empty_records_are_refused);

  return g_test_run ();
}
