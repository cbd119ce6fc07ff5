/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-field-row"

#include "bb-field-row-type.h"

#include "bb-entry-row.h"
#include "bb-list-row.h"
#include "bb-note-row.h"
#include "bb-pick-row.h"
#include "bb-quick-row.h"

/**
 * bb_field_row_type_for:
 * @field: a field
 *
 * Returns: the type of #BbFieldRow whose editor fits what the field holds
 */
GType
bb_field_row_type_for (const BbField *field)
{
  if (field->quick)
    return BB_TYPE_QUICK_ROW;

  switch (field->kind)
    {
    case BB_KIND_CHOICE:
    case BB_KIND_REFERENCE:
    case BB_KIND_FLAG:
      return BB_TYPE_PICK_ROW;
    case BB_KIND_LIST:
      return BB_TYPE_LIST_ROW;
    case BB_KIND_TEXT:
      if (field->names != NULL)
        return BB_TYPE_PICK_ROW;
      return field->multiline ? BB_TYPE_NOTE_ROW : BB_TYPE_ENTRY_ROW;
    case BB_KIND_NUMBER:
    case BB_KIND_INTEGER:
    case BB_KIND_DATE:
    case BB_KIND_NUMBERS:
    case BB_KIND_TEXTS:
    case BB_KIND_OBJECT:
    default:
      return BB_TYPE_ENTRY_ROW;
    }
}
