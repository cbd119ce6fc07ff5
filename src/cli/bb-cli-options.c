/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>

/**
 * bb_cli_common_clear:
 * @self: the common options
 *
 * Frees what they hold.
 */
void
bb_cli_common_clear (BbCliCommon *self)
{
  g_clear_pointer (&self->book, g_free);
}

/**
 * bb_cli_parse_options:
 * @command: the command that is run
 * @entries: (nullable): its own options, ending with an empty entry
 * @common: (nullable): where to put the options that all commands on a book have
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
                      BbCliCommon        *common,
                      int                *argc,
                      char             ***argv)
{
  g_autofree char *usage = g_strdup_printf ("%s %s", command->name, command->arguments);
  g_autoptr (GOptionContext) context = g_option_context_new (usage);
  g_autoptr (GError) error = NULL;

  g_option_context_set_summary (context, _(command->summary));
  if (entries != NULL)
    g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  if (common != NULL)
    {
      const GOptionEntry shared[] = {
        { "book", 0, 0, G_OPTION_ARG_FILENAME, &common->book, N_("Use the book FILE, not your own"), N_("FILE") },
        { "json", 0, 0, G_OPTION_ARG_NONE, &common->json, N_("Answer in JSON"), NULL },
        G_OPTION_ENTRY_NULL,
      };

      g_option_context_add_main_entries (context, shared, GETTEXT_PACKAGE);
    }
  if (g_option_context_parse (context, argc, argv, &error))
    return TRUE;

  bb_cli_fail (BB_CLI_USAGE, "%s", error->message);
  return FALSE;
}
