/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-recall.h"

G_BEGIN_DECLS

gboolean _bb_recall_search     (BbBook          *self,
                                const BbTable   *table,
                                const BbRecall  *recall,
                                const char      *text,
                                GArray          *ids,
                                GArray          *colourways,
                                GError         **error);
gboolean _bb_recall_find_thing (BbBook          *self,
                                const char      *text,
                                BbRecalled      *recalled,
                                GError         **error);

G_END_DECLS
