/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-canonical.h"
#include "bb-cli-lines.h"
#include "bb-cli-record.h"
#include "bb-cli-show.h"
#include "bb-json-write.h"
#include "bb-like-load.h"
#include "bb-likest.h"
#include "bb-near-recipes.h"
#include "bb-recall.h"

/* As many as a person reads through; --limit asks for more. */
#define RECALL_LIMIT 50
#define NEAREST_LIMIT 5
#define NO_LIMIT G_MAXINT

/* Names longer than this are cut, so that a line stays a line. */
#define WIDEST 40

/* What is told of a job, from left to right. */
static const char * const job_columns[] = {
  "code", "customer", "title", "blank", "colourway", "garments", "state", "ordered_at", "revision", NULL,
};

/*
 * @text: words, or nothing
 * @narrow: the filters
 * @nearest: a garment's code, with its colour after a slash, or %NULL
 * @limit: how many of each, or NO_LIMIT
 */
typedef struct {
  char *text;
  BbNarrow *narrow;
  char *nearest;
  int limit;
} Asked;

static void
asked_clear (Asked *self)
{
  g_clear_pointer (&self->text, g_free);
  g_clear_pointer (&self->narrow, bb_narrow_free);
  g_clear_pointer (&self->nearest, g_free);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Asked, asked_clear)

static guint
get_limit (const Asked *asked,
           guint        usual)
{
  return asked->limit == NO_LIMIT ? usual : (guint) asked->limit;
}

/* What was found, loaded; @recalled and @near are %NULL where nobody asked. */
typedef struct {
  BbRecalled *recalled;
  GPtrArray *recipes;
  GPtrArray *jobs;
  BbNearRecipes *near;
  GPtrArray *near_lines;
} Found;

static void
found_clear (Found *self)
{
  g_clear_pointer (&self->recalled, bb_recalled_free);
  g_clear_pointer (&self->recipes, g_ptr_array_unref);
  g_clear_pointer (&self->jobs, g_ptr_array_unref);
  g_clear_pointer (&self->near, bb_near_recipes_free);
  g_clear_pointer (&self->near_lines, g_ptr_array_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Found, found_clear)

static GPtrArray *
load_lines (BbBook         *book,
            const BbTable  *table,
            const GArray   *ids,
            GError        **error)
{
  return bb_book_load_lines (book, table, (const gint64 *) (gpointer) ids->data, ids->len, error);
}

static gboolean
find_by_words (BbBook       *book,
               const Asked  *asked,
               Found        *found,
               GError      **error)
{
  BbRecall recall = { .text = asked->text, .narrow = asked->narrow, .limit = get_limit (asked, RECALL_LIMIT) };
  g_autoptr (GArray) like = NULL;

  if (asked->narrow->srgb != NULL)
    {
      like = bb_load_colourways_like (book, asked->narrow->srgb, error);
      if (like == NULL)
        return FALSE;
      recall.colourways = like;
      recall.shades = bb_shades_of (asked->narrow->srgb);
    }
  found->recalled = bb_book_recall (book, &recall, error);
  if (found->recalled == NULL)
    return FALSE;
  found->recipes = load_lines (book, &bb_recipe_table, found->recalled->recipes, error);
  found->jobs = found->recipes != NULL ? load_lines (book, &bb_job_table, found->recalled->jobs, error) : NULL;

  return found->jobs != NULL;
}

/* A colour of a garment goes by its code, or by what the maker calls it. */
static gint64
find_colourway (BbBook         *book,
                const BbBlank  *blank,
                const char     *named,
                GError        **error)
{
  g_autoptr (GPtrArray) colourways = bb_book_load_referring (book, &bb_colourway_table, &bb_blank_table, blank->id,
                                                             error);
  g_autofree char *wanted = g_utf8_casefold (named, -1);

  if (colourways == NULL)
    return 0;
  for (guint i = 0; i < colourways->len; i++)
    {
      const BbColourway *colourway = colourways->pdata[i];
      g_autofree char *name = g_utf8_casefold (colourway->name, -1);

      if (g_str_equal (colourway->code, named) || g_str_equal (name, wanted))
        return colourway->id;
    }
  g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND, _("--nearest: %s comes in no colour “%s”."),
               blank->code, named);
  return 0;
}

/* Whether there is such a blank; an error of the book is none of that. */
static gboolean
load_blank (BbBook      *book,
            const char  *code,
            BbBlank    **blank,
            GError     **error)
{
  g_autoptr (GError) local = NULL;

  *blank = bb_book_load_by_code (book, &bb_blank_table, code, &local);
  if (*blank != NULL || g_error_matches (local, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND))
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&local));

  return FALSE;
}

/* A slash may be part of the garment's own code. */
static gboolean
find_garment (BbBook      *book,
              const char  *named,
              gint64      *blank,
              gint64      *colourway,
              GError     **error)
{
  const char *slash = strrchr (named, '/');
  g_autofree char *code = slash != NULL ? g_strndup (named, (gsize) (slash - named)) : g_strdup (named);
  g_autoptr (BbBlank) whole = NULL;
  g_autoptr (BbBlank) part = NULL;

  if (!load_blank (book, named, &whole, error) ||
      (whole == NULL && slash != NULL && !load_blank (book, code, &part, error)))
    return FALSE;
  if (whole == NULL && part == NULL)
    {
      g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND, _("--nearest: there is no blank “%s”."), code);
      return FALSE;
    }
  *blank = whole != NULL ? whole->id : part->id;
  if (part != NULL)
    *colourway = find_colourway (book, part, slash + 1, error);

  return part == NULL || *colourway != 0;
}

static gboolean
find_near (BbBook       *book,
           const Asked  *asked,
           Found        *found,
           GError      **error)
{
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  gint64 blank = 0;
  gint64 colourway = 0;

  if (!find_garment (book, asked->nearest, &blank, &colourway, error))
    return FALSE;
  found->near = bb_near_recipes_load (book, blank, colourway,
                                      get_limit (asked, NEAREST_LIMIT), error);
  if (found->near == NULL)
    return FALSE;
  for (guint i = 0; i < found->near->recipes->len; i++)
    g_array_append_val (ids, ((const BbKnownRecipe *) found->near->recipes->pdata[i])->id);
  found->near_lines = load_lines (book, &bb_recipe_table, ids, error);

  return found->near_lines != NULL;
}

static gboolean
append_recipe (GString             *out,
               BbBook              *book,
               BbCodes             *codes,
               const BbRecipeLine  *line,
               GError             **error)
{
  g_autoptr (BbRevision) revision = NULL;

  g_string_append (out, "{\"recipe\":");
  bb_cli_append_recipe_line (out, line);
  g_string_append (out, ",\"revision\":");
  if (line->revision == BB_INTEGER_NONE)
    g_string_append (out, "null");
  else
    {
      revision = bb_book_load (book, &bb_revision_table, line->revision, error);
      if (revision == NULL ||
          !bb_json_append_exchanged (out, &bb_revision_table, revision, bb_codes_name, codes, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
append_recipes (GString          *out,
                BbBook           *book,
                BbCodes          *codes,
                const GPtrArray  *lines,
                GError          **error)
{
  g_string_append (out, ",\n\"recipes\":[");
  for (guint i = 0; lines != NULL && i < lines->len; i++)
    {
      g_string_append (out, i > 0 ? ",\n" : "\n");
      if (!append_recipe (out, book, codes, lines->pdata[i], error))
        return FALSE;
      g_string_append_c (out, '}');
    }
  g_string_append (out, "]");

  return TRUE;
}

static gboolean
append_near (GString      *out,
             BbBook       *book,
             BbCodes      *codes,
             const Found  *found,
             GError      **error)
{
  g_string_append (out, ",\n\"nearest\":[");
  for (guint i = 0; i < found->near_lines->len; i++)
    {
      g_autofree char *distance = bb_number_to_text (bb_near_recipes_get_distance (found->near, i));
      g_autofree char *reasons = bb_near_recipes_dup_reasons (found->near, i, &bb_cli_units);

      g_string_append (out, i > 0 ? ",\n" : "\n");
      if (!append_recipe (out, book, codes, found->near_lines->pdata[i], error))
        return FALSE;
      g_string_append_printf (out, ",\"same_garment\":%s,\"distance\":%s,\"reasons\":",
                              bb_near_recipes_is_same_garment (found->near, i) ? "true" : "false", distance);
      bb_json_append_string (out, reasons);
      g_string_append_c (out, '}');
    }
  g_string_append (out, "]");

  return TRUE;
}

static gboolean
write_json (GString      *out,
            BbBook       *book,
            const Found  *found,
            GError      **error)
{
  g_autoptr (BbCodes) codes = bb_codes_new (book);

  g_string_append (out, "{\"corrected\":");
  if (found->recalled != NULL && found->recalled->corrected != NULL)
    bb_json_append_string (out, found->recalled->corrected);
  else
    g_string_append (out, "null");
  if (!append_recipes (out, book, codes, found->recipes, error))
    return FALSE;
  g_string_append (out, ",\n\"jobs\":");
  if (found->jobs == NULL)
    g_string_append (out, "[]");
  else if (!bb_cli_append_json (out, book, &bb_job_card_table, found->jobs, error))
    return FALSE;
  if (found->near != NULL && !append_near (out, book, codes, found, error))
    return FALSE;
  g_string_append (out, "}\n");

  return TRUE;
}

/* The code to go by, the recipe's name, where it stands, and one thing more. */
static gboolean
add_recipe_row (GPtrArray           *rows,
                BbBook              *book,
                const BbRecipeLine  *line,
                const char          *reasons,
                GError             **error)
{
  g_autoptr (BbRevision) revision = NULL;
  g_autofree char *settings = NULL;
  const char *cells[] = { line->code, line->name, _("No revision"), reasons != NULL ? reasons : "", NULL };

  if (line->revision != BB_INTEGER_NONE)
    {
      revision = bb_book_load (book, &bb_revision_table, line->revision, error);
      if (revision == NULL)
        return FALSE;
      settings = bb_cli_show_settings (book, revision);
      cells[0] = revision->code;
      cells[2] = bb_choices_get_title (&bb_state_choices, line->state);
      cells[3] = reasons != NULL ? reasons : settings;
    }
  g_ptr_array_add (rows, g_strdupv ((GStrv) (gpointer) cells));

  return TRUE;
}

static gboolean
write_recipes (GString          *out,
               BbBook           *book,
               const GPtrArray  *lines,
               GError          **error)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);

  for (guint i = 0; i < lines->len; i++)
    if (!add_recipe_row (rows, book, lines->pdata[i], NULL, error))
      return FALSE;
  bb_cli_append_columns (out, rows, WIDEST);

  return TRUE;
}

static gboolean
write_near (GString      *out,
            BbBook       *book,
            const Found  *found,
            GError      **error)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  const BbColourway *colourway = found->near->colourway;
  g_autofree char *garment = g_strjoin (", ", found->near->blank->name, colourway != NULL ? colourway->name : NULL,
                                        NULL);

  if (out->len > 0)
    g_string_append_c (out, '\n');
  if (found->near_lines->len == 0)
    {
      g_string_append (out, _("No recipe is for a blank whose fabric is known.\n"));
      return TRUE;
    }
  /* Translators: a garment, with its colour. */
  g_string_append_printf (out, _("Nearest to %s:\n"), garment);
  for (guint i = 0; i < found->near_lines->len; i++)
    {
      g_autofree char *reasons = bb_near_recipes_dup_reasons (found->near, i, &bb_cli_units);

      if (!add_recipe_row (rows, book, found->near_lines->pdata[i], reasons, error))
        return FALSE;
    }
  bb_cli_append_columns (out, rows, WIDEST);

  return TRUE;
}

static gboolean
write_text (GString      *out,
            BbBook       *book,
            const Asked  *asked,
            const Found  *found,
            GError      **error)
{
  if (found->recalled != NULL)
    {
      if (found->recalled->corrected != NULL)
        /* Translators: what is looked for instead of what was typed. */
        g_string_append_printf (out, _("Showing “%s” for “%s”.\n"), found->recalled->corrected, asked->text);
      if (found->recipes->len == 0 && found->jobs->len == 0)
        g_string_append (out, _("No recipe and no job has all of this.\n"));
      if (!write_recipes (out, book, found->recipes, error))
        return FALSE;
      if (found->jobs->len > 0)
        {
          g_string_append_printf (out, "%s%s\n", out->len > 0 ? "\n" : "", _("Jobs:"));
          bb_cli_append_lines (out, book, &bb_job_card_table, found->jobs, job_columns);
        }
    }

  return found->near == NULL || write_near (out, book, found, error);
}

static BbCliStatus
recall (const BbCliCommon *common,
        BbBook            *book,
        BbCliFields       *fields,
        Asked             *asked)
{
  g_autoptr (BbCodes) codes = bb_codes_new (book);
  g_autoptr (GString) out = g_string_new (NULL);
  g_autoptr (GError) error = NULL;
  g_auto (Found) found = { 0 };
  gboolean done = FALSE;

  if (!bb_cli_fields_read (fields, codes, asked->narrow, &error))
    return bb_cli_fail_by_error (error, NULL);
  if (*asked->text == '\0' && asked->nearest == NULL && bb_narrow_is_empty (asked->narrow))
    return bb_cli_fail (BB_CLI_USAGE, _("'recall' needs words to look for, a filter, or --nearest."));

  done = (*asked->text == '\0' && bb_narrow_is_empty (asked->narrow)) || find_by_words (book, asked, &found, &error);
  done = done && (asked->nearest == NULL || find_near (book, asked, &found, &error));
  done = done && (common->json ? write_json (out, book, &found, &error)
                               : write_text (out, book, asked, &found, &error));

  return done ? bb_cli_write (out->str) : bb_cli_fail_by_error (error, NULL);
}

/* The filters, and what is recall's own. */
static GArray *
make_entries (BbCliFields *fields,
              Asked       *asked)
{
  const GOptionEntry own[] = {
    { "nearest", 0, 0, G_OPTION_ARG_STRING, &asked->nearest,
      N_("Tell the recipes nearest to a garment, printed or not"), N_("BLANK[/COLOUR]") },
    { "limit", 0, 0, G_OPTION_ARG_INT, &asked->limit,
      N_("Tell at most N of each; if not given 50, and 5 of the nearest"), "N" },
  };
  GArray *entries = g_array_new (TRUE, TRUE, sizeof (GOptionEntry));

  for (const GOptionEntry *entry = bb_cli_fields_get_entries (fields); entry->long_name != NULL; entry++)
    g_array_append_val (entries, *entry);
  g_array_append_vals (entries, own, G_N_ELEMENTS (own));

  return entries;
}

static BbCliStatus
run_recall (int    argc,
            char **argv)
{
  g_auto (BbCliCommon) common = { NULL, FALSE };
  g_auto (Asked) asked = { .narrow = bb_narrow_new (), .limit = NO_LIMIT };
  g_autoptr (BbCliFields) fields = bb_cli_fields_new (&bb_narrow_table, "");
  g_autoptr (GArray) entries = make_entries (fields, &asked);
  BbCliStatus status = BB_CLI_USAGE;
  BbBook *book = NULL;

  if (!bb_cli_parse_options (&bb_cli_recall, (const GOptionEntry *) (gpointer) entries->data, &common, &argc, &argv))
    return BB_CLI_USAGE;
  if (asked.limit < 1)
    return bb_cli_fail (BB_CLI_USAGE, _("--limit: %d is below the minimum 1"), asked.limit);
  asked.text = g_strjoinv (" ", argv + 1);

  book = bb_cli_open_book (&common, &status);

  return book != NULL ? bb_cli_close_book (book, recall (&common, book, fields, &asked)) : status;
}

const BbCliCommand bb_cli_recall = {
  .name = "recall",
  .arguments = "[WORD…]",
  .summary = N_("Find recipes and jobs by words and filters, and tell their settings in one line each"),
  .run = run_recall,
};
