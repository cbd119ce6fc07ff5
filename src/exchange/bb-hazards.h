/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * BbHazards:
 *
 * The wording of hazard and precautionary statements by their codes, in the languages of the regulation.
 */
typedef struct _BbHazards BbHazards;

BbHazards  *bb_hazards_new       (GBytes      *json,
                                  GError     **error);
void        bb_hazards_free      (BbHazards   *self);
const char *bb_hazards_find      (BbHazards   *self,
                                  const char  *code,
                                  const char * const *languages);
char       *bb_hazards_describe  (BbHazards   *self,
                                  const char  *codes,
                                  const char * const *languages);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbHazards, bb_hazards_free)

G_END_DECLS
