/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbKeeperDescribe:
 * @owner: whose the keeper is
 *
 * Returns: (transfer full) (nullable): what is half typed, as a text; %NULL for nothing
 */
typedef char *(*BbKeeperDescribe) (gpointer owner);

/**
 * BbKeeper:
 *
 * Keeps in the book what a person types, soon after they typed it, so that it survives the window and what may befall
 * the machine.
 */
#define BB_TYPE_KEEPER (bb_keeper_get_type ())
G_DECLARE_FINAL_TYPE (BbKeeper, bb_keeper, BB, KEEPER, GObject)

BbKeeper   *bb_keeper_new       (BbSession        *session,
                                 const char       *key,
                                 BbKeeperDescribe  describe,
                                 gpointer          owner);
void        bb_keeper_keep      (BbKeeper         *self);
void        bb_keeper_keep_soon (BbKeeper         *self);
void        bb_keeper_rest      (BbKeeper         *self);
void        bb_keeper_forget    (BbKeeper         *self);
void        bb_keeper_put_aside (BbKeeper         *self,
                                 const char       *name);
const char *bb_keeper_get_key   (BbKeeper         *self);
char       *bb_keeper_dup_kept  (BbKeeper         *self);

G_END_DECLS
