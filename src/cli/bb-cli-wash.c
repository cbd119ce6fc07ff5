/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>

#include "bb-canonical.h"
#include "bb-cli-record.h"
#include "bb-cli-show.h"
#include "bb-json-write.h"
#include "bb-known.h"
#include "bb-notice-words.h"
#include "bb-problem.h"

/* Whoever is named as having done it is also who writes it into the book. */
static gboolean
save (BbBook        *book,
      const BbTable *table,
      gpointer       record,
      gint64         person,
      GError       **error)
{
  bb_book_set_person (book, person);

  return bb_book_save (book, table, record, error);
}

static char *
describe (const BbCliCommon *common,
          BbCodes           *codes,
          const BbTable     *table,
          gconstpointer      record,
          const char        *sentence,
          GError           **error)
{
  g_autoptr (GString) out = g_string_new (NULL);

  if (!common->json)
    g_string_append (out, sentence);
  else if (!bb_json_append_exchanged (out, table, record, bb_codes_name, codes, error))
    return NULL;
  g_string_append_c (out, '\n');

  return g_string_free (g_steal_pointer (&out), FALSE);
}

/* How a specimen is washed, and for how long, follows from its plan, or from what its revision has to pass, unless it
 * is said. */
static gboolean
fill_from_revision (BbBook     *book,
                    BbWashTest *test,
                    GError    **error)
{
  g_autoptr (BbRevision) revision = NULL;

  if (test->revision == 0 || test->plan != 0)
    return TRUE;
  revision = bb_book_load (book, &bb_revision_table, test->revision, error);
  if (revision == NULL)
    return FALSE;
  if (test->method == BB_CHOICE_NONE)
    test->method = revision->proof_method;
  if (test->plan_cycles == BB_INTEGER_NONE)
    test->plan_cycles = revision->proof_cycles;

  return TRUE;
}

static BbCliStatus
add_specimen (const BbCliCommon *common,
              BbBook            *book,
              BbCliFields       *fields,
              const char        *code)
{
  g_autoptr (BbCodes) codes = bb_codes_new (book);
  g_autoptr (BbWashTest) test = bb_wash_test_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *sentence = NULL;
  g_autofree char *answer = NULL;

  test->code = g_strdup (code);
  if (!bb_cli_fields_read (fields, codes, test, &error) || !fill_from_revision (book, test, &error) ||
      !save (book, &bb_wash_test_table, test, test->person, &error))
    return bb_cli_fail_by_error (error, NULL);

  sentence = g_strdup_printf (ngettext ("Added the specimen %s, to be washed %d time.",
                                        "Added the specimen %s, to be washed %d times.", (gulong) test->plan_cycles),
                              test->code, (int) test->plan_cycles);
  answer = describe (common, codes, &bb_wash_test_table, test, sentence, &error);

  return bb_cli_answer (answer, error);
}

/* Where nobody is named yet it also has to be said how somebody gets a name. */
static gboolean
check_is_whole (BbBook           *book,
                const BbReading  *reading,
                GError          **error)
{
  g_autoptr (GPtrArray) people = NULL;
  g_autoptr (GError) wanting = NULL;

  if (!bb_record_validate (&bb_reading_table, reading, error))
    return FALSE;
  if (bb_record_check_wanted (&bb_reading_table, reading, &wanting))
    return TRUE;
  people = bb_book_load_all (book, &bb_person_table, FALSE, error);
  if (people == NULL)
    return FALSE;
  if (people->len > 0)
    g_propagate_error (error, g_steal_pointer (&wanting));
  else
    g_set_error (error, wanting->domain, wanting->code, "%s %s", wanting->message,
                 _("Nobody is named in this book yet: add a person in the window, or by "
                   "'blankbook-cli import --table person'."));

  return FALSE;
}

static gboolean
check_is_new (BbBook          *book,
              const BbReading *reading,
              const char      *code,
              GError         **error)
{
  gpointer known = NULL;

  if (!bb_known_find (book, &bb_reading_table, reading, &known, error))
    return FALSE;
  if (known == NULL)
    return TRUE;

  bb_record_free (&bb_reading_table, known);
  g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_EXISTS,
               ngettext ("cycles: the book already has a reading of %s after %d wash.",
                         "cycles: the book already has a reading of %s after %d washes.", (gulong) reading->cycles),
               code, (int) reading->cycles);
  return FALSE;
}

/* What the reading did to a proof, below what is told of the reading itself. */
static gboolean
add_news (BbBook           *book,
          const BbReading  *reading,
          char            **sentence,
          GError          **error)
{
  g_autoptr (GPtrArray) notices = bb_book_load_notices (book, FALSE, error);
  const BbNotice *newest = notices != NULL && notices->len > 0 ? notices->pdata[0] : NULL;
  g_autofree char *before = NULL;
  g_autofree char *news = NULL;

  if (newest == NULL || newest->wash_test != reading->wash_test || newest->cycles != reading->cycles)
    return notices != NULL;
  news = bb_words_of_notice (book, newest, error);
  if (news == NULL)
    return FALSE;
  before = g_steal_pointer (sentence);
  *sentence = g_strjoin ("\n", before, news, NULL);

  return TRUE;
}

static BbCliStatus
add_reading (const BbCliCommon *common,
             BbBook            *book,
             BbCliFields       *fields,
             const char        *code)
{
  g_autoptr (BbCodes) codes = bb_codes_new (book);
  g_autoptr (BbReading) reading = bb_reading_new ();
  g_autoptr (BbWashTest) test = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *sentence = NULL;
  g_autofree char *answer = NULL;

  test = bb_book_load_by_code (book, &bb_wash_test_table, code, &error);
  if (test == NULL)
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
  reading->wash_test = test->id;
  if (!bb_cli_fields_read (fields, codes, reading, &error) || !check_is_whole (book, reading, &error) ||
      !check_is_new (book, reading, code, &error) ||
      !save (book, &bb_reading_table, reading, reading->person, &error))
    return bb_cli_fail_by_error (error, NULL);

  /* Translators: a specimen's code, and the grade of its change in colour, like 4-5. */
  sentence = g_strdup_printf (ngettext ("Added the reading of %s after %d wash: change %s, cracking: %s.",
                                        "Added the reading of %s after %d washes: change %s, cracking: %s.",
                                        (gulong) reading->cycles),
                              test->code, (int) reading->cycles,
                              bb_choices_get_title (&bb_grade_choices, reading->change),
                              bb_choices_get_title (&bb_crack_choices, reading->crack));
  if (!add_news (book, reading, &sentence, &error))
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
  answer = describe (common, codes, &bb_reading_table, reading, sentence, &error);

  return bb_cli_answer (answer, error);
}

static BbCliStatus
run (const BbCliCommand *command,
     const BbTable      *table,
     const char         *given,
     BbCliStatus       (*add) (const BbCliCommon *common,
                               BbBook            *book,
                               BbCliFields       *fields,
                               const char        *code),
     int                 argc,
     char              **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  g_autoptr (BbCliFields) fields = bb_cli_fields_new (table, given);
  BbCliStatus status = BB_CLI_USAGE;
  BbBook *book = NULL;

  if (!bb_cli_parse_options (command, bb_cli_fields_get_entries (fields), &common, &argc, &argv))
    return BB_CLI_USAGE;
  if (argc != 2)
    return bb_cli_fail (BB_CLI_USAGE, _("'%s' needs the code of one specimen."), command->name);

  book = bb_cli_open_book (&common, &status);

  return book != NULL ? bb_cli_close_book (book, add (&common, book, fields, argv[1])) : status;
}

static BbCliStatus
run_new (int    argc,
         char **argv)
{
  return run (&bb_cli_wash_new, &bb_wash_test_table, "code", add_specimen, argc, argv);
}

static BbCliStatus
run_add (int    argc,
         char **argv)
{
  return run (&bb_cli_wash_add, &bb_reading_table, "wash_test", add_reading, argc, argv);
}

const BbCliCommand bb_cli_wash_new = {
  .name = "wash new",
  .arguments = "SPECIMEN",
  .summary = N_("Add a specimen that is going to be washed"),
  .run = run_new,
};

const BbCliCommand bb_cli_wash_add = {
  .name = "wash add",
  .arguments = "SPECIMEN",
  .summary = N_("Add a reading of a specimen: how it looks after so many washes"),
  .run = run_add,
};
