/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-canonical.h"
#include "bb-error.h"
#include "bb-problem.h"
#include "bb-records.h"

static BbBlank *
make_blank (void)
{
  BbBlank *blank = bb_blank_new ();
  BbFibreShare *share = NULL;

  blank->code = g_strdup ("TEE-1");
  blank->name = g_strdup ("Bench tee");
  blank->mass_g_per_m2 = 180;
  blank->knit = BB_KNIT_JERSEY;
  share = bb_field_append_item (bb_table_find_field (&bb_blank_table, "composition"), blank);
  share->fibre = BB_FIBRE_COTTON;
  share->fraction = 0.6;
  share = bb_field_append_item (bb_table_find_field (&bb_blank_table, "composition"), blank);
  share->fibre = BB_FIBRE_POLYESTER;
  share->fraction = 0.4;

  return blank;
}

static void
test_defaults (void)
{
  g_autoptr (BbBlank) blank = bb_blank_new ();

  g_assert_cmpint (blank->finish, ==, BB_FINISH_NONE);
  g_assert_cmpint (blank->knit, ==, BB_CHOICE_NONE);
  g_assert_true (isnan (blank->mass_g_per_m2));
  g_assert_cmpint (blank->id, ==, BB_INTEGER_NONE);
  g_assert_null (blank->composition);
}

static void
test_copy_is_deep (void)
{
  g_autoptr (BbBlank) blank = make_blank ();
  g_autoptr (BbBlank) copy = bb_record_copy (&bb_blank_table, blank);

  g_assert_true (bb_record_equal (&bb_blank_table, blank, copy));
  g_array_index (copy->composition, BbFibreShare, 0).fraction = 0.5;
  g_assert_false (bb_record_equal (&bb_blank_table, blank, copy));
  g_assert_cmpfloat (g_array_index (blank->composition, BbFibreShare, 0).fraction, ==, 0.6);
}

static void
test_validation_names_key_value_and_limit (void)
{
  g_autoptr (BbBlank) blank = make_blank ();
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_record_validate (&bb_blank_table, blank, &error));
  g_assert_no_error (error);

  blank->mass_g_per_m2 = 5000;
  g_assert_false (bb_record_validate (&bb_blank_table, blank, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_assert_cmpstr (error->message, ==, "mass_g_per_m2: 5000 is above the maximum 1000");
}

static void
test_composition_makes_one (void)
{
  g_autoptr (BbBlank) blank = make_blank ();
  g_autoptr (GError) error = NULL;

  g_array_index (blank->composition, BbFibreShare, 0).fraction = 0.5;
  g_assert_false (bb_record_validate (&bb_blank_table, blank, &error));
  g_assert_true (g_str_has_prefix (error->message, "composition: "));
}

static void
test_numbers_read_back (void)
{
  const double values[] = { 0.1, 1.0 / 3.0, 355.6, 1e308, 5e-324, -0.0, 123456789012345680.0, 165.55555555555554 };

  for (guint i = 0; i < G_N_ELEMENTS (values); i++)
    {
      g_autofree char *text = bb_number_to_text (values[i]);

      g_assert_cmpfloat (g_ascii_strtod (text, NULL), ==, values[i]);
    }
}

static void
test_seal_leaves_out_the_key (void)
{
  g_autoptr (BbBlank) blank = make_blank ();
  g_autofree char *before = bb_record_seal (&bb_blank_table, blank);
  g_autofree char *after_key = NULL;
  g_autofree char *after_mass = NULL;

  blank->id = 7;
  after_key = bb_record_seal (&bb_blank_table, blank);
  g_assert_cmpstr (after_key, ==, before);
  blank->mass_g_per_m2 = 181;
  after_mass = bb_record_seal (&bb_blank_table, blank);
  g_assert_cmpstr (after_mass, !=, before);
}

static void
test_tables_are_whole (void)
{
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  for (guint t = 0; t < n_tables; t++)
    for (guint f = 0; f < tables[t]->n_fields; f++)
      {
        const BbField *field = &tables[t]->fields[f];

        g_assert_nonnull (field->title);
        g_assert_nonnull (field->help);
        g_assert_true (bb_table_find_field (tables[t], field->name) == field);
        g_assert_true ((field->kind == BB_KIND_CHOICE) == (field->choices != NULL));
        g_assert_true ((field->kind == BB_KIND_REFERENCE) == (field->target != NULL));
        if (field->parts_with != NULL)
          g_assert_nonnull (bb_table_find_field (tables[t], field->parts_with));
      }
}

static void
test_sort_keeps_the_order_of_equals (void)
{
  const gint64 cycles[] = { 20, 5, 20, 0, 5 };
  const gint64 wanted[] = { 3, 1, 4, 0, 2 };
  g_autoptr (GPtrArray) readings = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_reading_free);

  for (guint i = 0; i < G_N_ELEMENTS (cycles); i++)
    {
      BbReading *reading = bb_reading_new ();

      reading->id = i;
      reading->cycles = cycles[i];
      g_ptr_array_add (readings, reading);
    }
  bb_records_sort (&bb_reading_table, "cycles", readings);
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    g_assert_cmpint (((const BbReading *) readings->pdata[i])->id, ==, wanted[i]);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/field/defaults", test_defaults);
  g_test_add_func ("/field/copy-is-deep", test_copy_is_deep);
  g_test_add_func ("/field/validation-names-key-value-and-limit", test_validation_names_key_value_and_limit);
  g_test_add_func ("/field/composition-makes-one", test_composition_makes_one);
  g_test_add_func ("/field/numbers-read-back", test_numbers_read_back);
  g_test_add_func ("/field/seal-leaves-out-the-key", test_seal_leaves_out_the_key);
  g_test_add_func ("/field/sort-keeps-the-order-of-equals", test_sort_keeps_the_order_of_equals);
  g_test_add_func ("/field/tables-are-whole", test_tables_are_whole);

  return g_test_run ();
}
