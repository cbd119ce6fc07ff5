/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-recall-private.h"

#include "bb-book-private.h"
#include "bb-tag.h"

/* Finding the very thing that a label or a whole code names. */

static gboolean
find_code (BbBook         *self,
           const BbTable  *table,
           const char     *code,
           BbRecalled     *recalled,
           GError        **error)
{
  g_autofree char *sql = g_strdup_printf ("SELECT id FROM %s WHERE code = ?1", table->name);
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, sql, error);
  BbStep step = BB_STEP_ERROR;

  if (statement == NULL)
    return FALSE;

  bb_statement_bind_text (statement, 1, code);
  step = bb_statement_step (statement, error);
  if (step == BB_STEP_ROW)
    {
      recalled->table = table;
      recalled->id = bb_statement_get_integer (statement, 0);
    }

  return step != BB_STEP_ERROR;
}

/* The tables in which a label's code is looked for, up to a %NULL. */
static const BbTable * const *
tables_of (BbTagKind kind)
{
  static const BbTable * const jobs[] = { &bb_job_table, &bb_job_line_table, &bb_run_table, NULL };
  static const BbTable * const recipes[] = { &bb_recipe_table, &bb_revision_table, NULL };
  static const BbTable * const specimens[] = { &bb_wash_test_table, NULL };
  static const BbTable * const lots[] = { &bb_lot_table, NULL };

  switch (kind)
    {
    case BB_TAG_JOB:
      return jobs;
    case BB_TAG_RECIPE:
      return recipes;
    case BB_TAG_SPECIMEN:
      return specimens;
    case BB_TAG_LOT:
      return lots;
    default:
      g_return_val_if_reached (lots + 1);
    }
}

static gboolean
find_in (BbBook                 *self,
         const BbTable * const  *tables,
         const char             *code,
         BbRecalled             *recalled,
         GError                **error)
{
  for (guint i = 0; recalled->table == NULL && tables[i] != NULL; i++)
    if (!find_code (self, tables[i], code, recalled, error))
      return FALSE;

  return TRUE;
}

/* Shops number specimens as they number jobs: one may have the number of the other. */
static gboolean
find_specimen (BbBook      *self,
               const char  *code,
               BbRecalled  *recalled,
               GError     **error)
{
  BbRecalled found = { .table = NULL };

  if (!find_in (self, tables_of (BB_TAG_SPECIMEN), code, &found, error))
    return FALSE;
  recalled->specimen = found.id;

  return TRUE;
}

/**
 * _bb_recall_find_thing:
 * @self: a book, within a transaction
 * @text: (nullable): what was typed, by a person or a scanner
 * @recalled: gets what the text names, if it names something
 * @error: return location for a #GError
 *
 * What a scanner types names its kind; a whole code that was typed by hand may be of any.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_recall_find_thing (BbBook      *self,
                       const char  *text,
                       BbRecalled  *recalled,
                       GError     **error)
{
  const BbTagKind kinds[] = { BB_TAG_JOB, BB_TAG_RECIPE, BB_TAG_SPECIMEN, BB_TAG_LOT };
  g_autofree char *code = NULL;
  g_autofree char *stripped = g_strstrip (g_utf8_make_valid (text != NULL ? text : "", -1));
  BbTagKind kind = BB_TAG_JOB;

  if (*stripped == '\0')
    return TRUE;
  if (bb_tag_parse (stripped, &kind, &code) && !find_in (self, tables_of (kind), code, recalled, error))
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (!find_in (self, tables_of (kinds[i]), stripped, recalled, error))
      return FALSE;

  return find_specimen (self, stripped, recalled, error);
}
