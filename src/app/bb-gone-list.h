/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbGoneInfo:
 * @table: the table of what belongs to another record
 * @count: says how many of them are out of use
 * @title: says which one a record is
 *
 * What a #BbGoneList holds.
 */
typedef struct {
  const BbTable *table;
  char *(*count) (guint n);
  char *(*title) (BbSession *session, gconstpointer record);
} BbGoneInfo;

/**
 * BbGoneList:
 *
 * What belonged to a record and is out of use, folded away, each to be put back. It is seen only where there is some.
 */
#define BB_TYPE_GONE_LIST (bb_gone_list_get_type ())
G_DECLARE_FINAL_TYPE (BbGoneList, bb_gone_list, BB, GONE_LIST, AdwBin)

void     bb_gone_list_show  (BbGoneList       *self,
                             BbSession        *session,
                             const BbGoneInfo *info,
                             const BbTable    *owner,
                             gint64            id,
                             gboolean          is_fixed);
gboolean bb_gone_list_focus (BbGoneList       *self,
                             gint64            id);

G_END_DECLS
