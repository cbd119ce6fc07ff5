/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-form"

#include "bb-form.h"

#include <string.h>

#include "bb-text.h"

/**
 * bb_form_show_fault:
 * @self: a form
 * @message: what is wrong; a rule between fields and a refusal of the book name the field they speak of before a colon
 * @even_if_untouched: whether to speak of what the person has not come to yet
 *
 * Says what is wrong at the field itself.
 *
 * Returns: %FALSE if the message speaks of no field that the form asks for, and has to be said elsewhere
 */
gboolean
bb_form_show_fault (BbForm     *self,
                    const char *message,
                    gboolean    even_if_untouched)
{
  const char *colon = NULL;
  g_autofree char *name = NULL;
  const BbField *field = NULL;
  BbFieldRow *row = NULL;

  g_return_val_if_fail (BB_IS_FORM (self) && message != NULL, FALSE);

  colon = strstr (message, ": ");
  name = colon != NULL ? g_strndup (message, (gsize) (colon - message)) : NULL;
  field = name != NULL ? bb_table_find_field (bb_form_get_table (self), name) : NULL;
  row = field != NULL ? bb_form_find_row (self, field) : NULL;
  if (row == NULL)
    return FALSE;
  if (even_if_untouched || bb_field_row_is_touched (row))
    {
      g_autofree char *sentence = bb_text_to_sentence (colon + strlen (": "));

      bb_field_row_set_message (row, sentence);
    }

  return TRUE;
}
