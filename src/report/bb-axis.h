/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * BbScale:
 * @BB_SCALE_NUMBER: any number, with its unit
 * @BB_SCALE_CYCLES: a count of washes, from 0
 * @BB_SCALE_GRADE: a grade of a grey scale as a number from 1 to 5
 * @BB_SCALE_SHARE: a fraction, shown in per cent
 * @BB_SCALE_NAMES: places with names, counted from 1
 *
 * What stands along an axis.
 */
typedef enum {
  BB_SCALE_NUMBER = 1,
  BB_SCALE_CYCLES,
  BB_SCALE_GRADE,
  BB_SCALE_SHARE,
  BB_SCALE_NAMES,
} BbScale;

/**
 * BbTick:
 * @value: where it stands
 * @label: what is written there; empty for a line without a word
 *
 * A mark on an axis.
 */
typedef struct {
  double value;
  char *label;
} BbTick;

/**
 * BbAxis:
 * @scale: what stands along it
 * @title: what it measures
 * @unit: (nullable): the unit, of a number
 * @low: where it begins, which may be before its first mark
 * @high: where it ends, above @low
 * @ticks: (element-type BbTick): its marks, in rising order
 *
 * An axis of a chart: values to places from 0 to 1, and its marks. It draws nothing.
 */
typedef struct {
  BbScale scale;
  char *title;
  char *unit;
  double low;
  double high;
  GArray *ticks;
} BbAxis;

BbAxis *bb_axis_new_numbers (const char          *title,
                             const char          *unit,
                             double               low,
                             double               high,
                             guint                n_ticks);
BbAxis *bb_axis_new_cycles  (double               last);
BbAxis *bb_axis_new_grades  (const char          *title);
BbAxis *bb_axis_new_shares  (const char          *title);
BbAxis *bb_axis_new_names   (const char          *title,
                             const char * const  *names);
void    bb_axis_free        (BbAxis              *self);
double  bb_axis_map         (const BbAxis        *self,
                             double               value);
double  bb_axis_unmap       (const BbAxis        *self,
                             double               place);
char   *bb_axis_dup_heading (const BbAxis        *self);
char   *bb_axis_format      (const BbAxis        *self,
                             double               value);
double  bb_nice_step        (double               range,
                             guint                n_ticks);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbAxis, bb_axis_free)

G_END_DECLS
