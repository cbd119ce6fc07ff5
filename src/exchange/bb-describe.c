/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-describe.h"

#include <glib/gi18n-lib.h>

#include "bb-calculators.h"
#include "bb-canonical.h"

static const char * const kind_names[] = {
  [BB_KIND_NUMBER] = "number",
  [BB_KIND_INTEGER] = "integer",
  [BB_KIND_TEXT] = "text",
  [BB_KIND_CHOICE] = "choice",
  [BB_KIND_DATE] = "date",
  [BB_KIND_FLAG] = "flag",
  [BB_KIND_REFERENCE] = "reference",
  [BB_KIND_LIST] = "list",
  [BB_KIND_NUMBERS] = "numbers",
  [BB_KIND_TEXTS] = "texts",
  [BB_KIND_OBJECT] = "object",
};

static void append_fields (GString       *out,
                           const BbTable *table,
                           gboolean       is_input);

static void
append_key (GString    *out,
            const char *key)
{
  if (out->len > 0 && out->str[out->len - 1] != '{')
    g_string_append_c (out, ',');
  bb_json_append_string (out, key);
  g_string_append_c (out, ':');
}

static void
append_text (GString    *out,
             const char *key,
             const char *text)
{
  append_key (out, key);
  bb_json_append_string (out, text);
}

static void
append_flag (GString    *out,
             const char *key,
             gboolean    flag)
{
  append_key (out, key);
  g_string_append (out, flag ? "true" : "false");
}

static void
append_number (GString    *out,
               const char *key,
               double      value)
{
  g_autofree char *text = bb_number_to_text (value);

  append_key (out, key);
  g_string_append (out, text);
}

static void
append_default (GString       *out,
                const BbField *field)
{
  double value = field->fallback.value;

  if (field->required && !field->fallback.set)
    return;

  if (!field->fallback.set)
    {
      append_key (out, "default");
      g_string_append (out, "null");
    }
  else if (field->kind == BB_KIND_CHOICE)
    append_text (out, "default", bb_choices_get_key (field->choices, (int) value));
  else if (field->kind == BB_KIND_FLAG)
    append_flag (out, "default", value > 0);
  else
    append_number (out, "default", value);
}

static void
append_limits (GString       *out,
               const BbField *field)
{
  gboolean is_text = field->kind == BB_KIND_TEXT;

  if (field->limits.set)
    {
      append_number (out, is_text ? "minimum_length" : "minimum", field->limits.minimum);
      if (!is_text)
        append_flag (out, "minimum_exclusive", field->limits.open_minimum);
      append_number (out, is_text ? "maximum_length" : "maximum", field->limits.maximum);
      if (!is_text)
        append_flag (out, "maximum_exclusive", field->limits.open_maximum);
    }
  if (field->count.set)
    {
      append_number (out, "minimum_items", field->count.minimum);
      append_number (out, "maximum_items", field->count.maximum);
    }
}

static void
append_choices (GString         *out,
                const BbChoices *choices)
{
  append_key (out, "choices");
  g_string_append_c (out, '[');
  for (guint i = 0; i < choices->n_items; i++)
    {
      g_string_append (out, i > 0 ? ",{" : "{");
      append_text (out, "key", choices->items[i].key);
      append_text (out, "title", _(choices->items[i].title));
      g_string_append_c (out, '}');
    }
  g_string_append_c (out, ']');
}

static void
append_field (GString       *out,
              const BbField *field,
              gboolean       is_input)
{
  g_string_append_c (out, '{');
  append_text (out, "key", field->name);
  append_text (out, "title", _(field->title));
  append_text (out, "help", _(field->help));
  append_text (out, "kind", kind_names[field->kind]);
  if (field->kind == BB_KIND_NUMBER || field->kind == BB_KIND_NUMBERS)
    append_text (out, "unit", bb_quantity_get_canonical_unit (field->quantity));
  if (is_input)
    {
      append_flag (out, "required", field->required && !field->fallback.set);
      append_default (out, field);
      append_limits (out, field);
    }
  if (field->choices != NULL)
    append_choices (out, field->choices);
  if (field->item != NULL)
    {
      append_key (out, "items");
      append_fields (out, field->item, is_input);
    }
  g_string_append_c (out, '}');
}

static void
append_fields (GString       *out,
               const BbTable *table,
               gboolean       is_input)
{
  g_string_append_c (out, '[');
  for (guint i = 0; i < table->n_fields; i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      append_field (out, &table->fields[i], is_input);
    }
  g_string_append_c (out, ']');
}

static void
append_calculator (GString            *out,
                   const BbCalculator *calculator)
{
  g_string_append_c (out, '{');
  append_text (out, "name", calculator->name);
  append_text (out, "title", _(calculator->title));
  append_text (out, "summary", _(calculator->summary));
  append_text (out, "assumes", _(calculator->assumes));
  append_text (out, "source", _(calculator->source));
  append_key (out, "in");
  append_fields (out, calculator->in, TRUE);
  append_key (out, "out");
  append_fields (out, calculator->out, FALSE);
  g_string_append_c (out, '}');
}

/**
 * bb_calculators_describe:
 *
 * Describes every calculator from its field tables: name, title, summary, what it assumes, its source, and each key
 * of its input and output with title, help, kind and canonical unit; of the input also whether it is required, its
 * default, its limits and whether they are exclusive, how many items a list may have, and the words of a choice.
 * Nested keys stand under `items`. Texts are in the language of the user.
 *
 * Returns: (transfer full): a JSON list
 */
char *
bb_calculators_describe (void)
{
  GString *out = g_string_new ("[");
  guint n_calculators = 0;
  const BbCalculator * const *calculators = bb_calculators (&n_calculators);

  for (guint i = 0; i < n_calculators; i++)
    {
      g_string_append (out, i > 0 ? ",\n" : "\n");
      append_calculator (out, calculators[i]);
    }
  g_string_append (out, "\n]");

  return g_string_free (out, FALSE);
}
