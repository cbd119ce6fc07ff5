/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-batch.h"
#include "bb-box.h"
#include "bb-job-sheet.h"
#include "bb-laydown.h"
#include "bb-mix.h"
#include "bb-signature.h"
#include "bb-stretch.h"

G_BEGIN_DECLS

/*
 * The bench's whole sum: from the size of the print and a count to what is poured together. It runs the calculators
 * box → laydown → batch → mix, and stretch where a container is named, each with the figures of the one before,
 * and computes nothing of its own.
 */

#define BB_WORKSHEET_IN_FIELDS(F, T) \
  BB_BOX_PRINT_FIELDS (F, T) \
  F (T, INTEGER, count, N_("Garments"), .help = N_("How many good garments are wanted."), \
     .limits = BB_BETWEEN (1, 1e6), .required = TRUE, .group = N_("This job")) \
  BB_LAYDOWN_RATE_FIELDS (F, T) \
  BB_DILUTION_FIELDS (F, T) \
  BB_BATCH_ALLOWANCE_FIELDS (F, T) \
  F (T, NUMBER, container_ml, N_("Concentrate in the container"), \
     .help = N_("What the container still holds, to see how many garments it makes; empty if not known."), \
     .quantity = BB_QUANTITY_VOLUME, .limits = BB_BETWEEN (0, 1e7), \
     .group = N_("Container and sprayer")) \
  BB_BOX_REACH_FIELDS (F, T)

BB_DECLARE_TABLE (BbWorksheetIn, bb_worksheet_in, BB_WORKSHEET_IN_FIELDS);

/**
 * BbWorksheet:
 * @box: the rectangle to spray
 * @laydown: what one garment takes
 * @batch: what to make up
 * @mix: what to pour together
 * @has_stretch: whether @stretch holds anything
 * @stretch: how many garments the container still makes
 *
 * The results of the calculators, step by step. It owns nothing.
 */
typedef struct {
  BbBoxOut box;
  BbLaydownOut laydown;
  BbBatchOut batch;
  BbMixOut mix;
  gboolean has_stretch;
  BbStretchOut stretch;
} BbWorksheet;

gboolean bb_worksheet_compute             (const BbWorksheetIn *in,
                                           BbWorksheet         *out,
                                           GError             **error);
gboolean bb_worksheet_box                 (const BbWorksheetIn *in,
                                           BbBoxOut            *out,
                                           GError             **error);
void     bb_worksheet_take_revision       (BbWorksheetIn       *in,
                                           const BbRevision    *revision,
                                           const BbSupply      *product);
void     bb_worksheet_give_revision       (const BbWorksheetIn *in,
                                           BbRevision          *revision);
void     bb_worksheet_take_shop           (BbWorksheetIn       *in,
                                           const BbShop        *shop);
gboolean bb_worksheet_take_container      (BbWorksheetIn       *in,
                                           const BbMixSheet    *mix);
char    *bb_worksheet_describe_own_losses (const BbWorksheetIn *in,
                                           const BbShop        *shop);
char    *bb_worksheet_describe_departures (const BbWorksheetIn *in,
                                           const BbRevision    *revision);

G_END_DECLS
