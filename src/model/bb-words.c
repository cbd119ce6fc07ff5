/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-words.h"

#include <string.h>

/* Below this many letters too many words are one slip away, and from this many on there may be two. No source. */
#define SHORTEST_MISTYPED 4
#define TWO_SLIPS_FROM 8

static char *
fold (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_autofree char *apart = g_utf8_normalize (valid, -1, G_NORMALIZE_ALL);
  g_autofree char *lower = g_utf8_casefold (apart, -1);
  GString *out = g_string_new (NULL);

  for (const char *p = lower; *p != '\0'; p = g_utf8_next_char (p))
    if (!g_unichar_ismark (g_utf8_get_char (p)))
      g_string_append_unichar (out, g_utf8_get_char (p));

  return g_string_free (out, FALSE);
}

/**
 * bb_words_fold:
 * @text: any text
 *
 * Splits a text into its words: runs of letters and digits, without case and accents.
 *
 * Returns: (transfer full): the words, in order
 */
GStrv
bb_words_fold (const char *text)
{
  g_autoptr (GStrvBuilder) words = g_strv_builder_new ();
  g_autofree char *folded = fold (text);
  const char *start = NULL;

  for (const char *p = folded;; p = g_utf8_next_char (p))
    {
      gboolean inside = *p != '\0' && g_unichar_isalnum (g_utf8_get_char (p));

      if (inside && start == NULL)
        start = p;
      if (!inside && start != NULL)
        {
          g_autofree char *word = g_strndup (start, (gsize) (p - start));

          g_strv_builder_add (words, word);
          start = NULL;
        }
      if (*p == '\0')
        break;
    }

  return g_strv_builder_end (words);
}

/**
 * bb_word_grams:
 * @word: a folded word
 *
 * Takes a word apart into all its runs of three letters, with a blank before it and one behind: words that are much
 * alike have many in common, wherever the slip is.
 *
 * Returns: (transfer full): the different runs
 */
GStrv
bb_word_grams (const char *word)
{
  g_autofree char *padded = g_strconcat (" ", word, " ", NULL);
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GPtrArray) grams = g_ptr_array_new ();

  for (const char *p = padded; g_utf8_strlen (p, -1) >= 3; p = g_utf8_next_char (p))
    {
      g_autofree char *gram = g_utf8_substring (p, 0, 3);

      /* to add it again would put the later one in the place of the first */
      if (g_hash_table_contains (seen, gram))
        continue;
      g_hash_table_add (seen, gram);
      g_ptr_array_add (grams, g_steal_pointer (&gram));
    }
  g_ptr_array_add (grams, NULL);

  return (GStrv) g_ptr_array_free (g_steal_pointer (&grams), FALSE);
}

typedef struct {
  gunichar *letters;
  guint n;
} Letters;

static Letters
take_apart (const char *word)
{
  glong n = 0;
  Letters letters = { .letters = g_utf8_to_ucs4_fast (word, -1, &n) };

  letters.n = (guint) MIN (n, BB_WORD_LONGEST);

  return letters;
}

/* The cheapest way to row i, column j: a letter left out, put in, replaced, or two that changed places. */
static guint
step (guint          rows[][BB_WORD_LONGEST + 1],
      const Letters *typed,
      const Letters *word,
      guint          i,
      guint          j)
{
  gunichar a = typed->letters[i - 1];
  gunichar b = word->letters[j - 1];
  guint best = MIN (rows[i - 1][j], rows[i][j - 1]) + 1;

  best = MIN (best, rows[i - 1][j - 1] + (a == b ? 0u : 1u));
  if (i > 1 && j > 1 && a == word->letters[j - 2] && typed->letters[i - 2] == b)
    best = MIN (best, rows[i - 2][j - 2] + 1);

  return best;
}

/**
 * bb_word_distance:
 * @typed: a folded word that may be mistyped, and may be only the beginning of one
 * @word: a folded word
 *
 * Counts the slips between what was typed and the beginning of @word that is most like it: letters left out, put in,
 * replaced, and neighbours that changed places (optimal string alignment: Damerau 1964, Levenshtein 1966).
 *
 * Returns: the least number of slips
 */
guint
bb_word_distance (const char *typed,
                  const char *word)
{
  guint rows[BB_WORD_LONGEST + 1][BB_WORD_LONGEST + 1];
  Letters a = take_apart (typed);
  Letters b = take_apart (word);
  guint least = G_MAXUINT;

  for (guint i = 0; i <= a.n; i++)
    for (guint j = 0; j <= b.n; j++)
      rows[i][j] = i == 0 || j == 0 ? i + j : step (rows, &a, &b, i, j);
  for (guint j = 0; j <= b.n; j++)
    least = MIN (least, rows[a.n][j]);
  g_free (a.letters);
  g_free (b.letters);

  return least;
}

/**
 * bb_word_tolerance:
 * @typed: a folded word
 *
 * Returns: how many slips a word of this length may have and still be meant for another; 0 for one that is short, or
 *   has digits in it, which are not mistyped for a word
 */
guint
bb_word_tolerance (const char *typed)
{
  glong n = g_utf8_strlen (typed, -1);

  for (const char *p = typed; *p != '\0'; p = g_utf8_next_char (p))
    if (g_unichar_isdigit (g_utf8_get_char (p)))
      return 0;
  if (n < SHORTEST_MISTYPED || n > BB_WORD_LONGEST)
    return 0;

  return n < TWO_SLIPS_FROM ? 1 : 2;
}
