/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-hazard-code.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-error.h"
#include "bb-text.h"

/*
 * The form of codes, after Regulation (EC) No 1272/2008, Annexes III and IV, which follow the GHS: a letter for what
 * kind of statement it is, three digits, for some hazards letters that say more (H360FD, H350i, EUH201A), and "+"
 * between statements that stand as one (P305+P351+P338).
 */
#define N_DIGITS 3
#define MOST_LETTERS 2

/* Of words that a person reads in a message. */
#define LONGEST_ECHO 24

static const char * const kinds[] = { "EUH", "H", "P" };

/* The kind of statement that @code begins with, in whatever case it is written. */
static const char *
find_kind (const char *code)
{
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_ascii_strncasecmp (code, kinds[i], strlen (kinds[i])) == 0)
      return kinds[i];

  return NULL;
}

/* Moves past one statement of @kind. */
static gboolean
skip_statement (const char **at,
                const char  *kind)
{
  guint n_letters = 0;

  if (g_ascii_strncasecmp (*at, kind, strlen (kind)) != 0)
    return FALSE;
  *at += strlen (kind);
  for (guint i = 0; i < N_DIGITS; i++, (*at)++)
    if (!g_ascii_isdigit (**at))
      return FALSE;
  for (; g_ascii_isalpha (**at); (*at)++)
    n_letters++;

  return n_letters <= (*kind == 'P' ? 0 : MOST_LETTERS);
}

/**
 * bb_hazard_code_is_well_formed:
 * @code: a text
 *
 * Returns: %TRUE if it has the form of the code of a hazard or precautionary statement, in upper or lower case, whether
 *   there is such a statement or not
 */
gboolean
bb_hazard_code_is_well_formed (const char *code)
{
  const char *kind = NULL;
  const char *at = code;

  g_return_val_if_fail (code != NULL, FALSE);

  kind = find_kind (code);
  if (kind == NULL)
    return FALSE;
  while (skip_statement (&at, kind))
    {
      if (*at == '\0')
        return TRUE;
      if (*at++ != '+')
        return FALSE;
    }

  return FALSE;
}

/* The kind in capitals; the letters behind the digits as they are written, because H360FD and H360Fd differ. */
static char *
fold (const char *code)
{
  g_autoptr (GString) folded = g_string_new (NULL);
  gboolean is_start = TRUE;

  if (!bb_hazard_code_is_well_formed (code))
    return g_strdup (code);
  for (const char *p = code; *p != '\0'; p++)
    {
      is_start = *p == '+' || (is_start && !g_ascii_isdigit (*p));
      g_string_append_c (folded, is_start ? g_ascii_toupper (*p) : *p);
    }

  return g_strdup (folded->str);
}

/* Data sheets write "P305 + P351" as often as "P305+P351". */
static char *
close_up (const char *codes)
{
  g_autoptr (GString) text = g_string_new (codes);

  while (g_string_replace (text, " +", "+", 0) + g_string_replace (text, "+ ", "+", 0) > 0)
    ;

  return g_strdup (text->str);
}

/**
 * bb_hazard_codes_split:
 * @codes: (nullable): codes as a person writes them, separated by spaces, commas or semicolons
 *
 * Returns: (transfer full): the codes, one by one, as the regulation writes them; what is none as it stands
 */
GStrv
bb_hazard_codes_split (const char *codes)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_autofree char *closed = close_up (codes != NULL ? codes : "");
  g_auto (GStrv) parts = g_strsplit_set (closed, " ,;\t\n", -1);

  for (guint i = 0; parts[i] != NULL; i++)
    if (*parts[i] != '\0')
      {
        g_autofree char *code = fold (parts[i]);

        g_strv_builder_add (builder, code);
      }

  return g_strv_builder_end (builder);
}

/**
 * bb_hazard_codes_check:
 * @codes: (nullable): codes as a person writes them
 * @name: the field that holds them
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Returns: %FALSE if one of them has not the form of a code
 */
gboolean
bb_hazard_codes_check (const char  *codes,
                       const char  *name,
                       GError     **error)
{
  g_auto (GStrv) list = bb_hazard_codes_split (codes);

  for (guint i = 0; list[i] != NULL; i++)
    if (!bb_hazard_code_is_well_formed (list[i]))
      {
        g_autofree char *echo = bb_text_quote (list[i], -1, LONGEST_ECHO);

        g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
                     /* Translators: a field's key, and a word. */
                     _("%s: “%s” is not the code of a statement. Write codes like H319, EUH208 or P305+P351+P338, with "
                       "spaces between them."), name, echo);
        return FALSE;
      }

  return TRUE;
}
