/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>
#include <gio/gio.h>
#include <string.h>

#include "bb-exchange.h"

static const BbTable *
find_table (const char *name)
{
  const BbTable *table = bb_book_find_table (name);

  if (table == NULL || !bb_book_table_is_exchanged (table))
    {
      g_autoptr (GString) known = g_string_new (NULL);
      guint n_tables = 0;
      const BbTable * const *tables = bb_book_tables (&n_tables);

      for (guint t = 0; t < n_tables; t++)
        if (bb_book_table_is_exchanged (tables[t]))
          g_string_append_printf (known, "%s%s", t > 0 ? ", " : "", tables[t]->name);
      bb_cli_fail (BB_CLI_USAGE, _("--table: '%s' is not one of: %s"), name, known->str);
      return NULL;
    }

  return table;
}

static char *
export_recipes (BbBook  *book,
                GStrv    codes,
                GError **error)
{
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = 0; codes[i] != NULL; i++)
    {
      g_autoptr (BbRecipe) recipe = bb_book_load_by_code (book, &bb_recipe_table, codes[i], error);

      if (recipe == NULL)
        return NULL;
      g_array_append_val (ids, recipe->id);
    }

  return bb_exchange_export (book, (const gint64 *) (gpointer) ids->data, ids->len, NULL, error);
}

static BbCliStatus
export_book (BbBook        *book,
             const BbTable *table,
             GStrv          recipes,
             const char    *path)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  if (table != NULL)
    text = bb_exchange_export_csv (book, table, &error);
  else if (recipes != NULL)
    text = export_recipes (book, recipes, &error);
  else
    text = bb_exchange_export (book, NULL, 0, NULL, &error);
  if (text == NULL)
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
  if (path == NULL)
    return bb_cli_write (text);
  if (!bb_cli_write_new_file (path, text, strlen (text), &error))
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);

  return BB_CLI_OK;
}

static BbCliStatus
run_export (int    argc,
            char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  g_autofree char *table_name = NULL;
  g_auto (GStrv) recipes = NULL;
  const GOptionEntry entries[] = {
    { "recipe", 0, 0, G_OPTION_ARG_STRING_ARRAY, &recipes,
      N_("Only this recipe and what belongs to it; can be given several times"), N_("CODE") },
    { "table", 0, 0, G_OPTION_ARG_STRING, &table_name, N_("Only this table, as CSV"), N_("TABLE") },
    G_OPTION_ENTRY_NULL,
  };
  const BbTable *table = NULL;
  BbCliStatus status = BB_CLI_USAGE;
  BbBook *book = NULL;

  if (!bb_cli_parse_options (&bb_cli_export, entries, &common, &argc, &argv))
    return BB_CLI_USAGE;
  if (argc > 2 || (table_name != NULL && (recipes != NULL || common.json)))
    return bb_cli_fail (BB_CLI_USAGE, _("'export' takes one file, and either recipes or a table, which is CSV."));
  if (table_name != NULL)
    {
      table = find_table (table_name);
      if (table == NULL)
        return BB_CLI_USAGE;
    }

  book = bb_cli_open_book (&common, &status);

  return book != NULL ? bb_cli_close_book (book, export_book (book, table, recipes, argc == 2 ? argv[1] : NULL))
                      : status;
}

static BbCliStatus
tell_imported (const BbCliCommon *common,
               const BbImported  *imported)
{
  g_autofree char *answer = NULL;

  if (common->json)
    answer = g_strdup_printf ("{\"added\":%u,\"same\":%u}\n", imported->n_added, imported->n_same);
  else
    answer = g_strdup_printf (_("Records added: %u. The same in the book already: %u.\n"), imported->n_added,
                              imported->n_same);

  return bb_cli_write (answer);
}

static BbCliStatus
import_file (const BbCliCommon *common,
             BbBook            *book,
             const BbTable     *table,
             const char        *path,
             const char        *text,
             gsize              length)
{
  BbImported imported = { 0, 0 };
  g_autoptr (GError) error = NULL;
  gboolean done = table != NULL ? bb_exchange_import_csv (book, table, text, length, NULL, &imported, &error)
                                : bb_exchange_import (book, text, length, NULL, &imported, &error);

  return done ? tell_imported (common, &imported) : bb_cli_fail_by_error (error, path);
}

static BbCliStatus
run_import (int    argc,
            char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  g_autofree char *table_name = NULL;
  const GOptionEntry entries[] = {
    { "table", 0, 0, G_OPTION_ARG_STRING, &table_name, N_("The file holds this table as CSV"), N_("TABLE") },
    G_OPTION_ENTRY_NULL,
  };
  const BbTable *table = NULL;
  g_autofree char *text = NULL;
  gsize length = 0;
  g_autoptr (GError) error = NULL;
  BbCliStatus status = BB_CLI_USAGE;
  BbBook *book = NULL;

  if (!bb_cli_parse_options (&bb_cli_import, entries, &common, &argc, &argv))
    return BB_CLI_USAGE;
  if (argc > 2)
    return bb_cli_fail (BB_CLI_USAGE, _("'import' takes the name of one file."));
  if (table_name != NULL)
    {
      table = find_table (table_name);
      if (table == NULL)
        return BB_CLI_USAGE;
    }
  if (!bb_cli_read_input (argc == 2 ? argv[1] : NULL, &text, &length, &error))
    return bb_cli_fail_by_error (error, argc == 2 ? argv[1] : NULL);

  book = bb_cli_open_book (&common, &status);

  return book != NULL
           ? bb_cli_close_book (book, import_file (&common, book, table, argc == 2 ? argv[1] : NULL, text, length))
           : status;
}

const BbCliCommand bb_cli_export = {
  .name = "export",
  .arguments = "[FILE]",
  .summary = N_("Write a book, or a part of it, as JSON, or one of its tables as CSV"),
  .run = run_export,
};

const BbCliCommand bb_cli_import = {
  .name = "import",
  .arguments = "[FILE]",
  .summary = N_("Take the records of a file into a book: all of them, or none"),
  .run = run_import,
};
