/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-error.h"
#include "bb-json.h"

G_BEGIN_DECLS

/* One pass over a record: how to read, where in it we stand, and where to complain. */
typedef struct {
  const BbJsonReading *reading;
  GString *path;
  GError **error;
} BbJsonReader;

gboolean _bb_json_refuse       (BbJsonReader  *self,
                                BbModelError   code,
                                const char    *format,
                                ...) G_GNUC_PRINTF (3, 4);
gboolean _bb_json_refuse_value (BbJsonReader  *self,
                                JsonNode      *node,
                                const char    *wanted);
gboolean _bb_json_holds_number (JsonNode      *node);
gboolean _bb_json_holds        (JsonNode      *node,
                                GType          type);
gboolean _bb_json_read_single  (BbJsonReader  *self,
                                const BbField *field,
                                JsonNode      *node,
                                gpointer       record);

G_END_DECLS
