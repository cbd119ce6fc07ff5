/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli-recall.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-cli-lines.h"
#include "bb-like-load.h"
#include "bb-likest.h"

/* As many as a person reads through. */
#define RECALL_LIMIT 50
#define NEAREST_LIMIT 5

/**
 * bb_cli_asked_clear:
 * @self: what was asked for
 *
 * Frees what it holds, and leaves nothing in it.
 */
void
bb_cli_asked_clear (BbCliAsked *self)
{
  g_clear_pointer (&self->text, g_free);
  g_clear_pointer (&self->narrow, bb_narrow_free);
  g_clear_pointer (&self->nearest, g_free);
}

/**
 * bb_cli_found_clear:
 * @self: what was found
 *
 * Frees what it holds, and leaves nothing in it.
 */
void
bb_cli_found_clear (BbCliFound *self)
{
  g_clear_pointer (&self->recalled, bb_recalled_free);
  g_clear_pointer (&self->recipes, g_ptr_array_unref);
  g_clear_pointer (&self->jobs, g_ptr_array_unref);
  g_clear_pointer (&self->near, bb_near_recipes_free);
  g_clear_pointer (&self->near_lines, g_ptr_array_unref);
}

static gboolean
find_by_words (BbBook            *book,
               const BbCliAsked  *asked,
               BbCliFound        *found,
               GError           **error)
{
  BbRecall recall = {
    .text = asked->text,
    .narrow = asked->narrow,
    .limit = asked->limit != 0 ? asked->limit : RECALL_LIMIT,
  };
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
  found->recipes = bb_cli_load_cards (book, &bb_recipe_table, found->recalled->recipes, error);
  if (found->recipes != NULL)
    found->jobs = bb_cli_load_cards (book, &bb_job_table, found->recalled->jobs, error);

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
find_near (BbBook            *book,
           const BbCliAsked  *asked,
           BbCliFound        *found,
           GError           **error)
{
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  gint64 blank = 0;
  gint64 colourway = 0;

  if (!find_garment (book, asked->nearest, &blank, &colourway, error))
    return FALSE;
  found->near = bb_near_recipes_load (book, blank, colourway, asked->limit != 0 ? asked->limit : NEAREST_LIMIT, error);
  if (found->near == NULL)
    return FALSE;
  for (guint i = 0; i < found->near->recipes->len; i++)
    g_array_append_val (ids, ((const BbKnownRecipe *) found->near->recipes->pdata[i])->id);
  found->near_lines = bb_cli_load_cards (book, &bb_recipe_table, ids, error);

  return found->near_lines != NULL;
}

/**
 * bb_cli_find:
 * @book: a book
 * @asked: what is looked for
 * @found: (out caller-allocates): what is found; to be cleared either way
 * @error: return location for a #GError
 *
 * Looks by words and filters where there are any, and for the nearest recipes where a garment is named.
 *
 * Returns: %FALSE with an error: of the book, or %BB_STORE_ERROR_NOT_FOUND where there is no such garment
 */
gboolean
bb_cli_find (BbBook            *book,
             const BbCliAsked  *asked,
             BbCliFound        *found,
             GError           **error)
{
  const gboolean has_words = *asked->text != '\0' || !bb_narrow_is_empty (asked->narrow);

  return (!has_words || find_by_words (book, asked, found, error)) &&
         (asked->nearest == NULL || find_near (book, asked, found, error));
}
