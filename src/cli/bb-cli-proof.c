/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>

#include "bb-canonical.h"
#include "bb-cli-show.h"
#include "bb-due-load.h"
#include "bb-evidence-load.h"
#include "bb-json-write.h"
#include "bb-moment.h"

static gint64
find_person (BbBook     *book,
             const char *code,
             GError    **error)
{
  g_autoptr (BbPerson) person = bb_book_load_by_code (book, &bb_person_table, code, error);

  return person != NULL ? person->id : 0;
}

static char *
describe_signed (BbBook            *book,
                 const BbRevision  *revision,
                 gboolean           json,
                 GError           **error)
{
  g_autofree char *today = bb_dup_today ();
  g_autoptr (BbSignature) signature = NULL;
  g_autoptr (BbWashEvidence) evidence = bb_evidence_load (book, revision->id, today, error);
  g_autofree char *rate = evidence != NULL ? bb_wash_evidence_describe_rate (evidence) : NULL;
  g_autoptr (GString) out = NULL;

  int found = rate != NULL ? bb_book_find_signature (book, revision->id, &signature, error) : -1;

  if (found == 0)
    g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND, _("%s was signed, and lost its proof at once."),
                 revision->code);
  if (found != 1)
    return NULL;
  if (!json)
    /* Translators: a revision's code, then a sentence on how many specimens passed. */
    return g_strdup_printf (signature->overruled ? _("Signed %s as proven, although the shop's rule is not met. %s\n")
                                                 : _("Signed %s as proven. %s\n"),
                            revision->code, rate);

  out = g_string_new ("{\"revision\":");
  bb_json_append_string (out, revision->code);
  g_string_append_printf (out, ",\"overruled\":%s,\"passed\":%" G_GINT64_FORMAT ",\"failed\":%" G_GINT64_FORMAT
                          ",\"needed\":%" G_GINT64_FORMAT "}\n",
                          signature->overruled ? "true" : "false", signature->passed, signature->failed,
                          signature->needed);

  return g_string_free (g_steal_pointer (&out), FALSE);
}

typedef struct {
  char *person;
  char *reason;
  gboolean overrule;
} Signing;

static BbCliStatus
sign (const BbCliCommon *common,
      BbBook            *book,
      const Signing     *signing,
      const char        *code)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbRevision) revision = bb_book_load_by_code (book, &bb_revision_table, code, &error);
  gint64 person = revision != NULL ? find_person (book, signing->person, &error) : 0;
  g_autofree char *answer = NULL;

  if (person == 0)
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
  bb_book_set_person (book, person);
  if (!bb_book_sign (book, revision->id, signing->overrule, signing->reason, &error))
    return bb_cli_fail_by_error (error, NULL);
  answer = describe_signed (book, revision, common->json, &error);

  return bb_cli_answer (answer, error);
}

static BbCliStatus
run_sign (int    argc,
          char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  g_autofree char *person = NULL;
  g_autofree char *reason = NULL;
  gboolean overrule = FALSE;
  const GOptionEntry entries[] = {
    { "person", 0, 0, G_OPTION_ARG_STRING, &person, N_("Who signs"), N_("CODE") },
    { "reason", 0, 0, G_OPTION_ARG_STRING, &reason, N_("On what grounds"), N_("TEXT") },
    { "overrule", 0, 0, G_OPTION_ARG_NONE, &overrule,
      N_("Sign although the shop's rule is not met; for a lead, with a reason"), NULL },
    G_OPTION_ENTRY_NULL,
  };
  BbCliStatus status = BB_CLI_USAGE;
  BbBook *book = NULL;

  if (!bb_cli_parse_options (&bb_cli_recipe_sign, entries, &common, &argc, &argv))
    return BB_CLI_USAGE;
  if (argc != 2 || person == NULL)
    return bb_cli_fail (BB_CLI_USAGE, _("'recipe sign' needs the code of one revision, and --person."));
  book = bb_cli_open_book (&common, &status);
  if (book == NULL)
    return status;

  return bb_cli_close_book (book, sign (&common, book, &(Signing) { person, reason, overrule }, argv[1]));
}

static void
add_row (GPtrArray  *rows,
         const char *first,
         const char *second,
         const char *third,
         const char *fourth,
         const char *fifth)
{
  const char *cells[] = { first, second, third, fourth, fifth, NULL };

  g_ptr_array_add (rows, g_strdupv ((GStrv) (gpointer) cells));
}

static const char *
get_specimen (const BbDueLine *line)
{
  return ((const BbWashTest *) line->line->test)->code;
}

static const char *
get_revision (const BbDueLine *line)
{
  return ((const BbRevision *) line->line->revision)->code;
}

static char *
lines_to_text (const GPtrArray *lines)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  g_autoptr (GString) out = g_string_new (NULL);

  if (lines->len == 0)
    return g_strdup (_("No specimen is waiting to be read.\n"));

  add_row (rows, _("Specimen"), _("Revision"), _("Reading"), _("Next at"), _("Due on"));
  for (guint i = 0; i < lines->len; i++)
    {
      const BbDueLine *line = lines->pdata[i];
      g_autofree char *cycles = g_strdup_printf ("%" G_GINT64_FORMAT, line->due.cycles);

      add_row (rows, get_specimen (line), get_revision (line), bb_choices_get_title (&bb_due_choices, line->due.state),
               cycles, line->due.due_on);
    }
  bb_cli_append_columns (out, rows, G_MAXSIZE);

  return g_string_free (g_steal_pointer (&out), FALSE);
}

static char *
lines_to_json (const GPtrArray *lines)
{
  GString *out = g_string_new ("[");

  for (guint i = 0; i < lines->len; i++)
    {
      const BbDueLine *line = lines->pdata[i];
      g_autofree char *due = bb_record_to_json (&bb_wash_due_table, &line->due, BB_SCOPE_ALL);

      g_string_append (out, i > 0 ? ",\n{\"specimen\":" : "\n{\"specimen\":");
      bb_json_append_string (out, get_specimen (line));
      g_string_append (out, ",\"revision\":");
      bb_json_append_string (out, get_revision (line));
      g_string_append_printf (out, ",%s", due + 1);
    }
  g_string_append (out, "\n]\n");

  return g_string_free (out, FALSE);
}

static BbCliStatus
tell_due (const BbCliCommon *common,
          BbBook            *book,
          const char        *today)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) lines = bb_due_load (book, today, &error);
  g_autofree char *answer = NULL;

  if (lines == NULL)
    return bb_cli_fail_by_error (error, NULL);
  answer = common->json ? lines_to_json (lines) : lines_to_text (lines);

  return bb_cli_write (answer);
}

static BbCliStatus
run_due (int    argc,
         char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  g_autofree char *today = NULL;
  const GOptionEntry entries[] = {
    { "today", 0, 0, G_OPTION_ARG_STRING, &today, N_("Take this day for today"), N_("DATE") },
    G_OPTION_ENTRY_NULL,
  };
  BbCliStatus status = BB_CLI_USAGE;
  BbBook *book = NULL;

  if (!bb_cli_parse_options (&bb_cli_wash_due, entries, &common, &argc, &argv))
    return BB_CLI_USAGE;
  if (argc != 1)
    return bb_cli_fail (BB_CLI_USAGE, _("'wash due' takes no arguments."));
  if (today == NULL)
    today = bb_dup_today ();
  book = bb_cli_open_book (&common, &status);

  return book != NULL ? bb_cli_close_book (book, tell_due (&common, book, today)) : status;
}

const BbCliCommand bb_cli_recipe_sign = {
  .name = "recipe sign",
  .arguments = "REVISION",
  .summary = N_("Sign a revision as proven, by the shop's rule"),
  .run = run_sign,
};

const BbCliCommand bb_cli_wash_due = {
  .name = "wash due",
  .arguments = "",
  .summary = N_("List the specimens that are waiting to be read, and when that is due"),
  .run = run_due,
};
