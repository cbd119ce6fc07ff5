/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-blank.h"

#include <string.h>

#include "bb-error.h"

/* Labels name whole per cents that make 100; half of one is left for shares that were computed. No source. */
#define COMPOSITION_SLACK (0.005 + 1e-9)

BB_DEFINE_CHOICES (bb_fibre, "fibre", BB_FIBRE_CHOICES);
BB_DEFINE_CHOICES (bb_knit, "knit", BB_KNIT_CHOICES);
BB_DEFINE_CHOICES (bb_finish, "finish", BB_FINISH_CHOICES);

/**
 * bb_composition_check:
 * @composition: (nullable): a list of #BbFibreShare
 * @key: the name of the field that holds it, for the message
 * @error: return location for a #GError
 *
 * Returns: %TRUE if no fibre is named twice and the shares make 1, within half a per cent
 */
gboolean
bb_composition_check (const GArray *composition,
                      const char   *key,
                      GError      **error)
{
  double sum = 0;
  guint seen = 0;

  for (guint i = 0; composition != NULL && i < composition->len; i++)
    {
      const BbFibreShare *share = &g_array_index (composition, BbFibreShare, i);

      if (share->fibre < 0)
        {
          g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, _("%s: a share has no fibre."), key);
          return FALSE;
        }
      if ((seen & (1u << share->fibre)) != 0)
        {
          g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, _("%s: %s is listed twice."), key,
                       bb_choices_get_title (&bb_fibre_choices, share->fibre));
          return FALSE;
        }
      seen |= 1u << share->fibre;
      sum += share->fraction;
    }

  /* Written so that a sum which is no number is refused. */
  if (!(fabs (sum - 1.0) <= COMPOSITION_SLACK))
    {
      g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
                   _("%s: the shares make %g %%, they have to make 100 %%."), key, sum * 100.0);
      return FALSE;
    }

  return TRUE;
}

/**
 * bb_composition_dup_text:
 * @composition: (nullable): a list of #BbFibreShare
 *
 * Returns: (transfer full): the fibres as a label names them, like `60 % Cotton, 40 % Polyester`
 */
char *
bb_composition_dup_text (const GArray *composition)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; composition != NULL && i < composition->len; i++)
    {
      const BbFibreShare *share = &g_array_index (composition, BbFibreShare, i);
      g_autofree char *part = NULL;

      /* Translators: one fibre of a garment's label, like "60 % Cotton". */
      part = g_strdup_printf (_("%g %% %s"), round (share->fraction * 1000.0) / 10.0,
                              bb_choices_get_title (&bb_fibre_choices, share->fibre));
      if (i > 0)
        g_string_append (text, ", ");
      g_string_append (text, part);
    }

  return g_string_free (text, FALSE);
}

/**
 * bb_srgb_parse:
 * @text: (nullable): a colour as `#rrggbb`
 * @rgb: (out) (array fixed-size=3): red, green and blue, 0 to 255
 *
 * Returns: %FALSE if @text is anything else
 */
gboolean
bb_srgb_parse (const char *text,
               guint8      rgb[3])
{
  if (text == NULL || strlen (text) != 7 || text[0] != '#')
    return FALSE;

  for (guint i = 1; i < 7; i++)
    if (!g_ascii_isxdigit (text[i]))
      return FALSE;
  for (guint i = 0; i < 3; i++)
    rgb[i] = (guint8) (g_ascii_xdigit_value (text[1 + 2 * i]) * 16 + g_ascii_xdigit_value (text[2 + 2 * i]));

  return TRUE;
}

static guint
to_byte (double value)
{
  return (guint) lround (255.0 * CLAMP (value, 0.0, 1.0));
}

/**
 * bb_srgb_format:
 * @red: sRGB value, 0 to 1
 * @green: sRGB value, 0 to 1
 * @blue: sRGB value, 0 to 1
 *
 * Returns: (transfer full): the nearest colour that can be written as `#rrggbb`
 */
char *
bb_srgb_format (double red,
                double green,
                double blue)
{
  return g_strdup_printf ("#%02x%02x%02x", to_byte (red), to_byte (green), to_byte (blue));
}

static gboolean
check_blank (gconstpointer record,
             GError      **error)
{
  const BbBlank *self = record;

  return bb_composition_check (self->composition, "composition", error);
}

/**
 * bb_srgb_check:
 * @text: (nullable): what a field holds, which may be nothing
 * @key: the field's key
 * @error: return location for a #GError
 *
 * Returns: %FALSE with %BB_MODEL_ERROR_VALUE where that is no colour as bb_srgb_parse() reads it
 */
gboolean
bb_srgb_check (const char  *text,
               const char  *key,
               GError     **error)
{
  guint8 rgb[3];

  if (text == NULL || bb_srgb_parse (text, rgb))
    return TRUE;

  /* Translators: the key of a field, and what it holds. */
  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
               _("%s: %s is not a colour. Write it as #rrggbb, like #1b2a49."), key, text);
  return FALSE;
}

static gboolean
check_colourway (gconstpointer record,
                 GError      **error)
{
  const BbColourway *self = record;

  return bb_srgb_check (self->srgb, "srgb", error);
}

BB_DEFINE_TABLE (BbFibreShare, bb_fibre_share, "fibre_share", N_("Fibre"), BB_FIBRE_SHARE_FIELDS, NULL)
BB_DEFINE_TABLE (BbBlank, bb_blank, "blank", N_("Blank"), BB_BLANK_FIELDS, check_blank)
BB_DEFINE_TABLE (BbColourway, bb_colourway, "colourway", N_("Colourway"), BB_COLOURWAY_FIELDS, check_colourway)
