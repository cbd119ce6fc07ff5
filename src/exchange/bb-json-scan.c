/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-json-scan-private.h"

#include "bb-exchange-error.h"

/*
 * json-glib reads more than JSON (comments, assignments), keeps the last of two equal keys, goes as deep as the
 * file says, cuts a text at \u0000 and clips whole numbers beyond 64 bits. So the text is held against RFC 8259
 * first, in one pass that knows at which key it stands. NaN and the infinities, which some writers emit though
 * JSON has none, are known here, so that the message can name their key.
 *
 * What is no JSON at all is %BB_EXCHANGE_ERROR_UNREADABLE and comes before any complaint about a value.
 */

static char *
dup_path (const BbJsonScan *self)
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
        g_string_append (path, *key != '\0' ? key : "\"\"");
      }

  if (path->len == 0)
    g_string_append (path, "input");

  return g_string_free (path, FALSE);
}

/**
 * _bb_json_scan_refuse:
 * @self: a scan
 * @code: what is wrong
 * @format: why, as for printf()
 * @...: its arguments
 *
 * Complains about the value at which the scan stands, by the path of its key. The first complaint is kept, and the
 * scan goes on, because the text may prove to be no JSON at all.
 */
void
_bb_json_scan_refuse (BbJsonScan  *self,
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

/**
 * _bb_json_scan_fail:
 * @self: a scan
 * @what: what stands there that JSON does not have
 *
 * Sets the scan's error to %BB_EXCHANGE_ERROR_UNREADABLE with the place in the text.
 *
 * Returns: %FALSE
 */
gboolean
_bb_json_scan_fail (BbJsonScan *self,
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

static void
leave_level (BbJsonScan *self)
{
  BbJsonLevel *level = &self->levels[--self->depth];

  g_clear_pointer (&level->key, g_free);
  g_clear_pointer (&level->keys, g_hash_table_unref);
}

static gboolean
enter_level (BbJsonScan *self,
             gboolean    is_object)
{
  if (self->depth == BB_JSON_DEPTH)
    {
      /* Nothing is known of what follows; a key to complain about there is only where the text is an object. */
      if (self->levels[0].keys == NULL)
        return _bb_json_scan_fail (self, "lists nested deeper than 32 levels");
      self->depth = 1;
      _bb_json_scan_refuse (self, BB_MODEL_ERROR_VALUE, "nested deeper than the limit of %d levels", BB_JSON_DEPTH);
      self->depth = BB_JSON_DEPTH;
      return FALSE;
    }

  self->levels[self->depth++] = (BbJsonLevel) {
    .keys = is_object ? g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL) : NULL,
  };
  self->p++;
  self->expect = is_object ? EXPECT_KEY_OR_END : EXPECT_VALUE_OR_END;

  return TRUE;
}

static void
skip_space (BbJsonScan *self)
{
  while (self->p < self->end && (*self->p == ' ' || *self->p == '\t' || *self->p == '\n' || *self->p == '\r'))
    self->p++;
}

static gboolean
scan_key (BbJsonScan *self)
{
  g_autoptr (GString) key = g_string_new (NULL);
  BbJsonLevel *level = &self->levels[self->depth - 1];

  if (*self->p != '"')
    return _bb_json_scan_fail (self, "something other than a key in quotation marks");
  g_clear_pointer (&level->key, g_free);
  if (!_bb_json_scan_string (self, key))
    return FALSE;

  level->key = g_strdup (key->str);
  if (!g_hash_table_add (level->keys, g_strdup (key->str)))
    _bb_json_scan_refuse (self, BB_MODEL_ERROR_KEY, "the key is given twice");

  skip_space (self);
  if (self->p == self->end || *self->p != ':')
    return _bb_json_scan_fail (self, "a key without a colon");
  self->p++;
  self->expect = EXPECT_VALUE;

  return TRUE;
}

static gboolean
scan_value (BbJsonScan *self)
{
  gboolean done = FALSE;

  if (*self->p == '{' || *self->p == '[')
    return enter_level (self, *self->p == '{');

  if (*self->p == '"')
    done = _bb_json_scan_string (self, NULL);
  else if (g_ascii_isdigit (*self->p) ||
           (*self->p == '-' && self->p + 1 < self->end && g_ascii_isdigit (self->p[1])))
    done = _bb_json_scan_number (self);
  else
    done = _bb_json_scan_word (self);
  self->expect = self->depth > 0 ? EXPECT_COMMA_OR_END : EXPECT_NOTHING;

  return done;
}

static gboolean
scan_end (BbJsonScan *self)
{
  self->p++;
  leave_level (self);
  self->expect = self->depth > 0 ? EXPECT_COMMA_OR_END : EXPECT_NOTHING;

  return TRUE;
}

static gboolean
scan_comma_or_end (BbJsonScan *self)
{
  BbJsonLevel *level = &self->levels[self->depth - 1];

  if (*self->p == (level->keys != NULL ? '}' : ']'))
    return scan_end (self);
  if (*self->p != ',')
    return _bb_json_scan_fail (self, "a missing comma");

  self->p++;
  level->index++;
  self->expect = level->keys != NULL ? EXPECT_KEY : EXPECT_VALUE;

  return TRUE;
}

static gboolean
scan_step (BbJsonScan *self)
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
      return _bb_json_scan_fail (self, "something after the end");
    }
}

static gboolean
scan_all (BbJsonScan *self)
{
  for (skip_space (self); self->p < self->end; skip_space (self))
    if (!scan_step (self))
      return FALSE;

  return self->expect == EXPECT_NOTHING ||
         _bb_json_scan_fail (self, self->p == self->text ? "an empty text" : "an early end");
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
bb_json_scan (const char *text,
              gsize       length,
              char      **rewritten,
              GError    **error)
{
  BbJsonScan self = { .text = text, .p = text, .end = text + length, .expect = EXPECT_VALUE, .error = error };
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
