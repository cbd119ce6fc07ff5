/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-field.h"

#include <string.h>

static void
clear_item_array (const BbField *self,
                  GArray        *array)
{
  if (self->kind == BB_KIND_LIST)
    for (guint i = 0; i < array->len; i++)
      bb_record_clear (self->item, array->data + i * self->item->size);

  g_array_unref (array);
}

static GArray *
copy_array (const BbField *self,
            GArray        *array)
{
  GArray *copy = NULL;

  if (array == NULL)
    return NULL;

  copy = g_array_sized_new (FALSE, TRUE, g_array_get_element_size (array), array->len);
  g_array_set_size (copy, array->len);

  if (self->kind == BB_KIND_NUMBERS)
    memcpy (copy->data, array->data, array->len * sizeof (double));
  else
    for (guint i = 0; i < array->len; i++)
      {
        gconstpointer from = array->data + i * self->item->size;
        gpointer to = copy->data + i * self->item->size;

        bb_record_init (self->item, to);
        for (guint f = 0; f < self->item->n_fields; f++)
          bb_field_copy (&self->item->fields[f], from, to);
      }

  return copy;
}

static gboolean
arrays_equal (const BbField *self,
              GArray        *a,
              GArray        *b)
{
  guint length_a = a != NULL ? a->len : 0;
  guint length_b = b != NULL ? b->len : 0;

  if (length_a != length_b)
    return FALSE;

  for (guint i = 0; i < length_a; i++)
    if (self->kind == BB_KIND_NUMBERS)
      {
        double number_a = g_array_index (a, double, i);
        double number_b = g_array_index (b, double, i);

        if (number_a != number_b && !(isnan (number_a) && isnan (number_b)))
          return FALSE;
      }
    else if (!bb_record_equal (self->item,
                               a->data + i * self->item->size,
                               b->data + i * self->item->size))
      return FALSE;

  return TRUE;
}

/**
 * bb_field_is_set:
 * @self: a field
 * @record: a record of the field's table
 *
 * Returns: %TRUE if the record holds a value there; an empty list or text counts as none
 */
gboolean
bb_field_is_set (const BbField *self,
                 gconstpointer  record)
{
  switch (self->kind)
    {
    case BB_KIND_NUMBER:
      return !isnan (BB_FIELD_IN (self, double, record));
    case BB_KIND_INTEGER:
      return BB_FIELD_IN (self, gint64, record) != BB_INTEGER_NONE;
    case BB_KIND_TEXT:
    case BB_KIND_DATE:
      {
        const char *text = BB_FIELD_IN (self, char *, record);

        return text != NULL && *text != '\0';
      }
    case BB_KIND_CHOICE:
    case BB_KIND_FLAG:
      return BB_FIELD_IN (self, int, record) >= 0;
    case BB_KIND_REFERENCE:
      return BB_FIELD_IN (self, gint64, record) != 0;
    case BB_KIND_LIST:
    case BB_KIND_NUMBERS:
      {
        const GArray *array = BB_FIELD_IN (self, GArray *, record);

        return array != NULL && array->len > 0;
      }
    case BB_KIND_TEXTS:
      {
        GStrv texts = BB_FIELD_IN (self, GStrv, record);

        return texts != NULL && texts[0] != NULL;
      }
    case BB_KIND_OBJECT:
      return BB_FIELD_IN (self, gpointer, record) != NULL;
    default:
      g_return_val_if_reached (FALSE);
    }
}

/**
 * bb_field_equal:
 * @self: a field
 * @record_a: a record of the field's table
 * @record_b: another record of the same table
 *
 * Returns: %TRUE if both hold the same value there, or both none
 */
gboolean
bb_field_equal (const BbField *self,
                gconstpointer  record_a,
                gconstpointer  record_b)
{
  gboolean is_set = bb_field_is_set (self, record_a);

  if (is_set != bb_field_is_set (self, record_b))
    return FALSE;
  if (!is_set)
    return TRUE;

  switch (self->kind)
    {
    case BB_KIND_NUMBER:
      return BB_FIELD_IN (self, double, record_a) == BB_FIELD_IN (self, double, record_b);
    case BB_KIND_INTEGER:
    case BB_KIND_REFERENCE:
      return BB_FIELD_IN (self, gint64, record_a) == BB_FIELD_IN (self, gint64, record_b);
    case BB_KIND_TEXT:
    case BB_KIND_DATE:
      return g_str_equal (BB_FIELD_IN (self, char *, record_a), BB_FIELD_IN (self, char *, record_b));
    case BB_KIND_CHOICE:
    case BB_KIND_FLAG:
      return BB_FIELD_IN (self, int, record_a) == BB_FIELD_IN (self, int, record_b);
    case BB_KIND_LIST:
    case BB_KIND_NUMBERS:
      return arrays_equal (self, BB_FIELD_IN (self, GArray *, record_a),
                           BB_FIELD_IN (self, GArray *, record_b));
    case BB_KIND_TEXTS:
      return g_strv_equal ((const char * const *) BB_FIELD_IN (self, GStrv, record_a),
                           (const char * const *) BB_FIELD_IN (self, GStrv, record_b));
    case BB_KIND_OBJECT:
      return bb_record_equal (self->item, BB_FIELD_IN (self, gpointer, record_a),
                              BB_FIELD_IN (self, gpointer, record_b));
    default:
      g_return_val_if_reached (FALSE);
    }
}

static void
make_empty (const BbField *self,
            gpointer       record)
{
  switch (self->kind)
    {
    case BB_KIND_NUMBER:
      BB_FIELD_AT (self, double, record) = (double) NAN;
      break;
    case BB_KIND_INTEGER:
      BB_FIELD_AT (self, gint64, record) = BB_INTEGER_NONE;
      break;
    case BB_KIND_CHOICE:
      BB_FIELD_AT (self, int, record) = BB_CHOICE_NONE;
      break;
    case BB_KIND_FLAG:
      BB_FIELD_AT (self, int, record) = BB_FLAG_NONE;
      break;
    case BB_KIND_REFERENCE:
      BB_FIELD_AT (self, gint64, record) = 0;
      break;
    case BB_KIND_TEXT:
    case BB_KIND_DATE:
    case BB_KIND_LIST:
    case BB_KIND_NUMBERS:
    case BB_KIND_TEXTS:
    case BB_KIND_OBJECT:
    default:
      BB_FIELD_AT (self, gpointer, record) = NULL;
      break;
    }
}

/**
 * bb_field_clear:
 * @self: a field
 * @record: a record of the field's table
 *
 * Frees what the record holds there and leaves it empty.
 */
void
bb_field_clear (const BbField *self,
                gpointer       record)
{
  switch (self->kind)
    {
    case BB_KIND_TEXT:
    case BB_KIND_DATE:
      g_free (BB_FIELD_AT (self, char *, record));
      break;
    case BB_KIND_LIST:
    case BB_KIND_NUMBERS:
      if (BB_FIELD_AT (self, GArray *, record) != NULL)
        clear_item_array (self, BB_FIELD_AT (self, GArray *, record));
      break;
    case BB_KIND_TEXTS:
      g_strfreev (BB_FIELD_AT (self, GStrv, record));
      break;
    case BB_KIND_OBJECT:
      bb_record_free (self->item, BB_FIELD_AT (self, gpointer, record));
      break;
    case BB_KIND_NUMBER:
    case BB_KIND_INTEGER:
    case BB_KIND_CHOICE:
    case BB_KIND_FLAG:
    case BB_KIND_REFERENCE:
    default:
      break;
    }

  make_empty (self, record);
}

/**
 * bb_field_reset:
 * @self: a field
 * @record: a record of the field's table
 *
 * Gives the record the field's default there, or leaves it empty where there is none.
 */
void
bb_field_reset (const BbField *self,
                gpointer       record)
{
  bb_field_clear (self, record);
  if (!self->fallback.set)
    return;

  switch (self->kind)
    {
    case BB_KIND_NUMBER:
      BB_FIELD_AT (self, double, record) = self->fallback.value;
      break;
    case BB_KIND_INTEGER:
      BB_FIELD_AT (self, gint64, record) = (gint64) self->fallback.value;
      break;
    case BB_KIND_CHOICE:
    case BB_KIND_FLAG:
      BB_FIELD_AT (self, int, record) = (int) self->fallback.value;
      break;
    case BB_KIND_TEXT:
    case BB_KIND_DATE:
    case BB_KIND_REFERENCE:
    case BB_KIND_LIST:
    case BB_KIND_NUMBERS:
    case BB_KIND_TEXTS:
    case BB_KIND_OBJECT:
    default:
      g_return_if_reached ();
    }
}

/**
 * bb_field_copy:
 * @self: a field
 * @from: a record of the field's table
 * @to: another record of the same table
 *
 * Replaces what @to holds there by a copy of what @from holds.
 */
void
bb_field_copy (const BbField *self,
               gconstpointer  from,
               gpointer       to)
{
  bb_field_clear (self, to);

  switch (self->kind)
    {
    case BB_KIND_NUMBER:
      BB_FIELD_AT (self, double, to) = BB_FIELD_IN (self, double, from);
      break;
    case BB_KIND_INTEGER:
    case BB_KIND_REFERENCE:
      BB_FIELD_AT (self, gint64, to) = BB_FIELD_IN (self, gint64, from);
      break;
    case BB_KIND_TEXT:
    case BB_KIND_DATE:
      BB_FIELD_AT (self, char *, to) = g_strdup (BB_FIELD_IN (self, char *, from));
      break;
    case BB_KIND_CHOICE:
    case BB_KIND_FLAG:
      BB_FIELD_AT (self, int, to) = BB_FIELD_IN (self, int, from);
      break;
    case BB_KIND_LIST:
    case BB_KIND_NUMBERS:
      BB_FIELD_AT (self, GArray *, to) = copy_array (self, BB_FIELD_IN (self, GArray *, from));
      break;
    case BB_KIND_TEXTS:
      BB_FIELD_AT (self, GStrv, to) = g_strdupv (BB_FIELD_IN (self, GStrv, from));
      break;
    case BB_KIND_OBJECT:
      if (BB_FIELD_IN (self, gpointer, from) != NULL)
        BB_FIELD_AT (self, gpointer, to) = bb_record_copy (self->item, BB_FIELD_IN (self, gpointer, from));
      break;
    default:
      g_return_if_reached ();
    }
}
