/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "crowd.h"

#include "bb-book-index.h"
#include "bb-book-private.h"
#include "store-helpers.h"

static const char * const heads[] = {
  "Amber", "Brisk", "Calm", "Dune", "Ember", "Fern", "Gale", "Harbour", "Ivory", "Juniper", "Kelp", "Larch", "Marl",
  "Nettle", "Ochre", "Pebble", "Quartz", "Rowan", "Slate", "Thistle", "Umber", "Vale", "Willow", "Yarrow",
};
static const char * const tails[] = {
  "tee", "hood", "fleece", "tank", "polo", "long sleeve", "crew", "tote", "apron", "vest", "youth tee", "heavy tee",
};

/* A record of each kind; ?1 counts from 1, ?2 and ?3 are words. Wash tests go round the revisions. */
static const char * const statements[] = {
  "INSERT INTO blank (id, code, name, maker, mass_g_per_m2, knit, finish) "
  "VALUES (1000 + ?1, 'C-' || ?1, ?2 || ' ' || ?3, 'Quellenhof Mill', 120 + ?1 % 200, 'jersey', 'none')",
  "INSERT INTO blank_composition (blank, position, fibre, fraction) VALUES (1000 + ?1, 0, 'cotton', 1)",
  "INSERT INTO colourway (id, code, blank, name, srgb) "
  "VALUES (1000 + ?1, 'C-' || ?1 || '-1', 1000 + ?1, ?2, '#305070')",
  "INSERT INTO supply (id, code, name, maker, kind) "
  "VALUES (1000 + ?1, 'S-' || ?1, ?2 || ' fix', 'Ahornbach Works', CASE ?1 % 2 WHEN 0 THEN 'ink' ELSE 'cleaner' END)",
  "INSERT INTO wash_test (id, code, revision, colourway, method, plan_cycles, made_at) "
  "VALUES (1000 + ?1, 'W-' || ?1, (SELECT MIN (id) FROM revision) + ?1 % 200, 1000 + ?1, 'shop', 25, '2025-03-14')",
  "INSERT INTO reading (wash_test, cycles, change, crack, read_at) "
  "VALUES (1000 + ?1, 5, '5', 'none', '2025-03-20')",
  "INSERT INTO reading (wash_test, cycles, change, crack, read_at) "
  "VALUES (1000 + ?1, 10, CASE ?1 % 3 WHEN 0 THEN '2' ELSE '4-5' END, 'none', '2025-03-27')",
};

static gboolean
add_recipes (BbBook    *book,
             gpointer   data,
             GError   **error)
{
  g_autoptr (BbSupply) supply = helper_make_supply ("PT-1", BB_SUPPLY_PRETREAT);

  (void) data;
  helper_save (book, &bb_supply_table, supply);
  for (guint i = 0; i < CROWD_RECIPES; i++)
    {
      g_autofree char *code = g_strdup_printf ("R-%u", i);
      g_autofree char *name = g_strdup_printf ("%s on %s", heads[i % G_N_ELEMENTS (heads)],
                                               tails[i % G_N_ELEMENTS (tails)]);
      g_autoptr (BbRecipe) recipe = helper_make_recipe (code, name, 0);
      g_autoptr (BbRevision) revision = NULL;

      recipe->family = g_strdup ("All tees");
      helper_save (book, &bb_recipe_table, recipe);
      revision = helper_make_revision (recipe->id, supply->id);
      if (!bb_book_save_revision (book, revision, error))
        return FALSE;
    }

  return TRUE;
}

static void
add_rows (sqlite3    *plain,
          const char *sql,
          guint       n)
{
  sqlite3_stmt *statement = NULL;

  g_assert_cmpint (sqlite3_prepare_v2 (plain, sql, -1, &statement, NULL), ==, SQLITE_OK);
  for (guint i = 1; i <= n; i++)
    {
      const char *words[] = { heads[i % G_N_ELEMENTS (heads)], tails[i / 7 % G_N_ELEMENTS (tails)] };

      sqlite3_bind_int (statement, 1, (int) i);
      for (int w = 0; w < MIN (2, sqlite3_bind_parameter_count (statement) - 1); w++)
        sqlite3_bind_text (statement, w + 2, words[w], -1, SQLITE_STATIC);
      if (sqlite3_step (statement) != SQLITE_DONE)
        g_error ("%s: %s", sql, sqlite3_errmsg (plain));
      sqlite3_reset (statement);
    }
  sqlite3_finalize (statement);
}

static gboolean
rebuild (BbBook    *book,
         gpointer   data,
         GError   **error)
{
  (void) data;

  return bb_search_rebuild (book->db, error);
}

void
crowd_make (const char *path,
            guint       n)
{
  BbBook *book = helper_create (path);
  sqlite3 *plain = NULL;
  g_autoptr (GError) error = NULL;

  bb_book_in_transaction (book, add_recipes, NULL, &error);
  g_assert_no_error (error);

  plain = helper_open_plain (path);
  g_assert_cmpint (helper_run_plain (plain, "BEGIN"), ==, SQLITE_OK);
  for (guint i = 0; i < G_N_ELEMENTS (statements); i++)
    add_rows (plain, statements[i], n);
  g_assert_cmpint (helper_run_plain (plain, "COMMIT"), ==, SQLITE_OK);
  sqlite3_close (plain);

  bb_book_in_transaction (book, rebuild, NULL, &error);
  g_assert_no_error (error);
  helper_close (book);
}
