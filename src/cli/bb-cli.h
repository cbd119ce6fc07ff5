/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"

G_BEGIN_DECLS

/**
 * BbCliStatus:
 * @BB_CLI_OK: done
 * @BB_CLI_FAILED: the book refuses, or something outside fails
 * @BB_CLI_USAGE: the command line, or a value, is wrong
 * @BB_CLI_UNREADABLE: a file can't be read or decoded
 *
 * What the program's exit status says.
 */
typedef enum {
  BB_CLI_OK = 0,
  BB_CLI_FAILED = 1,
  BB_CLI_USAGE = 2,
  BB_CLI_UNREADABLE = 3,
} BbCliStatus;

/**
 * BbCliCommand:
 * @name: its word, or words, on the command line
 * @arguments: what follows them, for the help
 * @summary: what it does, marked for translation
 * @run: does it; @argv holds the program's name and what follows the command's words
 *
 * One command. It writes its result to standard output only once it is whole; a refusal is one line on standard
 * error.
 */
typedef struct {
  const char *name;
  const char *arguments;
  const char *summary;
  BbCliStatus (*run) (int    argc,
                      char **argv);
} BbCliCommand;

/**
 * BbCliCommon:
 * @book: (nullable): the book that was named, or %NULL for the person's own
 * @json: whether the answer is wanted as JSON
 *
 * The options that all commands on a book have.
 */
typedef struct {
  char *book;
  gboolean json;
} BbCliCommon;

/**
 * BbCliBookCommand:
 * @entries: (nullable): its own options, ending with an empty entry
 * @n_arguments: how many arguments it takes
 * @usage: the message where there are more or less, marked for translation
 * @work: does it with an open book; @arguments holds what was given
 * @data: for @work
 *
 * A command that reads or writes one book.
 */
typedef struct {
  const GOptionEntry *entries;
  int n_arguments;
  const char *usage;
  BbCliStatus (*work) (const BbCliCommon *common,
                       BbBook            *book,
                       char             **arguments,
                       gpointer           data);
  gpointer data;
} BbCliBookCommand;

void bb_cli_common_clear (BbCliCommon *self);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (BbCliCommon, bb_cli_common_clear)

/* bb-cli-io.c */
BbCliStatus bb_cli_fail          (BbCliStatus          status,
                                  const char          *format,
                                  ...) G_GNUC_PRINTF (2, 3);
BbCliStatus bb_cli_fail_by_error (const GError        *error,
                                  const char          *file);
BbCliStatus bb_cli_write         (const char          *text);
BbCliStatus bb_cli_answer        (const char          *answer,
                                  const GError        *error);
gboolean    bb_cli_write_new_file (const char         *path,
                                  const void          *data,
                                  gsize                length,
                                  GError             **error);
gboolean    bb_cli_read_input    (const char          *path,
                                  char               **text,
                                  gsize               *length,
                                  GError             **error);

/* bb-cli-options.c */
gboolean    bb_cli_parse_options (const BbCliCommand  *command,
                                  const GOptionEntry  *entries,
                                  BbCliCommon         *common,
                                  int                 *argc,
                                  char              ***argv);

/* bb-cli-open.c */
char       *bb_cli_dup_own_path  (void);
BbBook     *bb_cli_open_book     (const BbCliCommon   *common,
                                  BbCliStatus         *status);
BbCliStatus bb_cli_close_book    (BbBook              *book,
                                  BbCliStatus          status);
BbCliStatus bb_cli_run_on_book   (const BbCliCommand  *command,
                                  const BbCliBookCommand *on_book,
                                  int                  argc,
                                  char               **argv);

extern const BbCliCommand bb_cli_calc;
extern const BbCliCommand bb_cli_book_new;
extern const BbCliCommand bb_cli_book_check;
extern const BbCliCommand bb_cli_book_demo;
extern const BbCliCommand bb_cli_book_generate;
extern const BbCliCommand bb_cli_recipe_list;
extern const BbCliCommand bb_cli_recipe_show;
extern const BbCliCommand bb_cli_recipe_sign;
extern const BbCliCommand bb_cli_recall;
extern const BbCliCommand bb_cli_job_list;
extern const BbCliCommand bb_cli_job_show;
extern const BbCliCommand bb_cli_job_sheet;
extern const BbCliCommand bb_cli_job_repeat;
extern const BbCliCommand bb_cli_run_list;
extern const BbCliCommand bb_cli_run_show;
extern const BbCliCommand bb_cli_lot_list;
extern const BbCliCommand bb_cli_lot_show;
extern const BbCliCommand bb_cli_trace;
extern const BbCliCommand bb_cli_wash_new;
extern const BbCliCommand bb_cli_wash_add;
extern const BbCliCommand bb_cli_wash_due;
extern const BbCliCommand bb_cli_wash_plan_new;
extern const BbCliCommand bb_cli_wash_plans;
extern const BbCliCommand bb_cli_report_chart;
extern const BbCliCommand bb_cli_report_wash;
extern const BbCliCommand bb_cli_export;
extern const BbCliCommand bb_cli_import;

G_END_DECLS
