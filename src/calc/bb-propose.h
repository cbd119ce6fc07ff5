/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-recipe.h"

G_BEGIN_DECLS

/*
 * A recipe to start from on a garment that nobody has printed, made from the nearest proven ones. Methods, products and
 * dilution are those of the nearest. Each number is the mean of the nearest and those like it, the nearer the heavier
 * (weights 1 / (distance + 0.02)), rounded to what a machine is set to: laydown to 5 g/m², lengths to 1 mm, temperature
 * to 1 °C, time to 1 s, pressure to 10 kPa. Like it is one of the same pretreat, methods and print mode. Then it is
 * held to what the supplier allows, laydown and dilution, and to the heat that the garment bears (bb-heat-limit.h).
 *
 * It is a draft: nothing is proven on this garment. Common practice, no source; a trial says whether it holds.
 */

/**
 * BbProposeFrom:
 * @revision: a proven revision
 * @distance: how far its garment lies from the wanted one, as bb-nearest.h measures it
 *
 * What a proposal is made from. Borrowed.
 */
typedef struct {
  const BbRevision *revision;
  double distance;
} BbProposeFrom;

BbRevision *bb_propose_revision (const BbBlank       *blank,
                                 const BbProposeFrom *from,
                                 guint                n_from,
                                 const BbSupply      *pretreat,
                                 const BbUnitContext *context,
                                 GPtrArray           *reasons);

G_END_DECLS
