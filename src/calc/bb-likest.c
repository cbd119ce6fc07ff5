/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-likest.h"

#include "bb-lab.h"

#define WHITE_L 92.0
#define WHITE_CHROMA 8.0
#define LIGHT_L 45.0
#define DARK_L 65.0
#define BLACK_L 25.0
#define BLACK_CHROMA 12.0

typedef struct {
  gint64 id;
  double de_00;
} Like;

static int
compare_likeness (gconstpointer a,
                  gconstpointer b)
{
  const Like *first = a;
  const Like *second = b;

  if (first->de_00 != second->de_00)
    return first->de_00 < second->de_00 ? -1 : 1;

  return (first->id < second->id) - (first->id > second->id);
}

/**
 * bb_colourways_like:
 * @colourways: (element-type BbColourway): garments in a colour
 * @srgb: a colour as `#rrggbb`
 * @limit: how many at most
 *
 * Puts garments in the order in which they are like a colour; see the top of bb-likest.h.
 *
 * Returns: (transfer full) (element-type gint64): keys of those that are like it, the likest first, and of equals the
 *   newest; none where @srgb is no colour
 */
GArray *
bb_colourways_like (const GPtrArray *colourways,
                    const char      *srgb,
                    guint            limit)
{
  g_autoptr (GArray) likes = g_array_new (FALSE, FALSE, sizeof (Like));
  GArray *ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  guint8 rgb[3];
  cmsCIELab wanted;

  if (!bb_srgb_parse (srgb, rgb))
    return ids;

  wanted = bb_lab_from_srgb (rgb);
  for (guint i = 0; i < colourways->len; i++)
    {
      const BbColourway *colourway = colourways->pdata[i];
      Like like = { .id = colourway->id };
      cmsCIELab lab;

      if (!bb_srgb_parse (colourway->srgb, rgb))
        continue;
      lab = bb_lab_from_srgb (rgb);
      like.de_00 = cmsCIE2000DeltaE (&lab, &wanted, 1.0, 1.0, 1.0);
      if (like.de_00 <= BB_LIKE_DE)
        g_array_append_val (likes, like);
    }
  g_array_sort (likes, compare_likeness);
  for (guint i = 0; i < MIN (likes->len, limit); i++)
    g_array_append_val (ids, g_array_index (likes, Like, i).id);

  return ids;
}

/**
 * bb_shades_of:
 * @srgb: a colour as `#rrggbb`
 *
 * Which shades a garment of a colour may be called; see the top of bb-likest.h.
 *
 * Returns: a bit, 1 << #BbShade, for each of them, and that of any colour; all where @srgb is no colour
 */
guint
bb_shades_of (const char *srgb)
{
  guint shades = 1u << BB_SHADE_ANY;
  guint8 rgb[3];
  cmsCIELab lab;
  double chroma = 0;

  if (!bb_srgb_parse (srgb, rgb))
    return G_MAXUINT;

  lab = bb_lab_from_srgb (rgb);
  chroma = hypot (lab.a, lab.b);
  if (lab.L >= WHITE_L && chroma <= WHITE_CHROMA)
    shades |= 1u << BB_SHADE_WHITE;
  if (lab.L >= LIGHT_L)
    shades |= 1u << BB_SHADE_LIGHT;
  if (lab.L <= DARK_L)
    shades |= 1u << BB_SHADE_DARK;
  if (lab.L <= BLACK_L && chroma <= BLACK_CHROMA)
    shades |= 1u << BB_SHADE_BLACK;

  return shades;
}
