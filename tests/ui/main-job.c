/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

/*
 * The main job from end to end, on the built program in a real window with a fresh copy of the demo shop's book: find a
 * recipe, mix for a print and a count, weigh a garment in, write down how a specimen came out of the wash, half-type a
 * form, close the window, start again, and find it all still there.
 *
 * With --screenshot FILE it prints the worksheet and saves a picture of it too.
 */

#include <json-glib/json-glib.h>
#include <math.h>
#include <stdio.h>

#include "shop.h"

#define RECIPE "MUD-BLACK"
#define WORDS "mudw bla"
#define GRADER "Marisol Oyelaran-Quist · MOQ"
#define NOTE "Read at the bench in the main job"

/* The job: a print of 300 × 400 mm on 24 garments. */
#define PRINT_WIDTH_MM 300.0
#define PRINT_HEIGHT_MM 400.0
#define COUNT 24.0

/* What a new job has for spoilage. */
#define SPOILAGE 0.02

/* Water at 20 °C: Tanaka, Girard, Davis, Peuto, Bignell 2001, Metrologia 38, 301: 998.2067 kg/m³. */
#define WATER_G_PER_ML 0.9982067

/* What the book says, read from the command line's export and not from the window. */
typedef struct {
  char *name;
  char *revision;
  char *specimen;
  double laydown_g_per_m2;
  double margin_mm;
  double parts_concentrate;
  double parts_water;
  double density_g_per_ml;
  double overspray;
  double line_loss_g;
  double reserve;
  double round_up_to_g;
} Facts;

/* What a person would work out with a pocket calculator. */
typedef struct {
  double box_m2;
  double garment_g;
  double total_g;
  double concentrate_g;
  double concentrate_ml;
  double water_g;
  double water_ml;
} Sum;

static void
facts_clear (Facts *facts)
{
  g_free (facts->name);
  g_free (facts->revision);
  g_free (facts->specimen);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Facts, facts_clear)

static JsonObject *
find (JsonObject *book,
      const char *table,
      const char *member,
      const char *value)
{
  JsonArray *records = json_object_get_array_member (book, table);

  for (guint i = 0; i < json_array_get_length (records); i++)
    {
      JsonObject *record = json_array_get_object_element (records, i);

      if (g_strcmp0 (json_object_get_string_member_with_default (record, member, NULL), value) == 0)
        return record;
    }

  g_error ("The book has no %s whose %s is %s", table, member, value);
}

static JsonParser *
parse (const char *text)
{
  JsonParser *parser = json_parser_new ();
  g_autoptr (GError) error = NULL;

  if (!json_parser_load_from_data (parser, text, -1, &error))
    g_error ("%s", error->message);

  return parser;
}

static void
read_facts (Stage      *stage,
            const char *path,
            Facts      *facts)
{
  g_autofree char *shown = NULL;
  g_autofree char *exported = NULL;
  g_autoptr (JsonParser) show_parser = NULL;
  g_autoptr (JsonParser) export_parser = NULL;
  JsonObject *revision = NULL;
  JsonObject *book = NULL;
  JsonObject *shop = NULL;

  g_assert_cmpint (shop_run (stage, &shown, "--book", path, "recipe", "show", RECIPE, "--json", NULL), ==, 0);
  g_assert_cmpint (shop_run (stage, &exported, "--book", path, "export", NULL), ==, 0);
  show_parser = parse (shown);
  export_parser = parse (exported);
  revision = json_object_get_object_member (json_node_get_object (json_parser_get_root (show_parser)), "revision");
  book = json_node_get_object (json_parser_get_root (export_parser));

  facts->name = g_strdup (json_object_get_string_member (find (book, "recipe", "code", RECIPE), "name"));
  facts->revision = g_strdup (json_object_get_string_member (revision, "code"));
  facts->specimen = g_strdup (json_object_get_string_member (find (book, "wash_test", "revision", facts->revision),
                                                             "code"));
  facts->laydown_g_per_m2 = json_object_get_double_member (revision, "pretreat_laydown_g_per_m2");
  facts->margin_mm = json_object_get_double_member (revision, "pretreat_margin_mm");
  facts->parts_concentrate = json_object_get_double_member (revision, "pretreat_parts_concentrate");
  facts->parts_water = json_object_get_double_member (revision, "pretreat_parts_water");
  facts->density_g_per_ml = json_object_get_double_member (
    find (book, "supply", "code", json_object_get_string_member (revision, "pretreat_product")), "density_g_per_ml");
  shop = json_array_get_object_element (json_object_get_array_member (book, "shop"), 0);
  facts->overspray = json_object_get_double_member (shop, "overspray_fraction");
  facts->line_loss_g = json_object_get_double_member (shop, "line_loss_g");
  facts->reserve = json_object_get_double_member (shop, "reserve_fraction");
  facts->round_up_to_g = json_object_get_double_member (shop, "round_up_to_g");
  g_assert_cmpstr (json_object_get_string_member (revision, "pretreat_basis"), ==, "volume");
}

/*
 * The box is the print and its margin on all four sides. What is made up is for the spare garments of a new job too,
 * and for what the shop loses on the way, in the shop's steps. Of a mix by volume, the concentrate's share of the mass
 * is its parts times its density, out of the same for both.
 */
static Sum
work_out (const Facts *facts)
{
  const double width_m = (PRINT_WIDTH_MM + 2 * facts->margin_mm) / 1000;
  const double height_m = (PRINT_HEIGHT_MM + 2 * facts->margin_mm) / 1000;
  const double concentrate_part_g = facts->parts_concentrate * facts->density_g_per_ml;
  const double water_part_g = facts->parts_water * WATER_G_PER_ML;
  double needed_g = 0;
  Sum sum;

  sum.box_m2 = width_m * height_m;
  sum.garment_g = sum.box_m2 * facts->laydown_g_per_m2;
  needed_g = (COUNT + ceil (COUNT * SPOILAGE)) * sum.garment_g / (1 - facts->overspray) + facts->line_loss_g;
  sum.total_g = ceil (needed_g * (1 + facts->reserve) / facts->round_up_to_g) * facts->round_up_to_g;
  sum.concentrate_g = sum.total_g * concentrate_part_g / (concentrate_part_g + water_part_g);
  sum.water_g = sum.total_g - sum.concentrate_g;
  sum.concentrate_ml = sum.concentrate_g / facts->density_g_per_ml;
  sum.water_ml = sum.water_g / WATER_G_PER_ML;

  return sum;
}

/* The window shows tenths. */
static void
expect_number (Stage      *stage,
               const char *what,
               const char *text,
               double      number,
               const char *unit)
{
  const char *digit = strpbrk (text, "0123456789");
  char *end = NULL;
  double shown = digit != NULL ? g_ascii_strtod (digit, &end) : (double) NAN;

  if (!(fabs (shown - number) <= 0.0500001) || !g_str_equal (g_strstrip (end), unit))
    stage_fail (stage, "%s: the window shows “%s”, which should be %.4f %s", what, text, number, unit);
}

static void
expect_figure (Stage      *stage,
               const char *title,
               double      grams,
               double      millilitres)
{
  g_autofree char *note = NULL;
  g_autofree char *text = hand_read_figure (stage, title, &note);

  expect_number (stage, title, text, grams, "g");
  if (!isnan (millilitres))
    expect_number (stage, title, note, millilitres, "ml");
}

/* As a person types, the list shrinks to what fits. */
static void
recall (Stage       *stage,
        const Facts *facts)
{
  g_autofree char *laydown = g_strdup_printf ("%g g/m²", facts->laydown_g_per_m2);
  g_autofree char *dilution = g_strdup_printf ("%g:%g", facts->parts_concentrate, facts->parts_water);
  g_autofree char *shown_laydown = NULL;
  g_autofree char *shown_dilution = NULL;

  shop_go (stage, "Recipes");
  hand_expect (stage, "Withy rib tank");
  hand_enter (stage, "Search recipes and jobs", WORDS);
  hand_expect_not (stage, "Withy rib tank");
  hand_select (stage, facts->name);
  hand_expect (stage, "Proven");
  hand_expect (stage, "Mix for This");

  shown_laydown = hand_read_figure (stage, "Laydown", NULL);
  shown_dilution = hand_read_figure (stage, "Dilution", NULL);
  g_assert_cmpstr (shown_laydown, ==, laydown);
  g_assert_cmpstr (shown_dilution, ==, dilution);
}

static void
mix (Stage     *stage,
     const Sum *sum)
{
  hand_press (stage, ROLE_BUTTON, "Mix for This");
  hand_expect_state (stage, ROLE_ITEM, "Mix", STATE_SELECTED);
  hand_enter (stage, "Print width", "300");
  hand_enter (stage, "Print height", "400 mm");
  hand_enter (stage, "Garments", "24");
  hand_expect (stage, "Concentrate: ");

  expect_figure (stage, "On each garment", sum->garment_g, (double) NAN);
  expect_figure (stage, "Makes", sum->total_g, sum->concentrate_ml + sum->water_ml);
  expect_figure (stage, "Concentrate", sum->concentrate_g, sum->concentrate_ml);
  expect_figure (stage, "Water", sum->water_g, sum->water_ml);
}

/* Ten in a hundred is what the strip tolerates unless told otherwise. */
static void
weigh_in (Stage     *stage,
          const Sum *sum)
{
  static const struct {
    double share;
    const char *word;
  } garments[] = { { 0.85, "Low" }, { 1.15, "High" }, { 1.0, "OK" } };

  hand_enter (stage, "Tare", "165");
  for (guint i = 0; i < G_N_ELEMENTS (garments); i++)
    {
      g_autofree char *wet = g_strdup_printf ("%.1f", 165 + garments[i].share * sum->garment_g);
      g_autofree char *word = g_strconcat (" ", garments[i].word, ":", NULL);

      hand_enter (stage, "Wet", wet);
      hand_expect (stage, word);
    }
}

static void
print_worksheet (Stage       *stage,
                 const Facts *facts)
{
  static const char *const titles[] = {
    "Box", "On each garment", "Garments to pretreat", "Makes", "Concentrate", "Water",
  };

  printf ("%s, revision %s\n", facts->name, facts->revision);
  for (guint i = 0; i < G_N_ELEMENTS (titles); i++)
    {
      g_autofree char *note = NULL;
      g_autofree char *text = hand_read_figure (stage, titles[i], &note);

      printf ("  %-22s %s", titles[i], text);
      if (strstr (text, note) == NULL)
        printf (" (%s)", note);
      printf ("\n");
    }
}

static void
find_specimen (Stage       *stage,
               const Facts *facts)
{
  shop_go (stage, "Wash Log");
  hand_enter (stage, "Search wash tests", facts->specimen);
  hand_select (stage, facts->specimen);
  hand_expect (stage, "Add a Reading");
}

static void
read_specimen (Stage       *stage,
               const Facts *facts)
{
  find_specimen (stage, facts);
  hand_press (stage, ROLE_BUTTON, "Add a Reading");
  hand_enter (stage, "Cycles", "30");
  hand_press (stage, ROLE_BUTTON, "Change: 4-5");
  hand_press (stage, ROLE_BUTTON, "Staining: 5");
  hand_press (stage, ROLE_BUTTON, "Cracking: None");
  hand_enter (stage, "Note", NOTE);
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "A grade without a grader proves nothing: say who graded it.");
  hand_choose (stage, "By", GRADER);
  hand_press (stage, ROLE_BUTTON, "Save");
  hand_expect (stage, "Add a Reading");
  hand_expect (stage, NOTE);
}

static void
half_type (Stage *stage)
{
  shop_go (stage, "Blanks");
  hand_press (stage, ROLE_BUTTON, "Add a Blank");
  hand_enter (stage, "Name", "Half-typed tee");
}

static void
expect_still_there (Stage       *stage,
                    const char  *path,
                    const Facts *facts)
{
  g_autofree char *readings = NULL;
  const char *line = NULL;

  g_assert_cmpint (shop_run (stage, &readings, "--book", path, "export", "--table", "reading", NULL), ==, 0);
  line = strstr (readings, NOTE);
  if (line == NULL)
    stage_fail (stage, "The command line does not see the reading");

  shop_open (stage, path);
  hand_expect_text (stage, "Name", "Half-typed tee");
  find_specimen (stage, facts);
  hand_expect (stage, NOTE);
  shop_go (stage, "Mix");
  hand_expect_text (stage, "Print width", "300");
}

int
main (int   argc,
      char *argv[])
{
  const char *picture = argc == 3 && g_str_equal (argv[1], "--screenshot") ? argv[2] : NULL;
  g_autoptr (Stage) stage = shop_new ("1440x900");
  g_autofree char *path = shop_make_demo (stage);
  g_auto (Facts) facts = { 0 };
  Sum sum;

  read_facts (stage, path, &facts);
  sum = work_out (&facts);

  shop_open (stage, path);
  recall (stage, &facts);
  mix (stage, &sum);
  weigh_in (stage, &sum);
  if (picture != NULL)
    {
      print_worksheet (stage, &facts);
      hand_picture (stage, picture);
    }
  read_specimen (stage, &facts);
  half_type (stage);
  hand_close (stage);
  expect_still_there (stage, path, &facts);
  hand_close (stage);

  return 0;
}
