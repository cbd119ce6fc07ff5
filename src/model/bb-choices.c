/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-choices.h"

#include <glib/gi18n-lib.h>

/**
 * bb_choices_find:
 * @self: a set of choices
 * @key: (nullable): a stored word
 *
 * Returns: the index of @key in the set, or %BB_CHOICE_NONE
 */
int
bb_choices_find (const BbChoices *self,
                 const char      *key)
{
  g_return_val_if_fail (self != NULL, BB_CHOICE_NONE);

  for (guint i = 0; key != NULL && i < self->n_items; i++)
    if (g_str_equal (self->items[i].key, key))
      return (int) i;

  return BB_CHOICE_NONE;
}

/**
 * bb_choices_get_key:
 * @self: a set of choices
 * @index: an index into the set, or %BB_CHOICE_NONE
 *
 * Returns: (nullable): the stored word, or %NULL where nothing is chosen
 */
const char *
bb_choices_get_key (const BbChoices *self,
                    int              index)
{
  g_return_val_if_fail (self != NULL, NULL);

  return index >= 0 && (guint) index < self->n_items ? self->items[index].key : NULL;
}

/**
 * bb_choices_get_title:
 * @self: a set of choices
 * @index: an index into the set, or %BB_CHOICE_NONE
 *
 * Returns: (nullable): the translated title, or %NULL where nothing is chosen
 */
const char *
bb_choices_get_title (const BbChoices *self,
                      int              index)
{
  g_return_val_if_fail (self != NULL, NULL);

  return index >= 0 && (guint) index < self->n_items ? _(self->items[index].title) : NULL;
}
