/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>

#include "bb-calculators.h"
#include "bb-canonical.h"
#include "bb-describe.h"
#include "bb-json.h"

static BbCliStatus
list_calculators (void)
{
  g_autofree char *list = bb_calculators_describe ();
  g_autofree char *text = g_strconcat (list, "\n", NULL);

  return bb_cli_write (text);
}

static char *
compute (const BbCalculator *calculator,
         const char         *path,
         GError            **error)
{
  g_autofree char *text = NULL;
  gsize length = 0;
  g_autoptr (JsonNode) node = NULL;
  gpointer in = NULL;
  gpointer out = NULL;
  char *result = NULL;

  if (!bb_cli_read_input (path, &text, &length, error))
    return NULL;
  node = bb_json_parse (text, length, error);
  if (node == NULL)
    return NULL;

  in = bb_record_new (calculator->in);
  out = bb_record_new (calculator->out);
  if (bb_json_read_record (calculator->in, node, NULL, in, error) &&
      bb_calculator_run (calculator, in, out, error))
    {
      g_autofree char *json = bb_record_to_json (calculator->out, out, BB_SCOPE_OUTPUT);

      result = g_strconcat (json, "\n", NULL);
    }
  bb_record_free (calculator->in, in);
  bb_record_free (calculator->out, out);

  return result;
}

static BbCliStatus
calculate (const char *name,
           const char *path)
{
  const BbCalculator *calculator = bb_calculator_find (name);
  g_autofree char *result = NULL;
  g_autoptr (GError) error = NULL;

  if (calculator == NULL)
    return bb_cli_fail (BB_CLI_USAGE, _("There is no calculator '%s'. 'calc --list' lists them."), name);

  result = compute (calculator, path, &error);
  if (result == NULL)
    return bb_cli_fail_by_error (error, path);

  return bb_cli_write (result);
}

static BbCliStatus
run (int    argc,
     char **argv)
{
  gboolean list = FALSE;
  g_autofree char *path = NULL;
  const GOptionEntry entries[] = {
    { "in", 0, 0, G_OPTION_ARG_FILENAME, &path, N_("Read the input from FILE, not from standard input"), N_("FILE") },
    { "list", 0, 0, G_OPTION_ARG_NONE, &list, N_("Describe every calculator and its keys, as JSON"), NULL },
    { NULL },
  };

  if (!bb_cli_parse_options (&bb_cli_calc, entries, NULL, &argc, &argv))
    return BB_CLI_USAGE;
  if (list)
    return argc == 1 && path == NULL ? list_calculators ()
                                     : bb_cli_fail (BB_CLI_USAGE, _("'calc --list' takes nothing else."));
  if (argc != 2)
    return bb_cli_fail (BB_CLI_USAGE, _("'calc' needs the name of one calculator. 'calc --list' lists them."));

  return calculate (argv[1], path);
}

const BbCliCommand bb_cli_calc = {
  .name = "calc",
  .arguments = "NAME",
  .summary = N_("Compute: reads a JSON object and writes one. Keys and limits: calc --list"),
  .run = run,
};
