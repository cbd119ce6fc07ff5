/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-problem.h"

#include <glib/gi18n-lib.h>

#include "bb-error.h"
#include "bb-problem-private.h"

/*
 * Longer than any text a person types into one field, short enough to keep a hostile file from filling the
 * book. No source.
 */
#define LONGEST_LINE 200
#define LONGEST_TEXT 20000

static BbProblemKind
compare_with_limits (const BbLimits *limits,
                     double          value)
{
  if (!isfinite (value))
    return BB_PROBLEM_NOT_FINITE;
  if (!limits->set)
    return BB_PROBLEM_NONE;
  if (limits->open_minimum ? value <= limits->minimum : value < limits->minimum)
    return BB_PROBLEM_BELOW;
  if (limits->open_maximum ? value >= limits->maximum : value > limits->maximum)
    return BB_PROBLEM_ABOVE;

  return BB_PROBLEM_NONE;
}

static BbProblemKind
compare_with_count (const BbLimits *count,
                    guint           n)
{
  if (!count->set)
    return BB_PROBLEM_NONE;
  if ((double) n < count->minimum)
    return BB_PROBLEM_TOO_FEW;

  return (double) n > count->maximum ? BB_PROBLEM_TOO_MANY : BB_PROBLEM_NONE;
}

/**
 * _bb_field_longest_text:
 * @self: a field that holds a text or texts
 *
 * Returns: how many characters a text may have there
 */
double
_bb_field_longest_text (const BbField *self)
{
  if (self->limits.set)
    return self->limits.maximum;

  return self->multiline ? LONGEST_TEXT : LONGEST_LINE;
}

static BbProblemKind
check_text (const BbField *self,
            const char    *text,
            double        *length)
{
  if (!bb_text_is_plain (text, self->multiline))
    return BB_PROBLEM_BAD_TEXT;

  *length = (double) g_utf8_strlen (text, -1);
  if (self->limits.set && *length < self->limits.minimum)
    return BB_PROBLEM_TOO_SHORT;

  return *length > _bb_field_longest_text (self) ? BB_PROBLEM_TOO_LONG : BB_PROBLEM_NONE;
}

static BbProblemKind
check_texts (const BbField *self,
             gconstpointer  record,
             BbProblem     *problem)
{
  const char * const *texts = (const char * const *) BB_FIELD_IN (self, GStrv, record);
  guint n = texts != NULL ? g_strv_length ((GStrv) texts) : 0;
  BbProblemKind kind = compare_with_count (&self->count, n);

  problem->value = n;
  for (guint i = 0; kind == BB_PROBLEM_NONE && i < n; i++)
    {
      problem->index = (int) i;
      kind = check_text (self, texts[i], &problem->value);
    }

  return kind;
}

static BbProblemKind
check_array (const BbField *self,
             gconstpointer  record,
             BbProblem     *problem)
{
  const GArray *array = bb_field_get_array (self, record);
  guint n = array != NULL ? array->len : 0;
  BbProblemKind kind = compare_with_count (&self->count, n);

  problem->value = n;
  if (kind != BB_PROBLEM_NONE || self->kind != BB_KIND_NUMBERS)
    return kind;

  for (guint i = 0; i < n; i++)
    {
      problem->index = (int) i;
      problem->value = g_array_index (array, double, i);
      kind = compare_with_limits (&self->limits, problem->value);
      if (kind != BB_PROBLEM_NONE)
        return kind;
    }

  return BB_PROBLEM_NONE;
}

static BbProblemKind
check_value (const BbField *self,
             gconstpointer  record,
             BbProblem     *problem)
{
  switch ((int) self->kind)
    {
    case BB_KIND_NUMBER:
    case BB_KIND_INTEGER:
      problem->value = bb_field_get_number (self, record);
      return compare_with_limits (&self->limits, problem->value);
    case BB_KIND_TEXT:
      return check_text (self, bb_field_get_text (self, record), &problem->value);
    case BB_KIND_DATE:
      return bb_text_is_date (bb_field_get_text (self, record)) ? BB_PROBLEM_NONE : BB_PROBLEM_BAD_DATE;
    case BB_KIND_FLAG:
      problem->value = bb_field_get_choice (self, record);
      return problem->value <= 1 ? BB_PROBLEM_NONE : BB_PROBLEM_BAD_CHOICE;
    case BB_KIND_CHOICE:
      problem->value = bb_field_get_choice (self, record);
      return problem->value < self->choices->n_items ? BB_PROBLEM_NONE : BB_PROBLEM_BAD_CHOICE;
    default:
      return BB_PROBLEM_NONE;
    }
}

static gboolean
is_list (const BbField *self)
{
  return self->kind == BB_KIND_LIST || self->kind == BB_KIND_NUMBERS || self->kind == BB_KIND_TEXTS;
}

/**
 * bb_field_find_problem:
 * @self: a field
 * @record: a record of the field's table
 * @problem: (out): where to put what is wrong
 *
 * Holds one value of a record against its field. Nested records are not looked into: see
 * bb_record_validate().
 *
 * Returns: %TRUE if something is wrong
 */
gboolean
bb_field_find_problem (const BbField *self,
                       gconstpointer  record,
                       BbProblem     *problem)
{
  *problem = (BbProblem) { .field = self, .kind = BB_PROBLEM_NONE, .value = (double) NAN, .index = -1 };

  /* An empty list is something that was given; how many items it needs is said by its count. */
  if (is_list (self))
    {
      gboolean given = BB_FIELD_IN (self, gpointer, record) != NULL;

      if (given)
        problem->kind = self->kind == BB_KIND_TEXTS ? check_texts (self, record, problem)
                                                    : check_array (self, record, problem);
      else if (self->required)
        problem->kind = BB_PROBLEM_MISSING;
    }
  else if (!bb_field_is_set (self, record))
    problem->kind = self->required ? BB_PROBLEM_MISSING : BB_PROBLEM_NONE;
  else
    problem->kind = check_value (self, record, problem);

  return problem->kind != BB_PROBLEM_NONE;
}

static gboolean
validate_nested (const BbField *field,
                 gconstpointer  record,
                 GError       **error)
{
  if (field->kind == BB_KIND_OBJECT && bb_field_is_set (field, record))
    {
      if (bb_record_validate (field->item, BB_FIELD_IN (field, gpointer, record), error))
        return TRUE;
      g_prefix_error (error, "%s.", field->name);
      return FALSE;
    }

  if (field->kind == BB_KIND_LIST)
    {
      const GArray *array = bb_field_get_array (field, record);

      for (guint i = 0; array != NULL && i < array->len; i++)
        if (!bb_record_validate (field->item, array->data + i * field->item->size, error))
          {
            g_prefix_error (error, "%s[%u].", field->name, i);
            return FALSE;
          }
    }

  return TRUE;
}

/**
 * bb_record_validate:
 * @table: the record's table
 * @record: a record
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Holds a whole record, nested records included, against its table: each field's limits first,
 * then the rules between fields. The message names the key, the value and the limit.
 *
 * Returns: %TRUE if the record may be stored or computed with
 */
gboolean
bb_record_validate (const BbTable *table,
                    gconstpointer  record,
                    GError       **error)
{
  for (guint i = 0; i < table->n_fields; i++)
    {
      BbProblem problem;

      if (bb_field_find_problem (&table->fields[i], record, &problem))
        {
          g_autofree char *text = bb_problem_to_key_text (&problem);

          return bb_refuse_value (error, text);
        }
      if (!validate_nested (&table->fields[i], record, error))
        return FALSE;
    }

  return table->check == NULL || table->check (record, error);
}

/**
 * bb_field_is_wanting:
 * @self: a field
 * @record: a record that has it
 *
 * Returns: %TRUE if a person who writes this record anew has to give the field, and has not
 */
gboolean
bb_field_is_wanting (const BbField *self,
                     gconstpointer  record)
{
  return self->wanted != NULL && !bb_field_is_set (self, record);
}

/**
 * bb_record_check_wanted:
 * @table: the record's table
 * @record: a record that a person writes anew
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Asks for more than bb_record_validate(): whoever writes a record knows what a record from elsewhere may lack. The
 * message names the key, and says why it is wanted, or what is wrong with it.
 *
 * Returns: %TRUE if nothing is
 */
gboolean
bb_record_check_wanted (const BbTable *table,
                        gconstpointer  record,
                        GError       **error)
{
  for (guint i = 0; i < table->n_fields; i++)
    if (bb_field_is_wanting (&table->fields[i], record))
      {
        g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "%s: %s", table->fields[i].name,
                     _(table->fields[i].wanted));
        return FALSE;
      }

  return table->check_written == NULL || table->check_written (record, error);
}
