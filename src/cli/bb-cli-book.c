/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "bb-canonical.h"
#include "bb-exchange.h"
#include "bb-generate.h"

static void
append_text (GString    *out,
             const char *key,
             const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);

  bb_json_append_string (out, key);
  g_string_append_c (out, ':');
  bb_json_append_string (out, valid);
}

static char *
describe_new_book (const BbCliCommon *common,
                   const char        *path,
                   const BbImported  *imported)
{
  g_autofree char *name = g_filename_display_name (path);
  GString *out = NULL;

  if (!common->json && imported == NULL)
    return g_strdup_printf (_("Made the empty book %s.\n"), name);
  if (!common->json)
    return g_strdup_printf (ngettext ("Made the book %s with the invented demo shop: %u record.\n",
                                      "Made the book %s with the invented demo shop: %u records.\n",
                                      imported->n_added),
                            name, imported->n_added);

  out = g_string_new ("{");
  append_text (out, "book", name);
  if (imported != NULL)
    g_string_append_printf (out, ",\"added\":%u", imported->n_added);
  g_string_append (out, "}\n");

  return g_string_free (out, FALSE);
}

/* Without a name it is the person's own book, whose folder may not be there yet. */
static char *
dup_own_path (void)
{
  g_autofree char *path = bb_cli_dup_own_path ();
  g_autofree char *folder = g_path_get_dirname (path);

  g_mkdir_with_parents (folder, 0700);

  return g_steal_pointer (&path);
}

/* A new book can be named as a file or by --book. */
static gboolean
takes_one_file (const BbCliCommand *command,
                BbCliCommon        *common,
                int                 argc,
                char              **argv,
                gboolean            may_be_own,
                char              **path)
{
  if (!bb_cli_parse_options (command, NULL, common, &argc, &argv))
    return FALSE;
  if (argc == 2 && common->book == NULL)
    *path = g_strdup (argv[1]);
  else if (argc == 1 && common->book != NULL)
    *path = g_strdup (common->book);
  else if (argc == 1 && may_be_own)
    *path = dup_own_path ();
  else
    {
      bb_cli_fail (BB_CLI_USAGE, _("'%s' needs the name of one file."), command->name);
      return FALSE;
    }

  return TRUE;
}

static BbCliStatus
run_new (int    argc,
         char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  g_autofree char *path = NULL;
  g_autofree char *answer = NULL;
  g_autoptr (GError) error = NULL;

  if (!takes_one_file (&bb_cli_book_new, &common, argc, argv, TRUE, &path))
    return BB_CLI_USAGE;
  if (!bb_exchange_make_book (path, &error))
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
  answer = describe_new_book (&common, path, NULL);

  return bb_cli_write (answer);
}

static BbCliStatus
run_demo (int    argc,
          char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  g_autofree char *path = NULL;
  g_autofree char *answer = NULL;
  g_autoptr (GError) error = NULL;
  BbImported imported = { 0, 0 };

  if (!takes_one_file (&bb_cli_book_demo, &common, argc, argv, FALSE, &path))
    return BB_CLI_USAGE;
  if (!bb_exchange_make_demo (path, NULL, &imported, &error))
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
  answer = describe_new_book (&common, path, &imported);

  return bb_cli_write (answer);
}

static char *
describe_generated (const BbCliCommon *common,
                    const char        *path,
                    const BbGenerate  *plan)
{
  g_autofree char *name = g_filename_display_name (path);
  GString *out = NULL;

  if (!common->json)
    return g_strdup_printf (_("Made the book %s of invented records: %u revisions, %u runs.\n"), name,
                            plan->n_revisions, plan->n_runs);

  out = g_string_new ("{");
  append_text (out, "book", name);
  g_string_append_printf (out, ",\"revisions\":%u,\"runs\":%u,\"seed\":%u}\n", plan->n_revisions, plan->n_runs,
                          plan->seed);

  return g_string_free (out, FALSE);
}

static gboolean
takes_count (const char *option,
             int         count,
             int         least,
             guint      *taken)
{
  if (count < least || count > BB_GENERATE_MOST)
    {
      bb_cli_fail (BB_CLI_USAGE, _("--%s: %d is not between %d and %d"), option, count, least, BB_GENERATE_MOST);
      return FALSE;
    }
  *taken = (guint) count;

  return TRUE;
}

/* What could not be made whole is taken away again. */
static BbCliStatus
generate (const BbCliCommon *common,
          const char        *path,
          const BbGenerate  *plan)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *answer = NULL;
  BbBook *book = bb_book_create (path, &error);
  gboolean done = FALSE;
  BbCliStatus status = BB_CLI_OK;

  if (book == NULL)
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
  done = bb_book_generate (book, plan, &error);
  status = bb_cli_close_book (book, done ? BB_CLI_OK : bb_cli_fail (BB_CLI_FAILED, "%s", error->message));
  if (!done)
    g_unlink (path);
  answer = describe_generated (common, path, plan);

  return status == BB_CLI_OK ? bb_cli_write (answer) : status;
}

static BbCliStatus
run_generate (int    argc,
              char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  int revisions = 1000;
  int runs = 2000;
  int seed = 1;
  const GOptionEntry entries[] = {
    { "revisions", 0, 0, G_OPTION_ARG_INT, &revisions, N_("How many revisions; 1000 if not given"), "N" },
    { "runs", 0, 0, G_OPTION_ARG_INT, &runs, N_("How many runs; 2000 if not given"), "N" },
    { "seed", 0, 0, G_OPTION_ARG_INT, &seed, N_("The same number makes the same book; 1 if not given"), "S" },
    G_OPTION_ENTRY_NULL,
  };
  BbGenerate plan = { 0, 0, 0 };

  if (!bb_cli_parse_options (&bb_cli_book_generate, entries, &common, &argc, &argv))
    return BB_CLI_USAGE;
  if (argc != 2 || common.book != NULL)
    return bb_cli_fail (BB_CLI_USAGE, _("'%s' needs the name of one file."), bb_cli_book_generate.name);
  if (!takes_count ("revisions", revisions, 1, &plan.n_revisions) || !takes_count ("runs", runs, 0, &plan.n_runs))
    return BB_CLI_USAGE;
  plan.seed = (guint32) seed;

  return generate (&common, argv[1], &plan);
}

static char *
describe_findings (const BbCliCommon *common,
                   const char        *path,
                   const GPtrArray   *findings)
{
  g_autofree char *name = g_filename_display_name (path);
  GString *out = g_string_new (NULL);

  if (!common->json && findings->len == 0)
    g_string_append_printf (out, _("The book %s is sound.\n"), name);
  for (guint i = 0; !common->json && i < findings->len; i++)
    g_string_append_printf (out, "%s\n", (const char *) findings->pdata[i]);
  if (!common->json)
    return g_string_free (out, FALSE);

  g_string_append_c (out, '{');
  append_text (out, "book", name);
  g_string_append (out, ",\"findings\":[");
  for (guint i = 0; i < findings->len; i++)
    {
      g_autofree char *valid = g_utf8_make_valid (findings->pdata[i], -1);

      if (i > 0)
        g_string_append_c (out, ',');
      bb_json_append_string (out, valid);
    }
  g_string_append (out, "]}\n");

  return g_string_free (out, FALSE);
}

static BbCliStatus
check_book (const BbCliCommon *common,
            BbBook            *book)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) findings = bb_book_check (book, NULL, &error);
  g_autofree char *answer = NULL;
  BbCliStatus status = BB_CLI_OK;

  if (findings == NULL)
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);

  answer = describe_findings (common, bb_book_get_path (book), findings);
  status = bb_cli_write (answer);
  if (status != BB_CLI_OK || findings->len == 0)
    return status;

  return bb_cli_fail (BB_CLI_FAILED,
                      ngettext ("The book is not sound: %u finding.", "The book is not sound: %u findings.",
                                findings->len),
                      findings->len);
}

static BbCliStatus
run_check (int    argc,
           char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  BbCliStatus status = BB_CLI_USAGE;
  BbBook *book = NULL;

  if (!bb_cli_parse_options (&bb_cli_book_check, NULL, &common, &argc, &argv))
    return BB_CLI_USAGE;
  if (argc > 2 || (argc == 2 && common.book != NULL))
    return bb_cli_fail (BB_CLI_USAGE, _("'book check' takes the name of one file at most."));
  if (argc == 2)
    common.book = g_strdup (argv[1]);

  book = bb_cli_open_book (&common, &status);

  return book != NULL ? bb_cli_close_book (book, check_book (&common, book)) : status;
}

const BbCliCommand bb_cli_book_new = {
  .name = "book new",
  .arguments = "[FILE]",
  .summary = N_("Make an empty book, your own where no file is named"),
  .run = run_new,
};

const BbCliCommand bb_cli_book_check = {
  .name = "book check",
  .arguments = "[FILE]",
  .summary = N_("Look through a book for damage and broken rules"),
  .run = run_check,
};

const BbCliCommand bb_cli_book_demo = {
  .name = "book demo",
  .arguments = "FILE",
  .summary = N_("Make a book with the invented demo shop"),
  .run = run_demo,
};

const BbCliCommand bb_cli_book_generate = {
  .name = "book generate",
  .arguments = "FILE",
  .summary = N_("Make a large book of invented records, to see how fast the program is"),
  .run = run_generate,
};
