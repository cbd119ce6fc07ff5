/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"

/*
 * Pictures of the built program in a real window; the same program gives the same pictures.
 *
 *   screenshots FOLDER         the demo shop, as the README and DEVELOPERS.md show it
 *   screenshots --all FOLDER   every page, in both themes, both unit systems, two sizes, with the demo's book and with
 *                              an empty one: to be looked at, not to be kept
 */

#include <stdio.h>

#include "shop.h"

/* @page is the name of a page's pictures, see below. */
typedef struct {
  const char *file;
  const char *page;
  const char *colour_scheme;
  const char *unit_system;
  int width;
  int height;
  gboolean is_empty;
} Picture;

/* Brings a page of the demo's book to where it shows what it is for. */
typedef void (*PrepareFunc) (Stage         *stage,
                             const Picture *picture);

typedef struct {
  const char *file;
  const char *title;
  PrepareFunc prepare;
} Page;

typedef struct {
  Stage *stage;
  const char *folder;
  char *demo;
  char *empty;

  /* What the running program was started for; NULL where none runs. */
  const Picture *running;
} Show;

static void
find_recipe (Stage      *stage,
             const char *words,
             const char *name)
{
  hand_enter (stage, "Search recipes and jobs", words);
  hand_select (stage, name);
  hand_expect (stage, "Mix for This");
}

/* What was looked at before stays with the page, until it is put away. */
static void
begin_mix (Stage *stage)
{
  hand_press (stage, ROLE_BUTTON, "Start Over");
  shop_go (stage, "Recipes");
  find_recipe (stage, "mudw bla", "Mudwhistle everyday tee, black");
  hand_press (stage, ROLE_BUTTON, "Mix for This");
  hand_expect_state (stage, ROLE_ITEM, "Mix", STATE_SELECTED);
  hand_enter (stage, "Garments", "24");
}

static void
prepare_mix (Stage         *stage,
             const Picture *picture)
{
  const gboolean is_us = g_str_equal (picture->unit_system, "us");

  begin_mix (stage);
  hand_enter (stage, "Print width", is_us ? "12" : "300");
  hand_enter (stage, "Print height", is_us ? "16" : "400");
  hand_enter (stage, "Tare", "165");
  hand_enter (stage, "Wet", "185.4");
  hand_expect (stage, "Concentrate: ");
}

static void
prepare_artwork (Stage         *stage,
                 const Picture *picture)
{
  begin_mix (stage);
  hand_press (stage, ROLE_TAB, "Artwork");
  shop_choose_artwork (stage);
  hand_enter (stage, "Print width", g_str_equal (picture->unit_system, "us") ? "12" : "300");
}

static void
prepare_recipes (Stage         *stage,
                 const Picture *picture)
{
  (void) picture;

  find_recipe (stage, "hoodie", "Kilnhood pullover hoodie, black, tunnel cure");
}

/* A garment that the recipes of the shop are far from. */
static void
prepare_nearest (Stage         *stage,
                 const Picture *picture)
{
  (void) picture;

  hand_enter (stage, "Search recipes and jobs", "tide");
  hand_press (stage, ROLE_BUTTON, "Find a Recipe for a Blank…");
  hand_expect (stage, "Nearest");
}

/* One customer's jobs, and the words that were meant. */
static void
prepare_recall (Stage         *stage,
                const Picture *picture)
{
  (void) picture;

  hand_enter (stage, "Search recipes and jobs", "skeligrove");
  hand_expect (stage, "Only Jobs Found");
}

static void
prepare_compare (Stage         *stage,
                 const Picture *picture)
{
  (void) picture;

  find_recipe (stage, "groat", "Groatweight heavy tee, black");
  hand_press (stage, ROLE_BUTTON, "Compare");
  hand_expect (stage, "Fisher's exact test");
}

static void
prepare_wash_log (Stage         *stage,
                  const Picture *picture)
{
  (void) picture;

  hand_enter (stage, "Search wash tests", "mud-");
  hand_select (stage, "2610-01");
  hand_expect (stage, "Passed 20 washes");
}

static void
prepare_jobs (Stage         *stage,
              const Picture *picture)
{
  (void) picture;

  hand_press (stage, ROLE_TAB, "Job Sheet");
  hand_expect (stage, "Time in all");
}

/* A new page: one line here, and one below if a picture of it is to be kept. */
static const Page pages[] = {
  { "jobs", "Jobs", prepare_jobs },
  { "mix", "Mix", prepare_mix },
  { "artwork", "Mix", prepare_artwork },
  { "recipes", "Recipes", prepare_recipes },
  { "nearest", "Recipes", prepare_nearest },
  { "recall", "Recipes", prepare_recall },
  { "compare", "Recipes", prepare_compare },
  { "wash-log", "Wash Log", prepare_wash_log },
  { "wash-plans", "Wash Plans", NULL },
  { "blanks", "Blanks", NULL },
  { "supplies", "Supplies", NULL },
  { "equipment", "Equipment", NULL },
  { "safety", "Safety", NULL },
};

/* What is kept in the repository, which grows with every one: twelve at most. The program starts anew where the theme,
 * the units or the book differ from the line before. */
static const Picture kept[] = {
  { "recipes", "recipes", "light", "metric", 1440, 900, FALSE },
  { "jobs", "jobs", "light", "metric", 1440, 900, FALSE },
  { "mix", "mix", "light", "metric", 1440, 900, FALSE },
  { "wash-log", "wash-log", "light", "metric", 1440, 900, FALSE },
  { "blanks", "blanks", "light", "metric", 1440, 900, FALSE },
  { "supplies", "supplies", "light", "metric", 1440, 900, FALSE },
  { "safety", "safety", "light", "metric", 1440, 900, FALSE },
  { "recipes-dark", "recipes", "dark", "metric", 1440, 900, FALSE },
  { "wash-log-dark-small", "wash-log", "dark", "metric", 1024, 700, FALSE },
  { "compare-dark", "compare", "dark", "metric", 1440, 900, FALSE },
  { "artwork-dark", "artwork", "dark", "metric", 1440, 900, FALSE },
  { "mix-dark-us", "mix", "dark", "us", 1440, 900, FALSE },
};
G_STATIC_ASSERT (G_N_ELEMENTS (kept) <= 12);

static const Page *
find_page (const char *file)
{
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    if (g_str_equal (pages[i].file, file))
      return &pages[i];

  g_error ("No page has pictures called “%s”", file);
}

static void
stop (Show *show)
{
  if (show->running != NULL)
    hand_close (show->stage);
  show->running = NULL;
}

static void
start (Show          *show,
       const Picture *picture)
{
  g_autofree char *scheme = g_strdup_printf ("'%s'", picture->colour_scheme);
  g_autofree char *system = g_strdup_printf ("'%s'", picture->unit_system);
  const Picture *running = show->running;

  if (running != NULL && running->is_empty == picture->is_empty &&
      g_str_equal (running->colour_scheme, picture->colour_scheme) &&
      g_str_equal (running->unit_system, picture->unit_system))
    return;

  stop (show);
  shop_set (show->stage, "colour-scheme", scheme);
  shop_set (show->stage, "unit-system", system);
  shop_open (show->stage, picture->is_empty ? show->empty : show->demo);
  show->running = picture;
}

static void
take (Show          *show,
      const Picture *picture)
{
  const Page *page = find_page (picture->page);
  g_autofree char *name = g_strconcat (picture->file, ".png", NULL);
  g_autofree char *path = g_build_filename (show->folder, name, NULL);

  start (show, picture);
  hand_resize (show->stage, picture->width, picture->height);
  shop_go (show->stage, page->title);
  if (page->prepare != NULL && !picture->is_empty)
    page->prepare (show->stage, picture);
  /* What does not fit has made the window larger meanwhile. */
  hand_resize (show->stage, picture->width, picture->height);
  hand_picture (show->stage, path);
  printf ("%s\n", path);
}

static void
take_sizes (Show    *show,
            Picture *picture)
{
  static const int sizes[][2] = { { 1440, 900 }, { 1024, 700 } };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (guint j = 0; j < G_N_ELEMENTS (pages); j++)
      {
        g_autofree char *file = NULL;

        file = g_strdup_printf ("%s-%s-%s-%s-%dx%d", pages[j].file, picture->is_empty ? "empty" : "demo",
                                picture->colour_scheme, picture->unit_system, sizes[i][0], sizes[i][1]);
        picture->file = file;
        picture->page = pages[j].file;
        picture->width = sizes[i][0];
        picture->height = sizes[i][1];
        take (show, picture);
      }
}

static void
take_all (Show *show)
{
  static const char *const schemes[] = { "light", "dark" };
  static const char *const systems[] = { "metric", "us" };

  for (guint i = 0; i < 2; i++)
    for (guint j = 0; j < 2; j++)
      for (guint k = 0; k < 2; k++)
        {
          Picture picture = { .colour_scheme = schemes[j], .unit_system = systems[k], .is_empty = i == 1 };

          take_sizes (show, &picture);
          stop (show);
        }
}

int
main (int   argc,
      char *argv[])
{
  const gboolean all = argc == 3 && g_str_equal (argv[1], "--all");
  g_autoptr (Stage) stage = NULL;
  Show show = { .folder = argv[argc - 1] };

  if (!all && (argc != 2 || *argv[1] == '-'))
    {
      fprintf (stderr, "Usage: screenshots [--all] FOLDER\n");
      return 2;
    }

  stage = shop_new ("1440x900");
  show.stage = stage;
  show.demo = shop_make_demo (stage);
  show.empty = shop_make_book (stage);
  if (all)
    take_all (&show);
  else
    for (guint i = 0; i < G_N_ELEMENTS (kept); i++)
      take (&show, &kept[i]);
  stop (&show);
  g_free (show.demo);
  g_free (show.empty);

  return 0;
}
