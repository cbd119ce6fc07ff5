/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>

#include "bb-book-jobs.h"
#include "bb-canonical.h"
#include "bb-cli-lines.h"
#include "bb-cli-show.h"
#include "bb-codes.h"
#include "bb-json-write.h"
#include "bb-run.h"

static const char * const stock_columns[] = { "code", "name", "batch", "opened_at", "last_day", "left_g", NULL };
static const char * const lot_facts[] = {
  "supply", "batch", "received_at", "opened_at", "expires_at", "start_g", "container_g", "note", "withdrawn_at", NULL,
};
static const char * const entry_columns[] = { "at", "deed", "run", "change_g", "scale_g", "person", "note", NULL };

static BbCliStatus
list_lots (const BbCliCommon *common,
           BbBook            *book,
           char             **arguments,
           gpointer           data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) stock = bb_book_load_stock (book, 0, &error);

  (void) arguments;
  (void) data;
  if (stock == NULL)
    return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);

  return bb_cli_write_lines (common, book, &bb_stock_table, stock, stock_columns,
                             _("There is no lot in this book yet."));
}

static BbCliStatus
run_list (int    argc,
          char **argv)
{
  const BbCliBookCommand on_book = { NULL, 0, N_("'lot list' takes no arguments."), list_lots, NULL };

  return bb_cli_run_on_book (&bb_cli_lot_list, &on_book, argc, argv);
}

static char *
show_as_text (BbBook          *book,
              const BbLot     *lot,
              double           left_g,
              const GPtrArray *entries)
{
  GString *out = g_string_new (lot->code);

  g_string_append_c (out, '\n');
  bb_cli_append_facts (out, book, &bb_lot_table, lot, lot_facts);
  if (!isnan (left_g))
    {
      g_autofree char *left = bb_quantity_format_with_unit (BB_QUANTITY_MASS, left_g, &bb_cli_units);

      g_string_append_printf (out, _("\nLeft: %s\n"), left);
    }
  if (entries->len > 0)
    {
      g_string_append_c (out, '\n');
      bb_cli_append_lines (out, book, &bb_lot_entry_table, entries, entry_columns);
    }

  return g_string_free (out, FALSE);
}

static char *
show_as_json (BbBook           *book,
              const BbLot      *lot,
              double            left_g,
              const GPtrArray  *entries,
              GError          **error)
{
  g_autoptr (GString) out = g_string_new ("{\"lot\":");
  g_autoptr (BbCodes) codes = bb_codes_new (book);
  g_autofree char *left = isnan (left_g) ? g_strdup ("null") : bb_number_to_text (left_g);

  if (!bb_json_append_exchanged (out, &bb_lot_table, lot, bb_codes_name, codes, error))
    return NULL;
  g_string_append_printf (out, ",\"left_g\":%s,\"entries\":", left);
  if (!bb_cli_append_json (out, book, &bb_lot_entry_table, entries, error))
    return NULL;
  g_string_append (out, "}\n");

  return g_string_free (g_steal_pointer (&out), FALSE);
}

static BbCliStatus
show_lot (const BbCliCommon *common,
          BbBook            *book,
          char             **arguments,
          gpointer           data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbLot) lot = bb_book_load_by_code (book, &bb_lot_table, arguments[0], &error);
  g_autoptr (GPtrArray) entries = NULL;
  double left_g = 0;
  g_autofree char *answer = NULL;

  (void) data;
  if (lot != NULL && bb_book_get_lot_left (book, lot->id, &left_g, &error))
    entries = bb_book_load_referring (book, &bb_lot_entry_table, &bb_lot_table, lot->id, &error);
  if (entries != NULL)
    answer = common->json ? show_as_json (book, lot, left_g, entries, &error)
                          : show_as_text (book, lot, left_g, entries);

  return bb_cli_answer (answer, error);
}

static BbCliStatus
run_show (int    argc,
          char **argv)
{
  const BbCliBookCommand on_book = { NULL, 1, N_("'lot show' needs the code of one lot."), show_lot, NULL };

  return bb_cli_run_on_book (&bb_cli_lot_show, &on_book, argc, argv);
}

const BbCliCommand bb_cli_lot_list = {
  .name = "lot list",
  .arguments = "",
  .summary = N_("List the containers in the shop, those to be used first at the top"),
  .run = run_list,
};

const BbCliCommand bb_cli_lot_show = {
  .name = "lot show",
  .arguments = "CODE",
  .summary = N_("Show a container, what is left in it, and what was drawn from it"),
  .run = run_show,
};
