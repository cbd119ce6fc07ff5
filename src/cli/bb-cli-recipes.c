/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>

#include "bb-cli-lines.h"
#include "bb-cli-recipe.h"
#include "bb-cli-show.h"

/* What a list of recipes shows, from left to right. */
static const char * const list_columns[] = { "code", "name", "blank", "colourway", "state", "number", NULL };

static GPtrArray *
load_all_lines (BbBook  *book,
                GError **error)
{
  const BbQuery query = { .text = NULL };
  g_autoptr (GArray) ids = bb_book_search (book, &bb_recipe_table, &query, error);

  return ids != NULL ? bb_book_load_lines (book, &bb_recipe_table, (const gint64 *) (gpointer) ids->data, ids->len,
                                           error)
                     : NULL;
}

static char *
list_to_json (const GPtrArray *lines)
{
  GString *out = g_string_new ("[");

  for (guint i = 0; i < lines->len; i++)
    {
      g_string_append (out, i > 0 ? ",\n" : "\n");
      bb_cli_append_recipe_line (out, lines->pdata[i]);
    }
  g_string_append (out, "\n]\n");

  return g_string_free (out, FALSE);
}

static BbCliStatus
list_recipes (const BbCliCommon *common,
              BbBook            *book)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) lines = load_all_lines (book, &error);
  g_autofree char *answer = NULL;

  if (lines == NULL)
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
  answer = common->json ? list_to_json (lines)
                        : bb_cli_lines_to_text (book, &bb_recipe_line_table, lines, list_columns,
                                                _("There is no recipe in this book yet."));

  return bb_cli_write (answer);
}

static BbCliStatus
run_list (int    argc,
          char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  BbCliStatus status = BB_CLI_USAGE;
  BbBook *book = NULL;

  if (!bb_cli_parse_options (&bb_cli_recipe_list, NULL, &common, &argc, &argv))
    return BB_CLI_USAGE;
  if (argc != 1)
    return bb_cli_fail (BB_CLI_USAGE, _("'recipe list' takes no arguments. To search, use 'recall'."));

  book = bb_cli_open_book (&common, &status);

  return book != NULL ? bb_cli_close_book (book, list_recipes (&common, book)) : status;
}

static BbCliStatus
show_recipe (const BbCliCommon *common,
             BbBook            *book,
             const char        *code)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbCliRecipe) recipe = bb_cli_recipe_load (book, code, &error);
  g_autofree char *answer = NULL;

  if (recipe != NULL)
    answer = common->json ? bb_cli_recipe_to_json (recipe, book, &error) : bb_cli_recipe_to_text (recipe, book, &error);

  return bb_cli_answer (answer, error);
}

static BbCliStatus
run_show (int    argc,
          char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  BbCliStatus status = BB_CLI_USAGE;
  BbBook *book = NULL;

  if (!bb_cli_parse_options (&bb_cli_recipe_show, NULL, &common, &argc, &argv))
    return BB_CLI_USAGE;
  if (argc != 2)
    return bb_cli_fail (BB_CLI_USAGE, _("'recipe show' needs the code of one recipe or revision."));

  book = bb_cli_open_book (&common, &status);

  return book != NULL ? bb_cli_close_book (book, show_recipe (&common, book, argv[1])) : status;
}

const BbCliCommand bb_cli_recipe_list = {
  .name = "recipe list",
  .arguments = "",
  .summary = N_("List all recipes with the revision that counts now"),
  .run = run_list,
};

const BbCliCommand bb_cli_recipe_show = {
  .name = "recipe show",
  .arguments = "CODE",
  .summary = N_("Show all settings of a recipe, or of one revision"),
  .run = run_show,
};
