/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tree.h"

G_BEGIN_DECLS

/* How long to wait between two looks; a look itself takes about as long. */
#define LOOK_PAUSE_MS 60

/* What is looked for: those of these that the kind of look needs. */
typedef struct {
  Role role;
  const char *name;
  const char *text;
  State state;
} Wanted;

/* Finds something in a tree; a condition, for which a fresh tree is looked at until it holds. */
typedef Node *(*LookFunc) (Node         *root,
                           const Wanted *wanted);

Node    *look_for_entry    (Node         *root,
                            const Wanted *wanted);
Node    *look_for_figure   (Node         *root,
                            const Wanted *wanted);
Node    *look_for_item     (Node         *root,
                            const Wanted *wanted);
Node    *look_for_name     (Node         *root,
                            const Wanted *wanted);
Node    *look_for_state    (Node         *root,
                            const Wanted *wanted);
Node    *look_for_text     (Node         *root,
                            const Wanted *wanted);
Node    *look_for_window   (Node         *root,
                            const Wanted *wanted);
Node    *look_without_text (Node         *root,
                            const Wanted *wanted);

gboolean look_is_called    (Node         *node,
                            const char   *name);
Node    *look_wait         (Stage        *stage,
                            LookFunc      look,
                            const Wanted *wanted,
                            Node        **tree);
gint64   look_get_limit    (void);
void     look_give_up      (Stage        *stage,
                            const char   *what,
                            const char   *name) G_GNUC_NORETURN;

G_END_DECLS
