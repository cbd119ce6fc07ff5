/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field-hint.h"
#include "bb-field-row.h"

G_BEGIN_DECLS

/* For the row's own files. */
typedef struct {
  /* template */
  GtkBox *column;
  GtkBox *line;
  GtkLabel *title_label;
  GtkBox *control;
  GtkLabel *unit_label;
  BbFieldHint *hint;

  /* what takes the keyboard, in the editor that the subclass brought */
  GtkWidget *focus;

  /* owned */
  BbSession *session;

  const BbTable *table;
  const BbField *field;
  gboolean touched;
} BbFieldRowPrivate;

BbFieldRowPrivate *_bb_field_row_get_private (BbFieldRow *self);

G_END_DECLS
