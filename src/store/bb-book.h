/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "bb-lines.h"
#include "bb-narrow.h"
#include "bb-records.h"

G_BEGIN_DECLS

#define BB_STORE_ERROR (bb_store_error_quark ())

/**
 * BbStoreError:
 * @BB_STORE_ERROR_NOT_A_BOOK: the file is something else
 * @BB_STORE_ERROR_NEWER: the book was made by a newer program
 * @BB_STORE_ERROR_DAMAGED: the book is damaged, or a seal does not fit
 * @BB_STORE_ERROR_BUSY: another program holds the book
 * @BB_STORE_ERROR_IO: the disk refused: full, read-only, unreadable
 * @BB_STORE_ERROR_NOT_FOUND: there is no such record
 * @BB_STORE_ERROR_REFUSED: a rule of the book forbids the change
 * @BB_STORE_ERROR_EXISTS: the code is taken, or the file exists
 * @BB_STORE_ERROR_UNPROVEN: a proof lacks its signature, or the specimens that it needs
 * @BB_STORE_ERROR_DISPROVED: a specimen of a revision that counts as proven fails; the book deals with that itself
 * @BB_STORE_ERROR_UNFOUNDED: a proof rests on what would be gone; the book deals with that itself
 * @BB_STORE_ERROR_READ_ONLY: the book can only be read, where it is
 *
 * What the book refuses or can't do.
 */
typedef enum {
  BB_STORE_ERROR_NOT_A_BOOK = 1,
  BB_STORE_ERROR_NEWER,
  BB_STORE_ERROR_DAMAGED,
  BB_STORE_ERROR_BUSY,
  BB_STORE_ERROR_IO,
  BB_STORE_ERROR_NOT_FOUND,
  BB_STORE_ERROR_REFUSED,
  BB_STORE_ERROR_EXISTS,
  BB_STORE_ERROR_UNPROVEN,
  BB_STORE_ERROR_DISPROVED,
  BB_STORE_ERROR_UNFOUNDED,
  BB_STORE_ERROR_READ_ONLY,
} BbStoreError;

GQuark bb_store_error_quark (void);

/**
 * BbBook:
 *
 * One connection to the shop's book. It belongs to the thread that opened it. Every function that writes is one
 * transaction, unless it runs inside bb_book_in_transaction(); a failure leaves the book as it was.
 */
#define BB_TYPE_BOOK (bb_book_get_type ())
G_DECLARE_FINAL_TYPE (BbBook, bb_book, BB, BOOK, GObject)

/* Opening: bb-book.c, bb-book-create.c */
BbBook     *bb_book_create            (const char     *path,
                                       GError        **error);
BbBook     *bb_book_open              (const char     *path,
                                       GError        **error);
const char *bb_book_get_path          (BbBook         *self);
gboolean    bb_book_can_write         (BbBook         *self);
gint64      bb_book_get_person        (BbBook         *self);
void        bb_book_set_person        (BbBook         *self,
                                       gint64          person);
void        bb_book_set_importing     (BbBook         *self,
                                       gboolean        importing);
gboolean    bb_book_close             (BbBook         *self,
                                       GError        **error);

/**
 * BbBookFunc:
 * @book: the book, within a transaction
 * @data: what the caller gave
 * @error: return location for a #GError
 *
 * Returns: %TRUE to keep what was written; %FALSE with @error set to undo it
 */
typedef gboolean (*BbBookFunc) (BbBook  *book,
                                gpointer data,
                                GError **error);
gboolean    bb_book_in_transaction    (BbBook         *self,
                                       BbBookFunc      func,
                                       gpointer        data,
                                       GError        **error);
gboolean    bb_book_make              (const char     *path,
                                       BbBookFunc      fill,
                                       gpointer        data,
                                       GError        **error);

/* Any record: bb-book-load.c, bb-book-records.c */
gpointer    bb_book_load              (BbBook         *self,
                                       const BbTable  *table,
                                       gint64          id,
                                       GError        **error);
gpointer    bb_book_load_by_code      (BbBook         *self,
                                       const BbTable  *table,
                                       const char     *code,
                                       GError        **error);
GPtrArray  *bb_book_load_all          (BbBook         *self,
                                       const BbTable  *table,
                                       gboolean        with_withdrawn,
                                       GError        **error);
GPtrArray  *bb_book_load_referring    (BbBook         *self,
                                       const BbTable  *table,
                                       const BbTable  *target,
                                       gint64          id,
                                       GError        **error);
gint64      bb_book_count_referring   (BbBook         *self,
                                       const BbTable  *table,
                                       const BbTable  *target,
                                       gint64          id,
                                       GError        **error);
gboolean    bb_book_save              (BbBook         *self,
                                       const BbTable  *table,
                                       gpointer        record,
                                       GError        **error);
gboolean    bb_book_withdraw          (BbBook         *self,
                                       const BbTable  *table,
                                       gint64          id,
                                       GError        **error);
gboolean    bb_book_restore           (BbBook         *self,
                                       const BbTable  *table,
                                       gint64          id,
                                       GError        **error);

/* Recipes and their revisions: bb-book-recipes.c */
gboolean    bb_book_save_revision     (BbBook         *self,
                                       BbRevision     *revision,
                                       GError        **error);
int         bb_book_revision_is_used  (BbBook         *self,
                                       gint64          revision,
                                       GError        **error);
BbRevision *bb_book_load_current      (BbBook         *self,
                                       gint64          recipe,
                                       GError        **error);

/* Where a revision stands: bb-book-states.c */
BbStanding *bb_book_load_standing     (BbBook         *self,
                                       gint64          revision,
                                       GError        **error);
gboolean    bb_book_set_state         (BbBook         *self,
                                       gint64          revision,
                                       BbState         state,
                                       const char     *reason,
                                       GError        **error);
gboolean    bb_book_undo_withdrawal   (BbBook         *self,
                                       gint64          revision,
                                       GError        **error);

/* What a proof rests on, and the news that it is lost: bb-book-proof.c, bb-book-notices.c */
BbShop     *bb_book_load_shop         (BbBook         *self,
                                       GError        **error);
gboolean    bb_book_sign              (BbBook         *self,
                                       gint64          revision,
                                       gboolean        overrule,
                                       const char     *reason,
                                       GError        **error);
int         bb_book_find_signature    (BbBook         *self,
                                       gint64          revision,
                                       BbSignature   **signature,
                                       GError        **error);
GPtrArray  *bb_book_load_notices      (BbBook         *self,
                                       gboolean        with_seen,
                                       GError        **error);
GPtrArray  *bb_book_load_open_jobs    (BbBook         *self,
                                       gint64          revision,
                                       GError        **error);
char       *bb_book_describe_notice   (BbBook         *self,
                                       const BbNotice *notice,
                                       GError        **error);
gboolean    bb_book_see_notice        (BbBook         *self,
                                       gint64          id,
                                       GError        **error);

GArray     *bb_book_find_open_tests   (BbBook         *self,
                                       GError        **error);
GArray     *bb_book_find_machines     (BbBook         *self,
                                       const char     *today,
                                       GError        **error);

/* Finding, and what lists show: bb-book-search.c, bb-book-lines.c */

/**
 * BbWithdrawn:
 * @BB_WITHDRAWN_NONE: only what is in use
 * @BB_WITHDRAWN_TOO: what is withdrawn, and after it what is in use
 * @BB_WITHDRAWN_ONLY: only what is withdrawn
 *
 * Whether records that were taken out of use are wanted.
 */
typedef enum {
  BB_WITHDRAWN_NONE,
  BB_WITHDRAWN_TOO,
  BB_WITHDRAWN_ONLY,
} BbWithdrawn;

/**
 * BbQuery:
 * @text: (nullable): words, or their beginnings; nothing or no word for every record
 * @recipe: key of the recipe whose wash tests or jobs are wanted; 0 for those of any. Other records belong to none
 * @narrow: (nullable): what recipes and jobs are narrowed by; %NULL for other records
 * @colourways: (array length=n_colourways): keys of garments in a colour, one of which recipes are wanted for, or jobs
 *   print on
 * @n_colourways: how many; 0 for any garment
 * @among: (nullable) (element-type gint64): keys of the only records that are wanted, in the order in which they are;
 *   %NULL for any, newest first
 * @apart_from: (nullable) (element-type gint64): keys of records that are not wanted
 * @shades: with @colourways, a bit, 1 << #BbShade, for each shade that recipes for several colours may be for; 0 for
 *   any
 * @withdrawn: whether withdrawn records are wanted
 * @limit: how many at most; 0 for all
 *
 * What is looked for.
 */
typedef struct {
  const char *text;
  gint64 recipe;
  const BbNarrow *narrow;
  const gint64 *colourways;
  guint n_colourways;
  const GArray *among;
  const GArray *apart_from;
  guint shades;
  BbWithdrawn withdrawn;
  guint limit;
} BbQuery;

GArray     *bb_book_search            (BbBook         *self,
                                       const BbTable  *table,
                                       const BbQuery  *query,
                                       GError        **error);
gboolean    bb_book_count_withdrawn   (BbBook         *self,
                                       const BbTable  *table,
                                       guint          *n_withdrawn,
                                       GError        **error);
const BbTable *bb_book_get_line_table (const BbTable  *table);
GPtrArray  *bb_book_load_names        (BbBook         *self,
                                       const BbField  *field,
                                       GError        **error);
GPtrArray  *bb_book_load_lines        (BbBook         *self,
                                       const BbTable  *table,
                                       const gint64   *ids,
                                       guint           n_ids,
                                       GError        **error);

/* Half-typed forms: bb-book-forms.c */
gboolean    bb_book_keep_form         (BbBook         *self,
                                       const char     *key,
                                       const char     *json,
                                       GError        **error);
char       *bb_book_dup_form          (BbBook         *self,
                                       const char     *key,
                                       GError        **error);
gboolean    bb_book_drop_form         (BbBook         *self,
                                       const char     *key,
                                       GError        **error);

/* Health: bb-book-check.c */
GPtrArray  *bb_book_check             (BbBook         *self,
                                       GCancellable   *cancellable,
                                       GError        **error);

G_END_DECLS
