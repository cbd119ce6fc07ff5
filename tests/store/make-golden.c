/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "store-helpers.h"

#include <stdio.h>

/*
 * Makes the golden book of the schema at hand: `make-golden FILE`. A released schema's golden book is made once, before
 * the release, committed as golden-N.book, and opened by test-golden.c for ever.
 */
int
main (int   argc,
      char *argv[])
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Shop) shop = NULL;
  g_autoptr (BbRevision) next = NULL;
  BbBook *book = NULL;

  if (argc != 2)
    {
      fprintf (stderr, "Usage: make-golden FILE\n");
      return 2;
    }

  book = helper_create (argv[1]);
  shop = helper_fill (book);
  helper_prove (book, shop->revision->id);

  next = helper_make_revision (shop->recipe->id, shop->pretreat->id);
  next->reason = g_strdup ("Less glaze.");
  next->dry_sheet = shop->sheet->id;
  next->note = g_strdup ("Grüße vom Prüfstand.");
  if (!bb_book_save_revision (book, next, &error) ||
      !bb_book_keep_form (book, "blank/new", "{\"name\":\"Ta\"}", &error))
    g_error ("%s", error->message);
  helper_fill_jobs (book, shop);
  helper_close (book);

  return 0;
}
