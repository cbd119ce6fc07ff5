/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>

#include "bb-cli-lines.h"
#include "bb-cli-record.h"
#include "bb-cli-show.h"
#include "bb-error.h"
#include "bb-exchange.h"
#include "bb-json-write.h"

/* Of a column; where the numbers of a plan are from stands in the last one. */
#define WIDEST 44

static const char * const list_columns[] = {
  "code", "name", "publication", "procedure", "wash_c", "drying", "grade_at", "origin",
};

static char *
show_cell (BbBook           *book,
           const BbField    *field,
           const BbWashPlan *plan)
{
  if (plan == NULL)
    return g_strdup (_(field->title));

  return bb_cli_show_field (book, &bb_wash_plan_table, field, plan);
}

static char *
list_to_text (BbBook          *book,
              const GPtrArray *plans)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  GString *out = g_string_new (NULL);

  for (guint r = 0; r <= plans->len; r++)
    {
      g_autoptr (GStrvBuilder) row = g_strv_builder_new ();

      for (guint c = 0; c < G_N_ELEMENTS (list_columns); c++)
        {
          const BbField *field = bb_table_find_field (&bb_wash_plan_table, list_columns[c]);
          g_autofree char *text = show_cell (book, field, r > 0 ? plans->pdata[r - 1] : NULL);

          g_strv_builder_add (row, text != NULL ? text : "");
        }
      g_ptr_array_add (rows, g_strv_builder_end (row));
    }
  if (plans->len > 0)
    bb_cli_append_columns (out, rows, WIDEST);
  else
    g_string_append (out, _("There is no wash plan in this book yet. 'wash plans --add-published' brings some in.\n"));

  return g_string_free (out, FALSE);
}

static BbCliStatus
list_plans (const BbCliCommon *common,
            BbBook            *book,
            gboolean           add_published)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) plans = NULL;
  g_autofree char *answer = NULL;

  if (!add_published || bb_exchange_add_plans (book, NULL, &error))
    plans = bb_book_load_all (book, &bb_wash_plan_table, FALSE, &error);
  if (plans != NULL)
    answer = common->json ? bb_cli_lines_to_json (book, &bb_wash_plan_table, plans, &error)
                          : list_to_text (book, plans);

  return bb_cli_answer (answer, error);
}

static BbCliStatus
run_list (int    argc,
          char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  gboolean add_published = FALSE;
  const GOptionEntry entries[] = {
    { "add-published", 0, 0, G_OPTION_ARG_NONE, &add_published,
      N_("First add the plans after published methods that the book lacks"), NULL },
    G_OPTION_ENTRY_NULL,
  };
  BbCliStatus status = BB_CLI_USAGE;
  BbBook *book = NULL;

  if (!bb_cli_parse_options (&bb_cli_wash_plans, entries, &common, &argc, &argv))
    return BB_CLI_USAGE;
  if (argc != 1)
    return bb_cli_fail (BB_CLI_USAGE, _("'wash plans' takes no arguments."));
  book = bb_cli_open_book (&common, &status);

  return book != NULL ? bb_cli_close_book (book, list_plans (&common, book, add_published)) : status;
}

/* Cycles as a person writes them: 1,5,10,20. */
static gboolean
read_stops (const char  *text,
            BbWashPlan  *plan,
            GError     **error)
{
  const BbField *list = bb_table_find_field (&bb_wash_plan_table, "grade_at");
  g_auto (GStrv) parts = g_strsplit (text, ",", -1);

  for (guint i = 0; parts[i] != NULL; i++)
    {
      gint64 cycles = 0;

      if (!g_ascii_string_to_signed (g_strstrip (parts[i]), 10, 1, 500, &cycles, NULL))
        {
          g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
                       _("grade_at: '%s' is not a number of cycles from 1 to 500. Give them like 1,5,10,20."),
                       parts[i]);
          return FALSE;
        }
      ((BbPlanStop *) bb_field_append_item (list, plan))->cycles = cycles;
    }

  return TRUE;
}

static BbCliStatus
add_plan (const BbCliCommon *common,
          BbBook            *book,
          BbCliFields       *fields,
          const char        *code,
          const char        *stops)
{
  g_autoptr (BbCodes) codes = bb_codes_new (book);
  g_autoptr (BbWashPlan) plan = bb_wash_plan_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) json = g_string_new (NULL);
  g_autofree char *sentence = NULL;

  plan->code = g_strdup (code);
  if (!bb_cli_fields_read (fields, codes, plan, &error) || (stops != NULL && !read_stops (stops, plan, &error)) ||
      !bb_book_save (book, &bb_wash_plan_table, plan, &error))
    return bb_cli_fail_by_error (error, NULL);
  if (common->json)
    {
      if (!bb_json_append_exchanged (json, &bb_wash_plan_table, plan, bb_codes_name, codes, &error))
        return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
      g_string_append_c (json, '\n');
      return bb_cli_write (json->str);
    }

  sentence = g_strdup_printf (ngettext ("Added the wash plan %s, which ends after %d cycle.\n",
                                        "Added the wash plan %s, which ends after %d cycles.\n",
                                        (gulong) bb_wash_plan_get_last (plan)),
                              plan->code, (int) bb_wash_plan_get_last (plan));

  return bb_cli_write (sentence);
}

static BbCliStatus
run_new (int    argc,
         char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  g_autoptr (BbCliFields) fields = bb_cli_fields_new (&bb_wash_plan_table, "code");
  g_autofree char *stops = NULL;
  const GOptionEntry grade_at = { "grade-at", 0, 0, G_OPTION_ARG_STRING, &stops,
                                  N_("After how many cycles to grade, like 1,5,10,20"), N_("CYCLES") };
  g_autoptr (GArray) entries = g_array_new (TRUE, TRUE, sizeof (GOptionEntry));
  BbCliStatus status = BB_CLI_USAGE;
  BbBook *book = NULL;

  g_array_append_val (entries, grade_at);
  for (const GOptionEntry *entry = bb_cli_fields_get_entries (fields); entry->long_name != NULL; entry++)
    g_array_append_vals (entries, entry, 1);
  if (!bb_cli_parse_options (&bb_cli_wash_plan_new, (const GOptionEntry *) (gpointer) entries->data, &common, &argc,
                             &argv))
    return BB_CLI_USAGE;
  if (argc != 2)
    return bb_cli_fail (BB_CLI_USAGE, _("'wash plan new' needs the code of the new plan."));
  book = bb_cli_open_book (&common, &status);

  return book != NULL ? bb_cli_close_book (book, add_plan (&common, book, fields, argv[1], stops)) : status;
}

const BbCliCommand bb_cli_wash_plans = {
  .name = "wash plans",
  .arguments = "",
  .summary = N_("List the wash plans, the standard that each one follows, and how far its numbers can be trusted"),
  .run = run_list,
};

const BbCliCommand bb_cli_wash_plan_new = {
  .name = "wash plan new",
  .arguments = "PLAN",
  .summary = N_("Add a wash plan of the shop's own, or after a standard that the shop has"),
  .run = run_new,
};
