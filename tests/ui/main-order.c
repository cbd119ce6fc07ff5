/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

/*
 * A year of an order, on the built program in a real window with a fresh copy of the demo shop's book: take it, run it,
 * see its recipe fail in the wash, trace whom that touches, and open the order again with all that has changed since.
 */

#include <json-glib/json-glib.h>
#include <string.h>

#include "shop.h"

#define CUSTOMER "Pellmarsh Brass Band"
#define WHAT "Spring concert"
#define RECIPE "MUD-BLACK.3"
#define PROPOSED "Mudwhistle everyday tee, black, revision 3"
#define SPECIMEN "YEAR-1"
#define LOT "BIT-2606"
#define PRINTER "Tõnis Värav · TV"

/* The number that the program gave the order, as the command line sees it. */
static char *
read_number (Stage      *stage,
             const char *path,
             const char *repeated)
{
  g_autofree char *listed = NULL;
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonArray *jobs = NULL;

  g_assert_cmpint (shop_run (stage, &listed, "--book", path, "job", "list", "--json", NULL), ==, 0);
  g_assert_true (json_parser_load_from_data (parser, listed, -1, NULL));
  jobs = json_node_get_array (json_parser_get_root (parser));
  for (guint i = 0; i < json_array_get_length (jobs); i++)
    {
      JsonObject *job = json_array_get_object_element (jobs, i);
      const char *code = json_object_get_string_member (job, "code");

      if (g_strcmp0 (json_object_get_string_member_with_default (job, "title", NULL), WHAT) == 0 &&
          g_strcmp0 (code, repeated) != 0)
        return g_strdup (code);
    }

  stage_fail (stage, "The command line does not see the order");
}

static char *
take_order (Stage      *stage,
            const char *path)
{
  shop_go (stage, "Jobs");
  hand_press (stage, ROLE_BUTTON, "Add a Job");
  hand_choose (stage, "Customer", CUSTOMER " · PELLMARSH");
  hand_enter (stage, "For what", WHAT);
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "Nothing to print yet");

  hand_press (stage, ROLE_BUTTON, "Add a Line");
  hand_choose (stage, "Garment", "Mudwhistle everyday tee, Black · MUDWHISTLE-BLACK");
  /* Nobody chooses it: it is the one that this garment was printed by last. */
  hand_expect (stage, PROPOSED);
  hand_enter (stage, "Garments", "12");
  hand_enter (stage, "Print width", "200 mm");
  hand_enter (stage, "Print height", "240 mm");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "12 garments");

  return read_number (stage, path, NULL);
}

static void
run_it (Stage      *stage,
        const char *number)
{
  g_autofree char *start = g_strdup_printf ("Start a run of line %s.1", number);

  hand_press (stage, ROLE_TAB, "Runs");
  hand_press (stage, ROLE_BUTTON, start);
  /* Nobody prints unnamed, and the containers of the job's sheet are told. */
  hand_expect (stage, "Choose under “By” who prints");
  hand_expect (stage, "12 garments still to print, of 12");
  hand_choose (stage, "By", PRINTER);
  hand_press (stage, ROLE_BUTTON, "Start It Now");
  hand_expect (stage, "1 run under way");
  hand_choose (stage, "Container", LOT);
  hand_enter (stage, "Taken", "40");
  hand_press (stage, ROLE_BUTTON, "Take From It");
  hand_expect (stage, LOT ", Bittern");

  hand_press (stage, ROLE_BUTTON, "Record…");
  hand_enter (stage, "Good", "11");
  hand_enter (stage, "Spoiled", "1");
  hand_choose (stage, "Spoiled by", "Crooked or out of place");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect_not (stage, "Save");
  hand_expect (stage, "11 good, 1 spoiled");
  hand_press (stage, ROLE_BUTTON, "Finish");
  hand_expect (stage, "can't be edited any more");
  hand_move_to (stage, "Tab", "Finish the Run");
  hand_keys (stage, "Return");
  hand_expect (stage, "Finished on");
  hand_expect_not (stage, "Record…");
}

static void
fail_in_the_wash (Stage *stage)
{
  shop_go (stage, "Wash Log");
  hand_enter (stage, "Search wash tests", SPECIMEN);
  hand_select (stage, SPECIMEN);
  hand_press (stage, ROLE_BUTTON, "Add a Reading");
  hand_enter (stage, "Cycles", "5");
  hand_press (stage, ROLE_BUTTON, "Change: 2");
  hand_press (stage, ROLE_BUTTON, "Cracking: None");
  hand_choose (stage, "By", PRINTER);
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "Failed");
}

static void
trace_it (Stage      *stage,
          const char *number)
{
  shop_go (stage, "Jobs");
  hand_enter (stage, "Search jobs", number);
  hand_select (stage, CUSTOMER);
  hand_press (stage, ROLE_TAB, "Runs");
  hand_press (stage, ROLE_BUTTON, "Trace");
  hand_move_to (stage, "Tab", "Lot: " LOT);
  hand_keys (stage, "Return");
  hand_expect (stage, "Lot " LOT ", Bittern");
  hand_expect (stage, "3 jobs were touched. 3 customers were touched.");
  hand_expect (stage, "Skelligrove Cold-Water Swimmers");
  hand_expect (stage, "Save Fault Report…");
  hand_keys (stage, "Escape");
  hand_expect_not (stage, "Save Fault Report…");
}

static void
repeat_it (Stage      *stage,
           const char *path,
           const char *number)
{
  g_autofree char *as_then = g_strdup_printf ("As in job %s.", number);
  g_autofree char *again = NULL;
  g_autofree char *shown = NULL;

  hand_press (stage, ROLE_BUTTON, "Repeat…");
  hand_expect (stage, RECIPE " is on trial since ");
  hand_expect (stage, "Specimen " SPECIMEN " of " RECIPE " failed after 5 washes");
  hand_press (stage, ROLE_BUTTON, "Open as a New Job");
  hand_expect_not (stage, "Open as a New Job");

  again = read_number (stage, path, number);
  hand_expect (stage, again);
  hand_press (stage, ROLE_TAB, "Lines");
  hand_expect (stage, as_then);
  g_assert_cmpint (shop_run (stage, &shown, "--book", path, "job", "show", again, NULL), ==, 0);
  if (strstr (shown, number) == NULL || strstr (shown, RECIPE) == NULL)
    stage_fail (stage, "The new job does not tell which it repeats: %s", shown);
}

int
main (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_demo (stage);
  g_autofree char *number = NULL;

  g_assert_cmpint (shop_run (stage, NULL, "--book", path, "wash", "new", SPECIMEN, "--revision", RECIPE, "--plan",
                             "6330-4N-F", NULL), ==, 0);
  shop_open (stage, path);
  number = take_order (stage, path);
  run_it (stage, number);
  fail_in_the_wash (stage);
  trace_it (stage, number);
  repeat_it (stage, path, number);
  hand_close (stage);

  return 0;
}
