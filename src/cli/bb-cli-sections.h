/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-cli.h"

G_BEGIN_DECLS

/**
 * BbCliSection:
 * @title: what stands above it, marked for translation
 * @member: (nullable): what it is called in JSON; %NULL where the record itself holds it there
 * @table: the table of its records
 * @records: (element-type gpointer): records
 * @columns: (array zero-terminated=1): names of the fields to show, from left to right
 *
 * What belongs to a record and is shown with it. Borrowed.
 */
typedef struct {
  const char *title;
  const char *member;
  const BbTable *table;
  const GPtrArray *records;
  const char * const *columns;
} BbCliSection;

BbCliStatus bb_cli_write_record (const BbCliCommon  *common,
                                 BbBook             *book,
                                 const BbTable      *table,
                                 gconstpointer       record,
                                 const char * const *facts,
                                 const BbCliSection *sections,
                                 guint               n_sections);

G_END_DECLS
