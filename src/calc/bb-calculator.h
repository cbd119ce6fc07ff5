/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-error.h"
#include "bb-field.h"

G_BEGIN_DECLS

typedef gboolean (*BbCalculate) (gconstpointer in,
                                 gpointer      out,
                                 GError      **error);

/**
 * BbCalculator:
 * @name: its name on the command line
 * @title: what a person calls it, marked for translation
 * @summary: one sentence that says what it computes
 * @assumes: what has to hold for the result to mean anything
 * @source: where its formula and constants come from
 * @in: the table of its input
 * @out: the table of its output
 * @calculate: the computation; @in is valid by its table, @out holds nothing yet
 *
 * A pure function from one record to another, described so that the window, the command line and the docs
 * need no further knowledge of it.
 */
typedef struct {
  const char *name;
  const char *title;
  const char *summary;
  const char *assumes;
  const char *source;
  const BbTable *in;
  const BbTable *out;
  BbCalculate calculate;
} BbCalculator;

gboolean bb_calculator_run (const BbCalculator *self,
                            gconstpointer       in,
                            gpointer            out,
                            GError            **error);

/*
 * A calculator's file declares its function as
 *
 *     gboolean bb_calc_thing (const BbThingIn *in, BbThingOut *out, GError **error);
 *
 * and describes it with BB_DEFINE_CALCULATOR (Thing, thing, "thing", N_("Thing"), .summary = …, …).
 * Callers in C that hold the input in a struct call bb_calc_thing() through bb_calculator_run(), so that
 * nothing is computed from values that the tables refuse.
 */
#define BB_DECLARE_CALCULATOR(Name, name_) \
  gboolean bb_calc_##name_ (const Bb##Name##In *in, Bb##Name##Out *out, GError **error); \
  extern const BbCalculator bb_##name_##_calculator

#define BB_DEFINE_CALCULATOR(Name, name_, text, title_, ...) \
  static gboolean \
  calculate_##name_ (gconstpointer in, gpointer out, GError **error) \
  { \
    return bb_calc_##name_ (in, out, error); \
  } \
  const BbCalculator bb_##name_##_calculator = { \
    .name = text, .title = title_, .in = &bb_##name_##_in_table, .out = &bb_##name_##_out_table, \
    .calculate = calculate_##name_, __VA_ARGS__ \
  };

G_END_DECLS
