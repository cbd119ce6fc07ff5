/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-kept-form"

#include "bb-kept-form.h"

/* The table's name and what is typed. */
#define KEPT_TYPE "(sa{ss})"

/**
 * bb_kept_form_describe:
 * @form: a form
 *
 * Returns: (transfer full): what is typed in the form and of what it is one, as a text to be kept
 */
char *
bb_kept_form_describe (BbForm *form)
{
  g_autoptr (GVariant) kept = NULL;

  g_return_val_if_fail (BB_IS_FORM (form), NULL);

  kept = g_variant_ref_sink (g_variant_new ("(s@a{ss})", bb_form_get_table (form)->name, bb_form_save_state (form)));

  return g_variant_print (kept, FALSE);
}

/**
 * bb_kept_form_parse:
 * @text: a text from bb_kept_form_describe()
 * @table: (out): the table of the record that was edited
 * @state: (out) (transfer full): for bb_form_load_state()
 *
 * Returns: %FALSE for a text that was not written so, or speaks of a table that is no more
 */
gboolean
bb_kept_form_parse (const char     *text,
                    const BbTable **table,
                    GVariant      **state)
{
  g_autoptr (GVariant) kept = NULL;
  const char *name = NULL;

  g_return_val_if_fail (text != NULL && table != NULL && state != NULL, FALSE);

  kept = g_variant_parse (G_VARIANT_TYPE (KEPT_TYPE), text, NULL, NULL, NULL);
  if (kept == NULL)
    return FALSE;
  g_variant_get_child (kept, 0, "&s", &name);
  *table = bb_book_find_table (name);
  if (*table == NULL)
    return FALSE;
  *state = g_variant_get_child_value (kept, 1);

  return TRUE;
}

/* What a new record belongs to was decided where the form was opened. */
static gpointer
start_record (const BbTable *table,
              GVariant      *state)
{
  gpointer record = bb_record_new (table);

  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];
      const char *key = NULL;

      if (field->owner && field->kind == BB_KIND_REFERENCE && g_variant_lookup (state, field->name, "&s", &key))
        bb_field_set_integer (field, record, g_ascii_strtoll (key, NULL, 10));
    }

  return record;
}

/**
 * bb_kept_form_load_record:
 * @book: a book
 * @table: a table
 * @state: what was typed for a record of it
 *
 * Returns: (transfer full): the record that was edited, as it stands in the book; where it does not, a new one of what
 *   it belongs to
 */
gpointer
bb_kept_form_load_record (BbBook        *book,
                          const BbTable *table,
                          GVariant      *state)
{
  const char *key = NULL;
  gpointer record = NULL;

  g_return_val_if_fail (book != NULL && table != NULL && state != NULL, NULL);

  if (g_variant_lookup (state, "id", "&s", &key))
    record = bb_book_load (book, table, g_ascii_strtoll (key, NULL, 10), NULL);

  return record != NULL ? record : start_record (table, state);
}
