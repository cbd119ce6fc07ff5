/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-exchange-error.h"

#include <string.h>

/* Enough to recognise a value by, short enough for one line. */
#define LONGEST_QUOTE 60

G_DEFINE_QUARK (bb-exchange-error-quark, bb_exchange_error)

/**
 * bb_message_quote:
 * @text: a text from outside
 * @length: its length in bytes, or -1 where it ends with a zero byte
 *
 * Makes any text fit to stand in a one-line message: cut to 60 characters, with control characters, marks of
 * writing direction and broken UTF-8 shown by their code.
 *
 * Returns: (transfer full): the text, without quotation marks
 */
char *
bb_message_quote (const char *text,
                  gssize      length)
{
  GString *out = g_string_new (NULL);
  const char *end = text + (length < 0 ? (gssize) strlen (text) : length);
  guint n = 0;

  for (const char *p = text; p < end; n++)
    {
      gunichar c = g_utf8_get_char_validated (p, end - p);

      if (n == LONGEST_QUOTE)
        {
          g_string_append (out, "…");
          break;
        }
      if (c == (gunichar) -1 || c == (gunichar) -2)
        {
          g_string_append_printf (out, "\\x%02x", (guint) (guchar) *p);
          p++;
          continue;
        }
      if (g_unichar_isprint (c))
        g_string_append_unichar (out, c);
      else
        g_string_append_printf (out, "\\u%04x", c);
      p = g_utf8_next_char (p);
    }

  return g_string_free (out, FALSE);
}
