/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-recall.h"

#include <string.h>

#include "bb-book-private.h"
#include "bb-words.h"

/* How many words that have most in common with a mistyped one are looked at more closely. */
#define CLOSEST 40

/* As many letters as a word may have, and a blank on either side. */
#define MOST_GRAMS (BB_WORD_LONGEST + 2)

typedef struct {
  char *word;
  guint distance;
  guint common;
} Candidate;

static void
clear_candidate (gpointer data)
{
  g_free (((Candidate *) data)->word);
}

/* Fewer slips first, then more in common. */
static int
compare_candidates (gconstpointer a,
                    gconstpointer b)
{
  const Candidate *first = a;
  const Candidate *second = b;

  if (first->distance != second->distance)
    return first->distance < second->distance ? -1 : 1;
  if (first->common != second->common)
    return first->common > second->common ? -1 : 1;

  return strcmp (first->word, second->word);
}

/* One statement for any word: what is not used of its parameters is nothing, and equal to nothing. */
static char *
make_closest_sql (void)
{
  GString *sql = g_string_new ("SELECT w.word, COUNT (*) FROM search_gram g JOIN search_word w ON w.id = g.word "
                               "WHERE g.gram IN (");

  for (guint i = 1; i <= MOST_GRAMS; i++)
    g_string_append_printf (sql, "%s?%u", i > 1 ? ", " : "", i);
  g_string_append_printf (sql, ") GROUP BY w.id, w.word ORDER BY COUNT (*) DESC, w.id LIMIT %d", CLOSEST);

  return g_string_free (sql, FALSE);
}

static void
add_candidate (GArray     *candidates,
               const char *word,
               guint       distance,
               guint       common)
{
  g_array_set_size (candidates, candidates->len + 1);
  g_array_index (candidates, Candidate, candidates->len - 1) = (Candidate) { g_strdup (word), distance, common };
}

static GArray *
find_candidates (BbBook      *self,
                 const char  *typed,
                 GError     **error)
{
  g_autofree char *sql = make_closest_sql ();
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, sql, error);
  g_autoptr (GArray) candidates = g_array_new (FALSE, FALSE, sizeof (Candidate));
  g_auto (GStrv) grams = bb_word_grams (typed);
  const guint tolerance = bb_word_tolerance (typed);
  BbStep step = BB_STEP_ROW;

  g_array_set_clear_func (candidates, clear_candidate);
  if (statement == NULL)
    return NULL;

  for (guint i = 0; i < MOST_GRAMS && grams[i] != NULL; i++)
    bb_statement_bind_text (statement, (int) i + 1, grams[i]);
  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    {
      const char *word = bb_statement_get_text (statement, 0);
      guint distance = bb_word_distance (typed, word);

      if (distance <= tolerance)
        add_candidate (candidates, word, distance, (guint) bb_statement_get_integer (statement, 1));
    }
  g_array_sort (candidates, compare_candidates);

  return step == BB_STEP_DONE ? g_steal_pointer (&candidates) : NULL;
}

/* Whether a word begins with what was typed. */
static gboolean
is_known (BbBook      *self,
          const char  *typed,
          gboolean    *known,
          GError     **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, "SELECT 1 FROM search_word "
                                                     "WHERE word >= ?1 AND word < ?2 LIMIT 1", error);
  g_autofree char *end = g_strconcat (typed, "\xf4\x8f\xbf\xbd", NULL);
  BbStep step = BB_STEP_ERROR;

  if (statement == NULL)
    return FALSE;

  bb_statement_bind_text (statement, 1, typed);
  bb_statement_bind_text (statement, 2, end);
  step = bb_statement_step (statement, error);
  *known = step == BB_STEP_ROW;

  return step != BB_STEP_ERROR;
}

/* What each word of the text may stand for: itself, where it is known or can't be mistyped. */
static gboolean
find_choices (BbBook      *self,
              GStrv        words,
              GPtrArray   *choices,
              gboolean    *mistyped,
              GError     **error)
{
  for (guint i = 0; words[i] != NULL; i++)
    {
      g_autoptr (GArray) candidates = NULL;
      gboolean known = bb_word_tolerance (words[i]) == 0;

      if (!known && !is_known (self, words[i], &known, error))
        return FALSE;
      if (!known)
        {
          candidates = find_candidates (self, words[i], error);
          if (candidates == NULL)
            return FALSE;
        }
      *mistyped = *mistyped || (candidates != NULL && candidates->len > 0);
      g_ptr_array_add (choices, g_steal_pointer (&candidates));
    }

  return TRUE;
}

static void
unref_candidates (gpointer data)
{
  if (data != NULL)
    g_array_unref (data);
}

/* The text with the @nth choice for each word that has so many, and the last for those that have fewer. */
static char *
spell (GStrv      words,
       GPtrArray *choices,
       guint      nth)
{
  g_autoptr (GPtrArray) spelt = g_ptr_array_new ();

  for (guint i = 0; words[i] != NULL; i++)
    {
      const GArray *candidates = choices->pdata[i];

      g_ptr_array_add (spelt, candidates != NULL && candidates->len > 0
                                ? g_array_index (candidates, Candidate, MIN (nth, candidates->len - 1)).word
                                : words[i]);
    }
  g_ptr_array_add (spelt, NULL);

  return g_strjoinv (" ", (char **) spelt->pdata);
}

/**
 * bb_book_correct_words:
 * @self: a book
 * @text: what was typed
 * @limit: how many readings at most
 * @error: return location for a #GError
 *
 * Reads mistyped words as words that the book has: those that have the most runs of three letters in common, and no
 * more slips than bb_word_tolerance() allows. Whether something has them all together is for the search to say.
 *
 * Returns: (transfer full) (nullable) (element-type utf8): other readings of the text, the likeliest first; none where
 *   no word seems mistyped. %NULL with an error
 */
GPtrArray *
bb_book_correct_words (BbBook      *self,
                       const char  *text,
                       guint        limit,
                       GError     **error)
{
  g_autoptr (GPtrArray) readings = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) choices = g_ptr_array_new_with_free_func (unref_candidates);
  g_auto (GStrv) words = NULL;
  gboolean mistyped = FALSE;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && text != NULL, NULL);

  words = bb_words_fold (text);
  if (!find_choices (self, words, choices, &mistyped, error))
    return NULL;

  for (guint n = 0; mistyped && n < limit; n++)
    {
      g_autofree char *reading = spell (words, choices, n);

      if (readings->len > 0 && g_str_equal (reading, readings->pdata[readings->len - 1]))
        break;
      g_ptr_array_add (readings, g_steal_pointer (&reading));
    }

  return g_steal_pointer (&readings);
}
