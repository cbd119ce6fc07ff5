/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbReadingTable:
 *
 * The specimens that have to be graded now, a row each, and what is read of them: filled in by keys, and saved all at
 * once or not at all. A window of its own. Rows in which nothing was entered are left alone.
 */
#define BB_TYPE_READING_TABLE (bb_reading_table_get_type ())
G_DECLARE_FINAL_TYPE (BbReadingTable, bb_reading_table, BB, READING_TABLE, AdwWindow)

GtkWidget *bb_reading_table_new (GtkWindow *parent,
                                 BbSession *session);

G_END_DECLS
