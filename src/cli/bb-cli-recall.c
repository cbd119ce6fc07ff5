/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli-recall.h"

#include <glib/gi18n-lib.h>

#include "bb-cli-record.h"
#include "bb-cli.h"

/* What --limit is where it isn't given. */
#define NO_LIMIT G_MAXINT

static BbCliStatus
recall (const BbCliCommon *common,
        BbBook            *book,
        BbCliFields       *fields,
        const BbCliAsked  *asked)
{
  g_autoptr (BbCodes) codes = bb_codes_new (book);
  g_autoptr (GError) error = NULL;
  g_autofree char *answer = NULL;
  g_auto (BbCliFound) found = { 0 };

  if (!bb_cli_fields_read (fields, codes, asked->narrow, &error))
    return bb_cli_fail_by_error (error, NULL);
  if (*asked->text == '\0' && asked->nearest == NULL && bb_narrow_is_empty (asked->narrow))
    return bb_cli_fail (BB_CLI_USAGE, _("'recall' needs words to look for, a filter, or --nearest."));

  if (bb_cli_find (book, asked, &found, &error))
    answer = common->json ? bb_cli_found_to_json (&found, book, &error)
                          : bb_cli_found_to_text (&found, book, asked->text, &error);

  return answer != NULL ? bb_cli_write (answer) : bb_cli_fail_by_error (error, NULL);
}

/* The filters, and what is recall's own. */
static GArray *
make_entries (BbCliFields  *fields,
              char        **nearest,
              int          *limit)
{
  const GOptionEntry own[] = {
    { "nearest", 0, 0, G_OPTION_ARG_STRING, nearest,
      N_("Tell the recipes nearest to a garment, printed or not"), N_("BLANK[/COLOUR]") },
    { "limit", 0, 0, G_OPTION_ARG_INT, limit,
      N_("Tell at most N of each; if not given 50, and 5 of the nearest"), "N" },
  };
  GArray *entries = g_array_new (TRUE, TRUE, sizeof (GOptionEntry));

  for (const GOptionEntry *entry = bb_cli_fields_get_entries (fields); entry->long_name != NULL; entry++)
    g_array_append_val (entries, *entry);
  g_array_append_vals (entries, own, G_N_ELEMENTS (own));

  return entries;
}

static BbCliStatus
run_recall (int    argc,
            char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  g_auto (BbCliAsked) asked = { .narrow = bb_narrow_new () };
  int limit = NO_LIMIT;
  g_autoptr (BbCliFields) fields = bb_cli_fields_new (&bb_narrow_table, "");
  g_autoptr (GArray) entries = make_entries (fields, &asked.nearest, &limit);
  BbCliStatus status = BB_CLI_USAGE;
  BbBook *book = NULL;

  if (!bb_cli_parse_options (&bb_cli_recall, (const GOptionEntry *) (gpointer) entries->data, &common, &argc, &argv))
    return BB_CLI_USAGE;
  if (limit < 1)
    return bb_cli_fail (BB_CLI_USAGE, _("--limit: %d is below the minimum 1"), limit);
  asked.limit = limit != NO_LIMIT ? (guint) limit : 0;
  asked.text = g_strjoinv (" ", argv + 1);

  book = bb_cli_open_book (&common, &status);

  return book != NULL ? bb_cli_close_book (book, recall (&common, book, fields, &asked)) : status;
}

const BbCliCommand bb_cli_recall = {
  .name = "recall",
  .arguments = "[WORD…]",
  .summary = N_("Find recipes and jobs by words and filters, and tell their settings in one line each"),
  .run = run_recall,
};
