/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-likest.h"

static GPtrArray *
make_colourways (const char * const *srgb)
{
  GPtrArray *colourways = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_colourway_free);

  for (guint i = 0; srgb[i] != NULL; i++)
    {
      BbColourway *colourway = bb_colourway_new ();

      colourway->id = 1 + i;
      colourway->srgb = g_strdup (srgb[i]);
      g_ptr_array_add (colourways, colourway);
    }

  return colourways;
}

static void
expect_order (const GPtrArray *colourways,
              const char      *srgb,
              guint            limit,
              const char      *wanted)
{
  g_autoptr (GArray) ids = bb_colourways_like (colourways, srgb, limit);
  g_autoptr (GString) order = g_string_new (NULL);

  for (guint i = 0; i < ids->len; i++)
    g_string_append_printf (order, "%" G_GINT64_FORMAT " ", g_array_index (ids, gint64, i));
  g_assert_cmpstr (order->str, ==, wanted);
}

/* The order is plain to the eye; of equals the newest stands first. Black lies ΔE00 14 from navy by the npm package
 * culori 4.0.2, and white and red more than 20 from both. */
static void
test_order (void)
{
  const char * const srgb[] = { "#ffffff", "#1b2a49", "#a8202c", "#17171a", "#1b2a49", "#1d2c4c", NULL };
  g_autoptr (GPtrArray) colourways = make_colourways (srgb);

  expect_order (colourways, "#1b2a49", 10, "5 2 6 4 ");
  expect_order (colourways, "#17171a", 10, "4 5 2 6 ");
  expect_order (colourways, "#17171a", 2, "4 5 ");
  expect_order (colourways, "#fdfdfd", 10, "1 ");
  expect_order (colourways, "#00ff00", 10, "");
  expect_order (colourways, "green", 10, "");
}

static void
expect_shades (const char *srgb,
               gboolean    white,
               gboolean    light,
               gboolean    dark,
               gboolean    black)
{
  const guint shades = bb_shades_of (srgb);

  g_test_message ("%s", srgb);
  g_assert_true ((shades & (1u << BB_SHADE_ANY)) != 0);
  g_assert_cmpint ((shades & (1u << BB_SHADE_WHITE)) != 0, ==, white);
  g_assert_cmpint ((shades & (1u << BB_SHADE_LIGHT)) != 0, ==, light);
  g_assert_cmpint ((shades & (1u << BB_SHADE_DARK)) != 0, ==, dark);
  g_assert_cmpint ((shades & (1u << BB_SHADE_BLACK)) != 0, ==, black);
}

/* As people call garments; common practice, no source. */
static void
test_shades (void)
{
  expect_shades ("#ffffff", TRUE, TRUE, FALSE, FALSE);
  expect_shades ("#f4ecd8", FALSE, TRUE, FALSE, FALSE);
  expect_shades ("#c9ccd0", FALSE, TRUE, FALSE, FALSE);
  expect_shades ("#808080", FALSE, TRUE, TRUE, FALSE);
  expect_shades ("#1b2a49", FALSE, FALSE, TRUE, FALSE);
  expect_shades ("#161618", FALSE, FALSE, TRUE, TRUE);
  expect_shades ("no colour", TRUE, TRUE, TRUE, TRUE);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/likest/order", test_order);
  g_test_add_func ("/likest/shades", test_shades);

  return g_test_run ();
}
