/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-session.h"

G_BEGIN_DECLS

/* What is done at the shelf and at the machines by one press, today. */

void bb_session_open_lot         (BbSession         *self,
                                  gint64             lot);
void bb_session_note_calibration (BbSession         *self,
                                  const BbEquipment *machine);
void bb_session_undo_calibration (BbSession         *self,
                                  gint64             equipment,
                                  const char        *day);

G_END_DECLS
