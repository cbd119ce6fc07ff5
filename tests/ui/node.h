/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "stage.h"

G_BEGIN_DECLS

/* What a person would call a thing in a window. Toolkits and their versions have several names for some of these. */
typedef enum {
  ROLE_ANY,
  ROLE_OTHER,
  ROLE_PROGRAM,
  ROLE_WINDOW,
  ROLE_BUTTON,
  ROLE_CHECK,
  ROLE_COMBO,
  ROLE_ENTRY,
  ROLE_IMAGE,
  ROLE_ITEM,
  ROLE_LABEL,
  ROLE_LIST,
  ROLE_MENU_ITEM,
  ROLE_PANEL,
  ROLE_SCROLLER,
  ROLE_TAB,
} Role;

/* States of the accessibility protocol that tests ask for, by their numbers there. */
typedef enum {
  STATE_CHECKED = 4,
  STATE_EDITABLE = 7,
  STATE_ENABLED = 8,
  STATE_FOCUSABLE = 11,
  STATE_FOCUSED = 12,
  STATE_PRESSED = 20,
  STATE_SELECTED = 23,
  STATE_SENSITIVE = 24,
  STATE_SHOWING = 25,
  STATE_VISIBLE = 30,
} State;

/* One thing as assistive technology sees it. */
typedef struct _Node Node;
struct _Node {
  char *owner;
  char *path;
  Node *parent;
  GPtrArray *children;
  guint index;

  guint raw_role;
  Role role;
  char *name;

  /* What stands in it, where something can be typed into it. */
  char *text;
  guint64 states;
  gboolean has_box;
  GlassBox box;

  /* Whether a person can see it, if need be after scrolling. */
  gboolean shown;
};

Node     *node_new        (Node       *parent,
                           const char *owner,
                           const char *path);
void      node_free       (Node       *self);
void      node_set_role   (Node       *node,
                           guint       number);
void      node_set_states (Node       *node,
                           GVariant   *words);
void      node_set_name   (Node       *node,
                           const char *name);

Node     *node_next       (Node       *root,
                           Node       *node);
char     *node_print      (Node       *root);
gboolean  node_has_state  (const Node *self,
                           State       state);
Node     *node_get_window (Node       *self);
GVariant *node_call       (Stage      *stage,
                           const Node *self,
                           const char *interface,
                           const char *method,
                           GVariant   *arguments,
                           const char *reply_type);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Node, node_free)

G_END_DECLS
