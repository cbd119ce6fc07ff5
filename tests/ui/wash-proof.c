/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

/*
 * A proof from end to end, on the built program in a real window with a fresh copy of the demo shop's book: find what
 * is due, grade the third specimen by single keys, sign its revision as proven, and grade a fourth that fails. That
 * takes the proof away, and the window tells which open job it matters to until somebody takes note.
 */

#include <string.h>

#include "shop.h"

/* On trial in the demo shop, with two specimens that passed, one that has come half way, and a planned job. */
#define RECIPE "Loughside women’s tee, noir"
#define REVISION "LOUGH-NOIR.2"
#define HALF_WAY "2610-07"
#define JOB "2610-10"
#define FOURTH "TEST-4"

/* What has waited longest, of another recipe. */
#define FIRST "2610-09"

/* By the demo shop's plan it is due after a day of rest, and overdue two days later. */
static void
add_fourth (Stage      *stage,
            const char *path)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autoptr (GDateTime) then = g_date_time_add_days (now, -14);
  g_autofree char *made = g_date_time_format (then, "%Y-%m-%d");

  if (shop_run (stage, NULL, "--book", path, "wash", "new", FOURTH, "--revision", REVISION, "--plan", "6330-4N-F",
                "--made-at", made, NULL) != 0)
    stage_fail (stage, "The fourth specimen can't be added");
}

/* The command line knows nothing of the window. */
static void
expect_state (Stage      *stage,
              const char *path,
              const char *state)
{
  g_autofree char *shown = NULL;

  g_assert_cmpint (shop_run (stage, &shown, "--book", path, "recipe", "show", REVISION, NULL), ==, 0);
  if (strstr (shown, state) == NULL)
    stage_fail (stage, "The command line does not call %s “%s”:\n%s", REVISION, state, shown);
}

/* Each key goes on to the next field; Enter saves. */
static void
grade (Stage             *stage,
       const char        *specimen,
       const char * const keys[])
{
  hand_select (stage, specimen);
  hand_expect (stage, "days overdue");
  hand_press (stage, ROLE_BUTTON, "Add a Reading");
  hand_expect_state (stage, ROLE_BUTTON, "Change: 5", STATE_FOCUSED);
  for (guint i = 0; keys[i] != NULL; i++)
    hand_keys (stage, keys[i]);
  hand_keys (stage, "Return");
  hand_expect (stage, "Add a Reading");
}

/* From the search on to the list of what can be wanted, and in it to what has to be graded now. */
static void
narrow (Stage *stage)
{
  static const char * const keys[] = { "Control_L+f", "Tab", "Tab", "space", "Down", "Return" };

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      hand_keys (stage, keys[i]);
      stage_pause (200);
    }
  hand_expect (stage, "To grade now: 9");
  hand_expect (stage, "9 wash tests");
}

/* Several at once in a table. What can't be saved is said, and marked at its cell; nothing is lost by that. */
static void
grade_in_table (Stage *stage)
{
  hand_press (stage, ROLE_BUTTON, "Grade…");
  hand_wait_window (stage, "Grade What Is Due");
  hand_expect_state (stage, ROLE_BUTTON, FIRST ", Change: –", STATE_FOCUSED);
  hand_keys (stage, "Right");
  hand_keys (stage, "5");
  hand_expect (stage, FIRST ", Staining: 5");
  hand_keys (stage, "Control_L+s");
  hand_expect (stage, FIRST ", Change: This has to be filled in.");
  hand_expect_state (stage, ROLE_BUTTON, FIRST ", Change: –", STATE_FOCUSED);
  hand_keys (stage, "9");
  hand_keys (stage, "Control_L+s");
  hand_expect (stage, FIRST ", Cracking: This has to be filled in.");
  hand_expect_state (stage, ROLE_BUTTON, FIRST ", Cracking: –", STATE_FOCUSED);
  hand_keys (stage, "1");
  hand_keys (stage, "Control_L+s");
  hand_expect (stage, "All, 9 to grade");
}

static void
pass (Stage *stage)
{
  static const char * const keys[] = { "9", "5", "1", "1", "1", "4", "1", NULL };

  shop_go (stage, "Wash Log");
  hand_expect (stage, "All, 10 to grade");
  grade_in_table (stage);
  narrow (stage);
  grade (stage, HALF_WAY, keys);
  hand_expect (stage, "To grade now: 8");
}

static void
sign (Stage      *stage,
      const char *path)
{
  shop_go (stage, "Recipes");
  hand_enter (stage, "Search recipes and jobs", "loughside noir");
  hand_select (stage, RECIPE);
  hand_expect (stage, "The shop's rule is met: 3 specimens passed, and none failed.");
  hand_press (stage, ROLE_BUTTON, "Sign as Proven…");
  hand_wait_window (stage, "Sign " REVISION " as Proven");
  hand_enter (stage, "What else speaks for it (may be left empty)", "Three of three, soft hand");
  hand_press (stage, ROLE_BUTTON, "Sign");
  hand_expect (stage, "Signed by Marisol Oyelaran-Quist");
  hand_expect (stage, "Three of three, soft hand");
  expect_state (stage, path, "Proven");
}

static void
fail (Stage      *stage,
      const char *path)
{
  static const char * const keys[] = { "2", "5", "1", "1", "1", "4", "1", NULL };

  shop_go (stage, "Wash Log");
  grade (stage, FOURTH, keys);
  hand_expect (stage, REVISION " is back on trial: specimen " FOURTH " failed after 1 wash. An open job uses it: " JOB);
  expect_state (stage, path, "On trial");
}

static void
take_note (Stage *stage)
{
  hand_press (stage, ROLE_BUTTON, "Open Recipe");
  hand_expect (stage, "1 specimen failed: by the shop's rule this revision can't be proven any more.");
  hand_press (stage, ROLE_BUTTON, "Take Note");
  hand_expect_not (stage, "An open job uses it");
}

int
main (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_demo (stage);

  add_fourth (stage, path);
  shop_set (stage, "person", "'MOQ'");
  shop_open (stage, path);
  pass (stage);
  sign (stage, path);
  fail (stage, path);
  take_note (stage);
  hand_close (stage);

  return 0;
}
