/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-error.h"
#include "bb-quantity.h"

#include <math.h>

static const BbUnitContext comma = { BB_UNITS_METRIC, 0, ",", NULL };

static void
test_reads (void)
{
  const struct {
    const char *text;
    const BbUnitContext *context;
    double concentrate;
    double water;
  } rows[] = {
    { "1:3", NULL, 1, 3 },
    { " 1 : 3 ", NULL, 1, 3 },
    { "1 to 3", NULL, 1, 3 },
    { "1 TO 3", NULL, 1, 3 },
    { "2:5", NULL, 2, 5 },
    { "1:0", NULL, 1, 0 },
    { "1:2.5", NULL, 1, 2.5 },
    { "1:2,5", &comma, 1, 2.5 },
    { "1:2.5", &comma, 1, 2.5 },
    { "rtu", NULL, 1, 0 },
    { "RTU", NULL, 1, 0 },
    { "Ready to use", NULL, 1, 0 },
    { "ready-to-use", NULL, 1, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      double concentrate = 0;
      double water = 0;

      g_test_message ("%s", rows[i].text);
      g_assert_true (bb_dilution_parse (rows[i].text, rows[i].context, &concentrate, &water, &error));
      g_assert_no_error (error);
      g_assert_cmpfloat (concentrate, ==, rows[i].concentrate);
      g_assert_cmpfloat (water, ==, rows[i].water);
    }
}

static void
test_refuses (void)
{
  const struct {
    const char *text;
    const char *why;
  } rows[] = {
    { "", "A dilution begins with the parts of concentrate." },
    { "three", "A dilution begins with the parts of concentrate." },
    { "-1:3", "A dilution begins with the parts of concentrate." },
    { ":3", "A dilution begins with the parts of concentrate." },
    { "nan:3", "A dilution begins with the parts of concentrate." },
    { "1", "After the parts of concentrate come a colon and the parts of water." },
    { "1:", "After the parts of concentrate come a colon and the parts of water." },
    { "1:-3", "After the parts of concentrate come a colon and the parts of water." },
    { "1:inf", "After the parts of concentrate come a colon and the parts of water." },
    { "1 3", "After the parts of concentrate come a colon and the parts of water." },
    { "1to 3", "After the parts of concentrate come a colon and the parts of water." },
    { "1to3", "After the parts of concentrate come a colon and the parts of water." },
    { "1 tonne 3", "After the parts of concentrate come a colon and the parts of water." },
    { "1/3", "After the parts of concentrate come a colon and the parts of water." },
    { "1:1/2", "A dilution has two numbers without units or fractions." },
    { "1:½", "A dilution has two numbers without units or fractions." },
    { "½:1", "A dilution has two numbers without units or fractions." },
    { "1:3:5", "A dilution has two numbers without units or fractions." },
    { "1:3 ml", "A dilution has two numbers without units or fractions." },
    { "0:3", "A dilution needs more than 0 parts of concentrate." },
    { "1:2,5", "“2,5” can be misread: write decimals after “.”, and leave thousands together." },
    { "1:3\001", "This has characters that can't be shown." },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *message = NULL;
      double concentrate = 7;
      double water = 8;

      g_test_message ("%u", i);
      message = g_strconcat (rows[i].why, " Write it as parts of concentrate to parts of water, like 1:3.",
                             NULL);
      g_assert_false (bb_dilution_parse (rows[i].text, NULL, &concentrate, &water, &error));
      g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_TEXT);
      g_assert_cmpstr (error->message, ==, message);
      g_assert_cmpfloat (concentrate, ==, 7);
      g_assert_cmpfloat (water, ==, 8);
    }
}

static void
test_shows (void)
{
  const struct {
    double concentrate;
    double water;
    const BbUnitContext *context;
    const char *text;
  } rows[] = {
    { 1, 3, NULL, "1:3" },
    { 1, 0, NULL, "1:0" },
    { 1, 2.5, NULL, "1:2.5" },
    { 1, 2.5, &comma, "1:2,5" },
    { 1, (double) NAN, NULL, "" },
    { (double) INFINITY, 1, NULL, "" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = bb_dilution_format (rows[i].concentrate, rows[i].water, rows[i].context);

      g_assert_cmpstr (text, ==, rows[i].text);
    }
}

/* What a person reads is understood when it is typed, and no ratio is shown where nothing is mixed. */
static void
test_describes (void)
{
  g_autofree char *mixed = bb_dilution_describe (1, 2.5, &comma);
  g_autofree char *undiluted = bb_dilution_describe (2, 0, NULL);
  g_autofree char *nothing = bb_dilution_describe (1, (double) NAN, NULL);
  double concentrate = 0;
  double water = 7;

  g_assert_cmpstr (mixed, ==, "1:2,5");
  g_assert_cmpstr (undiluted, ==, "undiluted");
  g_assert_cmpstr (nothing, ==, "");
  g_assert_true (bb_dilution_parse (undiluted, NULL, &concentrate, &water, NULL));
  g_assert_cmpfloat (concentrate, ==, 1);
  g_assert_cmpfloat (water, ==, 0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/dilution/reads", test_reads);
  g_test_add_func ("/dilution/refuses", test_refuses);
  g_test_add_func ("/dilution/shows", test_shows);
  g_test_add_func ("/dilution/describes", test_describes);

  return g_test_run ();
}
