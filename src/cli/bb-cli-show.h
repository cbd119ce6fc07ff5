/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-lines.h"

G_BEGIN_DECLS

/* Numbers are shown in metric shop units with a decimal point: what scripts cut out of a table is the same anywhere. */
extern const BbUnitContext bb_cli_units;

void  bb_cli_append_columns  (GString          *out,
                              GPtrArray        *rows,
                              gsize             widest);
void  bb_cli_append_recipe_line (GString            *out,
                                 const BbRecipeLine *line);
char *bb_cli_show_day        (const char       *date);
char *bb_cli_show_field      (BbBook           *book,
                              const BbTable    *table,
                              const BbField    *field,
                              gconstpointer     record);
char *bb_cli_show_settings   (BbBook           *book,
                              const BbRevision *revision);

G_END_DECLS
