/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-access.h"
#include "bb-book.h"

G_BEGIN_DECLS

/**
 * BbBookThread:
 *
 * A thread that works with the book on behalf of the window, by a connection of its own: the one that writes, or one
 * that reads what takes long. What it is given runs there, one after the other, each in one transaction, and answers
 * on the main context of who asked. It is asked, and closed, by one thread.
 */
#define BB_TYPE_BOOK_THREAD (bb_book_thread_get_type ())
G_DECLARE_FINAL_TYPE (BbBookThread, bb_book_thread, BB, BOOK_THREAD, GObject)

BbBookThread *bb_book_thread_new        (BbBook               *book,
                                         BbAccess              access,
                                         BbBookThread         *after);
gboolean      bb_book_thread_start      (BbBookThread         *self,
                                         GError              **error);
void          bb_book_thread_run_async  (BbBookThread         *self,
                                         gint64                person,
                                         BbBookFunc            func,
                                         gpointer              data,
                                         GDestroyNotify        free_data,
                                         GCancellable         *cancellable,
                                         GAsyncReadyCallback   callback,
                                         gpointer              user_data);
gboolean      bb_book_thread_run_finish (BbBookThread         *self,
                                         GAsyncResult         *result,
                                         GError              **error);
gpointer      bb_book_thread_get_data   (BbBookThread         *self,
                                         GAsyncResult         *result);
void          bb_book_thread_close      (BbBookThread         *self);

G_END_DECLS
