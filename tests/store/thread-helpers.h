/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book-thread.h"

G_BEGIN_DECLS

/* Longer than any of these tasks takes, shorter than the test's own limit. */
#define PATIENCE_S 20

/* What became of what was asked of threads with the book. */
typedef struct {
  guint pending;
  guint kept;
  guint cancelled;
  guint refused;
  GThread *main_thread;
  gint64 last_id;
  gint ran;
} Tally;

void     thread_wait_for          (Tally         *tally);

/* Functions that save the blank that they are given. */
gboolean thread_save_blank        (BbBook        *book,
                                   gpointer       data,
                                   GError       **error);
gboolean thread_save_blank_slowly (BbBook        *book,
                                   gpointer       data,
                                   GError       **error);
void     thread_ask               (BbBookThread  *thread,
                                   guint          number,
                                   BbBookFunc     func,
                                   GCancellable  *cancellable,
                                   Tally         *tally);
void     thread_close             (BbBookThread  *thread);

G_END_DECLS
