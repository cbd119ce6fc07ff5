/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-quick-row"

#include "bb-quick-row.h"

#include "bb-quick-buttons.h"
#include "bb-quick.h"

struct _BbQuickRow
{
  BbFieldRow parent_instance;

  BbQuickButtons *buttons;

  /* The same by an instrument; NULL where there is no such field. */
  const BbField *measured;
};

G_DEFINE_FINAL_TYPE (BbQuickRow, bb_quick_row, BB_TYPE_FIELD_ROW)

static void
changed_cb (BbQuickRow *self)
{
  bb_field_row_edited (BB_FIELD_ROW (self));
}

static void
bb_quick_row_build (BbFieldRow *row)
{
  BbQuickRow *self = BB_QUICK_ROW (row);
  const BbField *field = bb_field_row_get_field (row);
  g_autofree char *name = g_strconcat (field->name, "_measured", NULL);

  self->measured = bb_table_find_field (bb_field_row_get_table (row), name);
  self->buttons = BB_QUICK_BUTTONS (bb_quick_buttons_new (field));
  g_signal_connect_swapped (self->buttons, "changed", G_CALLBACK (changed_cb), self);
  bb_field_row_set_editor (row, GTK_WIDGET (self->buttons), GTK_WIDGET (self->buttons));
}

static void
bb_quick_row_load (BbFieldRow    *row,
                   gconstpointer  record)
{
  BbQuickRow *self = BB_QUICK_ROW (row);

  bb_quick_buttons_set_chosen (self->buttons, bb_quick_get (bb_field_row_get_field (row), record));
  if (self->measured != NULL)
    bb_quick_buttons_set_measured (self->buttons, bb_quick_get (self->measured, record));
}

static gboolean
bb_quick_row_store (BbFieldRow  *row,
                    gpointer     record,
                    char       **message)
{
  (void) message;

  bb_quick_set (bb_field_row_get_field (row), record, bb_quick_buttons_get_chosen (BB_QUICK_ROW (row)->buttons));

  return TRUE;
}

static char *
bb_quick_row_dup_state (BbFieldRow *row)
{
  return g_strdup_printf ("%d", bb_quick_buttons_get_chosen (BB_QUICK_ROW (row)->buttons));
}

static void
bb_quick_row_set_state (BbFieldRow  *row,
                        const char  *state,
                        BbUnitSystem system)
{
  (void) system;

  bb_quick_buttons_set_chosen (BB_QUICK_ROW (row)->buttons, (int) g_ascii_strtoll (state, NULL, 10));
}

static void
bb_quick_row_class_init (BbQuickRowClass *klass)
{
  BbFieldRowClass *row_class = BB_FIELD_ROW_CLASS (klass);

  row_class->build = bb_quick_row_build;
  row_class->load = bb_quick_row_load;
  row_class->store = bb_quick_row_store;
  row_class->dup_state = bb_quick_row_dup_state;
  row_class->set_state = bb_quick_row_set_state;
}

static void
bb_quick_row_init (BbQuickRow *self)
{
  (void) self;
}
