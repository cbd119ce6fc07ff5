/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-problem.h"

#include <glib/gi18n-lib.h>

#include "bb-canonical.h"
#include <stdio.h>
#include <string.h>

#include "bb-error.h"

/* Longer than any text a person types into one field, short enough to keep a hostile file from filling the book. */
#define LONGEST_LINE 200
#define LONGEST_TEXT 20000

static gboolean
is_bidi_control (gunichar c)
{
  return c == 0x061c || c == 0x200e || c == 0x200f || (c >= 0x202a && c <= 0x202e) || (c >= 0x2066 && c <= 0x2069);
}

/**
 * bb_text_is_plain:
 * @text: a text
 * @multiline: whether line feeds and tabs are allowed
 *
 * Returns: %TRUE if @text is valid UTF-8 without control characters and without the marks that turn the
 *   direction of writing, which make a name read as another
 */
gboolean
bb_text_is_plain (const char *text,
                  gboolean    multiline)
{
  g_return_val_if_fail (text != NULL, FALSE);

  if (!g_utf8_validate (text, -1, NULL))
    return FALSE;

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (multiline && (c == '\n' || c == '\t'))
        continue;
      if (g_unichar_iscntrl (c) || is_bidi_control (c))
        return FALSE;
    }

  return TRUE;
}

static gboolean
is_date (const char *text)
{
  int year = 0;
  int month = 0;
  int day = 0;
  g_autofree char *again = NULL;

  if (strlen (text) != 10 && strlen (text) != 20)
    return FALSE;
  if (sscanf (text, "%4d-%2d-%2d", &year, &month, &day) != 3)
    return FALSE;
  if (year < 1900 || year > 2200 || month < 1 || month > 12 || day < 1 ||
      !g_date_valid_dmy ((GDateDay) day, (GDateMonth) month, (GDateYear) year))
    return FALSE;

  again = g_strdup_printf ("%04d-%02d-%02d", year, month, day);
  if (!g_str_has_prefix (text, again))
    return FALSE;

  if (strlen (text) == 20)
    {
      g_autoptr (GTimeZone) utc = g_time_zone_new_utc ();
      g_autoptr (GDateTime) moment = g_date_time_new_from_iso8601 (text, utc);

      return moment != NULL && text[19] == 'Z';
    }

  return TRUE;
}

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

static double
longest_text (const BbField *self)
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

  return *length > longest_text (self) ? BB_PROBLEM_TOO_LONG : BB_PROBLEM_NONE;
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
      return is_date (bb_field_get_text (self, record)) ? BB_PROBLEM_NONE : BB_PROBLEM_BAD_DATE;
    case BB_KIND_CHOICE:
      problem->value = bb_field_get_choice (self, record);
      return problem->value < self->choices->n_items ? BB_PROBLEM_NONE : BB_PROBLEM_BAD_CHOICE;
    default:
      return BB_PROBLEM_NONE;
    }
}

/**
 * bb_field_find_problem:
 * @self: a field
 * @record: a record of the field's table
 * @problem: (out): where to put what is wrong
 *
 * Holds one value of a record against its field. Nested records are not looked into: see bb_record_validate().
 *
 * Returns: %TRUE if something is wrong
 */
gboolean
bb_field_find_problem (const BbField *self,
                       gconstpointer  record,
                       BbProblem     *problem)
{
  *problem = (BbProblem) { .field = self, .kind = BB_PROBLEM_NONE, .value = (double) NAN, .index = -1 };

  if (self->kind == BB_KIND_LIST || self->kind == BB_KIND_NUMBERS)
    {
      const GArray *array = bb_field_get_array (self, record);

      if (self->required && array == NULL)
        problem->kind = BB_PROBLEM_MISSING;
      else if (self->required || array != NULL)
        problem->kind = check_array (self, record, problem);
    }
  else if (!bb_field_is_set (self, record))
    problem->kind = self->required ? BB_PROBLEM_MISSING : BB_PROBLEM_NONE;
  else
    problem->kind = check_value (self, record, problem);

  return problem->kind != BB_PROBLEM_NONE;
}

static char *
name_in_list (const BbProblem *self)
{
  return self->index < 0 ? g_strdup (self->field->name)
                         : g_strdup_printf ("%s[%d]", self->field->name, self->index);
}

static char *
value_text (double value)
{
  if (isnan (value))
    return g_strdup ("NaN");
  if (isinf (value))
    return g_strdup (value > 0 ? "infinity" : "-infinity");

  return bb_number_to_text (value);
}

/**
 * bb_problem_to_key_text:
 * @self: a problem
 *
 * Says what is wrong in terms of keys and canonical units, for the command line and logs: names the key, the
 * value and the limit. Not translated, so that scripts can read it.
 *
 * Returns: (transfer full): one line
 */
char *
bb_problem_to_key_text (const BbProblem *self)
{
  const BbField *field = self->field;
  const BbLimits *limits = self->kind == BB_PROBLEM_TOO_FEW || self->kind == BB_PROBLEM_TOO_MANY
                             ? &field->count : &field->limits;
  g_autofree char *name = name_in_list (self);
  g_autofree char *value = value_text (self->value);
  g_autofree char *low = value_text (limits->minimum);
  g_autofree char *high = value_text (limits->maximum);

  switch (self->kind)
    {
    case BB_PROBLEM_MISSING:
      return g_strdup_printf ("%s: missing, and it has no default", name);
    case BB_PROBLEM_NOT_FINITE:
      return g_strdup_printf ("%s: %s is not a finite number", name, value);
    case BB_PROBLEM_BELOW:
      return limits->open_minimum
               ? g_strdup_printf ("%s: %s is not allowed, it must be more than %s", name, value, low)
               : g_strdup_printf ("%s: %s is below the minimum %s", name, value, low);
    case BB_PROBLEM_ABOVE:
      return limits->open_maximum
               ? g_strdup_printf ("%s: %s is not allowed, it must be less than %s", name, value, high)
               : g_strdup_printf ("%s: %s is above the maximum %s", name, value, high);
    case BB_PROBLEM_TOO_FEW:
      return g_strdup_printf ("%s: %s items, the minimum is %s", name, value, low);
    case BB_PROBLEM_TOO_MANY:
      return g_strdup_printf ("%s: %s items, the maximum is %s", name, value, high);
    case BB_PROBLEM_TOO_LONG:
      return g_strdup_printf ("%s: %s characters, the maximum is %.0f", name, value, longest_text (field));
    case BB_PROBLEM_TOO_SHORT:
      return g_strdup_printf ("%s: %s characters, the minimum is %s", name, value, low);
    case BB_PROBLEM_BAD_TEXT:
      return g_strdup_printf ("%s: has control characters or is not valid UTF-8", name);
    case BB_PROBLEM_BAD_DATE:
      return g_strdup_printf ("%s: is not a date YYYY-MM-DD", name);
    case BB_PROBLEM_BAD_CHOICE:
      return g_strdup_printf ("%s: is not one of the choices", name);
    case BB_PROBLEM_NONE:
    default:
      return g_strdup ("");
    }
}

/**
 * bb_problem_to_text:
 * @self: a problem
 * @context: how numbers are shown
 *
 * Says what is wrong as a person reads it beside the field, in the units that are shown.
 *
 * Returns: (transfer full): one translated sentence
 */
char *
bb_problem_to_text (const BbProblem     *self,
                    const BbUnitContext *context)
{
  const BbField *field = self->field;
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;

  if (self->kind == BB_PROBLEM_BELOW)
    low = bb_quantity_format_with_unit (field->quantity, field->limits.minimum, context);
  if (self->kind == BB_PROBLEM_ABOVE)
    high = bb_quantity_format_with_unit (field->quantity, field->limits.maximum, context);

  switch (self->kind)
    {
    case BB_PROBLEM_MISSING:
      return g_strdup (_("This has to be filled in."));
    case BB_PROBLEM_NOT_FINITE:
      return g_strdup (_("This is not a number."));
    case BB_PROBLEM_BELOW:
      return field->limits.open_minimum ? g_strdup_printf (_("This has to be more than %s."), low)
                                        : g_strdup_printf (_("This has to be at least %s."), low);
    case BB_PROBLEM_ABOVE:
      return field->limits.open_maximum ? g_strdup_printf (_("This has to be less than %s."), high)
                                        : g_strdup_printf (_("This can be at most %s."), high);
    case BB_PROBLEM_TOO_FEW:
      return g_strdup_printf (_("There have to be at least %d."), (int) field->count.minimum);
    case BB_PROBLEM_TOO_MANY:
      return g_strdup_printf (_("There can be at most %d."), (int) field->count.maximum);
    case BB_PROBLEM_TOO_LONG:
      return g_strdup (_("This is too long."));
    case BB_PROBLEM_TOO_SHORT:
      return g_strdup_printf (_("This needs at least %d characters."), (int) field->limits.minimum);
    case BB_PROBLEM_BAD_TEXT:
      return g_strdup (_("This has characters that can't be shown."));
    case BB_PROBLEM_BAD_DATE:
      return g_strdup (_("This is not a date. Write it as year-month-day, like 2025-03-14."));
    case BB_PROBLEM_BAD_CHOICE:
      return g_strdup (_("Choose one of the list."));
    case BB_PROBLEM_NONE:
    default:
      return g_strdup ("");
    }
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
 * Holds a whole record, nested records included, against its table: each field's limits first, then the rules
 * between fields. The message names the key, the value and the limit.
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

          g_set_error_literal (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, text);
          return FALSE;
        }
      if (!validate_nested (&table->fields[i], record, error))
        return FALSE;
    }

  return table->check == NULL || table->check (record, error);
}
