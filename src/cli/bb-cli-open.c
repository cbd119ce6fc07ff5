/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>

static BbCliStatus
status_of (const GError *error)
{
  if (error->domain != BB_STORE_ERROR)
    return BB_CLI_FAILED;

  switch (error->code)
    {
    case BB_STORE_ERROR_NOT_A_BOOK:
    case BB_STORE_ERROR_NEWER:
    case BB_STORE_ERROR_IO:
    case BB_STORE_ERROR_READ_ONLY:
      return BB_CLI_UNREADABLE;
    default:
      return BB_CLI_FAILED;
    }
}

/**
 * bb_cli_dup_own_path:
 *
 * Returns: (transfer full): where the person's own book is, or would be
 */
char *
bb_cli_dup_own_path (void)
{
  return g_build_filename (g_get_user_data_dir (), "blankbook", "shop.book", NULL);
}

/**
 * bb_cli_open_book:
 * @common: the common options
 * @status: (out): the exit status where there is no book
 *
 * Opens the book that was named, or the person's own.
 *
 * Returns: (transfer full) (nullable): the book, or %NULL after a message
 */
BbBook *
bb_cli_open_book (const BbCliCommon *common,
                  BbCliStatus       *status)
{
  g_autofree char *own = bb_cli_dup_own_path ();
  g_autoptr (GError) error = NULL;
  BbBook *book = NULL;

  if (common->book == NULL && !g_file_test (own, G_FILE_TEST_EXISTS))
    {
      *status = bb_cli_fail (BB_CLI_UNREADABLE,
                             _("There is no book at %s. Make one by 'book new', or name one by --book."), own);
      return NULL;
    }

  book = bb_book_open (common->book != NULL ? common->book : own, &error);
  if (book == NULL)
    *status = bb_cli_fail (status_of (error), "%s", error->message);

  return book;
}

/**
 * bb_cli_close_book:
 * @book: (transfer full): a book
 * @status: the exit status so far
 *
 * Closes a book.
 *
 * Returns: @status, or %BB_CLI_FAILED after a message if the book could not be closed
 */
BbCliStatus
bb_cli_close_book (BbBook      *book,
                   BbCliStatus  status)
{
  g_autoptr (BbBook) owned = book;
  g_autoptr (GError) error = NULL;

  if (bb_book_close (owned, &error) || status != BB_CLI_OK)
    return status;

  return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
}

/**
 * bb_cli_run_on_book:
 * @command: the command that is run
 * @on_book: what it does
 * @argc: how many arguments
 * @argv: the arguments
 *
 * Reads a command's options, opens the book, and does the command's work.
 *
 * Returns: the exit status
 */
BbCliStatus
bb_cli_run_on_book (const BbCliCommand     *command,
                    const BbCliBookCommand *on_book,
                    int                     argc,
                    char                  **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  BbCliStatus status = BB_CLI_USAGE;
  BbBook *book = NULL;

  if (!bb_cli_parse_options (command, on_book->entries, &common, &argc, &argv))
    return BB_CLI_USAGE;
  if (argc != on_book->n_arguments + 1)
    return bb_cli_fail (BB_CLI_USAGE, "%s", _(on_book->usage));
  book = bb_cli_open_book (&common, &status);

  return book != NULL ? bb_cli_close_book (book, on_book->work (&common, book, argv + 1, on_book->data)) : status;
}
