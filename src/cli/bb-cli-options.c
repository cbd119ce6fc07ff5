/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n.h>

/**
 * bb_cli_parse_options:
 * @command: the command that is run
 * @entries: its options, ending with an empty entry
 * @argc: (inout): how many arguments; afterwards those that are no options
 * @argv: (inout): the arguments
 *
 * Reads a command's options; `--help` prints its help and ends the program. On failure the message has been written.
 *
 * Returns: %TRUE on success
 */
gboolean
bb_cli_parse_options (const BbCliCommand *command,
                      const GOptionEntry *entries,
                      int                *argc,
                      char             ***argv)
{
  g_autofree char *usage = g_strdup_printf ("%s %s", command->name, command->arguments);
  g_autoptr (GOptionContext) context = g_option_context_new (usage);
  g_autoptr (GError) error = NULL;

  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  g_option_context_set_summary (context, _(command->summary));
  if (g_option_context_parse (context, argc, argv, &error))
    return TRUE;

  bb_cli_fail (BB_CLI_USAGE, "%s", error->message);
  return FALSE;
}
