/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-exchange-error.h"

G_BEGIN_DECLS

/*
 * A book, or a part of it, as one JSON file:
 *
 *     { "format": "blankbook-book", "version": 1, "about": "…", "person": […], "blank": […], … }
 *
 * one list for each table of the book but the log of events and the notices, in the order of bb_book_tables(). Records
 * refer to each other by code; keys and seals belong to one book and are left out. A standing is known by its
 * revision, a signature by its revision and moment, a reading by its specimen and cycles, a remark on a run and an
 * entry of a lot by their numbers. A revision that comes as proven without a signature, or without the specimens that
 * this asks for, comes in on trial, with a notice. "about" is a text for people, and may be missing, as may any list.
 */

#define BB_EXCHANGE_FORMAT "blankbook-book"
#define BB_EXCHANGE_VERSION 1

/**
 * BbExchangeProgress:
 * @done: how many records are done
 * @total: how many there are
 * @data: the data given with the function
 *
 * Tells how far a long piece of work has come; called now and then on the thread that does it.
 */
typedef void (*BbExchangeProgress) (guint    done,
                                    guint    total,
                                    gpointer data);

/**
 * BbExchangeWatch:
 * @progress: (nullable): is told how far the work has come
 * @data: for @progress
 * @cancellable: (nullable): stops the work
 *
 * How a long piece of work is followed and stopped.
 */
typedef struct {
  BbExchangeProgress progress;
  gpointer data;
  GCancellable *cancellable;
} BbExchangeWatch;

/**
 * BbImported:
 * @n_added: how many records are new in the book
 * @n_same: how many the book held already, the same in every field
 *
 * What an import did.
 */
typedef struct {
  guint n_added;
  guint n_same;
} BbImported;

/* bb-import.c, bb-import-csv.c */
gboolean bb_exchange_import     (BbBook                *book,
                                 const char            *text,
                                 gsize                  length,
                                 const BbExchangeWatch *watch,
                                 BbImported            *imported,
                                 GError               **error);
gboolean bb_exchange_import_csv (BbBook                *book,
                                 const BbTable         *table,
                                 const char            *text,
                                 gsize                  length,
                                 const BbExchangeWatch *watch,
                                 BbImported            *imported,
                                 GError               **error);

/* bb-export.c */
char    *bb_exchange_export     (BbBook                *book,
                                 const gint64          *recipes,
                                 guint                  n_recipes,
                                 const BbExchangeWatch *watch,
                                 GError               **error);
char    *bb_exchange_export_csv (BbBook                *book,
                                 const BbTable         *table,
                                 GError               **error);

/* bb-built-in.c */
gboolean bb_exchange_add_plans  (BbBook                *book,
                                 BbImported            *imported,
                                 GError               **error);
gboolean bb_exchange_make_book  (const char            *path,
                                 GError               **error);
gboolean bb_exchange_make_demo  (const char            *path,
                                 const BbExchangeWatch *watch,
                                 BbImported            *imported,
                                 GError               **error);

G_END_DECLS
