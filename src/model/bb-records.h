/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-blank.h"
#include "bb-equipment.h"
#include "bb-job.h"
#include "bb-lot.h"
#include "bb-person.h"
#include "bb-recipe.h"
#include "bb-run.h"
#include "bb-scan.h"
#include "bb-signature.h"
#include "bb-supply.h"
#include "bb-wash.h"

G_BEGIN_DECLS

const BbTable * const *bb_book_tables             (guint         *n_tables);
const BbTable         *bb_book_find_table         (const char    *name);
gboolean               bb_book_table_is_exchanged (const BbTable *table);

G_END_DECLS
