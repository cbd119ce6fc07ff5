/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-numeral-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "bb-error.h"

#define LARGEST_DENOMINATOR 1000

static gboolean
is_other_decimal (const char *decimal)
{
  return decimal != NULL && *decimal != '\0' && !g_ascii_isalnum (*decimal) &&
         !g_str_equal (decimal, ".") && !g_str_equal (decimal, ",");
}

static const char *
skip_digits (const char *at)
{
  while (g_ascii_isdigit (*at))
    at++;

  return at;
}

static const char *
skip_spaces (const char *at)
{
  while (*at == ' ')
    at++;

  return at;
}

/**
 * _bb_numeral_ahead:
 * @at: a place in a folded text
 * @decimal: (nullable): the decimal separator understood beside '.'
 *
 * Returns: %TRUE if a number without a sign begins at @at
 */
gboolean
_bb_numeral_ahead (const char *at,
                   const char *decimal)
{
  if (*at == '.' || *at == ',')
    at++;
  else if (is_other_decimal (decimal) && g_str_has_prefix (at, decimal))
    at += strlen (decimal);

  return g_ascii_isdigit (*at);
}

/* The run of digits and separators at @at, with '.' in place of a separator of another kind. */
static char *
take_run (const char **at,
          const char  *decimal)
{
  GString *run = g_string_new (NULL);

  for (;;)
    if (g_ascii_isdigit (**at) || **at == '.' || **at == ',')
      g_string_append_c (run, *(*at)++);
    else if (is_other_decimal (decimal) && g_str_has_prefix (*at, decimal))
      {
        g_string_append_c (run, '.');
        *at += strlen (decimal);
      }
    else
      break;

  return g_string_free (run, FALSE);
}

/* Whether the digits up to @end are grouped by thousands: 1,234 and 12,345,678, not 0,123 or 1,23. */
static gboolean
is_grouped (const char *run,
            const char *end,
            char        group)
{
  const char *p = skip_digits (run);

  if (p == run || p - run > 3 || *run == '0')
    return FALSE;

  while (p < end)
    {
      const char *next = skip_digits (p + 1);

      if (*p != group || next - p != 4)
        return FALSE;
      p = next;
    }

  return p == end;
}

static int
count (const char *text,
       char        c)
{
  int n = 0;

  for (; *text != '\0'; text++)
    n += *text == c ? 1 : 0;

  return n;
}

static void
drop (char *text,
      char  c)
{
  char *to = text;

  for (const char *from = text; *from != '\0'; from++)
    if (*from != c)
      *to++ = *from;
  *to = '\0';
}

/*
 * Rewrites a run so that only a decimal point is left. A single separator that may divide
 * thousands as well as decimals is not guessed at.
 */
static gboolean
settle_separators (char     *run,
                   gboolean  comma)
{
  char point = comma ? ',' : '.';
  char group = comma ? '.' : ',';
  int n_points = count (run, point);
  int n_groups = count (run, group);
  const char *end = n_points > 0 ? strchr (run, point) : run + strlen (run);

  if (n_points > 1 || strchr (end, group) != NULL)
    return FALSE;

  if (n_groups > 0 && is_grouped (run, end, group))
    {
      if (n_points == 0 && n_groups == 1)
        return FALSE;
      drop (run, group);
    }
  else if (n_groups > 0 && (!comma || n_points > 0 || n_groups > 1))
    return FALSE;

  g_strdelimit (run, ",", '.');

  return TRUE;
}

static gboolean
read_decimal (const char **at,
              const char  *decimal,
              BbNumeral   *numeral,
              GError     **error)
{
  g_autofree char *run = take_run (at, decimal);
  g_autofree char *typed = _bb_text_echo (run);
  gboolean comma = g_strcmp0 (decimal, ",") == 0;

  if (!settle_separators (run, comma))
    {
      const char *point = decimal != NULL && *decimal != '\0' ? decimal : ".";

      g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_TEXT,
                   _("“%s” can be misread: write decimals after “%s”, and leave thousands together."),
                   typed, point);
      return FALSE;
    }

  numeral->value = g_ascii_strtod (run, NULL);
  numeral->whole = strchr (run, '.') == NULL;
  numeral->fraction = FALSE;
  if (!isfinite (numeral->value))
    return bb_refuse_text (error, _("This number is too large."));

  return TRUE;
}

/* If a fraction like 1/2 begins at @at, steps over it. */
static gboolean
take_fraction (const char **at,
               double      *above,
               double      *below)
{
  const char *slash = skip_digits (*at);
  const char *end = NULL;

  if (slash == *at || *slash != '/')
    return FALSE;
  end = skip_digits (slash + 1);
  if (end == slash + 1 || *end == '.' || *end == ',' || *end == '/')
    return FALSE;

  *above = g_ascii_strtod (*at, NULL);
  *below = g_ascii_strtod (slash + 1, NULL);
  *at = end;

  return TRUE;
}

/**
 * _bb_numeral_read:
 * @at: (inout): a place in a folded text where a number begins; then where it ends
 * @decimal: (nullable): the decimal separator understood beside '.'
 * @numeral: (out caller-allocates): the number
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Reads a number without a sign: 14, 14.5, 1,234.5, 1/2, 14 1/2, 14-1/2.
 *
 * Returns: %FALSE, with a sentence in @error, if it can be misread, is too large or is no fraction
 */
gboolean
_bb_numeral_read (const char **at,
                  const char  *decimal,
                  BbNumeral   *numeral,
                  GError     **error)
{
  const char *next = *at;
  double above = 0;
  double below = 1;
  gboolean mixed = FALSE;

  if (!take_fraction (&next, &above, &below))
    {
      if (!read_decimal (at, decimal, numeral, error))
        return FALSE;
      next = **at == '-' ? *at + 1 : skip_spaces (*at);
      if (next == *at || !take_fraction (&next, &above, &below))
        return TRUE;
      mixed = TRUE;
    }
  else
    numeral->value = 0;

  if (below < 1 || below > LARGEST_DENOMINATOR || above > LARGEST_DENOMINATOR ||
      (mixed && (!numeral->whole || above >= below)))
    return bb_refuse_text (error, _("This fraction can't be read: write it like 14 1/2, or as 14.5."));

  *at = next;
  numeral->value += above / below;
  numeral->whole = FALSE;
  numeral->fraction = TRUE;

  return TRUE;
}
