/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-field.h"

/**
 * bb_field_get_number:
 * @self: a field that holds a number, an integer or a flag
 * @record: a record of the field's table
 *
 * Returns: the value in the field's canonical unit; NaN where there is none
 */
double
bb_field_get_number (const BbField *self,
                     gconstpointer  record)
{
  if (!bb_field_is_set (self, record))
    return (double) NAN;

  switch ((int) self->kind)
    {
    case BB_KIND_NUMBER:
      return BB_FIELD_IN (self, double, record);
    case BB_KIND_INTEGER:
      return (double) BB_FIELD_IN (self, gint64, record);
    case BB_KIND_FLAG:
      return BB_FIELD_IN (self, int, record);
    default:
      g_return_val_if_reached ((double) NAN);
    }
}

/**
 * bb_field_get_integer:
 * @self: a field that holds an integer or a reference
 * @record: a record of the field's table
 *
 * Returns: the value; %BB_INTEGER_NONE, or 0 of a reference, where there is none
 */
gint64
bb_field_get_integer (const BbField *self,
                      gconstpointer  record)
{
  g_return_val_if_fail (self->kind == BB_KIND_INTEGER || self->kind == BB_KIND_REFERENCE, BB_INTEGER_NONE);

  return BB_FIELD_IN (self, gint64, record);
}

/**
 * bb_field_get_text:
 * @self: a field that holds a text, a date or a choice
 * @record: a record of the field's table
 *
 * Returns: (nullable): the text, or the key of the choice; %NULL where there is none
 */
const char *
bb_field_get_text (const BbField *self,
                   gconstpointer  record)
{
  if (self->kind == BB_KIND_CHOICE)
    return bb_choices_get_key (self->choices, BB_FIELD_IN (self, int, record));

  g_return_val_if_fail (self->kind == BB_KIND_TEXT || self->kind == BB_KIND_DATE, NULL);

  return BB_FIELD_IN (self, char *, record);
}

/**
 * bb_field_get_choice:
 * @self: a field that holds a choice or a flag
 * @record: a record of the field's table
 *
 * Returns: the index of the choice, or the flag; negative where there is none
 */
int
bb_field_get_choice (const BbField *self,
                     gconstpointer  record)
{
  g_return_val_if_fail (self->kind == BB_KIND_CHOICE || self->kind == BB_KIND_FLAG, BB_CHOICE_NONE);

  return BB_FIELD_IN (self, int, record);
}

/**
 * bb_field_get_array:
 * @self: a field that holds a list of structs or numbers
 * @record: a record of the field's table
 *
 * Returns: (transfer none) (nullable): the list
 */
GArray *
bb_field_get_array (const BbField *self,
                    gconstpointer  record)
{
  g_return_val_if_fail (self->kind == BB_KIND_LIST || self->kind == BB_KIND_NUMBERS, NULL);

  return BB_FIELD_IN (self, GArray *, record);
}

/**
 * bb_field_set_number:
 * @self: a field that holds a number
 * @record: a record of the field's table
 * @value: a value in the canonical unit, or NaN for none
 */
void
bb_field_set_number (const BbField *self,
                     gpointer       record,
                     double         value)
{
  g_return_if_fail (self->kind == BB_KIND_NUMBER);

  BB_FIELD_AT (self, double, record) = value;
}

/**
 * bb_field_set_integer:
 * @self: a field that holds an integer or a reference
 * @record: a record of the field's table
 * @value: a value; %BB_INTEGER_NONE, or 0 for a reference, for none
 */
void
bb_field_set_integer (const BbField *self,
                      gpointer       record,
                      gint64         value)
{
  g_return_if_fail (self->kind == BB_KIND_INTEGER || self->kind == BB_KIND_REFERENCE);

  BB_FIELD_AT (self, gint64, record) = value;
}

/**
 * bb_field_set_text:
 * @self: a field that holds a text, a date or a choice
 * @record: a record of the field's table
 * @value: (nullable): the text, copied, or the key of a choice; an unknown key leaves no choice
 */
void
bb_field_set_text (const BbField *self,
                   gpointer       record,
                   const char    *value)
{
  g_autofree char *old = NULL;

  if (self->kind == BB_KIND_CHOICE)
    {
      BB_FIELD_AT (self, int, record) = bb_choices_find (self->choices, value);
      return;
    }

  g_return_if_fail (self->kind == BB_KIND_TEXT || self->kind == BB_KIND_DATE);

  /* @value may lie within the text that it replaces. */
  old = g_steal_pointer (&BB_FIELD_AT (self, char *, record));
  BB_FIELD_AT (self, char *, record) = g_strdup (value);
}

/**
 * bb_field_set_choice:
 * @self: a field that holds a choice or a flag
 * @record: a record of the field's table
 * @value: the index of the choice, or the flag; negative for none
 */
void
bb_field_set_choice (const BbField *self,
                     gpointer       record,
                     int            value)
{
  g_return_if_fail (self->kind == BB_KIND_CHOICE || self->kind == BB_KIND_FLAG);

  BB_FIELD_AT (self, int, record) = value;
}

/**
 * bb_field_ensure_array:
 * @self: a field that holds a list of structs or numbers
 * @record: a record of the field's table
 *
 * Returns: (transfer none): the record's list, made empty if there was none
 */
GArray *
bb_field_ensure_array (const BbField *self,
                       gpointer       record)
{
  g_return_val_if_fail (self->kind == BB_KIND_LIST || self->kind == BB_KIND_NUMBERS, NULL);

  if (BB_FIELD_AT (self, GArray *, record) == NULL)
    {
      gsize size = self->kind == BB_KIND_LIST ? self->item->size : sizeof (double);

      BB_FIELD_AT (self, GArray *, record) = g_array_new (FALSE, TRUE, (guint) size);
    }

  return BB_FIELD_AT (self, GArray *, record);
}

/**
 * bb_field_append_item:
 * @self: a field that holds a list of structs
 * @record: a record of the field's table
 *
 * Appends one struct with its defaults. The pointer holds until the list changes again.
 *
 * Returns: (transfer none): the new struct
 */
gpointer
bb_field_append_item (const BbField *self,
                      gpointer       record)
{
  GArray *array = NULL;

  g_return_val_if_fail (self->kind == BB_KIND_LIST, NULL);

  array = bb_field_ensure_array (self, record);
  g_array_set_size (array, array->len + 1);
  bb_record_init (self->item, array->data + (array->len - 1) * self->item->size);

  return array->data + (array->len - 1) * self->item->size;
}
