/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "bb-error.h"
#include "bb-numeral-private.h"
#include "bb-quantity.h"

static gboolean
is_ready_to_use (const char *text)
{
  const char * const words[] = {
    "rtu", "ready to use", "ready-to-use", _("ready to use"), "undiluted", _("undiluted"),
  };
  g_autofree char *folded = g_utf8_casefold (text, -1);

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    {
      g_autofree char *word = g_utf8_casefold (words[i], -1);

      if (g_str_equal (folded, word))
        return TRUE;
    }

  return FALSE;
}

static const char *
skip_spaces (const char *at)
{
  while (*at == ' ')
    at++;

  return at;
}

static gboolean
take_divider (const char **at)
{
  const char *p = skip_spaces (*at);

  if (*p == ':')
    p++;
  else if (p > *at && g_ascii_strncasecmp (p, "to ", 3) == 0)
    p += 2;
  else
    return FALSE;

  *at = skip_spaces (p);

  return TRUE;
}

static gboolean
read_parts (const char           *text,
            const BbUnitContext  *context,
            double               *concentrate,
            double               *water,
            GError              **error)
{
  const char *decimal = context != NULL ? context->decimal : NULL;
  const char *p = text;
  BbNumeral first = { 0 };
  BbNumeral second = { 0 };

  if (!_bb_numeral_ahead (p, decimal))
    return bb_refuse_text (error, _("A dilution begins with the parts of concentrate."));
  if (!_bb_numeral_read (&p, decimal, &first, error))
    return FALSE;
  if (!take_divider (&p) || !_bb_numeral_ahead (p, decimal))
    return bb_refuse_text (error, _("After the parts of concentrate come a colon and the parts of water."));
  if (!_bb_numeral_read (&p, decimal, &second, error))
    return FALSE;
  if (*p != '\0' || first.fraction || second.fraction)
    return bb_refuse_text (error, _("A dilution has two numbers without units or fractions."));
  if (!(first.value > 0))
    return bb_refuse_text (error, _("A dilution needs more than 0 parts of concentrate."));

  *concentrate = first.value;
  *water = second.value;

  return TRUE;
}

/**
 * bb_dilution_parse:
 * @text: what a person typed
 * @context: (nullable): which decimal separator is understood beside '.'
 * @parts_concentrate: (out): parts of concentrate, more than 0
 * @parts_water: (out): parts of water, 0 or more
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Reads a dilution as parts of concentrate to parts of water: `1:3`, `1 to 3`, `2:5`; `1:0`, `rtu`, `ready to use` and
 * `undiluted` are one part and no water. `1/3` is refused, since some mean by it one part in three. On failure the
 * results are left alone.
 *
 * Returns: %TRUE if it was understood; if not, @error holds %BB_MODEL_ERROR_TEXT and says how to
 *   write it
 */
gboolean
bb_dilution_parse (const char           *text,
                   const BbUnitContext  *context,
                   double               *parts_concentrate,
                   double               *parts_water,
                   GError              **error)
{
  g_autoptr (GError) local_error = NULL;
  g_autofree char *folded = NULL;

  g_return_val_if_fail (text != NULL, FALSE);
  g_return_val_if_fail (parts_concentrate != NULL && parts_water != NULL, FALSE);

  folded = _bb_text_fold (text, &local_error);
  if (folded != NULL && is_ready_to_use (folded))
    {
      *parts_concentrate = 1;
      *parts_water = 0;
      return TRUE;
    }
  if (folded != NULL && read_parts (folded, context, parts_concentrate, parts_water, &local_error))
    return TRUE;

  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_TEXT, "%s %s", local_error->message,
               _("Write it as parts of concentrate to parts of water, like 1:3."));

  return FALSE;
}

/**
 * bb_dilution_format:
 * @parts_concentrate: parts of concentrate
 * @parts_water: parts of water
 * @context: (nullable): which decimal separator is shown
 *
 * Returns: (transfer full): the dilution like `1:3`; "" if a part is not finite
 */
char *
bb_dilution_format (double               parts_concentrate,
                    double               parts_water,
                    const BbUnitContext *context)
{
  g_autofree char *concentrate = bb_quantity_format (BB_QUANTITY_NONE, parts_concentrate, context);
  g_autofree char *water = bb_quantity_format (BB_QUANTITY_NONE, parts_water, context);

  if (*concentrate == '\0' || *water == '\0')
    return g_strdup ("");

  return g_strconcat (concentrate, ":", water, NULL);
}

/**
 * bb_dilution_describe:
 * @parts_concentrate: parts of concentrate
 * @parts_water: parts of water
 * @context: (nullable): which decimal separator is shown
 *
 * Returns: (transfer full): the dilution as a person reads it: `1:3`, or that there is no water in it; "" if a part is
 *   not finite
 */
char *
bb_dilution_describe (double               parts_concentrate,
                      double               parts_water,
                      const BbUnitContext *context)
{
  if (isfinite (parts_concentrate) && isfinite (parts_water) && parts_water <= 0)
    return g_strdup (_("undiluted"));

  return bb_dilution_format (parts_concentrate, parts_water, context);
}
