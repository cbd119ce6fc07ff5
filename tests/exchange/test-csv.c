/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-csv.h"

#include <string.h>

#include "bb-error.h"
#include "bb-problem.h"
#include "bb-records.h"

/* Codes of records stand for their keys: A-7 is record 7. */
static char *
name_record (const BbField *field,
             gint64         id,
             gpointer       data,
             GError       **error)
{
  (void) field;
  (void) data;
  if (id < 100)
    return g_strdup_printf ("A-%" G_GINT64_FORMAT, id);
  g_set_error_literal (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "no such record");

  return NULL;
}

static gboolean
resolve (const BbField *field,
         const char    *code,
         gint64        *id,
         gpointer       data,
         GError       **error)
{
  (void) field;
  (void) data;
  if (g_str_has_prefix (code, "A-"))
    {
      *id = g_ascii_strtoll (code + 2, NULL, 10);
      return TRUE;
    }
  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "there is no %s", code);

  return FALSE;
}

static gboolean
add_to (gpointer   record,
        guint      done,
        guint      total,
        gpointer   data,
        GError   **error)
{
  GPtrArray *records = data;

  (void) error;
  g_assert_cmpuint (done, ==, records->len);
  g_assert_cmpuint (done, <, total);
  g_ptr_array_add (records, record);

  return TRUE;
}

static GPtrArray *
read_all (const BbTable *table,
          const char    *text,
          GError       **error)
{
  g_autoptr (GPtrArray) records = g_ptr_array_new_with_free_func (table->free_record);

  return bb_csv_read (table, text, strlen (text), resolve, add_to, records, error) ? g_steal_pointer (&records) : NULL;
}

static BbBlank *
make_blank (const char *code,
            const char *name,
            const char *note)
{
  BbBlank *blank = bb_blank_new ();
  BbFibreShare *share = bb_field_append_item (bb_table_find_field (&bb_blank_table, "composition"), blank);

  share->fibre = BB_FIBRE_COTTON;
  share->fraction = 1.0 / 3.0;
  share = bb_field_append_item (bb_table_find_field (&bb_blank_table, "composition"), blank);
  share->fibre = BB_FIBRE_POLYESTER;
  share->fraction = 2.0 / 3.0;
  blank->code = g_strdup (code);
  blank->name = g_strdup (name);
  blank->note = g_strdup (note);
  blank->mass_g_per_m2 = 180.1;
  blank->knit = BB_KNIT_PIQUE;

  return blank;
}

static void
assert_round_trip (const BbTable *table,
                   GPtrArray     *records)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = bb_csv_write (table, records, name_record, NULL, &error);
  g_autoptr (GPtrArray) again = NULL;

  g_assert_no_error (error);
  again = read_all (table, text, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (again->len, ==, records->len);
  for (guint i = 0; i < records->len; i++)
    g_assert_true (bb_record_equal (table, records->pdata[i], again->pdata[i]));
}

static const char * const awkward[] = {
  "plain", "=1+2", "+1", "-1", "@name", "'=1", "'tis", "''", "'", "a,b", "a \"quoted\" word", "\"", "=\"a\",b",
  "  spaced  ",
  "Köper, 3 m", "[1]", "null", "12", "é=1", ",", "=", "“typographic”",
};

static void
test_awkward_texts_come_back (void)
{
  g_autoptr (GPtrArray) records = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_blank_free);

  for (guint i = 0; i < G_N_ELEMENTS (awkward); i++)
    g_ptr_array_add (records, make_blank (awkward[i], awkward[G_N_ELEMENTS (awkward) - 1 - i],
                                          i % 2 == 0 ? "one\ntwo\tthree\n\n" : "\t=tab first"));
  assert_round_trip (&bb_blank_table, records);
}

static void
test_formulas_are_guarded (void)
{
  const char first[] = { '=', '+', '-', '@', '\t', '\r' };

  for (guint i = 0; i < G_N_ELEMENTS (first); i++)
    {
      g_autofree char *note = g_strdup_printf ("%cSUM(A1)", first[i]);
      g_autoptr (GPtrArray) records = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_blank_free);
      g_autofree char *text = NULL;
      g_autofree char *guarded = g_strdup_printf ("'%s", note);

      g_ptr_array_add (records, make_blank ("A", "B", note));
      text = bb_csv_write (&bb_blank_table, records, name_record, NULL, NULL);
      g_assert_nonnull (strstr (text, guarded));
    }
}

/* A guard is for texts: a temperature below zero stays a number that a spreadsheet can compute with. */
static void
test_numbers_are_not_guarded (void)
{
  g_autoptr (BbSupply) supply = bb_supply_new ();
  g_autoptr (GPtrArray) records = g_ptr_array_new ();
  g_autofree char *text = NULL;

  supply->code = g_strdup ("P");
  supply->name = g_strdup ("Pretreat");
  supply->kind = BB_SUPPLY_PRETREAT;
  supply->price_per_kg = -0.1;
  supply->shelf_life_days = 365;
  g_ptr_array_add (records, supply);
  text = bb_csv_write (&bb_supply_table, records, name_record, NULL, NULL);
  g_assert_nonnull (strstr (text, ",-0.1,,,,365,"));
  assert_round_trip (&bb_supply_table, records);
}

static void
test_references_and_emptied_defaults (void)
{
  g_autoptr (BbRevision) revision = bb_revision_new ();
  g_autoptr (GPtrArray) records = g_ptr_array_new ();
  g_autofree char *text = NULL;

  revision->code = g_strdup ("R-1.2");
  revision->recipe = 3;
  revision->number = 2;
  revision->made_at = g_strdup ("2025-03-14T08:00:00Z");
  revision->pretreat_product = 9;
  revision->print_mode = BB_PRINT_UNDERBASE;
  revision->cure_c = 160;
  revision->cure_s = 90;
  revision->proof_cycles = 25;
  revision->proof_stain = BB_CHOICE_NONE;
  g_ptr_array_add (records, revision);
  text = bb_csv_write (&bb_revision_table, records, name_record, NULL, NULL);
  g_assert_nonnull (strstr (text, "R-1.2,A-3,2,2025-03-14T08:00:00Z,"));
  g_assert_null (strstr (text, "seal"));
  assert_round_trip (&bb_revision_table, records);
}

static void
test_a_reference_to_nothing_is_an_error (void)
{
  g_autoptr (BbColourway) colourway = bb_colourway_new ();
  g_autoptr (GPtrArray) records = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;

  colourway->blank = 100;
  g_ptr_array_add (records, colourway);
  g_assert_null (bb_csv_write (&bb_colourway_table, records, name_record, NULL, &error));
  g_assert_cmpstr (error->message, ==, "no such record");
}

static void
test_columns_in_any_order (void)
{
  const char *text = "\xef\xbb\xbfsrgb,blank,\"code\",name\n#102030,A-4,N-1,\"Navy, deep\"\n\n"
                     "#ffffff,A-5,W-1,'=white\n";
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) records = read_all (&bb_colourway_table, text, &error);
  const BbColourway *first = NULL;
  const BbColourway *second = NULL;

  g_assert_no_error (error);
  g_assert_cmpuint (records->len, ==, 2);
  first = records->pdata[0];
  second = records->pdata[1];
  g_assert_cmpint (first->blank, ==, 4);
  g_assert_cmpstr (first->name, ==, "Navy, deep");
  g_assert_cmpstr (second->name, ==, "=white");
  g_assert_null (first->withdrawn_at);
}

static const struct {
  const char *text;
  int domain_is_model;
  const char *message;
} refused[] = {
  { "", 0, "not CSV: an empty text" },
  { "code,name\nA,\"B", 0, "not CSV: a cell without its closing quotation mark in line 2" },
  { "code,name\nA,\"B\"c\n", 0, "not CSV: something between a closing quotation mark and the next comma in line 2" },
  { "code,name\nA,B\"c\"\n", 0, "not CSV: a quotation mark in the middle of a cell in line 2" },
  { "code,name\nA\n", 0, "row 2: not CSV: 1 cells, the first line has 2" },
  { "code,name\nA,B,C\n", 0, "row 2: not CSV: 3 cells, the first line has 2" },
  { "code,\xff\n", 0, "not UTF-8" },
  { "code,nmae\nA,B\n", 1, "row 1: nmae: unknown column" },
  { "code,id\nA,1\n", 1, "row 1: id: unknown column" },
  { "code,name,code\nA,B,C\n", 1, "row 1: code: the column is given twice" },
  { "code,mass_g_per_m2\nA,heavy\n", 1, "row 2: mass_g_per_m2: \"heavy\" is not a number" },
  { "code,mass_g_per_m2\nA,NaN\n", 1, "row 2: mass_g_per_m2: \"NaN\" is not a number" },
  { "code,mass_g_per_m2\nA,1\nB,\"1,5\"\n", 1, "row 3: mass_g_per_m2: \"1,5\" is not a number" },
  { "code,knit\nA,felt\n", 1, "row 2: knit: \"felt\" is not one of: jersey" },
  { "code,composition\nA,cotton\n", 1, "row 2: composition: \"cotton\" is not a list" },
  { "code,composition\nA,\"[{\"\"fibre\"\":\"\"tin\"\"}]\"\n", 1,
    "row 2: composition[0].fibre: \"tin\" is not one of" },
};

static void
test_refusals (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GPtrArray) records = read_all (&bb_blank_table, refused[i].text, &error);

      g_assert_null (records);
      g_test_message ("%s", error->message);
      g_assert_true (error->domain == (refused[i].domain_is_model ? BB_MODEL_ERROR : BB_EXCHANGE_ERROR));
      g_assert_true (g_str_has_prefix (error->message, refused[i].message));
    }
}

static void
test_line_ends (void)
{
  const char * const texts[] = { "code,name\r\nA,B\r\n", "code,name\nA,B\n", "code,name\rA,B\r", "code,name\nA,B" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GPtrArray) rows = bb_csv_split (texts[i], strlen (texts[i]), &error);

      g_assert_no_error (error);
      g_assert_cmpuint (rows->len, ==, 2);
      g_assert_cmpstr (((GStrv) rows->pdata[1])[0], ==, "A");
      g_assert_cmpstr (((GStrv) rows->pdata[1])[1], ==, "B");
      g_assert_null (((GStrv) rows->pdata[1])[2]);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/csv/awkward-texts-come-back", test_awkward_texts_come_back);
  g_test_add_func ("/csv/formulas-are-guarded", test_formulas_are_guarded);
  g_test_add_func ("/csv/numbers-are-not-guarded", test_numbers_are_not_guarded);
  g_test_add_func ("/csv/references-and-emptied-defaults", test_references_and_emptied_defaults);
  g_test_add_func ("/csv/a-reference-to-nothing-is-an-error", test_a_reference_to_nothing_is_an_error);
  g_test_add_func ("/csv/columns-in-any-order", test_columns_in_any_order);
  g_test_add_func ("/csv/refusals", test_refusals);
  g_test_add_func ("/csv/line-ends", test_line_ends);

  return g_test_run ();
}
