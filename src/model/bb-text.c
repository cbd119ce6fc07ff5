/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-text.h"

#include <string.h>

/* Marks that turn the direction of writing: those of property Bidi_Control (Unicode Annex 9). */
static gboolean
is_bidi_control (gunichar c)
{
  return c == 0x061c || c == 0x200e || c == 0x200f || (c >= 0x202a && c <= 0x202e) ||
         (c >= 0x2066 && c <= 0x2069);
}

/* A line can also be broken by two characters that are no control characters. */
static gboolean
is_separator (gunichar c)
{
  return c == 0x2028 || c == 0x2029;
}

/**
 * bb_text_is_plain:
 * @text: a text
 * @multiline: whether line feeds and tabs are allowed
 *
 * Returns: %TRUE if @text is valid UTF-8 without control characters, without the separators of
 *   lines and paragraphs, and without the marks that turn the direction of writing, which make a
 *   name read as another
 */
gboolean
bb_text_is_plain (const char *text,
                  gboolean    multiline)
{
  g_return_val_if_fail (text != NULL, FALSE);

  if (!g_utf8_validate (text, -1, NULL))
    return FALSE;

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (multiline && (c == '\n' || c == '\t'))
        continue;
      if (g_unichar_iscntrl (c) || is_bidi_control (c) || is_separator (c))
        return FALSE;
    }

  return TRUE;
}

/* In a pattern 0 stands for any digit, everything else for itself. */
static gboolean
has_form (const char *text,
          const char *pattern)
{
  while (*text != '\0' && (*pattern == '0' ? g_ascii_isdigit (*text) : *text == *pattern))
    {
      text++;
      pattern++;
    }

  return *text == '\0' && *pattern == '\0';
}

static int
get_number (const char *text,
            int         n_digits)
{
  int number = 0;

  for (int i = 0; i < n_digits; i++)
    number = number * 10 + g_ascii_digit_value (text[i]);

  return number;
}

/**
 * bb_text_is_date:
 * @text: a text
 *
 * Dates are of the years 1900 to 2200, times in universal time without leap seconds.
 *
 * Returns: %TRUE if @text is a day that exists, in the form `YYYY-MM-DD` or `YYYY-MM-DDThh:mm:ssZ`
 *   of ISO 8601
 */
gboolean
bb_text_is_date (const char *text)
{
  gboolean timed = FALSE;
  int year = 0;
  int month = 0;
  int day = 0;

  g_return_val_if_fail (text != NULL, FALSE);

  timed = has_form (text, "0000-00-00T00:00:00Z");
  if (!timed && !has_form (text, "0000-00-00"))
    return FALSE;

  year = get_number (text, 4);
  month = get_number (text + 5, 2);
  day = get_number (text + 8, 2);
  if (year < 1900 || year > 2200 || !g_date_valid_dmy ((GDateDay) day, (GDateMonth) month, (GDateYear) year))
    return FALSE;

  return !timed || (get_number (text + 11, 2) < 24 && get_number (text + 14, 2) < 60 &&
                    get_number (text + 17, 2) < 60);
}

/**
 * bb_text_quote:
 * @text: a text from outside
 * @length: its length in bytes, or -1 where it ends with a zero byte
 * @longest: how many characters of it are shown
 *
 * Makes any text fit to stand in a one-line message: control characters, marks of writing direction and broken UTF-8
 * are shown by their code, and what is too long is cut.
 *
 * Returns: (transfer full): the text, without quotation marks
 */
char *
bb_text_quote (const char *text,
               gssize      length,
               guint       longest)
{
  GString *out = g_string_new (NULL);
  const char *end = text + (length < 0 ? (gssize) strlen (text) : length);
  guint n = 0;

  for (const char *p = text; p < end; n++)
    {
      gunichar c = g_utf8_get_char_validated (p, end - p);

      if (n == longest)
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

/**
 * bb_text_to_sentence:
 * @text: what stood behind a colon, valid UTF-8
 *
 * Returns: (transfer full): the same, beginning as a sentence does where it stands alone
 */
char *
bb_text_to_sentence (const char *text)
{
  GString *sentence = NULL;

  g_return_val_if_fail (text != NULL, NULL);

  sentence = g_string_new (NULL);
  if (*text != '\0')
    {
      g_string_append_unichar (sentence, g_unichar_totitle (g_utf8_get_char (text)));
      g_string_append (sentence, g_utf8_next_char (text));
    }

  return g_string_free (sentence, FALSE);
}
