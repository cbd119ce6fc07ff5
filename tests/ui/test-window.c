/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

#include <string.h>

#include "shop.h"

/* The smallest screen that the window has to fit. */
#define SMALL_WIDTH 1024
#define SMALL_HEIGHT 700

static const char *const pages[] = {
  "Jobs", "Mix", "Recipes", "Wash Log", "Blanks", "Supplies", "Equipment", "Safety",
};

/* What is withdrawn goes out of the list, and comes back by one press. */
static void
test_undo (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_demo (stage);

  shop_open (stage, path);
  shop_go (stage, "Blanks");
  hand_enter (stage, "Search blanks", "Withy");
  hand_expect (stage, "Withdraw");
  hand_press (stage, ROLE_BUTTON, "Withdraw");
  hand_expect (stage, "Nothing Found");
  hand_press (stage, ROLE_BUTTON, "Undo");
  hand_expect_not (stage, "Nothing Found");
  hand_expect (stage, "Withy rib tank");
  hand_close (stage);
}

/* A wrong value is answered at its field while it is typed, and nothing wrong gets into the book. */
static void
test_validation (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_book (stage);
  g_autofree char *blanks = NULL;

  shop_open (stage, path);
  shop_go (stage, "Blanks");
  hand_press (stage, ROLE_BUTTON, "Add a Blank");
  hand_enter (stage, "Code", "TEE");
  hand_enter (stage, "Name", "A tee");
  hand_enter (stage, "Fabric mass", "heavy");
  hand_expect (stage, "“heavy” is not a number.");
  hand_enter (stage, "Fabric mass", "180 s");
  hand_expect (stage, "“s” is a unit of another quantity");
  hand_enter (stage, "Fabric mass", "180000");
  hand_expect_not (stage, "another quantity");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "Something has to be mended before this can be saved.");

  hand_close (stage);
  g_assert_cmpint (shop_run (stage, &blanks, "--book", path, "export", "--table", "blank", NULL), ==, 0);
  g_assert_null (strstr (blanks, "TEE"));
}

/* Who opens a book for the first time is told what comes first, and led there. */
static void
test_empty_book (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_book (stage);

  shop_open (stage, path);
  hand_expect (stage, "No Recipes Yet");
  hand_expect (stage, "Add its blank and the pretreat first");
  hand_press (stage, ROLE_BUTTON, "Go to Blanks");
  hand_expect_state (stage, ROLE_ITEM, "Blanks", STATE_SELECTED);
  hand_expect (stage, "No Blanks Yet");
  shop_go (stage, "Supplies");
  hand_expect (stage, "No Supplies Yet");
  shop_go (stage, "Wash Log");
  hand_expect (stage, "No Wash Tests Yet");
  shop_go (stage, "Mix");
  hand_expect (stage, "Choose a recipe or type its figures");
  hand_close (stage);
}

/* From a recipe's search to the grams, without the pointer. */
static void
test_keyboard (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_demo (stage);
  g_autofree char *box = NULL;
  Glass *glass = stage_get_glass (stage);

  shop_open (stage, path);
  hand_keys (stage, "Alt_L+6");
  hand_expect_state (stage, ROLE_ITEM, "Blanks", STATE_SELECTED);
  hand_keys (stage, "Control_L+Shift_L+f");
  hand_expect_state (stage, ROLE_ITEM, "Recipes", STATE_SELECTED);
  g_assert_true (glass_type (glass, "kiln tunnel"));
  hand_expect (stage, "KILN-BLACK-TUNNEL");
  hand_expect_not (stage, "Withy rib tank");
  hand_move_to (stage, "Tab", "Mix for This");
  hand_keys (stage, "space");
  hand_expect_state (stage, ROLE_ITEM, "Mix", STATE_SELECTED);
  hand_move_to (stage, "Tab", "Print width");
  g_assert_true (glass_type (glass, "250"));
  hand_move_to (stage, "Tab", "Print height");
  g_assert_true (glass_type (glass, "350"));
  hand_move_to (stage, "Tab", "Garments");
  g_assert_true (glass_type (glass, "12"));
  hand_expect (stage, "Concentrate: ");
  /* The recipe's margin of 10 mm is added on every side. */
  box = hand_read_figure (stage, "Box", NULL);
  g_assert_cmpstr (box, ==, "270 × 370 mm");
  hand_close (stage);
}

/* A customer who has jobs and no recipe of their own: the arrow leads to them, past what nothing is found for. */
static void
test_keyboard_jobs (void)
{
  g_autoptr (Stage) stage = shop_new ("1024x700");
  g_autofree char *path = shop_make_demo (stage);

  shop_open (stage, path);
  hand_enter (stage, "Search recipes and jobs", "Obermondsee");
  hand_expect (stage, "Recipes: 0");
  hand_keys (stage, "Down");
  hand_keys (stage, "Return");
  hand_expect_state (stage, ROLE_ITEM, "Jobs", STATE_SELECTED);
  hand_expect (stage, "Chor Obermondsee");
  hand_close (stage);
}

/* A control within a drop-down or menu button goes by the name of what it is in, or of what is in it. */
static gboolean
has_name (Node *node)
{
  for (Node *child = node; child != NULL; child = node_next (node, child))
    if (*child->name != '\0' && (child == node || child->role == ROLE_BUTTON || child->role == ROLE_LABEL))
      return TRUE;
  for (const Node *owner = node->parent; owner != NULL && owner->role != ROLE_WINDOW; owner = owner->parent)
    if (owner->role == ROLE_COMBO || owner->role == ROLE_ENTRY)
      return *owner->name != '\0';

  return FALSE;
}

static gboolean
is_control (const Node *node)
{
  return node->role == ROLE_BUTTON || node->role == ROLE_CHECK || node->role == ROLE_COMBO ||
         node->role == ROLE_ENTRY || node->role == ROLE_MENU_ITEM || node->role == ROLE_TAB;
}

static void
expect_names (Stage      *stage,
              const char *where)
{
  g_autoptr (Node) root = tree_read (stage);
  guint controls = 0;

  for (Node *node = root; node != NULL; node = node_next (root, node))
    if (node->shown && is_control (node))
      {
        controls++;
        if (!has_name (node))
          {
            g_autofree char *nameless = node_print (node);

            stage_fail (stage, "On %s, a screen reader has no name for this:\n%s", where, nameless);
          }
      }
  g_assert_cmpuint (controls, >, 3);
}

/* What needs more room makes the window grow over the edge of the screen. */
static void
expect_small (Stage      *stage,
              const char *where)
{
  g_autoptr (Node) tree = NULL;
  const Node *window = hand_look (stage, ROLE_WINDOW, "Blankbook", &tree);

  if (window->box.width > SMALL_WIDTH || window->box.height > SMALL_HEIGHT)
    stage_fail (stage, "On %s, the window does not fit %d × %d: it is %d × %d", where, SMALL_WIDTH, SMALL_HEIGHT,
                (int) window->box.width, (int) window->box.height);
}

/* Every control on every page, and in every form that a page opens, has a name; and all of it fits a small screen. */
static void
test_names (void)
{
  static const char *const forms[][3] = {
    { "Recipes", "Add a recipe", "Cancel" },
    { "Recipes", "Edit", "Cancel" },
    { "Wash Log", "Add a Wash Test", "Cancel" },
    { "Wash Log", "Add a Reading", "Cancel" },
    { "Blanks", "Add a Blank", "Cancel" },
    { "Supplies", "Add a Supply", "Cancel" },
    { "Equipment", "Add a Machine", "Cancel" },
  };
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_demo (stage);

  shop_open (stage, path);
  hand_resize (stage, SMALL_WIDTH, SMALL_HEIGHT);
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    {
      shop_go (stage, pages[i]);
      expect_names (stage, pages[i]);
      expect_small (stage, pages[i]);
    }
  for (guint i = 0; i < G_N_ELEMENTS (forms); i++)
    {
      shop_go (stage, forms[i][0]);
      hand_press (stage, ROLE_BUTTON, forms[i][1]);
      hand_expect (stage, forms[i][2]);
      expect_names (stage, forms[i][1]);
      expect_small (stage, forms[i][1]);
      hand_press (stage, ROLE_BUTTON, forms[i][2]);
      hand_expect_not (stage, forms[i][2]);
    }
  shop_go (stage, "Mix");
  hand_press (stage, ROLE_TAB, "Artwork");
  shop_choose_artwork (stage);
  expect_names (stage, "Artwork");
  hand_close (stage);
}

/* An artwork fills in the size of the print, is looked at by keys alone, and is there again after a restart. Its art
 * has 1047 × 1115 pixels, as ImageMagick counts them, of 5906 a metre. */
static void
test_artwork (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_demo (stage);

  shop_open (stage, path);
  shop_go (stage, "Mix");
  hand_press (stage, ROLE_TAB, "Artwork");
  shop_choose_artwork (stage);
  hand_expect_text (stage, "Print width", "177.3");
  hand_expect_text (stage, "Print height", "188.8");
  hand_move_to (stage, "Tab", "Knockout");
  hand_keys (stage, "space");
  hand_expect_state (stage, ROLE_BUTTON, "Knockout", STATE_PRESSED);
  hand_close (stage);

  shop_open (stage, path);
  shop_go (stage, "Mix");
  hand_press (stage, ROLE_TAB, "Artwork");
  hand_expect (stage, "demo-artwork.png");
  hand_expect_text (stage, "Print width", "177.3");
  hand_close (stage);
}

/* 14 inches are 355.6 mm: the inch is 25.4 mm by definition. */
static void
test_units (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_demo (stage);
  g_autofree char *metric = NULL;

  shop_open (stage, path);
  shop_go (stage, "Mix");
  hand_enter (stage, "Print width", "14 in");
  hand_enter (stage, "Print height", "406.4");
  hand_enter (stage, "Garments", "1");
  hand_enter (stage, "Laydown", "150");
  hand_enter (stage, "Dilution", "1:2");
  hand_expect (stage, "Box: ");
  metric = hand_read_figure (stage, "Box", NULL);
  g_assert_cmpstr (metric, ==, "355.6 × 406.4 mm");

  hand_press (stage, ROLE_BUTTON, "Main menu");
  hand_press (stage, ROLE_MENU_ITEM, "Preferences");
  hand_choose (stage, "Units", "US shop units");
  hand_expect (stage, "Box: 14 × 16 in");
  hand_keys (stage, "Escape");
  hand_expect_not (stage, "Currency");
  hand_close (stage);

  /* What was chosen holds after a restart, and what was typed still means what it meant. */
  shop_open (stage, path);
  hand_expect (stage, "Box: 14 × 16 in");
  hand_close (stage);
}

/* What has to be calibrated is listed, and put right by one press, which the machine's history tells. */
static void
test_equipment (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_book (stage);

  shop_open (stage, path);
  shop_go (stage, "Equipment");
  hand_press (stage, ROLE_BUTTON, "Add a Machine");
  hand_enter (stage, "Code", "PRESS-7");
  hand_enter (stage, "Name", "Press by the door");
  hand_choose (stage, "Kind", "Heat press");
  hand_enter (stage, "Days between calibrations", "182");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "Calibration is due");
  hand_expect (stage, "Nobody has entered a calibration yet.");
  hand_press (stage, ROLE_BUTTON, "Calibrated Today");
  hand_expect_not (stage, "Calibration is due");
  hand_expect (stage, "Last calibrated on ");
  hand_expect (stage, "Calibrated: ");
  /* It was the other press. */
  hand_press (stage, ROLE_BUTTON, "Undo");
  hand_expect (stage, "Calibration is due");
  hand_expect (stage, "Nobody has entered a calibration yet.");
  hand_close (stage);
}

/* Others rely on the mark, so that the shop's people have to say who of them it was. */
static void
test_calibrated_by (void)
{
  g_autoptr (Stage) stage = shop_new ("1024x700");
  g_autofree char *path = shop_make_demo (stage);

  shop_open (stage, path);
  shop_go (stage, "Equipment");
  hand_expect (stage, "Choose who calibrated it");
  hand_choose (stage, "Calibrated by", "Marisol Oyelaran-Quist");
  hand_expect_not (stage, "Choose who calibrated it");
  hand_press (stage, ROLE_BUTTON, "Calibrated Today");
  hand_expect (stage, "is entered as calibrated today.");
  hand_expect (stage, "Calibrated: ");
  hand_close (stage);
}

/* A container is weighed, opened and used up at the shelf, and the mix takes the next one. 900 g on the scale less 96 g
 * of container are 804 g; the demo's recipe takes Bittern. */
static void
test_lots (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_demo (stage);

  shop_open (stage, path);
  shop_go (stage, "Supplies");
  hand_enter (stage, "Search supplies", "bittern");
  hand_expect (stage, "BIT-2606");
  hand_press (stage, ROLE_BUTTON, "Weigh…");
  hand_wait_window (stage, "Weigh the Container");
  hand_enter (stage, "On the scale", "900");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "804 g of 1142 g left");
  hand_press (stage, ROLE_BUTTON, "Use Up…");
  hand_wait_window (stage, "Use Up or Throw Away");
  hand_enter (stage, "Reason", "Settled to the bottom");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect_not (stage, "BIT-2606");
  hand_expect (stage, "7 containers that are gone");
  hand_press (stage, ROLE_BUTTON, "Open");
  hand_expect (stage, "opened ");

  shop_go (stage, "Recipes");
  hand_enter (stage, "Search recipes and jobs", "mudw bla");
  hand_select (stage, "Mudwhistle everyday tee, black");
  hand_press (stage, ROLE_BUTTON, "Mix for This");
  hand_enter (stage, "Print width", "300");
  hand_enter (stage, "Print height", "400");
  hand_enter (stage, "Garments", "24");
  hand_expect (stage, "from BIT-2609, to be used by 24 Aug 2027.");
  hand_enter (stage, "Garments", "400");
  hand_expect (stage, "of concentrate is missing");
  hand_close (stage);
}

/* Labels are made from the window, and one that is scanned opens its very thing. An A4 sheet has 24 places. */
static void
test_labels (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_demo (stage);
  g_autofree char *saved = stage_build_path (stage, "labels.pdf");
  g_autofree char *pdf = NULL;
  g_autoptr (Node) tree = NULL;

  shop_open (stage, path);
  shop_go (stage, "Wash Log");
  hand_press (stage, ROLE_BUTTON, "Labels…");
  hand_wait_window (stage, "Labels");
  hand_expect (stage, "1 sheet");
  hand_enter (stage, "First free place", "24");
  hand_enter (stage, "Labels", "2");
  hand_keys (stage, "Tab");
  hand_expect (stage, "2 sheets");

  /* The dialog of the printer is there, and turning away from it loses nothing. */
  hand_press (stage, ROLE_BUTTON, "Print…");
  hand_wait_window (stage, "Print");
  hand_press (stage, ROLE_BUTTON, "Cancel");
  hand_expect_not (stage, "Print to File");

  hand_press (stage, ROLE_BUTTON, "Save as PDF…");
  hand_look (stage, ROLE_BUTTON, "Save", &tree);
  hand_keys (stage, "Control_L+a");
  shop_choose_file (stage, "Save", saved);
  hand_expect (stage, "Saved as ");
  hand_expect_not (stage, "First free place");
  g_assert_true (g_file_get_contents (saved, &pdf, NULL, NULL));
  g_assert_true (g_str_has_prefix (pdf, "%PDF-"));

  shop_go (stage, "Recipes");
  hand_enter (stage, "Search recipes and jobs", "LOT BIT-2609");
  hand_keys (stage, "Return");
  hand_expect_state (stage, ROLE_ITEM, "Supplies", STATE_SELECTED);
  hand_expect_state (stage, ROLE_ITEM, "BIT-2609", STATE_FOCUSED);
  hand_close (stage);
}

/* What was withdrawn long ago is found by its words when it is asked for, and taken back. */
static void
test_withdrawn (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_demo (stage);

  shop_open (stage, path);
  hand_expect_not (stage, "Dark cotton on Old Brine");
  hand_move_to (stage, "Tab", "Show 2 withdrawn");
  hand_keys (stage, "space");
  hand_enter (stage, "Search recipes and jobs", "old brine");
  hand_select (stage, "Dark cotton on Old Brine");
  hand_expect (stage, "It is offered nowhere until it is taken back.");
  hand_press (stage, ROLE_BUTTON, "Take Back");
  hand_expect (stage, "Show 1 withdrawn");
  hand_expect_not (stage, "It is offered nowhere until it is taken back.");

  shop_go (stage, "Blanks");
  hand_move_to (stage, "Tab", "Show 1 withdrawn");
  hand_keys (stage, "space");
  hand_expect (stage, "Since 21 Nov 2025. It is offered nowhere until it is taken back.");
  hand_press (stage, ROLE_BUTTON, "Take Back");
  hand_expect_not (stage, "Take Back");
  hand_expect_not (stage, "Show 1 withdrawn");

  /* Its only colour was withdrawn too. */
  hand_move_to (stage, "Tab", "1 colour that is withdrawn");
  hand_keys (stage, "space");
  hand_press (stage, ROLE_BUTTON, "Put Back");
  hand_expect (stage, "DRENCHEL-BUOY · #e4572e");

  hand_press (stage, ROLE_BUTTON, "Withdraw");
  hand_expect (stage, "“Drenchel overshirt, showerproof” is withdrawn.");
  hand_expect (stage, "Take Back");
  hand_close (stage);

  g_assert_cmpint (shop_run (stage, NULL, "book", "check", path, NULL), ==, 0);
}

/* The shop's own figures, and the people who work there, are written and mended in the window. */
static void
test_shop (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_book (stage);

  shop_open (stage, path);
  hand_press (stage, ROLE_BUTTON, "Main menu");
  hand_press (stage, ROLE_MENU_ITEM, "The Shop…");
  hand_wait_window (stage, "The Shop");
  hand_enter (stage, "Name", "Brackenside Prints");
  hand_enter (stage, "Line loss", "12.5");
  hand_enter (stage, "Specimens for a proof", "0");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "Something has to be mended before this can be saved.");
  hand_enter (stage, "Specimens for a proof", "5");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect_not (stage, "Line loss");

  hand_press (stage, ROLE_BUTTON, "Add a person");
  hand_enter (stage, "Initials", "OT");
  hand_enter (stage, "Name", "Odo Tarn");
  hand_choose (stage, "Role", "Operator");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect_not (stage, "Initials");
  hand_press (stage, ROLE_BUTTON, "Edit this person");
  hand_expect_text (stage, "Name", "Odo Tarn");
  hand_enter (stage, "Initials", "ODO");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect_not (stage, "Initials");
  hand_close (stage);

  /* Whoever has other initials now is still at the bench, and the shop is as it was written. */
  shop_open (stage, path);
  hand_press (stage, ROLE_BUTTON, "Edit this person");
  hand_expect_text (stage, "Initials", "ODO");
  hand_press (stage, ROLE_BUTTON, "Cancel");
  hand_expect_not (stage, "Initials");
  hand_press (stage, ROLE_BUTTON, "Main menu");
  hand_press (stage, ROLE_MENU_ITEM, "The Shop…");
  hand_expect_text (stage, "Name", "Brackenside Prints");
  hand_expect_text (stage, "Line loss", "12.5");
  hand_expect_text (stage, "Specimens for a proof", "5");
  hand_press (stage, ROLE_BUTTON, "Cancel");
  hand_expect_not (stage, "Line loss");
  hand_close (stage);
}

/* A revision that evidence rests on stays as it was: the change becomes the next one, with a reason. */
static void
test_next_revision (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_demo (stage);
  g_autofree char *before = NULL;
  g_autofree char *next = NULL;

  g_assert_cmpint (shop_run (stage, &before, "--book", path, "export", "--table", "revision", NULL), ==, 0);
  shop_open (stage, path);
  hand_enter (stage, "Search recipes and jobs", "withy");
  hand_expect_not (stage, "Retting hemp tee");
  hand_press (stage, ROLE_BUTTON, "Edit");
  hand_enter (stage, "Passes", "2");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "Something has to be mended before this can be saved.");
  hand_enter (stage, "Reason", "Two thin passes instead of one");
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "Mix for This");
  hand_expect (stage, "Two thin passes instead of one");
  hand_close (stage);

  g_assert_null (strstr (before, "WITHY-RIB.3"));
  g_assert_cmpint (shop_run (stage, &next, "--book", path, "export", "--table", "revision", NULL), ==, 0);
  g_assert_nonnull (strstr (next, "WITHY-RIB.3"));
  g_assert_nonnull (strstr (next, "Two thin passes instead of one"));
  g_assert_cmpint (shop_run (stage, NULL, "book", "check", path, NULL), ==, 0);
}

/* A file that is no book is not opened, not changed, and the person reads why, and can go on with another book. */
static void
test_no_book (void)
{
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = stage_build_path (stage, "poem.book");
  g_autofree char *missing = stage_build_path (stage, "lost.book");
  g_autofree char *after = NULL;
  const char *text = "Not a book of recipes, but a poem.\n";

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
  shop_start (stage, path);
  hand_wait_window (stage, "This Book Can't Be Opened");
  hand_expect (stage, "poem.book");
  hand_expect (stage, "is not a book");

  /* A second one that can't be opened is told in the same window. */
  shop_start_also (stage, missing);
  hand_expect (stage, "lost.book");
  hand_expect_not (stage, "poem.book");
  hand_press (stage, ROLE_BUTTON, "Open Another Book…");
  hand_press (stage, ROLE_BUTTON, "Cancel");
  hand_expect_not (stage, "Cancel");
  hand_close (stage);
  g_assert_true (g_file_get_contents (path, &after, NULL, NULL));
  g_assert_cmpstr (after, ==, text);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ui/window/undo", test_undo);
  g_test_add_func ("/ui/window/validation", test_validation);
  g_test_add_func ("/ui/window/empty-book", test_empty_book);
  g_test_add_func ("/ui/window/keyboard", test_keyboard);
  g_test_add_func ("/ui/window/keyboard-jobs", test_keyboard_jobs);
  g_test_add_func ("/ui/window/names", test_names);
  g_test_add_func ("/ui/window/artwork", test_artwork);
  g_test_add_func ("/ui/window/equipment", test_equipment);
  g_test_add_func ("/ui/window/calibrated-by", test_calibrated_by);
  g_test_add_func ("/ui/window/lots", test_lots);
  g_test_add_func ("/ui/window/labels", test_labels);
  g_test_add_func ("/ui/window/withdrawn", test_withdrawn);
  g_test_add_func ("/ui/window/shop", test_shop);
  g_test_add_func ("/ui/window/units", test_units);
  g_test_add_func ("/ui/window/next-revision", test_next_revision);
  g_test_add_func ("/ui/window/no-book", test_no_book);

  return g_test_run ();
}
