/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-generate-private.h"

#include <glib/gi18n-lib.h>

#include "bb-book-index.h"

/*
 * A large book of nothing real, to see how fast the program is with many years in it. Names are made of syllables,
 * settings are of the size that printing works with, and the days run from the first to the last. Records are written
 * without events: nobody did them.
 */

#define WORDS 1500
/* Pages that were written stay in memory: an index in no order would read and write each of them many times. */
#define MUCH_CACHE "PRAGMA cache_size = -262144"
#define USUAL_CACHE "PRAGMA cache_size = -2000"
#define FIRST_DAY 735900 /* days since 1 January of the year 1: 2015-10-26 */
#define DAYS 4000

static const char * const heads[] = {
  "bar", "bel", "bri", "cal", "cor", "dal", "dru", "el", "fen", "gar", "har", "hol", "ka", "kel", "lor", "mar", "mo",
  "nor", "ol", "pel", "quin", "ra", "rav", "sel", "sta", "tan", "thor", "ul", "ver", "wen", "yar", "zin",
};
static const char * const tails[] = {
  "by", "combe", "dale", "den", "fell", "ford", "gate", "ham", "hurst", "ley", "low", "mere", "more", "ness", "ock",
  "pool", "rick", "sea", "ster", "thorpe", "ton", "wald", "wick", "worth",
};

/**
 * _bb_generator_below:
 * @self: a book in the making
 * @n: how many there are to choose from
 *
 * Returns: one of the numbers from 0 up to and without @n, each as likely as any
 */
guint
_bb_generator_below (BbGenerator *self,
                     guint        n)
{
  return (guint) g_rand_int_range (self->rand, 0, (gint32) n);
}

/**
 * _bb_generator_often:
 * @self: a book in the making
 * @n: how many there are to choose from
 *
 * Few come often and many seldom, as customers and garments do.
 *
 * Returns: one of the numbers from 0 up to and without @n, the lower the likelier
 */
guint
_bb_generator_often (BbGenerator *self,
                     guint        n)
{
  double part = g_rand_double (self->rand);

  return MIN ((guint) (part * part * part * (double) n), n - 1);
}

/**
 * _bb_generator_word:
 * @self: a book in the making
 *
 * Returns: a word to name something with
 */
const char *
_bb_generator_word (BbGenerator *self)
{
  return self->words->pdata[_bb_generator_often (self, self->words->len)];
}

/**
 * _bb_generator_garment:
 * @self: a book in the making
 *
 * Returns: a kind of garment
 */
const char *
_bb_generator_garment (BbGenerator *self)
{
  static const char * const garments[] = { "tee", "heavy tee", "hoodie", "crew", "tank", "polo", "kids tee", "tote" };

  return garments[_bb_generator_below (self, G_N_ELEMENTS (garments))];
}

/**
 * _bb_generator_dup_day:
 * @share: a share of all the days
 *
 * Returns: (transfer full): the morning of the day that it has come to
 */
char *
_bb_generator_dup_day (double share)
{
  GDate date;

  g_date_clear (&date, 1);
  g_date_set_julian (&date, FIRST_DAY + (guint32) (share * DAYS));

  return g_strdup_printf ("%04u-%02u-%02uT09:00:00Z", g_date_get_year (&date), (guint) g_date_get_month (&date),
                          g_date_get_day (&date));
}

/**
 * _bb_generator_add:
 * @self: a book in the making
 * @table: the record's table
 * @record: a record of it; gets its key
 * @error: return location for a #GError
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_generator_add (BbGenerator    *self,
                   const BbTable  *table,
                   gpointer        record,
                   GError        **error)
{
  return _bb_book_complete (self->book, table, record, error) &&
         _bb_book_write_record (self->book, table, record, error);
}

static const char *
syllable (BbGenerator        *self,
          const char * const *from,
          guint               n)
{
  return from[_bb_generator_below (self, n)];
}

static void
make_words (BbGenerator *self)
{
  for (guint i = 0; i < WORDS; i++)
    {
      const char *middle = _bb_generator_below (self, 2) == 0 ? syllable (self, heads, G_N_ELEMENTS (heads)) : "";
      const char *tail = syllable (self, tails, G_N_ELEMENTS (tails));
      const char *head = syllable (self, heads, G_N_ELEMENTS (heads));

      g_ptr_array_add (self->words, g_strconcat (head, middle, tail, NULL));
    }
}

static gboolean
fill (BbBook    *book,
      gpointer   data,
      GError   **error)
{
  BbGenerator *self = data;

  make_words (self);

  return _bb_generator_add_shop (self, error) && _bb_generator_add_recipes (self, error) &&
         _bb_generator_add_jobs (self, error) && bb_search_rebuild (book->db, error);
}

/**
 * bb_book_generate:
 * @self: an empty book
 * @plan: how large it shall be
 * @error: return location for a #GError
 *
 * Fills a book with invented recipes, jobs and runs, to see how fast the program is with many.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_REFUSED where there is something in the book, or another error; nothing is
 *   written then
 */
gboolean
bb_book_generate (BbBook            *self,
                  const BbGenerate  *plan,
                  GError           **error)
{
  BbGenerator generator = { .book = self, .plan = plan };
  gint64 n = 0;
  gboolean done = FALSE;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && plan != NULL, FALSE);
  g_return_val_if_fail (plan->n_revisions >= 1 && plan->n_revisions <= BB_GENERATE_MOST, FALSE);
  g_return_val_if_fail (plan->n_runs <= BB_GENERATE_MOST, FALSE);

  if (!bb_db_query_integer (self->db, "SELECT (SELECT COUNT (*) FROM person) + (SELECT COUNT (*) FROM blank) + "
                            "(SELECT COUNT (*) FROM supply)", &n, error))
    return FALSE;
  if (n > 0)
    {
      g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED,
                           _("Only an empty book can be filled with invented records."));
      return FALSE;
    }

  generator.rand = g_rand_new_with_seed (plan->seed);
  generator.words = g_ptr_array_new_with_free_func (g_free);
  generator.revisions = g_array_new (FALSE, FALSE, sizeof (gint64));
  generator.n_customers = MAX (1, MIN (2000, plan->n_runs / 50));
  done = bb_db_run_script (self->db, MUCH_CACHE, error) &&
         bb_book_in_transaction (self, fill, &generator, error) && bb_db_run_script (self->db, USUAL_CACHE, error);
  g_rand_free (generator.rand);
  g_ptr_array_unref (generator.words);
  g_array_unref (generator.revisions);

  return done;
}
