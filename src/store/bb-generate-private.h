/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book-private.h"
#include "bb-generate.h"

G_BEGIN_DECLS

#define BB_GENERATED_PEOPLE 6
#define BB_GENERATED_SIGNER 1
#define BB_GENERATED_LOTS 200
#define BB_GENERATED_BLANKS 400
#define BB_GENERATED_COLOURS 6 /* of each blank */

/*
 * A book in the making. What was made is found by its place: keys count from 1.
 *
 * @words: what names are put together from
 * @colourways: their keys, blank by blank
 * @pretreat: key of the supply that all recipes use
 * @revisions: keys of the revisions made so far
 */
typedef struct {
  BbBook *book;
  const BbGenerate *plan;
  GRand *rand;
  GPtrArray *words;
  gint64 colourways[BB_GENERATED_BLANKS * BB_GENERATED_COLOURS];
  gint64 pretreat;
  GArray *revisions;
  guint n_customers;
  guint n_runs;
} BbGenerator;

guint       _bb_generator_below       (BbGenerator    *self,
                                       guint           n);
guint       _bb_generator_often       (BbGenerator    *self,
                                       guint           n);
const char *_bb_generator_word        (BbGenerator    *self);
const char *_bb_generator_garment     (BbGenerator    *self);
char       *_bb_generator_dup_day     (double          share);
gboolean    _bb_generator_add         (BbGenerator    *self,
                                       const BbTable  *table,
                                       gpointer        record,
                                       GError        **error);
gboolean    _bb_generator_add_shop    (BbGenerator    *self,
                                       GError        **error);
gboolean    _bb_generator_add_recipes (BbGenerator    *self,
                                       GError        **error);
gboolean    _bb_generator_add_jobs    (BbGenerator    *self,
                                       GError        **error);

G_END_DECLS
