/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

/* An order in a real window: taken, planned from its artwork, begun, cancelled and taken up again. */

#include "shop.h"

/*
 * The demo's artwork on a line of its own. Its art has 1047 × 1115 pixels, as ImageMagick counts them, so that 200 mm
 * of width are 212.99 mm of height. The recipe, MUD-BLACK.3 of the demo, says 6 mm of margin and 150 g/m²: a box of
 * 212 × 224.99 mm is 0.047698 m², and that · 150 g/m² = 7.15 g.
 */
static void
enter_line (Stage *stage)
{
  hand_press (stage, ROLE_BUTTON, "Add a Line");
  hand_expect (stage, "None chosen yet");
  hand_choose (stage, "Garment", "Mudwhistle everyday tee, Black · MUDWHISTLE-BLACK");
  hand_expect (stage, "Mudwhistle everyday tee, black, revision 3");
  hand_enter (stage, "Sizes", "Age 5–11");
  hand_enter (stage, "Garments", "24");
  shop_choose_artwork (stage);
  hand_enter (stage, "Print width", "200");
  hand_expect_text (stage, "Print height", "213");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "24 garments · Age 5–11 · demo-artwork.png · 200 × 213 mm");
}

static void
test_order (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_demo (stage);
  g_autofree char *wet = NULL;

  shop_open (stage, path);
  shop_go (stage, "Jobs");
  hand_press (stage, ROLE_BUTTON, "Add a Job");
  hand_choose (stage, "Customer", "Chor Obermondsee · OBERMOND");
  hand_enter (stage, "For what", "Spring concert");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "Chor Obermondsee · Spring concert");
  hand_expect (stage, "Nothing to print yet.");
  enter_line (stage);

  hand_press (stage, ROLE_TAB, "Job Sheet");
  wet = hand_read_figure (stage, "On each garment", NULL);
  g_assert_cmpstr (wet, ==, "7.2 g");
  hand_close (stage);
}

static void
test_steps (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_demo (stage);

  shop_open (stage, path);
  shop_go (stage, "Jobs");
  hand_enter (stage, "Search jobs", "2610-08");
  hand_press (stage, ROLE_BUTTON, "Mark as Running");
  hand_expect (stage, "Mark as Done…");
  hand_press (stage, ROLE_BUTTON, "Cancel Job");
  hand_expect (stage, "Job 2610-08 is cancelled.");
  hand_press (stage, ROLE_BUTTON, "Undo");

  /* Nothing of it is printed, which is said before it can be done. */
  hand_press (stage, ROLE_BUTTON, "Mark as Done…");
  hand_expect (stage, "not yet recorded as good");
  hand_move_to (stage, "Tab", "Mark as Done");
  hand_keys (stage, "Return");
  hand_expect_not (stage, "Cancel Job");

  /* What is over is a record: it can be repeated, and reopened only after a question. */
  hand_expect_not (stage, "Add a Line");
  hand_expect_not (stage, "Edit line 2610-08.1");
  hand_press (stage, ROLE_TAB, "Runs");
  hand_expect_not (stage, "Start a run of line 2610-08.1");
  hand_press (stage, ROLE_BUTTON, "Reopen…");
  hand_expect (stage, "Reopen 2610-08 only if it was never finished");
  hand_move_to (stage, "Tab", "Reopen the Job");
  hand_keys (stage, "Return");
  hand_expect (stage, "Mark as Done…");
  hand_close (stage);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/order/order", test_order);
  g_test_add_func ("/order/steps", test_steps);

  return g_test_run ();
}
