/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-notice-words.h"

#include <glib/gi18n-lib.h>

static char *
name_jobs (const GPtrArray *jobs)
{
  g_autoptr (GString) codes = g_string_new (NULL);

  for (guint i = 0; i < jobs->len; i++)
    g_string_append_printf (codes, "%s%s", i > 0 ? ", " : "", ((const BbJob *) jobs->pdata[i])->code);

  return jobs->len > 0 ? g_strdup_printf (ngettext ("An open job uses it: %s.", "Open jobs use it: %s.", jobs->len),
                                          codes->str)
                       : g_strdup (_("No open job uses it."));
}

/**
 * bb_words_of_notice:
 * @book: a book
 * @notice: a notice of it
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): the news as a sentence, and one that names the open jobs that it is about;
 *   %NULL with an error
 */
char *
bb_words_of_notice (BbBook          *book,
                    const BbNotice  *notice,
                    GError         **error)
{
  g_autofree char *news = NULL;
  g_autofree char *used = NULL;
  g_autoptr (GPtrArray) jobs = NULL;

  g_return_val_if_fail (BB_IS_BOOK (book) && notice != NULL, NULL);

  news = bb_book_describe_notice (book, notice, error);
  if (news != NULL)
    jobs = bb_book_load_open_jobs (book, notice->revision, error);
  if (jobs == NULL)
    return NULL;
  used = name_jobs (jobs);

  return g_strjoin (" ", news, used, NULL);
}
