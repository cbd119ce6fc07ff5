/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-chart.h"
#include "reference.h"

G_BEGIN_DECLS

/* Published lives, tests/reference/km-aml-data.csv, written into a book as a wash log: a week is a wash, and who failed
 * was good one wash before. @group is a group of theirs, or "all". */
void            lives_add         (BbBook          *book,
                                   gint64           revision,
                                   const char      *group);
void            lives_add_reading (BbBook          *book,
                                   gint64           test,
                                   gint64           cycles,
                                   BbGrade          change);

/* The published curve of a group, tests/reference/km-aml.csv, against one that is drawn. */
void            lives_check_curve (const BbSeries  *curve,
                                   const char      *group);
const BbSeries *lives_find_series (const BbChart   *chart,
                                   const char      *name);
const BbPoint  *lives_get_point   (const BbSeries  *series,
                                   guint            i);

G_END_DECLS
