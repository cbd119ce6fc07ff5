/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "fuzz.h"

#include <string.h>

/* Whatever stands in an input, what is said of it is one line of text. */
void
fuzz_check_message (const GError *error)
{
  g_assert_nonnull (error);
  g_assert_true (*error->message != '\0');
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  for (const char *p = error->message; *p != '\0'; p++)
    g_assert_false (g_ascii_iscntrl (*p));
}

/* A warning is a fault, as in the tests. */
int
LLVMFuzzerInitialize (G_GNUC_UNUSED int    *argc,
                      G_GNUC_UNUSED char ***argv)
{
  g_log_set_always_fatal (G_LOG_LEVEL_CRITICAL | G_LOG_LEVEL_WARNING | G_LOG_FATAL_MASK);

  return 0;
}

int
LLVMFuzzerTestOneInput (const guint8 *data,
                        gsize         length)
{
  fuzz_one (data, length);

  return 0;
}
