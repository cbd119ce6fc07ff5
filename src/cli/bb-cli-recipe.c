/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli-recipe.h"

#include <glib/gi18n-lib.h>

#include "bb-advice-load.h"
#include "bb-canonical.h"
#include "bb-cli-lines.h"
#include "bb-cli-show.h"
#include "bb-codes.h"
#include "bb-json-write.h"

/* Of a column; notes and reasons stand in the last one, which has no limit. */
#define WIDEST 60

/**
 * bb_cli_recipe_free:
 * @self: (transfer full): what is told of a recipe
 */
void
bb_cli_recipe_free (BbCliRecipe *self)
{
  g_clear_pointer (&self->recipe, bb_recipe_free);
  g_clear_pointer (&self->revision, bb_revision_free);
  g_clear_pointer (&self->standing, bb_standing_free);
  g_clear_pointer (&self->revisions, g_ptr_array_unref);
  g_free (self);
}

/* The code of a recipe means the revision that counts now, the code of a revision that very one. */
static gboolean
load_by_code (BbCliRecipe *self,
              BbBook      *book,
              const char  *code,
              GError     **error)
{
  g_autoptr (GError) no_recipe = NULL;
  g_autoptr (GError) no_revision = NULL;

  self->recipe = bb_book_load_by_code (book, &bb_recipe_table, code, &no_recipe);
  if (self->recipe != NULL)
    {
      self->revision = bb_book_load_current (book, self->recipe->id, error);
      return self->revision != NULL;
    }

  if (g_error_matches (no_recipe, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND))
    self->revision = bb_book_load_by_code (book, &bb_revision_table, code, &no_revision);
  if (self->revision == NULL)
    {
      gboolean damaged = no_revision != NULL &&
                         !g_error_matches (no_revision, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);

      g_propagate_error (error, damaged ? g_steal_pointer (&no_revision) : g_steal_pointer (&no_recipe));
      return FALSE;
    }
  self->recipe = bb_book_load (book, &bb_recipe_table, self->revision->recipe, error);

  return self->recipe != NULL;
}

/**
 * bb_cli_recipe_load:
 * @book: a book
 * @code: the code of a recipe, or of a revision
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): what is told of the recipe, or %NULL with an error of the book
 */
BbCliRecipe *
bb_cli_recipe_load (BbBook     *book,
                    const char *code,
                    GError    **error)
{
  g_autoptr (BbCliRecipe) self = g_new0 (BbCliRecipe, 1);

  if (!load_by_code (self, book, code, error))
    return NULL;
  self->standing = bb_book_load_standing (book, self->revision->id, error);
  if (self->standing == NULL)
    return NULL;
  self->revisions = bb_book_load_referring (book, &bb_revision_table, &bb_recipe_table, self->recipe->id, error);

  return self->revisions != NULL ? g_steal_pointer (&self) : NULL;
}

/* The sections stand below each other, and so all their values in one column. */
static void
append_chain (GString           *out,
              const BbCliRecipe *self,
              BbBook            *book)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);

  bb_cli_add_facts (rows, book, &bb_recipe_table, self->recipe, BB_STATION_NONE);
  bb_cli_add_facts (rows, book, &bb_revision_table, self->revision, BB_STATION_NONE);
  for (guint s = BB_STATION_PRETREAT; s < BB_N_STATIONS; s++)
    {
      bb_cli_add_row (rows, "", NULL, NULL, NULL);
      bb_cli_add_row (rows, bb_station_get_title ((BbStation) s), NULL, NULL, NULL);
      bb_cli_add_facts (rows, book, &bb_revision_table, self->revision, (BbStation) s);
    }
  bb_cli_append_columns (out, rows, WIDEST);
}

/* Nothing where there is nothing to say. */
static gboolean
append_advice (GString           *out,
               const BbCliRecipe *self,
               BbBook            *book,
               GError           **error)
{
  g_autoptr (GPtrArray) advice = bb_advice_load (book, self->revision, &bb_cli_units, error);

  if (advice == NULL)
    return FALSE;
  if (advice->len > 0)
    g_string_append_printf (out, "\n%s\n", _("To look at before printing"));
  for (guint i = 0; i < advice->len; i++)
    {
      const BbAdvice *one = advice->pdata[i];

      g_string_append_printf (out, "  %s: %s\n", bb_station_get_title (one->field->station), one->text);
    }

  return TRUE;
}

static gboolean
append_advice_as_json (GString           *out,
                       const BbCliRecipe *self,
                       BbBook            *book,
                       GError           **error)
{
  g_autoptr (GPtrArray) advice = bb_advice_load (book, self->revision, &bb_cli_units, error);

  if (advice == NULL)
    return FALSE;
  g_string_append (out, ",\"advice\":[");
  for (guint i = 0; i < advice->len; i++)
    {
      const BbAdvice *one = advice->pdata[i];

      g_string_append_printf (out, "%s{\"setting\":", i > 0 ? "," : "");
      bb_json_append_string (out, one->field->name);
      g_string_append (out, ",\"text\":");
      bb_json_append_string (out, one->text);
      g_string_append_c (out, '}');
    }
  g_string_append_c (out, ']');

  return TRUE;
}

static gboolean
append_revisions (GString           *out,
                  const BbCliRecipe *self,
                  BbBook            *book,
                  GError           **error)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);

  for (guint i = 0; i < self->revisions->len; i++)
    {
      const BbRevision *revision = self->revisions->pdata[i];
      g_autoptr (BbStanding) standing = bb_book_load_standing (book, revision->id, error);
      g_autofree char *code = g_strconcat ("  ", revision->code, NULL);
      g_autofree char *day = NULL;

      if (standing == NULL)
        return FALSE;
      day = bb_cli_show_day (revision->made_at);
      bb_cli_add_row (rows, code, bb_choices_get_title (&bb_state_choices, standing->state), day,
                      revision->reason != NULL ? revision->reason : "");
    }
  g_string_append_printf (out, "\n%s\n", _("Revisions"));
  bb_cli_append_columns (out, rows, WIDEST);

  return TRUE;
}

/**
 * bb_cli_recipe_to_text:
 * @self: what is told of a recipe
 * @book: its book
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): a page for a person to read, along the chain; %NULL with an error of the book
 */
char *
bb_cli_recipe_to_text (const BbCliRecipe *self,
                       BbBook            *book,
                       GError           **error)
{
  g_autoptr (GString) out = g_string_new (NULL);
  g_autofree char *since = bb_cli_show_day (self->standing->since);

  g_string_append_printf (out, "%s  %s\n", self->revision->code, self->recipe->name);
  /* Translators: the state of a revision, and the day since when: "Proven since 2025-03-14". */
  g_string_append_printf (out, _("%s since %s"), bb_choices_get_title (&bb_state_choices, self->standing->state),
                          since);
  if (bb_field_is_set (bb_table_find_field (&bb_standing_table, "reason"), self->standing))
    g_string_append_printf (out, ": %s", self->standing->reason);
  g_string_append (out, "\n\n");
  append_chain (out, self, book);

  if (!append_advice (out, self, book, error) || !append_revisions (out, self, book, error))
    return NULL;

  return g_string_free (g_steal_pointer (&out), FALSE);
}

static gboolean
append_states (GString           *out,
               const BbCliRecipe *self,
               BbBook            *book,
               GError           **error)
{
  g_string_append (out, ",\"revisions\":[");
  for (guint i = 0; i < self->revisions->len; i++)
    {
      const BbRevision *revision = self->revisions->pdata[i];
      g_autoptr (BbStanding) standing = bb_book_load_standing (book, revision->id, error);

      if (standing == NULL)
        return FALSE;
      g_string_append (out, i > 0 ? ",{\"code\":" : "{\"code\":");
      bb_json_append_string (out, revision->code);
      g_string_append (out, ",\"state\":");
      bb_json_append_string (out, bb_choices_get_key (&bb_state_choices, standing->state));
      g_string_append_c (out, '}');
    }
  g_string_append_c (out, ']');

  return TRUE;
}

/**
 * bb_cli_recipe_to_json:
 * @self: what is told of a recipe
 * @book: its book
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): one JSON object with the recipe, the revision, its standing, as book files hold
 *   them, what a person should know of its settings, and the code and state of each revision; %NULL with an error
 *   of the book
 */
char *
bb_cli_recipe_to_json (const BbCliRecipe *self,
                       BbBook            *book,
                       GError           **error)
{
  g_autoptr (GString) out = g_string_new ("{\"recipe\":");
  g_autoptr (BbCodes) codes = bb_codes_new (book);

  if (!bb_json_append_exchanged (out, &bb_recipe_table, self->recipe, bb_codes_name, codes, error))
    return NULL;
  g_string_append (out, ",\"revision\":");
  if (!bb_json_append_exchanged (out, &bb_revision_table, self->revision, bb_codes_name, codes, error))
    return NULL;
  g_string_append (out, ",\"standing\":");
  if (!bb_json_append_exchanged (out, &bb_standing_table, self->standing, bb_codes_name, codes, error) ||
      !append_advice_as_json (out, self, book, error) || !append_states (out, self, book, error))
    return NULL;
  g_string_append (out, "}\n");

  return g_string_free (g_steal_pointer (&out), FALSE);
}
