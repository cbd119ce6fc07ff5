/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "crowd.h"

#include <stdio.h>
#include <stdlib.h>

/* Makes a book with many blanks, supplies and wash tests: `make-crowd FILE [NUMBER]`, 20,000 of each if not told. */
int
main (int   argc,
      char *argv[])
{
  if (argc < 2 || argc > 3)
    {
      fprintf (stderr, "Usage: make-crowd FILE [NUMBER]\n");
      return 2;
    }
  crowd_make (argv[1], argc > 2 ? (guint) atoi (argv[2]) : 20000);

  return 0;
}
