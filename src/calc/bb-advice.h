/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-recipe.h"

G_BEGIN_DECLS

/*
 * What a person should know of a recipe's settings before they print by them: where one lies outside what the
 * pretreat's supplier gives (parts of water, laydown), where one is hotter than the garment should meet
 * (bb-heat-limit.h), and where one says what another of the same recipe denies. It is advice and no error: a trial goes
 * outside a range on purpose.
 *
 * Nothing is judged without a source: an end of a range that the data sheet does not give, a garment whose fibres are
 * not known, and how long a fibre bears its heat limit, for which bb-heat-limit.h has no figure. Parts of water are
 * compared as they are written, by volume or by mass: data sheets seldom say which they mean.
 *
 * Sources: the supplier's figures in the record of the pretreat; bb-heat-limit.h; the meaning of the fields.
 */

/**
 * BbAdvice:
 * @field: the setting that it is about, of a revision
 * @text: one or more sentences, translated
 *
 * What a person should know of one setting.
 */
typedef struct {
  const BbField *field;
  char *text;
} BbAdvice;

void        bb_advice_free   (BbAdvice            *self);
GPtrArray  *bb_advise        (const BbRevision    *revision,
                              const BbSupply      *pretreat,
                              const BbBlank       *blank,
                              const BbUnitContext *units);
const char *bb_advice_find   (const GPtrArray     *advice,
                              const BbField       *field);
char       *bb_advice_join   (const GPtrArray     *advice,
                              BbStation            station,
                              const char          *separator);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbAdvice, bb_advice_free)

G_END_DECLS
