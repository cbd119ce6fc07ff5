/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-tag.h"

static void
test_round_trip (void)
{
  const struct {
    BbTagKind kind;
    const char *code;
    const char *text;
  } rows[] = {
    { BB_TAG_JOB, "1042", "JOB 1042" },
    { BB_TAG_RECIPE, "COB-ZIP.3", "RECIPE COB-ZIP.3" },
    { BB_TAG_SPECIMEN, "2610-11", "SPECIMEN 2610-11" },
    { BB_TAG_LOT, "B 77/2", "LOT B 77/2" },
    { BB_TAG_RECIPE, "ÉCRU", "RECIPE ÉCRU" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = bb_tag_to_text (rows[i].kind, rows[i].code);
      g_autofree char *code = NULL;
      BbTagKind kind = 0;

      g_assert_cmpstr (text, ==, rows[i].text);
      g_assert_true (bb_tag_parse (text, &kind, &code));
      g_assert_cmpint (kind, ==, rows[i].kind);
      g_assert_cmpstr (code, ==, rows[i].code);
    }
}

static void
test_reads_as_scanned (void)
{
  const char * const texts[] = { " RECIPE COB-ZIP ", "recipe COB-ZIP", "Recipe   COB-ZIP\n" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *code = NULL;
      BbTagKind kind = 0;

      g_assert_true (bb_tag_parse (texts[i], &kind, &code));
      g_assert_cmpint (kind, ==, BB_TAG_RECIPE);
      g_assert_cmpstr (code, ==, "COB-ZIP");
    }
}

static void
test_leaves_words_alone (void)
{
  const char * const texts[] = { "", " ", "JOB", "JOB ", "JOBS 12", "recipes", "JOB-12", "black hoodie", "LOTION 3" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *code = NULL;
      BbTagKind kind = 0;

      g_test_message ("%s", texts[i]);
      g_assert_false (bb_tag_parse (texts[i], &kind, &code));
      g_assert_null (code);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/tag/round-trip", test_round_trip);
  g_test_add_func ("/tag/reads-as-scanned", test_reads_as_scanned);
  g_test_add_func ("/tag/leaves-words-alone", test_leaves_words_alone);

  return g_test_run ();
}
