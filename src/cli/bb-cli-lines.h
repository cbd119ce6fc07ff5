/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-cli.h"

G_BEGIN_DECLS

/* Records below each other, and one record's facts, for people and as JSON. */

GPtrArray *bb_cli_borrow_items (const GArray       *list,
                               const BbTable      *table);
GPtrArray *bb_cli_load_cards  (BbBook             *book,
                               const BbTable      *table,
                               const GArray       *ids,
                               GError            **error);
void     bb_cli_add_row       (GPtrArray          *rows,
                               const char         *first,
                               const char         *second,
                               const char         *third,
                               const char         *fourth);
void     bb_cli_add_facts     (GPtrArray          *rows,
                               BbBook             *book,
                               const BbTable      *table,
                               gconstpointer       record,
                               BbStation           station);
void     bb_cli_append_facts  (GString            *out,
                               BbBook             *book,
                               const BbTable      *table,
                               gconstpointer       record,
                               const char * const *names);
void     bb_cli_append_lines  (GString            *out,
                               BbBook             *book,
                               const BbTable      *table,
                               const GPtrArray    *lines,
                               const char * const *columns);
char    *bb_cli_lines_to_text (BbBook             *book,
                               const BbTable      *table,
                               const GPtrArray    *lines,
                               const char * const *columns,
                               const char         *empty);
gboolean bb_cli_append_json   (GString            *out,
                               BbBook             *book,
                               const BbTable      *table,
                               const GPtrArray    *lines,
                               GError            **error);
char    *bb_cli_lines_to_json (BbBook             *book,
                               const BbTable      *table,
                               const GPtrArray    *lines,
                               GError            **error);
BbCliStatus bb_cli_write_lines (const BbCliCommon  *common,
                               BbBook             *book,
                               const BbTable      *table,
                               const GPtrArray    *lines,
                               const char * const *columns,
                               const char         *empty);

G_END_DECLS
