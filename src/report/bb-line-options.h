/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-quantity.h"

G_BEGIN_DECLS

/**
 * BbLineOption:
 * @revision: key of a revision
 * @name: its recipe's name and its number, for a person
 * @state: its #BbState
 * @why: what speaks for it, and in what its garment differs, in a sentence or two
 * @is_recalled: whether it is the proven one that this garment is printed by; the others lie near to that
 *
 * A revision that a line of a job could be printed by.
 */
typedef struct {
  gint64 revision;
  char *name;
  int state;
  char *why;
  gboolean is_recalled;
} BbLineOption;

GPtrArray *bb_line_options_load (BbBook               *book,
                                 gint64                customer,
                                 gint64                colourway,
                                 const BbUnitContext  *units,
                                 GError              **error);

G_END_DECLS
