/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-artwork.h"
#include "bb-problem.h"
#include "pictures.h"

/* What the window does: it counts once, off the main loop, and then places the picture this way and that. */

static BbArtworkIn *
make_in (const char *name,
         double      width_mm,
         BbPrintMode mode)
{
  BbArtworkIn *in = bb_artwork_in_new ();
  g_autoptr (GError) error = NULL;

  in->file = picture_path (name);
  in->print_width_mm = width_mm;
  in->mode = (int) mode;
  bb_record_validate (&bb_artwork_in_table, in, &error);
  g_assert_no_error (error);

  return in;
}

static void
test_counted_once (void)
{
  static const double widths[] = { 1, 80, 300, 5000 };
  g_autoptr (BbArtworkIn) in = make_in ("rgba-8-300ppi", 100, BB_PRINT_UNDERBASE);
  BbCounts counts;
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_artwork_count (in, &counts, NULL, &error));
  g_assert_no_error (error);
  for (guint i = 0; i < G_N_ELEMENTS (widths); i++)
    for (int mode = BB_PRINT_COLOUR_ONLY; mode <= BB_PRINT_UNDERBASE_KNOCKOUT; mode++)
      {
        g_autoptr (BbArtworkOut) placed = bb_artwork_out_new ();
        g_autoptr (BbArtworkOut) read_again = bb_artwork_out_new ();

        in->print_width_mm = widths[i];
        in->mode = mode;
        bb_artwork_fill (in, &counts, placed);
        g_assert_true (bb_calc_artwork (in, read_again, &error));
        g_assert_true (bb_record_equal (&bb_artwork_out_table, placed, read_again));
      }
}

/* All that is printed and all that is left out make up the art, whatever the mode. */
static void
test_areas_add_up (void)
{
  g_auto (GStrv) names = picture_list ();

  for (guint i = 0; names[i] != NULL; i++)
    {
      g_autoptr (BbArtworkIn) in = make_in (names[i], 200, BB_PRINT_UNDERBASE_KNOCKOUT);
      g_autoptr (BbArtworkOut) out = bb_artwork_out_new ();
      double whole = 200 * 200 / (29.0 / 19.0);

      g_assert_true (bb_calc_artwork (in, out, NULL));
      g_assert_cmpfloat_with_epsilon (out->underbase_area_mm2 + out->knockout_area_mm2, out->art_area_mm2, 1e-6);
      g_assert_cmpfloat (out->colour_area_mm2, <=, out->underbase_area_mm2);
      g_assert_cmpfloat_with_epsilon (out->empty_fraction + out->partial_fraction + out->opaque_fraction, 1, 1e-12);
      if (out->width_px == 29)
        g_assert_cmpfloat_with_epsilon (out->alpha_mean * whole, out->art_area_mm2, 1e-6);
    }
}

/* A file names whole pixels a metre: what it means may be as much as half of one less. */
static void
test_enlarged_beyond_rounding (void)
{
  static const struct {
    double width_mm;
    gboolean enlarged;
  } cases[] = { { 29 / 300.0 * 25.4, FALSE }, { 29000 / 11811.0, FALSE }, { 29000 / 11810.6, FALSE },
                { 29000 / 11810.4, TRUE }, { 3, TRUE } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BbArtworkIn) in = make_in ("rgba-8-300ppi", cases[i].width_mm, BB_PRINT_COLOUR_ONLY);
      g_autoptr (BbArtworkOut) out = bb_artwork_out_new ();

      g_assert_true (bb_calc_artwork (in, out, NULL));
      g_assert_true (g_strv_contains ((const char * const *) out->warnings, "enlarged") == cases[i].enlarged);
    }
}

static void
test_cancel (void)
{
  g_autoptr (BbArtworkIn) in = make_in ("rgba-8", 100, BB_PRINT_UNDERBASE);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  const BbImageWork work = { .cancellable = cancellable };
  BbCounts counts;
  g_autoptr (GError) error = NULL;

  g_cancellable_cancel (cancellable);
  g_assert_false (bb_artwork_count (in, &counts, &work, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/artwork/counted-once", test_counted_once);
  g_test_add_func ("/artwork/areas-add-up", test_areas_add_up);
  g_test_add_func ("/artwork/enlarged-beyond-rounding", test_enlarged_beyond_rounding);
  g_test_add_func ("/artwork/cancel", test_cancel);

  return g_test_run ();
}
