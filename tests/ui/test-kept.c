/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

/* Half-typed forms in a real window: cancelled, and left when the window is closed. */

#include "shop.h"

/* What was half typed comes back, on a page and in a dialog; where nothing was typed there is nothing to bring back. */
static void
test_cancelled (void)
{
  g_autoptr (Stage) stage = shop_new ("1024x700");
  g_autofree char *path = shop_make_demo (stage);

  shop_open (stage, path);
  shop_go (stage, "Blanks");
  hand_press (stage, ROLE_BUTTON, "Add a Blank");
  hand_expect_state (stage, ROLE_ENTRY, "Code", STATE_FOCUSED);
  hand_keys (stage, "Escape");
  hand_expect_not (stage, "Cancel");
  hand_expect_not (stage, "was put aside");
  hand_press (stage, ROLE_BUTTON, "Edit");
  hand_enter (stage, "Name", "A tee of wool");
  hand_keys (stage, "Escape");
  hand_expect (stage, "A tee of wool · ");
  shop_go (stage, "Supplies");
  hand_press (stage, ROLE_BUTTON, "Undo");
  hand_expect_state (stage, ROLE_ITEM, "Blanks", STATE_SELECTED);
  hand_expect_text (stage, "Name", "A tee of wool");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect_not (stage, "Cancel");
  hand_expect (stage, "A tee of wool");

  hand_press (stage, ROLE_BUTTON, "Add a person");
  hand_enter (stage, "Name", "Odo Tarn");
  hand_press (stage, ROLE_BUTTON, "Cancel");
  hand_expect_not (stage, "Initials");
  hand_press (stage, ROLE_BUTTON, "Undo");
  hand_expect_text (stage, "Name", "Odo Tarn");
  hand_enter (stage, "Initials", "OT");
  hand_choose (stage, "Role", "Operator");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect_not (stage, "Initials");
  hand_press (stage, ROLE_BUTTON, "Edit this person");
  hand_expect_text (stage, "Initials", "OT");
  hand_enter (stage, "Name", "Odo");
  hand_press (stage, ROLE_BUTTON, "Cancel");
  hand_expect (stage, "was put aside");
  hand_close (stage);
}

/* A half-typed form means what it meant, also where the units were changed before anybody looked at it again. */
static void
test_kept_units (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_demo (stage);

  shop_open (stage, path);
  shop_go (stage, "Mix");
  hand_enter (stage, "Print width", "355.6");
  hand_enter (stage, "Print height", "406.4 mm");
  hand_enter (stage, "Garments", "1");
  hand_enter (stage, "Laydown", "150");
  hand_enter (stage, "Dilution", "1:2");
  hand_enter (stage, "Water's temperature", "25");
  hand_expect (stage, "Box: 355.6 × 406.4 mm");
  hand_close (stage);

  shop_set (stage, "unit-system", "'us'");
  shop_open (stage, path);
  hand_expect (stage, "Box: 14 × 16 in");
  hand_expect_text (stage, "Print width", "14");
  hand_expect_text (stage, "Garments", "1");
  /* 25 °C × 9/5 + 32 */
  hand_expect_text (stage, "Water's temperature", "77");
  hand_close (stage);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kept/cancelled", test_cancelled);
  g_test_add_func ("/kept/units", test_kept_units);

  return g_test_run ();
}
