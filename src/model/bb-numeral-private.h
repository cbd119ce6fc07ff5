/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * BbNumeral:
 * @value: the number, without a sign
 * @whole: it was written as a whole number
 * @fraction: it was written with a fraction, like 14 1/2
 */
typedef struct {
  double value;
  gboolean whole;
  gboolean fraction;
} BbNumeral;

char    *_bb_text_fold     (const char  *text,
                            GError     **error);
char    *_bb_text_echo     (const char  *text);
gboolean _bb_numeral_ahead (const char  *at,
                            const char  *decimal);
gboolean _bb_numeral_read  (const char **at,
                            const char  *decimal,
                            BbNumeral   *numeral,
                            GError     **error);
gboolean _bb_clock_read    (const char  *text,
                            double      *seconds,
                            GError     **error);

G_END_DECLS
