/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-quick"

#include "bb-quick.h"

#include <string.h>

#include "bb-grade.h"

/* By index: grades from 5 to 1 in half steps, and everything else. */
static const char grade_keys[] = "594837261";
static const char other_keys[] = "123456789";

static const char *
get_keys (const BbField *field)
{
  return field->choices == &bb_grade_choices ? grade_keys : other_keys;
}

/**
 * bb_quick_get_n:
 * @field: a quick field
 *
 * Returns: how many values it can have
 */
guint
bb_quick_get_n (const BbField *field)
{
  g_return_val_if_fail (field != NULL && field->quick, 0);

  return field->kind == BB_KIND_CHOICE ? field->choices->n_items
                                       : (guint) (field->limits.maximum - field->limits.minimum) + 1;
}

/**
 * bb_quick_dup_title:
 * @field: a quick field
 * @index: which of its values
 *
 * Returns: (transfer full): what a person reads
 */
char *
bb_quick_dup_title (const BbField *field,
                    guint          index)
{
  g_return_val_if_fail (field != NULL && field->quick, NULL);

  return field->kind == BB_KIND_CHOICE ? g_strdup (bb_choices_get_title (field->choices, (int) index))
                                       : g_strdup_printf ("%d", (int) field->limits.minimum + (int) index);
}

/**
 * bb_quick_get_key:
 * @field: a quick field
 * @index: which of its values
 *
 * Returns: the character of its key
 */
char
bb_quick_get_key (const BbField *field,
                  guint          index)
{
  g_return_val_if_fail (field != NULL && index < strlen (other_keys), '0');

  return get_keys (field)[index];
}

/**
 * bb_quick_find:
 * @field: a quick field
 * @keyval: the key that was pressed, also one of the number pad
 *
 * Returns: the value that it stands for, -1 for none
 */
int
bb_quick_find (const BbField *field,
               guint          keyval)
{
  const gunichar character = gdk_keyval_to_unicode (keyval);
  const char *keys = get_keys (field);
  const char *key = character != 0 && character < 128 ? strchr (keys, (int) character) : NULL;

  return key != NULL && key - keys < (gssize) bb_quick_get_n (field) ? (int) (key - keys) : -1;
}

/**
 * bb_quick_get:
 * @field: a quick field
 * @record: a record
 *
 * Returns: which value the record has, -1 for none
 */
int
bb_quick_get (const BbField *field,
              gconstpointer  record)
{
  if (!bb_field_is_set (field, record))
    return -1;

  return field->kind == BB_KIND_CHOICE
           ? bb_field_get_choice (field, record)
           : (int) (bb_field_get_integer (field, record) - (gint64) field->limits.minimum);
}

/**
 * bb_quick_set:
 * @field: a quick field
 * @record: a record
 * @index: which value it gets, -1 for none
 */
void
bb_quick_set (const BbField *field,
              gpointer       record,
              int            index)
{
  if (field->kind == BB_KIND_CHOICE)
    bb_field_set_choice (field, record, index < 0 ? BB_CHOICE_NONE : index);
  else
    bb_field_set_integer (field, record, index < 0 ? BB_INTEGER_NONE : (gint64) field->limits.minimum + index);
}
