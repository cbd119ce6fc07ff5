/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>
#include <locale.h>

#include "bb-cli-show.h"
#include "bb-cli.h"

static const BbCliCommand * const commands[] = {
  &bb_cli_recall,
  &bb_cli_recipe_list,
  &bb_cli_recipe_show,
  &bb_cli_recipe_sign,
  &bb_cli_job_list,
  &bb_cli_job_show,
  &bb_cli_job_sheet,
  &bb_cli_job_repeat,
  &bb_cli_run_list,
  &bb_cli_run_show,
  &bb_cli_lot_list,
  &bb_cli_lot_show,
  &bb_cli_trace,
  &bb_cli_wash_new,
  &bb_cli_wash_add,
  &bb_cli_wash_due,
  &bb_cli_wash_plans,
  &bb_cli_wash_plan_new,
  &bb_cli_report_wash,
  &bb_cli_report_chart,
  &bb_cli_calc,
  &bb_cli_book_new,
  &bb_cli_book_demo,
  &bb_cli_book_generate,
  &bb_cli_book_check,
  &bb_cli_export,
  &bb_cli_import,
};

static void
print_help (void)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  g_autoptr (GString) out = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    {
      g_autofree char *usage = g_strdup_printf ("  %s %s", commands[i]->name, commands[i]->arguments);
      const char *cells[] = { usage, _(commands[i]->summary), NULL };

      g_ptr_array_add (rows, g_strdupv ((GStrv) (gpointer) cells));
    }
  bb_cli_append_columns (out, rows, G_MAXSIZE);

  g_print ("%s\n  blankbook-cli %s\n\n%s\n%s\n%s\n", _("Usage:"), _("COMMAND [OPTION…]"), _("Commands:"), out->str,
           _("'COMMAND --help' tells the options of a command."));
}

/* The options that all commands on a book have may stand before the command too. */
static guint
count_leading_options (const GPtrArray *arguments)
{
  guint n = 0;

  while (n < arguments->len && g_str_has_prefix (arguments->pdata[n], "--"))
    n += g_str_equal (arguments->pdata[n], "--book") ? 2 : 1;

  return n;
}

/* Takes the words of the command's name off the arguments. */
static gboolean
takes_words (const BbCliCommand *command,
             GPtrArray          *arguments,
             guint               from)
{
  g_auto (GStrv) words = g_strsplit (command->name, " ", -1);
  guint n_words = g_strv_length (words);

  if (from + n_words > arguments->len)
    return FALSE;
  for (guint w = 0; w < n_words; w++)
    if (!g_str_equal (arguments->pdata[from + w], words[w]))
      return FALSE;

  g_ptr_array_remove_range (arguments, from, n_words);
  return TRUE;
}

static BbCliStatus
dispatch (int    argc,
          char **argv)
{
  g_autoptr (GPtrArray) arguments = g_ptr_array_new ();
  guint from = 0;

  for (int i = 1; i < argc; i++)
    g_ptr_array_add (arguments, argv[i]);
  from = count_leading_options (arguments);

  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    if (takes_words (commands[i], arguments, from))
      {
        g_ptr_array_insert (arguments, 0, argv[0]);
        g_ptr_array_add (arguments, NULL);
        return commands[i]->run ((int) arguments->len - 1, (char **) arguments->pdata);
      }

  return bb_cli_fail (BB_CLI_USAGE, _("There is no command '%s'. 'blankbook-cli --help' lists them."),
                      from < arguments->len ? (const char *) arguments->pdata[from] : argv[1]);
}

int
main (int   argc,
      char *argv[])
{
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, BB_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  g_set_prgname ("blankbook-cli");

  if (argc < 2)
    return (int) bb_cli_fail (BB_CLI_USAGE, _("Give a command. 'blankbook-cli --help' lists them."));
  if (g_str_equal (argv[1], "--help") || g_str_equal (argv[1], "-h"))
    {
      print_help ();
      return BB_CLI_OK;
    }
  if (g_str_equal (argv[1], "--version"))
    {
      g_print ("blankbook-cli %s\n", BB_VERSION);
      return BB_CLI_OK;
    }

  return (int) dispatch (argc, argv);
}
