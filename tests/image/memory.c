/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "memory.h"

/* The linker's names: what the reader calls, and what it would have called (ld's manual, "--wrap"). */
gpointer __wrap_g_try_malloc (gsize n_bytes);
gpointer __real_g_try_malloc (gsize n_bytes);

/* There is one allocator, and tests have one thread. */
static Memory memory;

/* From now on calls are counted, and those from the first to the last that shall be are refused. */
void
memory_begin (guint first_refusal,
              guint last_refusal)
{
  memory = (Memory) { .first_refusal = first_refusal, .last_refusal = last_refusal };
}

/* What was asked for since then; nothing is refused any more. */
Memory
memory_end (void)
{
  Memory ended = memory;

  memory_begin (0, 0);

  return ended;
}

gpointer
__wrap_g_try_malloc (gsize n_bytes)
{
  memory.n_calls++;
  memory.n_bytes += n_bytes;
  if (memory.n_calls >= memory.first_refusal && memory.n_calls <= memory.last_refusal)
    return NULL;

  return __real_g_try_malloc (n_bytes);
}
