/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

/*
 * A wash plan of the shop's own, on the built program in a real window with a fresh copy of the demo shop's book: copy
 * it from a published method, which itself is closed, wash a specimen to it, and find both in the next session.
 */

#include <string.h>

#include "shop.h"

#define PUBLISHED "Home wash 40 °C, tumble dryer"
#define OWN "Our machine by the window"
#define CODE "OUR-40"
#define SPECIMEN "TEST-5"
#define REVISION "MUD-BLACK.1"

/* What specimens were washed by can't be changed, and the page says what to do instead. */
static void
look_at_published (Stage *stage)
{
  shop_go (stage, "Wash Plans");
  hand_enter (stage, "Search wash plans", "6330");
  hand_select (stage, PUBLISHED);
  hand_expect (stage, "Buy ISO 6330:2021, and wash by its procedure 4N.");
  hand_expect (stage, "From memory: check it against the standard");
  hand_expect (stage, "1, 5, 10, 20");
  hand_press (stage, ROLE_BUTTON, "Copy as Our Own");
}

/* The demo shop has some of them; what is added, and that nothing is left to add, is said. */
static void
add_published (Stage *stage)
{
  hand_press (stage, ROLE_BUTTON, "Add the Published Methods");
  hand_expect (stage, "wash plans were added.");
  hand_press (stage, ROLE_BUTTON, "Add the Published Methods");
  hand_expect (stage, "All of them are in the book already. What was withdrawn stays withdrawn.");
}

/* Half typed, it is still there after the window was closed. */
static void
begin_own (Stage      *stage,
           const char *path)
{
  hand_enter (stage, "Name", OWN);
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "Something has to be mended before this can be saved.");
  hand_close (stage);

  shop_open (stage, path);
  shop_go (stage, "Wash Plans");
  hand_expect_text (stage, "Name", OWN);
  hand_enter (stage, "Code", "6330-4N-F");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "The code “6330-4N-F” is taken. Choose another.");
  hand_expect (stage, "Something has to be mended before this can be saved.");
  hand_enter (stage, "Code", CODE);
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "No standard stands behind this plan");
  hand_expect (stage, "After 6330-4N-F: ISO 6330:2021, 4N.");
}

static void
withdraw_and_undo (Stage *stage)
{
  hand_press (stage, ROLE_BUTTON, "Withdraw");
  hand_expect (stage, "“" OWN "” is withdrawn.");
  hand_press (stage, ROLE_BUTTON, "Undo");
  hand_expect (stage, "After 6330-4N-F: ISO 6330:2021, 4N.");
  hand_enter (stage, "Search wash plans", "window");
  hand_expect (stage, "1 wash plan");
}

/* The plan says the method, the temperature and the cycles; nobody types them again. */
static void
add_specimen (Stage *stage)
{
  shop_go (stage, "Wash Log");
  hand_press (stage, ROLE_BUTTON, "Add a Wash Test");
  hand_enter (stage, "Specimen", SPECIMEN);
  hand_choose (stage, "Revision", REVISION);
  hand_choose (stage, "Wash plan", OWN " · " CODE);
  hand_expect_text (stage, "Planned cycles", "20");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "Washed to " CODE ", " OWN);
  hand_expect (stage, "The next reading is at wash 1, due on ");
  hand_press (stage, ROLE_BUTTON, "Open Its Plan");
  hand_expect_state (stage, ROLE_ITEM, "Wash Plans", STATE_SELECTED);
  hand_expect (stage, "1 specimen is washed to this plan.");
}

int
main (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_demo (stage);
  g_autofree char *plans = NULL;

  shop_open (stage, path);
  look_at_published (stage);
  begin_own (stage, path);
  withdraw_and_undo (stage);
  add_specimen (stage);
  add_published (stage);
  hand_close (stage);

  shop_open (stage, path);
  shop_go (stage, "Wash Log");
  hand_enter (stage, "Search wash tests", SPECIMEN);
  hand_expect (stage, "Washed to " CODE ", " OWN);
  hand_close (stage);
  g_assert_cmpint (shop_run (stage, &plans, "--book", path, "wash", "plans", NULL), ==, 0);
  g_assert_nonnull (strstr (plans, OWN));
  g_assert_cmpint (shop_run (stage, NULL, "book", "check", path, NULL), ==, 0);

  return 0;
}
