/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-exchange-error.h"

#include "bb-text.h"

/* Enough to recognise a value by, short enough for one line. */
#define LONGEST_QUOTE 60

G_DEFINE_QUARK (bb-exchange-error-quark, bb_exchange_error)

/**
 * bb_message_quote:
 * @text: a text from outside
 * @length: its length in bytes, or -1 where it ends with a zero byte
 *
 * Makes any text fit to stand in a one-line message, as bb_text_quote() does, cut to 60 characters.
 *
 * Returns: (transfer full): the text, without quotation marks
 */
char *
bb_message_quote (const char *text,
                  gssize      length)
{
  return bb_text_quote (text, length, LONGEST_QUOTE);
}
