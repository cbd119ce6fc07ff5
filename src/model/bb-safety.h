/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field.h"

G_BEGIN_DECLS

/**
 * BbSafetyKind:
 *
 * What a note warns of.
 */
typedef enum {
  BB_SAFETY_CHEMICAL = 1,
  BB_SAFETY_HEAT,
  BB_SAFETY_MACHINE,
} BbSafetyKind;

/**
 * BbSafetyNote:
 * @station: the step it belongs to
 * @kind: what it warns of
 * @title: what it is about, marked for translation
 * @brief: one line to stand beside the step, marked for translation
 * @text: the whole note, marked for translation
 *
 * The usual cautions of the trade: common practice, no source. They never stand above the supplier's safety data
 * sheet, the machine's manual and local rules, and say so.
 */
typedef struct {
  BbStation station;
  BbSafetyKind kind;
  const char *title;
  const char *brief;
  const char *text;
} BbSafetyNote;

/**
 * BbFirstAid:
 * @title: what has happened, marked for translation
 * @text: what to do at once, marked for translation
 *
 * What helps before a trained person comes.
 */
typedef struct {
  const char *title;
  const char *text;
} BbFirstAid;

const BbSafetyNote *bb_safety_notes      (guint     *n_notes);
const BbSafetyNote *bb_safety_find       (BbStation  station,
                                          guint      nth);
const BbFirstAid   *bb_safety_first_aid  (guint     *n_items);
const char         *bb_safety_kind_title (BbSafetyKind kind);
const char         *bb_safety_disclaimer (void);

G_END_DECLS
