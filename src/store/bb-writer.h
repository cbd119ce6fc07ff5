/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"

G_BEGIN_DECLS

/**
 * BbWriter:
 *
 * The one thread that writes the book on behalf of the window. It owns a connection of its own; what it is
 * given runs there, one after the other, each in one transaction, and answers on the caller's main context.
 */
#define BB_TYPE_WRITER (bb_writer_get_type ())
G_DECLARE_FINAL_TYPE (BbWriter, bb_writer, BB, WRITER, GObject)

BbWriter *bb_writer_new          (const char          *path,
                                  GError             **error);
void      bb_writer_run_async    (BbWriter            *self,
                                  gint64               person,
                                  BbBookFunc           func,
                                  gpointer             data,
                                  GDestroyNotify       free_data,
                                  GCancellable        *cancellable,
                                  GAsyncReadyCallback  callback,
                                  gpointer             user_data);
gboolean  bb_writer_run_finish   (BbWriter            *self,
                                  GAsyncResult        *result,
                                  GError             **error);
gpointer  bb_writer_get_data     (BbWriter            *self,
                                  GAsyncResult        *result);
void      bb_writer_close        (BbWriter            *self);

G_END_DECLS
