/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>

#include "bb-canonical.h"
#include "bb-cli-lines.h"
#include "bb-cli-recipe.h"
#include "bb-cli-show.h"
#include "bb-codes.h"
#include "bb-json-write.h"

/* As many as a person reads through; --limit asks for more. */
#define RECALL_LIMIT 50

/* Names longer than this are cut, so that a line stays a line. */
#define WIDEST 40

/* What a list of recipes shows, from left to right. */
static const char * const list_columns[] = { "code", "name", "blank", "colourway", "state", "number", NULL };

static GPtrArray *
find_lines (BbBook     *book,
            const char *text,
            guint       limit,
            GError    **error)
{
  const BbQuery query = { .text = text, .limit = limit };
  g_autoptr (GArray) ids = bb_book_search (book, &bb_recipe_table, &query, error);

  return ids != NULL ? bb_book_load_lines (book, &bb_recipe_table, (const gint64 *) (gpointer) ids->data, ids->len,
                                           error)
                     : NULL;
}

/* Keys are of one book; the codes are there to go by. */
static void
append_line (GString            *out,
             const BbRecipeLine *line)
{
  g_autoptr (BbRecipeLine) shown = bb_record_copy (&bb_recipe_line_table, line);
  g_autofree char *json = NULL;

  shown->id = BB_INTEGER_NONE;
  shown->revision = BB_INTEGER_NONE;
  json = bb_record_to_json (&bb_recipe_line_table, shown, BB_SCOPE_ALL);
  g_string_append (out, json);
}

static char *
list_to_json (const GPtrArray *lines)
{
  GString *out = g_string_new ("[");

  for (guint i = 0; i < lines->len; i++)
    {
      g_string_append (out, i > 0 ? ",\n" : "\n");
      append_line (out, lines->pdata[i]);
    }
  g_string_append (out, "\n]\n");

  return g_string_free (out, FALSE);
}

static BbCliStatus
list_recipes (const BbCliCommon *common,
              BbBook            *book)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) lines = find_lines (book, "", 0, &error);
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

  return answer != NULL ? bb_cli_write (answer) : bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
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

static gboolean
recall_as_json (BbBook          *book,
                const GPtrArray *lines,
                GString         *out,
                GError         **error)
{
  g_autoptr (BbCodes) codes = bb_codes_new (book);

  g_string_append_c (out, '[');
  for (guint i = 0; i < lines->len; i++)
    {
      const BbRecipeLine *line = lines->pdata[i];
      g_autoptr (BbRevision) revision = NULL;

      g_string_append (out, i > 0 ? ",\n{\"recipe\":" : "\n{\"recipe\":");
      append_line (out, line);
      g_string_append (out, ",\"revision\":");
      if (line->revision == BB_INTEGER_NONE)
        g_string_append (out, "null");
      else
        {
          revision = bb_book_load (book, &bb_revision_table, line->revision, error);
          if (revision == NULL ||
              !bb_json_append_exchanged (out, &bb_revision_table, revision, bb_codes_name, codes, error))
            return FALSE;
        }
      g_string_append_c (out, '}');
    }
  g_string_append (out, "\n]\n");

  return TRUE;
}

static gboolean
recall_as_text (BbBook          *book,
                const GPtrArray *lines,
                GString         *out,
                GError         **error)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);

  for (guint i = 0; i < lines->len; i++)
    {
      const BbRecipeLine *line = lines->pdata[i];
      g_autoptr (BbRevision) revision = NULL;
      g_autofree char *settings = NULL;
      const char *cells[] = { line->code, line->name, _("No revision"), "", NULL };

      if (line->revision != BB_INTEGER_NONE)
        {
          revision = bb_book_load (book, &bb_revision_table, line->revision, error);
          if (revision == NULL)
            return FALSE;
          settings = bb_cli_show_settings (book, revision);
          cells[0] = revision->code;
          cells[2] = bb_choices_get_title (&bb_state_choices, line->state);
          cells[3] = settings;
        }
      g_ptr_array_add (rows, g_strdupv ((GStrv) (gpointer) cells));
    }
  bb_cli_append_columns (out, rows, WIDEST);
  if (lines->len == 0)
    g_string_append (out, _("No recipe has all of these words.\n"));

  return TRUE;
}

static BbCliStatus
recall (const BbCliCommon *common,
        BbBook            *book,
        const char        *text,
        int                limit)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) lines = find_lines (book, text, (guint) limit, &error);
  g_autoptr (GString) out = g_string_new (NULL);
  gboolean done = lines != NULL && (common->json ? recall_as_json (book, lines, out, &error)
                                                 : recall_as_text (book, lines, out, &error));

  return done ? bb_cli_write (out->str) : bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
}

static BbCliStatus
run_recall (int    argc,
            char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  int limit = RECALL_LIMIT;
  const GOptionEntry entries[] = {
    { "limit", 0, 0, G_OPTION_ARG_INT, &limit, N_("Tell at most N recipes, the newest first; 50 if not given"), "N" },
    G_OPTION_ENTRY_NULL,
  };
  g_autofree char *text = NULL;
  BbCliStatus status = BB_CLI_USAGE;
  BbBook *book = NULL;

  if (!bb_cli_parse_options (&bb_cli_recall, entries, &common, &argc, &argv))
    return BB_CLI_USAGE;
  if (argc < 2)
    return bb_cli_fail (BB_CLI_USAGE, _("'recall' needs words to look for."));
  if (limit < 1)
    return bb_cli_fail (BB_CLI_USAGE, _("--limit: %d is below the minimum 1"), limit);
  text = g_strjoinv (" ", argv + 1);

  book = bb_cli_open_book (&common, &status);

  return book != NULL ? bb_cli_close_book (book, recall (&common, book, text, limit)) : status;
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

const BbCliCommand bb_cli_recall = {
  .name = "recall",
  .arguments = "WORD…",
  .summary = N_("Find recipes by words, and tell their settings in one line each"),
  .run = run_recall,
};
