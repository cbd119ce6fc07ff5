/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define BB_EXCHANGE_ERROR (bb_exchange_error_quark ())

/**
 * BbExchangeError:
 * @BB_EXCHANGE_ERROR_UNREADABLE: the text can't be decoded: broken JSON or CSV, or not UTF-8
 * @BB_EXCHANGE_ERROR_TOO_LARGE: the file is larger than the limit
 * @BB_EXCHANGE_ERROR_FORMAT: the file is something else, or was written by a newer program
 * @BB_EXCHANGE_ERROR_RECORD: a record of the file is refused; the message says which and why
 * @BB_EXCHANGE_ERROR_CONFLICT: the book already holds another record of that code
 * @BB_EXCHANGE_ERROR_SEAL: a revision does not fit its seal
 *
 * What is wrong with a file that comes in or goes out. Values that a field's table refuses are reported in the
 * domain %BB_MODEL_ERROR instead, unless they stand in a record of a book file.
 */
typedef enum {
  BB_EXCHANGE_ERROR_UNREADABLE = 1,
  BB_EXCHANGE_ERROR_TOO_LARGE,
  BB_EXCHANGE_ERROR_FORMAT,
  BB_EXCHANGE_ERROR_RECORD,
  BB_EXCHANGE_ERROR_CONFLICT,
  BB_EXCHANGE_ERROR_SEAL,
} BbExchangeError;

GQuark bb_exchange_error_quark (void);
char  *bb_message_quote        (const char *text,
                                gssize      length);

G_END_DECLS
