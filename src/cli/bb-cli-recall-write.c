/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli-recall.h"

#include <glib/gi18n-lib.h>

#include "bb-canonical.h"
#include "bb-cli-lines.h"
#include "bb-cli-show.h"
#include "bb-codes.h"
#include "bb-json-write.h"

/* Names longer than this are cut, so that a line stays a line. */
#define WIDEST 40

/* What is told of a job, from left to right. */
static const char * const job_columns[] = {
  "code", "customer", "title", "blank", "colourway", "garments", "state", "ordered_at", "revision", NULL,
};

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
append_near (GString           *out,
             BbBook            *book,
             BbCodes           *codes,
             const BbCliFound  *found,
             GError           **error)
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

/**
 * bb_cli_found_to_json:
 * @self: what was found
 * @book: the book it is in
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): one JSON object on lines of its own; %NULL with an error of the book
 */
char *
bb_cli_found_to_json (const BbCliFound  *self,
                      BbBook            *book,
                      GError           **error)
{
  g_autoptr (BbCodes) codes = bb_codes_new (book);
  g_autoptr (GString) out = g_string_new ("{\"corrected\":");

  if (self->recalled != NULL && self->recalled->corrected != NULL)
    bb_json_append_string (out, self->recalled->corrected);
  else
    g_string_append (out, "null");
  if (!append_recipes (out, book, codes, self->recipes, error))
    return NULL;
  g_string_append (out, ",\n\"jobs\":");
  if (self->jobs == NULL)
    g_string_append (out, "[]");
  else if (!bb_cli_append_json (out, book, &bb_job_card_table, self->jobs, error))
    return NULL;
  if (self->near != NULL && !append_near (out, book, codes, self, error))
    return NULL;
  g_string_append (out, "}\n");

  return g_string_free (g_steal_pointer (&out), FALSE);
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
write_near (GString           *out,
            BbBook            *book,
            const BbCliFound  *found,
            GError           **error)
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
write_recalled (GString           *out,
                BbBook            *book,
                const BbCliFound  *found,
                const char        *asked,
                GError           **error)
{
  if (found->recalled->corrected != NULL)
    /* Translators: what is looked for instead of what was typed. */
    g_string_append_printf (out, _("Showing “%s” for “%s”.\n"), found->recalled->corrected, asked);
  if (found->recipes->len == 0 && found->jobs->len == 0)
    g_string_append (out, _("No recipe and no job has all of this.\n"));
  if (!write_recipes (out, book, found->recipes, error))
    return FALSE;
  if (found->jobs->len > 0)
    {
      g_string_append_printf (out, "%s%s\n", out->len > 0 ? "\n" : "", _("Jobs:"));
      bb_cli_append_lines (out, book, &bb_job_card_table, found->jobs, job_columns);
    }

  return TRUE;
}

/**
 * bb_cli_found_to_text:
 * @self: what was found
 * @book: the book it is in
 * @asked: the words that were looked for
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): lines for people; %NULL with an error of the book
 */
char *
bb_cli_found_to_text (const BbCliFound  *self,
                      BbBook            *book,
                      const char        *asked,
                      GError           **error)
{
  g_autoptr (GString) out = g_string_new (NULL);

  if ((self->recalled != NULL && !write_recalled (out, book, self, asked, error)) ||
      (self->near != NULL && !write_near (out, book, self, error)))
    return NULL;

  return g_string_free (g_steal_pointer (&out), FALSE);
}
