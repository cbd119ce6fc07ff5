/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-artwork.h"
#include "bb-placement.h"
#include "bb-print-mode.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbArtworkFacts:
 *
 * What a placed artwork says about its print, in numbers and words: size and resolution, the print mode that is advised
 * and why, what to look at before printing, and how much of it each ink covers.
 */
#define BB_TYPE_ARTWORK_FACTS (bb_artwork_facts_get_type ())
G_DECLARE_FINAL_TYPE (BbArtworkFacts, bb_artwork_facts, BB, ARTWORK_FACTS, AdwBin)

void bb_artwork_facts_show        (BbArtworkFacts       *self,
                                   const BbUnitContext  *units,
                                   const BbArtworkIn    *in,
                                   const BbArtworkOut   *out,
                                   const BbCoverage     *coverage,
                                   const BbRectangle    *art);
void bb_artwork_facts_show_advice (BbArtworkFacts       *self,
                                   const BbPrintModeOut *advice,
                                   int                   recipe_mode);

G_END_DECLS
