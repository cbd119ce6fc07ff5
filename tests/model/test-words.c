/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-words.h"

static void
expect_words (const char *text,
              const char *wanted)
{
  g_auto (GStrv) words = bb_words_fold (text);
  g_autofree char *joined = g_strjoinv ("|", words);

  g_assert_cmpstr (joined, ==, wanted);
}

static void
test_fold (void)
{
  expect_words ("", "");
  expect_words ("  - / . ", "");
  expect_words ("Deep Navy", "deep|navy");
  expect_words ("MUD-BLACK.3", "mud|black|3");
  expect_words ("Écru d’été", "ecru|d|ete");
  expect_words ("Živa Krnjelac", "ziva|krnjelac");
  expect_words ("Мастерская", "мастерская");
  expect_words ("a\xff" "b", "a|b");
}

static void
test_grams (void)
{
  g_auto (GStrv) grams = bb_word_grams ("tee");
  g_auto (GStrv) one = bb_word_grams ("a");
  g_auto (GStrv) often = bb_word_grams ("aaaaaaa");
  g_autofree char *joined = g_strjoinv ("|", grams);

  g_assert_cmpstr (joined, ==, " te|tee|ee ");
  g_assert_cmpstr (one[0], ==, " a ");
  g_assert_null (one[1]);
  g_assert_cmpuint (g_strv_length (often), ==, 3);
}

/* Counted by hand. What is typed may be the beginning only, so that nothing is wrong with an end that is missing. */
static void
test_distance (void)
{
  const struct {
    const char *typed;
    const char *word;
    guint wanted;
  } rows[] = {
    { "harbour", "harbour", 0 }, { "harb", "harbour", 0 }, { "harbuor", "harbour", 1 }, { "harbur", "harbour", 1 },
    { "hharbour", "harbour", 1 }, { "larbour", "harbour", 1 }, { "harbours", "harbour", 1 }, { "", "harbour", 0 },
    { "navi", "navy", 1 }, { "xyz", "navy", 3 }, { "ca", "abc", 1 }, { "cab", "abc", 1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_assert_cmpuint (bb_word_distance (rows[i].typed, rows[i].word), ==, rows[i].wanted);
}

static void
test_tolerance (void)
{
  g_assert_cmpuint (bb_word_tolerance ("tee"), ==, 0);
  g_assert_cmpuint (bb_word_tolerance ("nvay"), ==, 1);
  g_assert_cmpuint (bb_word_tolerance ("harbuor"), ==, 1);
  g_assert_cmpuint (bb_word_tolerance ("wrackline"), ==, 2);
  g_assert_cmpuint (bb_word_tolerance ("2503"), ==, 0);
}

/* One slip at a random place of a random word is one slip, or none where it makes no difference. */
static void
test_one_slip (void)
{
  const char * const words[] = { "harbour", "skelligrove", "wrackline", "navy", "polyester" };

  for (guint i = 0; i < 20000; i++)
    {
      const char *word = words[g_test_rand_int_range (0, G_N_ELEMENTS (words))];
      g_autoptr (GString) typed = g_string_new (word);
      gsize at = (gsize) g_test_rand_int_range (0, (gint32) typed->len - 1);
      char letter = (char) g_test_rand_int_range ('a', 'z' + 1);

      switch (g_test_rand_int_range (0, 4))
        {
        case 0:
          g_string_erase (typed, (gssize) at, 1);
          break;
        case 1:
          g_string_insert_c (typed, (gssize) at, letter);
          break;
        case 2:
          typed->str[at] = letter;
          break;
        default:
          letter = typed->str[at];
          typed->str[at] = typed->str[at + 1];
          typed->str[at + 1] = letter;
          break;
        }
      g_assert_cmpuint (bb_word_distance (typed->str, word), <=, 1);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/words/fold", test_fold);
  g_test_add_func ("/words/grams", test_grams);
  g_test_add_func ("/words/distance", test_distance);
  g_test_add_func ("/words/tolerance", test_tolerance);
  g_test_add_func ("/words/one-slip", test_one_slip);

  return g_test_run ();
}
