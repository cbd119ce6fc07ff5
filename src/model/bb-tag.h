/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * BbTagKind:
 * @BB_TAG_JOB: a job, by its number
 * @BB_TAG_RECIPE: a recipe, by its code, or one revision of it, as `CODE.2`
 * @BB_TAG_SPECIMEN: a specimen of a wash test, by what is written on it
 * @BB_TAG_LOT: a container, by its code
 *
 * What a label names.
 */
typedef enum {
  BB_TAG_JOB = 1,
  BB_TAG_RECIPE,
  BB_TAG_SPECIMEN,
  BB_TAG_LOT,
} BbTagKind;

char    *bb_tag_to_text (BbTagKind    kind,
                         const char  *code);
gboolean bb_tag_parse   (const char  *text,
                         BbTagKind   *kind,
                         char       **code);

G_END_DECLS
