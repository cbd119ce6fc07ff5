/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-numeral-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-error.h"

/* Two digits below 60. */
static gboolean
read_sixtieths (const char *part,
                double     *value)
{
  if (!g_ascii_isdigit (part[0]) || !g_ascii_isdigit (part[1]) || part[2] != '\0' || part[0] > '5')
    return FALSE;

  *value = 10 * g_ascii_digit_value (part[0]) + g_ascii_digit_value (part[1]);

  return TRUE;
}

/**
 * _bb_clock_read:
 * @text: a folded text that has a colon
 * @seconds: (out): the time
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Reads 1:30, one minute and a half, and 1:05:00, an hour and five minutes.
 *
 * Returns: %FALSE, with a sentence in @error, if it is anything else
 */
gboolean
_bb_clock_read (const char  *text,
                double      *seconds,
                GError     **error)
{
  g_auto (GStrv) parts = g_strsplit (text, ":", -1);
  guint n = g_strv_length (parts);
  gsize n_digits = strspn (parts[0], "0123456789");
  double total = 0;

  if (n > 3 || n_digits == 0 || n_digits > 4 || parts[0][n_digits] != '\0')
    return bb_refuse_text (error, _("With colons a time is minutes and seconds, or hours, minutes and seconds."));

  total = g_ascii_strtod (parts[0], NULL);
  for (guint i = 1; i < n; i++)
    {
      double value = 0;

      if (!read_sixtieths (parts[i], &value))
        return bb_refuse_text (error, _("After a colon two digits below 60 are needed, like 1:05."));
      total = total * 60 + value;
    }

  *seconds = total;

  return TRUE;
}
