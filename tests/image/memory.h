/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Stands between the reader and g_try_malloc(), from which all memory comes whose size a file decides: counts it, and
 * refuses it on demand. Programs with it are linked with --wrap=g_try_malloc.
 */

/**
 * Memory:
 * @n_calls: how often memory was asked for
 * @n_bytes: how much in all, whether or not it was given back
 * @first_refusal: the call that gets none, 1 for the first; 0 for no such call
 * @last_refusal: the last call that gets none
 */
typedef struct {
  guint n_calls;
  gsize n_bytes;
  guint first_refusal;
  guint last_refusal;
} Memory;

void  memory_begin (guint first_refusal,
                    guint last_refusal);
Memory memory_end  (void);

G_END_DECLS
