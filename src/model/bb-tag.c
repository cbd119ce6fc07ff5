/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-tag.h"

#include <string.h>

/* Only letters and a space: a scanner types as a keyboard does, and these stand in the same place on most layouts. They
 * are not translated, because a label outlives a language setting. */
static const struct {
  BbTagKind kind;
  const char *word;
} words[] = {
  { BB_TAG_JOB, "JOB" },
  { BB_TAG_RECIPE, "RECIPE" },
  { BB_TAG_SPECIMEN, "SPECIMEN" },
  { BB_TAG_LOT, "LOT" },
};

/**
 * bb_tag_to_text:
 * @kind: what is named
 * @code: its code
 *
 * The text that stands in a label's square code, and that a scanner types back: `RECIPE COB-ZIP.3`.
 *
 * Returns: (transfer full): the text
 */
char *
bb_tag_to_text (BbTagKind   kind,
                const char *code)
{
  g_return_val_if_fail (code != NULL, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    if (words[i].kind == kind)
      return g_strconcat (words[i].word, " ", code, NULL);

  g_return_val_if_reached (NULL);
}

/**
 * bb_tag_parse:
 * @text: what was scanned or typed
 * @kind: (out): what it names
 * @code: (out) (transfer full): the code of that
 *
 * Reads what bb_tag_to_text() writes, in either case and with spaces around it. That a text is a tag doesn't say that
 * the book has such a thing.
 *
 * Returns: %TRUE if @text is a tag; other texts are words to search for, and no error
 */
gboolean
bb_tag_parse (const char *text,
              BbTagKind  *kind,
              char      **code)
{
  g_autofree char *stripped = NULL;

  g_return_val_if_fail (text != NULL && kind != NULL && code != NULL, FALSE);

  stripped = g_strstrip (g_strdup (text));
  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    {
      gsize length = strlen (words[i].word);

      if (g_ascii_strncasecmp (stripped, words[i].word, length) != 0 || stripped[length] != ' ')
        continue;

      *kind = words[i].kind;
      *code = g_strdup (g_strchug (stripped + length));
      return TRUE;
    }

  return FALSE;
}
