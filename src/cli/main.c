/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n.h>
#include <locale.h>
#include <string.h>

#include "bb-cli.h"

static const BbCliCommand * const commands[] = {
  &bb_cli_calc,
};

static void
print_help (void)
{
  g_print ("%s\n  blankbook-cli %s\n\n%s\n", _("Usage:"), _("COMMAND [OPTION…]"), _("Commands:"));
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    {
      g_autofree char *usage = g_strdup_printf ("%s %s", commands[i]->name, commands[i]->arguments);

      g_print ("  %-28s %s\n", usage, _(commands[i]->summary));
    }
  g_print ("\n%s\n", _("'COMMAND --help' tells the options of a command."));
}

/* Takes the words of the command's name off the arguments. */
static gboolean
takes_words (const BbCliCommand *command,
             GPtrArray          *arguments)
{
  g_auto (GStrv) words = g_strsplit (command->name, " ", -1);
  guint at = 0;

  for (guint w = 0; words[w] != NULL; w++, at++)
    if (at >= arguments->len || g_strcmp0 (arguments->pdata[at], words[w]) != 0)
      return FALSE;

  g_ptr_array_remove_range (arguments, 0, at);
  return TRUE;
}

static BbCliStatus
dispatch (int    argc,
          char **argv)
{
  g_autoptr (GPtrArray) arguments = g_ptr_array_new ();

  for (int i = 1; i < argc; i++)
    g_ptr_array_add (arguments, argv[i]);

  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    if (takes_words (commands[i], arguments))
      {
        g_ptr_array_insert (arguments, 0, argv[0]);
        g_ptr_array_add (arguments, NULL);
        return commands[i]->run ((int) arguments->len - 1, (char **) arguments->pdata);
      }

  return bb_cli_fail (BB_CLI_USAGE, _("There is no command '%s'. 'blankbook-cli --help' lists them."), argv[1]);
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
