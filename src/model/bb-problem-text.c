/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-problem.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "bb-canonical.h"
#include "bb-problem-private.h"
#include "bb-units-private.h"

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

/* How many there are, of what is counted. */
static char *
count_text (const BbProblem *self)
{
  const gboolean is_list = self->kind == BB_PROBLEM_TOO_FEW || self->kind == BB_PROBLEM_TOO_MANY;
  const char *one = is_list ? "item" : "character";
  g_autofree char *value = value_text (self->value);

  return g_strdup_printf ("%s %s%s", value, one, g_str_equal (value, "1") ? "" : "s");
}

/**
 * bb_problem_to_key_text:
 * @self: a problem
 *
 * Says what is wrong in terms of keys and canonical units, for the command line and logs: names
 * the key, the value and the limit. Not translated, so that scripts can read it.
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
  g_autofree char *counted = count_text (self);

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
      return g_strdup_printf ("%s: %s, the minimum is %s", name, counted, low);
    case BB_PROBLEM_TOO_MANY:
      return g_strdup_printf ("%s: %s, the maximum is %s", name, counted, high);
    case BB_PROBLEM_TOO_LONG:
      return g_strdup_printf ("%s: %s, the maximum is %.0f", name, counted,
                              _bb_field_longest_text (field));
    case BB_PROBLEM_TOO_SHORT:
      return g_strdup_printf ("%s: %s, the minimum is %s", name, counted, low);
    case BB_PROBLEM_BAD_TEXT:
      return g_strdup_printf ("%s: has control characters or is not valid UTF-8", name);
    case BB_PROBLEM_BAD_DATE:
      return g_strdup_printf ("%s: is not a date YYYY-MM-DD or YYYY-MM-DDThh:mm:ssZ", name);
    case BB_PROBLEM_BAD_CHOICE:
      return g_strdup_printf ("%s: is not one of the choices", name);
    case BB_PROBLEM_NONE:
    default:
      return g_strdup ("");
    }
}

/* How many decimals stand in @text, which may have a decimal separator of its own. */
static int
count_decimals (const char *text)
{
  gsize n = strlen (text);
  gsize tail = n;

  while (tail > 0 && g_ascii_isdigit (text[tail - 1]))
    tail--;

  return tail == 0 || text[tail - 1] == '-' ? 0 : (int) (n - tail);
}

/*
 * A limit that is shown rounded is rounded inwards: 600 g/m² as most is shown as 17.69 oz/yd² and
 * not as 17.7, which would be refused when typed.
 */
static char *
limit_text (const BbField       *field,
            gboolean             least,
            const BbUnitContext *context)
{
  double limit = least ? field->limits.minimum : field->limits.maximum;
  BbUnitSystem system = context != NULL ? context->system : BB_UNITS_METRIC;
  const BbUnit *unit = _bb_unit_get_shown (field->quantity, system);
  g_autofree char *number = bb_quantity_format (field->quantity, limit, context);
  double typed = limit;

  if (unit != NULL && bb_quantity_parse (field->quantity, number, context, &typed, NULL) &&
      (least ? typed < limit : typed > limit))
    {
      double step = pow (10, -MAX (unit->decimals, count_decimals (number)));
      double shown = _bb_unit_from_canonical (unit, limit) + (least ? step : -step);

      limit = _bb_unit_to_canonical (unit, shown);
    }

  return bb_quantity_format_with_unit (field->quantity, limit, context);
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
  g_autofree char *limit = NULL;
  gulong longest = 0;
  gulong shortest = 0;

  if (self->kind == BB_PROBLEM_BELOW || self->kind == BB_PROBLEM_ABOVE)
    limit = limit_text (field, self->kind == BB_PROBLEM_BELOW, context);
  /* How many characters a colour has is no help to who writes "black". */
  if (field->colour && (self->kind == BB_PROBLEM_TOO_SHORT || self->kind == BB_PROBLEM_TOO_LONG))
    return g_strdup (_("This is not a colour. Write it as #rrggbb, like #1b2a49."));

  switch (self->kind)
    {
    case BB_PROBLEM_MISSING:
      return g_strdup (_("This has to be filled in."));
    case BB_PROBLEM_NOT_FINITE:
      return g_strdup (_("This is not a number."));
    case BB_PROBLEM_BELOW:
      return field->limits.open_minimum ? g_strdup_printf (_("This has to be more than %s."), limit)
                                        : g_strdup_printf (_("This has to be at least %s."), limit);
    case BB_PROBLEM_ABOVE:
      return field->limits.open_maximum ? g_strdup_printf (_("This has to be less than %s."), limit)
                                        : g_strdup_printf (_("This can be at most %s."), limit);
    case BB_PROBLEM_TOO_FEW:
      return g_strdup_printf (_("There have to be at least %d."), (int) field->count.minimum);
    case BB_PROBLEM_TOO_MANY:
      return g_strdup_printf (_("There can be at most %d."), (int) field->count.maximum);
    case BB_PROBLEM_TOO_LONG:
      longest = (gulong) _bb_field_longest_text (field);
      return g_strdup_printf (ngettext ("This can have at most %lu character.",
                                        "This can have at most %lu characters.", longest), longest);
    case BB_PROBLEM_TOO_SHORT:
      shortest = (gulong) field->limits.minimum;
      return g_strdup_printf (ngettext ("This needs at least %lu character.",
                                        "This needs at least %lu characters.", shortest), shortest);
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

/**
 * bb_fault_split:
 * @message: what is wrong; names what it speaks of before a colon, as bb_record_validate() and the book do
 * @path: (out) (transfer full) (nullable): the key, or the way to one in a list of records, like `weighed[0].wet_g`;
 *   %NULL where the message names none
 *
 * Returns: (transfer none): what stands behind the colon; all of @message where it names nothing
 */
const char *
bb_fault_split (const char  *message,
                char       **path)
{
  gsize n = 0;

  g_return_val_if_fail (message != NULL && path != NULL, message);

  n = strspn (message, "abcdefghijklmnopqrstuvwxyz0123456789_.[]");
  *path = n > 0 && g_str_has_prefix (message + n, ": ") ? g_strndup (message, n) : NULL;

  return *path != NULL ? message + n + strlen (": ") : message;
}

/* One step of a path, which then is behind it. Returns: its words, or NULL where the table has no such field */
static char *
name_step (const BbTable **table,
           const char    **path)
{
  const gsize n = strcspn (*path, ".[");
  g_autofree char *name = g_strndup (*path, n);
  const BbField *field = *table != NULL ? bb_table_find_field (*table, name) : NULL;
  char *end = NULL;
  guint64 number = 0;

  if (field == NULL)
    return NULL;
  *table = field->item;
  *path += n;
  if (**path == '[')
    {
      number = g_ascii_strtoull (*path + 1, &end, 10) + 1;
      *path = end + (*end == ']');
    }
  *path += **path == '.';

  return number > 0 ? g_strdup_printf ("%s %d", _(field->item != NULL ? field->item->title : field->title),
                                       (int) number)
                    : g_strdup (_(field->title));
}

/**
 * bb_fault_to_text:
 * @table: the table of the record that is wrong
 * @message: what is wrong, as bb_fault_split() takes it
 *
 * Puts the way to what is wrong into words, for where it can't be said at the field itself.
 *
 * Returns: (transfer full): like “Weigh-in 1, Wet mass: The garment can't be lighter”; @message where it names nothing
 *   that the table has
 */
char *
bb_fault_to_text (const BbTable *table,
                  const char    *message)
{
  g_autofree char *path = NULL;
  g_autofree char *sentence = NULL;
  g_autoptr (GString) words = g_string_new (NULL);
  const char *text = bb_fault_split (message, &path);

  for (const char *rest = path; rest != NULL && *rest != '\0';)
    {
      g_autofree char *step = name_step (&table, &rest);

      if (step == NULL)
        return g_strdup (message);
      g_string_append_printf (words, "%s%s", words->len > 0 ? ", " : "", step);
    }
  if (words->len == 0)
    return g_strdup (message);
  sentence = bb_text_to_sentence (text);

  return g_strdup_printf ("%s: %s", words->str, sentence);
}
