/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * A target gives fuzz_one(), and everything else is common. build-aux/fuzz links it with libFuzzer, which calls the
 * functions below by their names (LLVM's documentation, "libFuzzer"); the ordinary tests replay what it once found.
 */

/* Reads an input, and aborts if that ends otherwise than it should. FALSE where the input was refused. */
gboolean fuzz_one                (const guint8 *data,
                                  gsize         length);
void     fuzz_check_message      (const GError *error);

int      LLVMFuzzerInitialize    (int          *argc,
                                  char       ***argv);
int      LLVMFuzzerTestOneInput  (const guint8 *data,
                                  gsize         length);
gsize    LLVMFuzzerMutate        (guint8       *data,
                                  gsize         length,
                                  gsize         max_length);
gsize    LLVMFuzzerCustomMutator (guint8       *data,
                                  gsize         length,
                                  gsize         max_length,
                                  unsigned int  seed);

G_END_DECLS
