/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-json-scan-private.h"

#include <math.h>
#include <string.h>

#include "bb-exchange-error.h"

/* Texts, numbers and words: what stands between the brackets, commas and colons of JSON. */

static gboolean
read_four_hex (const char *p,
               const char *end,
               gunichar   *unit)
{
  *unit = 0;
  if (end - p < 4)
    return FALSE;
  for (guint i = 0; i < 4; i++)
    {
      int digit = g_ascii_xdigit_value (p[i]);

      if (digit < 0)
        return FALSE;
      *unit = *unit * 16 + (guint) digit;
    }

  return TRUE;
}

static gboolean
scan_unicode_escape (BbJsonScan *self,
                     GString    *decoded)
{
  gunichar unit = 0;
  gunichar low = 0;

  if (!read_four_hex (self->p, self->end, &unit))
    return _bb_json_scan_fail (self, "a \\u without four hexadecimal digits");
  if (unit >= 0xdc00 && unit <= 0xdfff)
    return _bb_json_scan_fail (self, "half of a surrogate pair");
  self->p += 4;

  if (unit >= 0xd800 && unit <= 0xdbff)
    {
      if (self->end - self->p < 6 || self->p[0] != '\\' || self->p[1] != 'u' ||
          !read_four_hex (self->p + 2, self->end, &low) || low < 0xdc00 || low > 0xdfff)
        return _bb_json_scan_fail (self, "half of a surrogate pair");
      self->p += 6;
      unit = 0x10000 + ((unit - 0xd800) << 10) + (low - 0xdc00);
    }

  if (unit == 0)
    _bb_json_scan_refuse (self, BB_MODEL_ERROR_VALUE, "a text with a zero character is not allowed");
  else if (decoded != NULL)
    g_string_append_unichar (decoded, unit);

  return TRUE;
}

static gboolean
scan_escape (BbJsonScan *self,
             GString    *decoded)
{
  static const char letters[] = "\"\\/bfnrt";
  static const char meanings[] = "\"\\/\b\f\n\r\t";
  const char *letter = NULL;

  self->p++;
  if (self->p < self->end && *self->p == 'u')
    {
      self->p++;
      return scan_unicode_escape (self, decoded);
    }

  letter = self->p < self->end && *self->p != '\0' ? strchr (letters, *self->p) : NULL;
  if (letter == NULL)
    return _bb_json_scan_fail (self, "an unknown escape in a text");
  if (decoded != NULL)
    g_string_append_c (decoded, meanings[letter - letters]);
  self->p++;

  return TRUE;
}

/**
 * _bb_json_scan_string:
 * @self: a scan that stands at a quotation mark
 * @decoded: (nullable): where to append what the text says; only keys need it
 *
 * Returns: %FALSE if it is no JSON text
 */
gboolean
_bb_json_scan_string (BbJsonScan *self,
                      GString    *decoded)
{
  self->p++;
  while (self->p < self->end && *self->p != '"')
    {
      const char *start = self->p;

      if (*self->p == '\\')
        {
          if (!scan_escape (self, decoded))
            return FALSE;
          continue;
        }
      while (self->p < self->end && *self->p != '"' && *self->p != '\\' && (guchar) *self->p >= 0x20)
        self->p++;
      if (self->p < self->end && (guchar) *self->p < 0x20)
        return _bb_json_scan_fail (self, "a bare control character in a text");
      if (decoded != NULL)
        g_string_append_len (decoded, start, self->p - start);
    }
  if (self->p == self->end)
    return _bb_json_scan_fail (self, "a text without its closing quotation mark");
  self->p++;

  return TRUE;
}

static const char *
skip_digits (const char *p,
             const char *end)
{
  while (p < end && g_ascii_isdigit (*p))
    p++;

  return p;
}

/* json-glib clips a whole number beyond 64 bits; with a fraction it is read as the double it stands for. */
static void
rewrite_as_fraction (BbJsonScan *self)
{
  if (self->rewritten == NULL)
    {
      self->rewritten = g_string_new (NULL);
      self->copied_to = self->text;
    }
  g_string_append_len (self->rewritten, self->copied_to, self->p - self->copied_to);
  g_string_append (self->rewritten, ".0");
  self->copied_to = self->p;
}

static void
judge_number (BbJsonScan *self,
              const char *start,
              gboolean    whole)
{
  g_autofree char *copy = g_strndup (start, (gsize) (self->p - start));

  if (!isfinite (g_ascii_strtod (copy, NULL)))
    {
      g_autofree char *quote = bb_message_quote (copy, -1);

      _bb_json_scan_refuse (self, BB_MODEL_ERROR_VALUE,
                            "%s is not a finite number, the largest is 1.7976931348623157e308", quote);
    }
  else if (whole && self->p - start > 18)
    rewrite_as_fraction (self);
}

/**
 * _bb_json_scan_number:
 * @self: a scan that stands at a digit or a minus
 *
 * Refuses what no double can hold.
 *
 * Returns: %FALSE if it is no JSON number
 */
gboolean
_bb_json_scan_number (BbJsonScan *self)
{
  const char *start = self->p;
  const char *digits = NULL;
  gboolean whole = TRUE;

  if (*self->p == '-')
    self->p++;
  digits = self->p;
  self->p = skip_digits (self->p, self->end);
  if (self->p == digits)
    return _bb_json_scan_fail (self, "a number without digits");
  if (*digits == '0' && self->p - digits > 1)
    return _bb_json_scan_fail (self, "a number with a leading zero");

  if (self->p < self->end && *self->p == '.')
    {
      digits = ++self->p;
      self->p = skip_digits (self->p, self->end);
      if (self->p == digits)
        return _bb_json_scan_fail (self, "a decimal point without digits");
      whole = FALSE;
    }
  if (self->p < self->end && (*self->p == 'e' || *self->p == 'E'))
    {
      self->p++;
      if (self->p < self->end && (*self->p == '+' || *self->p == '-'))
        self->p++;
      digits = self->p;
      self->p = skip_digits (self->p, self->end);
      if (self->p == digits)
        return _bb_json_scan_fail (self, "an exponent without digits");
      whole = FALSE;
    }
  judge_number (self, start, whole);

  return TRUE;
}

/**
 * _bb_json_scan_word:
 * @self: a scan that stands at anything else
 *
 * Knows `true`, `false`, `null`, and refuses by the name of their key those words that writers use for what is no
 * number.
 *
 * Returns: %FALSE if it is none of these
 */
gboolean
_bb_json_scan_word (BbJsonScan *self)
{
  static const char * const not_numbers[] = { "nan", "inf", "infinity" };
  const char *start = self->p;
  const char *word = NULL;
  gsize length = 0;

  if (*self->p == '-' || *self->p == '+')
    self->p++;
  word = self->p;
  while (self->p < self->end && g_ascii_isalpha (*self->p))
    self->p++;
  length = (gsize) (self->p - word);

  if (word == start &&
      ((length == 4 && (memcmp (word, "true", 4) == 0 || memcmp (word, "null", 4) == 0)) ||
       (length == 5 && memcmp (word, "false", 5) == 0)))
    return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (not_numbers); i++)
    if (length == strlen (not_numbers[i]) && g_ascii_strncasecmp (word, not_numbers[i], length) == 0)
      {
        _bb_json_scan_refuse (self, BB_MODEL_ERROR_VALUE, "%.*s is not a finite number", (int) (self->p - start),
                              start);
        return TRUE;
      }

  self->p = start;
  return _bb_json_scan_fail (self, "something that is no value");
}

