/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-numeral-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-error.h"
#include "bb-problem.h"

/* Enough for the longest double written out, and for nothing that is not a number. */
#define LONGEST_NUMBER_TEXT 400
#define LONGEST_ECHO 24

/* What keyboards, phones and word processors put in place of the plain character. */
static const struct {
  gunichar from;
  const char *to;
} folds[] = {
  { 0x2212, "-" }, { 0x00d7, "x" }, { 0x2044, "/" }, { 0x2215, "/" },
  { 0x00ba, "°" }, { 0x00b5, "u" }, { 0x03bc, "u" },
  { 0x2018, "'" }, { 0x2019, "'" }, { 0x2032, "'" },
  { 0x201c, "\"" }, { 0x201d, "\"" }, { 0x2033, "\"" },
  { 0x00bd, " 1/2" }, { 0x2153, " 1/3" }, { 0x2154, " 2/3" }, { 0x00bc, " 1/4" },
  { 0x00be, " 3/4" }, { 0x2155, " 1/5" }, { 0x2156, " 2/5" }, { 0x2157, " 3/5" },
  { 0x2158, " 4/5" }, { 0x2159, " 1/6" }, { 0x215a, " 5/6" }, { 0x215b, " 1/8" },
  { 0x215c, " 3/8" }, { 0x215d, " 5/8" }, { 0x215e, " 7/8" },
};

static void
append_folded (GString  *out,
               gunichar  c)
{
  if (g_unichar_isspace (c))
    {
      if (out->len > 0 && out->str[out->len - 1] != ' ')
        g_string_append_c (out, ' ');
      return;
    }

  for (guint i = 0; i < G_N_ELEMENTS (folds); i++)
    if (folds[i].from == c)
      {
        g_string_append (out, folds[i].to);
        return;
      }

  g_string_append_unichar (out, c);
}

/**
 * _bb_text_fold:
 * @text: what a person typed
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Makes a typed text plain: one kind of space, minus, quote, slash and times sign; ½ becomes 1/2.
 *
 * Returns: (transfer full) (nullable): the text; %NULL, with a sentence in @error, if it is too long to
 *   be a quantity, is not UTF-8, or has control characters
 */
char *
_bb_text_fold (const char  *text,
               GError     **error)
{
  g_autoptr (GString) out = g_string_new (NULL);

  if (strlen (text) > LONGEST_NUMBER_TEXT)
    {
      g_set_error_literal (error, BB_MODEL_ERROR, BB_MODEL_ERROR_TEXT,
                           _("This is too long for one value."));
      return NULL;
    }
  if (!bb_text_is_plain (text, TRUE))
    {
      g_set_error_literal (error, BB_MODEL_ERROR, BB_MODEL_ERROR_TEXT,
                           _("This has characters that can't be shown."));
      return NULL;
    }

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    append_folded (out, g_utf8_get_char (p));

  return g_strstrip (g_strdup (out->str));
}

/**
 * _bb_text_echo:
 * @text: a piece of what a person typed
 *
 * Returns: (transfer full): @text as a message repeats it, shortened where it is long
 */
char *
_bb_text_echo (const char *text)
{
  g_autofree char *start = NULL;

  if (g_utf8_strlen (text, -1) <= LONGEST_ECHO)
    return g_strdup (text);

  start = g_utf8_substring (text, 0, LONGEST_ECHO);

  return g_strconcat (start, "…", NULL);
}
