/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bench.h"

/**
 * bench_set_up:
 * @bench: a fixture
 * @data: not used
 *
 * Makes the book.
 */
void
bench_set_up (Bench         *bench,
              gconstpointer  data)
{
  g_autofree char *path = helper_new_path ();

  (void) data;
  bench->book = helper_create (path);
  bench->shop = helper_fill (bench->book);
  helper_fill_jobs (bench->book, bench->shop);
}

/**
 * bench_tear_down:
 * @bench: a fixture
 * @data: not used
 *
 * Closes the book.
 */
void
bench_tear_down (Bench         *bench,
                 gconstpointer  data)
{
  (void) data;
  helper_shop_free (bench->shop);
  helper_close (bench->book);
}
