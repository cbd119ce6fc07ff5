/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tree.h"

G_BEGIN_DECLS

/*
 * What a person does with a window: looks for things by what they are called, presses, types, chooses and reads. Each
 * waits until it can be done, and ends the test with a look at the window where it never can.
 */

Node    *hand_look        (Stage      *stage,
                           Role        role,
                           const char *name,
                           Node      **tree);
gboolean hand_sees        (Stage      *stage,
                           const char *text);
void     hand_wait_window (Stage      *stage,
                           const char *title);
void     hand_expect      (Stage      *stage,
                           const char *text);
void     hand_expect_not  (Stage      *stage,
                           const char *text);
void     hand_expect_state (Stage      *stage,
                           Role        role,
                           const char *name,
                           State       state);

char    *hand_read        (Stage      *stage,
                           const char *name);
void     hand_expect_text (Stage      *stage,
                           const char *name,
                           const char *text);
char    *hand_read_figure (Stage      *stage,
                           const char *title,
                           char      **note);

void     hand_press       (Stage      *stage,
                           Role        role,
                           const char *name);
void     hand_select      (Stage      *stage,
                           const char *name);
void     hand_enter       (Stage      *stage,
                           const char *name,
                           const char *text);
void     hand_choose      (Stage      *stage,
                           const char *name,
                           const char *item);
void     hand_keys        (Stage      *stage,
                           const char *keys);
void     hand_move_to     (Stage      *stage,
                           const char *key,
                           const char *name);

void     hand_resize      (Stage      *stage,
                           int         width,
                           int         height);
void     hand_picture     (Stage      *stage,
                           const char *path);
void     hand_close       (Stage      *stage);

G_END_DECLS
