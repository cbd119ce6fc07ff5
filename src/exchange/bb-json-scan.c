/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-json-scan.h"

#include <math.h>
#include <string.h>

#include "bb-error.h"
#include "bb-exchange-error.h"

/*
 * json-glib reads more than JSON (comments, assignments), keeps the last of two equal keys, goes as deep as the
 * file says, cuts a text at \u0000 and clips whole numbers beyond 64 bits. So the text is held against RFC 8259
 * first, in one pass that knows at which key it stands. NaN and the infinities, which some writers emit though
 * JSON has none, are known here, so that the message can name their key.
 *
 * What is no JSON at all is %BB_EXCHANGE_ERROR_UNREADABLE and comes before any complaint about a value.
 */

typedef enum {
  EXPECT_VALUE,
  EXPECT_VALUE_OR_END,
  EXPECT_KEY,
  EXPECT_KEY_OR_END,
  EXPECT_COMMA_OR_END,
  EXPECT_NOTHING,
} Expect;

typedef struct {
  char *key;
  GHashTable *keys;
  gsize index;
} Level;

typedef struct {
  const char *text;
  const char *p;
  const char *end;
  Level levels[BB_JSON_DEPTH];
  guint depth;
  Expect expect;
  GString *rewritten;
  const char *copied_to;
  GError *refusal;
  GError **error;
} Scan;

static char *
dup_path (const Scan *self)
{
  GString *path = g_string_new (NULL);

  for (guint i = 0; i < self->depth; i++)
    if (self->levels[i].keys == NULL)
      g_string_append_printf (path, "[%" G_GSIZE_FORMAT "]", self->levels[i].index);
    else if (self->levels[i].key != NULL)
      {
        g_autofree char *key = bb_message_quote (self->levels[i].key, -1);

        if (path->len > 0)
          g_string_append_c (path, '.');
        g_string_append (path, key);
      }

  if (path->len == 0)
    g_string_append (path, "input");

  return g_string_free (path, FALSE);
}

/* The first complaint about a value is kept; the scan goes on, because the text may prove to be no JSON at all. */
static void G_GNUC_PRINTF (3, 4)
refuse (Scan        *self,
        BbModelError code,
        const char  *format,
        ...)
{
  g_autofree char *path = NULL;
  g_autofree char *message = NULL;
  va_list arguments;

  if (self->refusal != NULL)
    return;

  path = dup_path (self);
  va_start (arguments, format);
  message = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  self->refusal = g_error_new (BB_MODEL_ERROR, (int) code, "%s: %s", path, message);
}

static gboolean
fail (Scan       *self,
      const char *what)
{
  gsize line = 1;
  const char *line_start = self->text;

  for (const char *p = self->text; p < self->p; p++)
    if (*p == '\n')
      {
        line++;
        line_start = p + 1;
      }
  g_set_error (self->error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_UNREADABLE,
               "not JSON: %s at line %" G_GSIZE_FORMAT ", byte %" G_GSIZE_FORMAT, what, line,
               (gsize) (self->p - line_start) + 1);
  return FALSE;
}

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
scan_unicode_escape (Scan    *self,
                     GString *decoded)
{
  gunichar unit = 0;
  gunichar low = 0;

  if (!read_four_hex (self->p, self->end, &unit))
    return fail (self, "a \\u without four hexadecimal digits");
  if (unit >= 0xdc00 && unit <= 0xdfff)
    return fail (self, "half of a surrogate pair");
  self->p += 4;

  if (unit >= 0xd800 && unit <= 0xdbff)
    {
      if (self->end - self->p < 6 || self->p[0] != '\\' || self->p[1] != 'u' ||
          !read_four_hex (self->p + 2, self->end, &low) || low < 0xdc00 || low > 0xdfff)
        return fail (self, "half of a surrogate pair");
      self->p += 6;
      unit = 0x10000 + ((unit - 0xd800) << 10) + (low - 0xdc00);
    }

  if (unit == 0)
    refuse (self, BB_MODEL_ERROR_VALUE, "a text with a zero character is not allowed");
  else if (decoded != NULL)
    g_string_append_unichar (decoded, unit);

  return TRUE;
}

static gboolean
scan_escape (Scan    *self,
             GString *decoded)
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
    return fail (self, "an unknown escape in a text");
  if (decoded != NULL)
    g_string_append_c (decoded, meanings[letter - letters]);
  self->p++;

  return TRUE;
}

/* Only keys need decoding here; for other texts @decoded is %NULL. */
static gboolean
scan_string (Scan    *self,
             GString *decoded)
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
        return fail (self, "a bare control character in a text");
      if (decoded != NULL)
        g_string_append_len (decoded, start, self->p - start);
    }
  if (self->p == self->end)
    return fail (self, "a text without its closing quotation mark");
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
rewrite_as_fraction (Scan *self)
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
judge_number (Scan       *self,
              const char *start,
              gboolean    whole)
{
  g_autofree char *copy = g_strndup (start, (gsize) (self->p - start));

  if (!isfinite (g_ascii_strtod (copy, NULL)))
    {
      g_autofree char *quote = bb_message_quote (copy, -1);

      refuse (self, BB_MODEL_ERROR_VALUE, "%s is not a finite number, the largest is 1.7976931348623157e308", quote);
    }
  else if (whole && self->p - start > 18)
    rewrite_as_fraction (self);
}

static gboolean
scan_number (Scan *self)
{
  const char *start = self->p;
  const char *digits = NULL;
  gboolean whole = TRUE;

  if (*self->p == '-')
    self->p++;
  digits = self->p;
  self->p = skip_digits (self->p, self->end);
  if (self->p == digits)
    return fail (self, "a number without digits");
  if (*digits == '0' && self->p - digits > 1)
    return fail (self, "a number with a leading zero");

  if (self->p < self->end && *self->p == '.')
    {
      digits = ++self->p;
      self->p = skip_digits (self->p, self->end);
      if (self->p == digits)
        return fail (self, "a decimal point without digits");
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
        return fail (self, "an exponent without digits");
      whole = FALSE;
    }
  judge_number (self, start, whole);

  return TRUE;
}

static gboolean
scan_word (Scan *self)
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

  if (word == start)
    {
      if ((length == 4 && (memcmp (word, "true", 4) == 0 || memcmp (word, "null", 4) == 0)) ||
          (length == 5 && memcmp (word, "false", 5) == 0))
        return TRUE;
    }
  for (guint i = 0; i < G_N_ELEMENTS (not_numbers); i++)
    if (length == strlen (not_numbers[i]) && g_ascii_strncasecmp (word, not_numbers[i], length) == 0)
      {
        refuse (self, BB_MODEL_ERROR_VALUE, "%.*s is not a finite number", (int) (self->p - start), start);
        return TRUE;
      }

  self->p = start;
  return fail (self, "something that is no value");
}

static void
leave_level (Scan *self)
{
  Level *level = &self->levels[--self->depth];

  g_clear_pointer (&level->key, g_free);
  g_clear_pointer (&level->keys, g_hash_table_unref);
}

static gboolean
enter_level (Scan    *self,
             gboolean is_object)
{
  if (self->depth == BB_JSON_DEPTH)
    {
      /* Nothing is known of what follows; a key to complain about there is only where the text is an object. */
      if (self->levels[0].keys == NULL)
        return fail (self, "lists nested deeper than 32 levels");
      self->depth = 1;
      refuse (self, BB_MODEL_ERROR_VALUE, "nested deeper than the limit of %d levels", BB_JSON_DEPTH);
      self->depth = BB_JSON_DEPTH;
      return FALSE;
    }

  self->levels[self->depth++] = (Level) {
    .keys = is_object ? g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL) : NULL,
  };
  self->p++;
  self->expect = is_object ? EXPECT_KEY_OR_END : EXPECT_VALUE_OR_END;

  return TRUE;
}

static void
skip_space (Scan *self)
{
  while (self->p < self->end && (*self->p == ' ' || *self->p == '\t' || *self->p == '\n' || *self->p == '\r'))
    self->p++;
}

static gboolean
scan_key (Scan *self)
{
  g_autoptr (GString) key = g_string_new (NULL);
  Level *level = &self->levels[self->depth - 1];

  if (*self->p != '"')
    return fail (self, "something other than a key in quotation marks");
  g_clear_pointer (&level->key, g_free);
  if (!scan_string (self, key))
    return FALSE;

  level->key = g_strdup (key->str);
  if (!g_hash_table_add (level->keys, g_strdup (key->str)))
    refuse (self, BB_MODEL_ERROR_KEY, "the key is given twice");

  skip_space (self);
  if (self->p == self->end || *self->p != ':')
    return fail (self, "a key without a colon");
  self->p++;
  self->expect = EXPECT_VALUE;

  return TRUE;
}

static gboolean
scan_value (Scan *self)
{
  gboolean done = FALSE;

  if (*self->p == '{' || *self->p == '[')
    return enter_level (self, *self->p == '{');

  if (*self->p == '"')
    done = scan_string (self, NULL);
  else if (g_ascii_isdigit (*self->p) ||
           (*self->p == '-' && self->p + 1 < self->end && g_ascii_isdigit (self->p[1])))
    done = scan_number (self);
  else
    done = scan_word (self);
  self->expect = self->depth > 0 ? EXPECT_COMMA_OR_END : EXPECT_NOTHING;

  return done;
}

static gboolean
scan_end (Scan *self)
{
  self->p++;
  leave_level (self);
  self->expect = self->depth > 0 ? EXPECT_COMMA_OR_END : EXPECT_NOTHING;

  return TRUE;
}

static gboolean
scan_comma_or_end (Scan *self)
{
  Level *level = &self->levels[self->depth - 1];

  if (*self->p == (level->keys != NULL ? '}' : ']'))
    return scan_end (self);
  if (*self->p != ',')
    return fail (self, "a missing comma");

  self->p++;
  level->index++;
  self->expect = level->keys != NULL ? EXPECT_KEY : EXPECT_VALUE;

  return TRUE;
}

static gboolean
scan_step (Scan *self)
{
  switch (self->expect)
    {
    case EXPECT_VALUE_OR_END:
      return *self->p == ']' ? scan_end (self) : scan_value (self);
    case EXPECT_VALUE:
      return scan_value (self);
    case EXPECT_KEY_OR_END:
      return *self->p == '}' ? scan_end (self) : scan_key (self);
    case EXPECT_KEY:
      return scan_key (self);
    case EXPECT_COMMA_OR_END:
      return scan_comma_or_end (self);
    case EXPECT_NOTHING:
    default:
      return fail (self, "something after the end");
    }
}

static gboolean
scan_all (Scan *self)
{
  for (skip_space (self); self->p < self->end; skip_space (self))
    if (!scan_step (self))
      return FALSE;

  return self->expect == EXPECT_NOTHING ||
         fail (self, self->p == self->text ? "an empty text" : "an early end");
}

/**
 * bb_json_scan:
 * @text: the text
 * @length: its length in bytes
 * @rewritten: (out) (transfer full) (nullable): the text as json-glib has to read it, or %NULL if it reads @text right
 * @error: return location for a #GError
 *
 * Holds a text against RFC 8259, and beyond it refuses a key given twice, NaN, infinities, numbers that no double
 * can hold, a zero character and nesting deeper than %BB_JSON_DEPTH. These name the key by its path, like
 * `lines[2].count`, in the domain %BB_MODEL_ERROR; what is no JSON at all is %BB_EXCHANGE_ERROR_UNREADABLE.
 *
 * Returns: %TRUE if json-glib may read the text
 */
gboolean
bb_json_scan (const char  *text,
              gsize        length,
              char       **rewritten,
              GError     **error)
{
  Scan self = { .text = text, .p = text, .end = text + length, .expect = EXPECT_VALUE, .error = error };
  const char *bad = NULL;
  gboolean is_json = FALSE;

  *rewritten = NULL;
  if (!g_utf8_validate_len (text, length, &bad))
    {
      g_set_error (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_UNREADABLE,
                   "not UTF-8: byte %" G_GSIZE_FORMAT " is part of no character", (gsize) (bad - text) + 1);
      return FALSE;
    }

  is_json = scan_all (&self);
  while (self.depth > 0)
    leave_level (&self);

  if (self.rewritten != NULL)
    {
      g_string_append_len (self.rewritten, self.copied_to, self.end - self.copied_to);
      *rewritten = g_string_free (self.rewritten, FALSE);
    }
  if (self.refusal != NULL && (is_json || error == NULL || *error == NULL))
    {
      g_propagate_error (error, self.refusal);
      is_json = FALSE;
    }
  else
    g_clear_error (&self.refusal);
  if (!is_json)
    g_clear_pointer (rewritten, g_free);

  return is_json;
}
