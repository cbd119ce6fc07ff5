/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-error.h"
#include "bb-json-scan.h"

G_BEGIN_DECLS

typedef enum {
  EXPECT_VALUE,
  EXPECT_VALUE_OR_END,
  EXPECT_KEY,
  EXPECT_KEY_OR_END,
  EXPECT_COMMA_OR_END,
  EXPECT_NOTHING,
} BbJsonExpect;

typedef struct {
  char *key;
  GHashTable *keys;
  gsize index;
} BbJsonLevel;

typedef struct {
  const char *text;
  const char *p;
  const char *end;
  BbJsonLevel levels[BB_JSON_DEPTH];
  guint depth;
  BbJsonExpect expect;
  GString *rewritten;
  const char *copied_to;
  GError *refusal;
  GError **error;
} BbJsonScan;

void     _bb_json_scan_refuse (BbJsonScan   *self,
                               BbModelError  code,
                               const char   *format,
                               ...) G_GNUC_PRINTF (3, 4);
gboolean _bb_json_scan_fail   (BbJsonScan   *self,
                               const char   *what);

gboolean _bb_json_scan_string (BbJsonScan   *self,
                               GString      *decoded);
gboolean _bb_json_scan_number (BbJsonScan   *self);
gboolean _bb_json_scan_word   (BbJsonScan   *self);

G_END_DECLS
