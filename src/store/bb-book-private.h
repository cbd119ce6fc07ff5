/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-db.h"
#include "bb-searches.h"

G_BEGIN_DECLS

/* Common practice, no source: a few lines of a window, whatever a damaged file makes SQLite say. */
#define LONGEST_FINDING 200

/* Which file a path leads to. */
typedef struct {
  guint64 device;
  guint64 number;
} BbFile;

/*
 * @file: the file that was found to be sound
 * @access: what may be done with the book
 * @thread: the thread that may use the book
 * @person: who writes; 0 for nobody in particular
 * @importing: whether what is added was brought in from elsewhere
 * @stale: for each search, keys of the records whose words have to be written before the transaction ends
 * @words: words that are known to be noted for those that are mistyped
 */
struct _BbBook {
  GObject parent_instance;

  char *path;
  BbDb *db;
  BbFile file;
  BbAccess access;
  GThread *thread;
  gint64 person;
  gboolean importing;
  GHashTable *stale[BB_N_SEARCHES];
  GHashTable *words;
};

/* Public functions begin with this: a book is used by the thread that opened it, until it is closed. */
#define BB_BOOK_IS_USABLE(self) (BB_IS_BOOK (self) && (self)->db != NULL && (self)->thread == g_thread_self ())

BbBook    *_bb_book_new            (const char      *path,
                                    BbDb            *db,
                                    BbAccess         access);
BbBook    *_bb_book_open_for       (const char      *path,
                                    BbAccess         access,
                                    const BbFile    *sound,
                                    GError         **error);
gpointer   _bb_book_name_file      (const char      *path,
                                    GError         **error);
gboolean   _bb_book_set_errno      (GError         **error,
                                    int              number);
gboolean   _bb_book_begin          (BbBook          *self,
                                    GError         **error);
gboolean   _bb_book_end            (BbBook          *self,
                                    gboolean         keep,
                                    GError         **error);
void       _bb_book_name_cause     (BbBook          *self,
                                    const BbTable   *table,
                                    gconstpointer    record,
                                    GError         **error);
void       _bb_book_set_missing    (const BbTable   *table,
                                    gint64           id,
                                    GError         **error);
gboolean   _bb_book_add_event      (BbBook          *self,
                                    BbDeed           deed,
                                    const BbTable   *table,
                                    gconstpointer    record,
                                    GError         **error);
gpointer   _bb_book_load_where     (BbBook          *self,
                                    const BbTable   *table,
                                    const char      *rest,
                                    gint64           key,
                                    GError         **error);
GPtrArray *_bb_book_load_many      (BbBook          *self,
                                    const BbTable   *table,
                                    const char      *rest,
                                    gint64           key,
                                    GError         **error);
gboolean   _bb_book_write_record   (BbBook          *self,
                                    const BbTable   *table,
                                    gpointer         record,
                                    GError         **error);
gboolean   _bb_book_write_row      (BbBook          *self,
                                    const BbTable   *table,
                                    gpointer         record,
                                    BbDeed           deed,
                                    GError         **error);
gboolean   _bb_book_write_steps    (BbBook          *self,
                                    const BbTable   *table,
                                    gpointer         record,
                                    BbDeed           deed,
                                    GError         **error);
gboolean   _bb_book_validate       (BbBook          *self,
                                    const BbTable   *table,
                                    gconstpointer    record,
                                    GError         **error);
gboolean   _bb_book_save_within    (BbBook          *self,
                                    const BbTable   *table,
                                    gpointer         record,
                                    GError         **error);
gboolean   _bb_book_take_step      (BbBook          *self,
                                    BbStanding      *standing,
                                    BbState          state,
                                    const char      *reason,
                                    GError         **error);
gboolean   _bb_book_sign_within    (BbBook          *self,
                                    BbStanding      *standing,
                                    gboolean         overrule,
                                    const char      *reason,
                                    GError         **error);
gboolean   _bb_book_restore_proof  (BbBook          *self,
                                    BbStanding      *standing,
                                    GError         **error);
gboolean   _bb_book_give_up_proof  (BbBook          *self,
                                    const BbTable   *table,
                                    gpointer         record,
                                    GError         **error);
gboolean   _bb_book_fill_from_plan (BbBook          *self,
                                    BbWashTest      *test,
                                    GError         **error);
gboolean   _bb_record_check_seal   (const BbTable   *table,
                                    gconstpointer    record,
                                    GError         **error);
gboolean   _bb_book_complete       (BbBook          *self,
                                    const BbTable   *table,
                                    gpointer         record,
                                    GError         **error);
gboolean   _bb_book_rename_parts   (BbBook          *self,
                                    const BbTable   *table,
                                    gconstpointer    record,
                                    GError         **error);
gboolean   _bb_book_find_next_number (BbBook        *self,
                                    const BbTable   *table,
                                    gint64           owner,
                                    gint64          *number,
                                    GError         **error);
void       _bb_record_copy_derived (const BbTable   *table,
                                    gconstpointer    from,
                                    gpointer         to);
gboolean   _bb_book_find_state_before (BbBook       *self,
                                    const BbTable   *table,
                                    gint64           id,
                                    int              away,
                                    int             *state,
                                    GError         **error);
gboolean   _bb_book_keep_derived   (BbBook          *self,
                                    const BbTable   *table,
                                    gpointer         record,
                                    GError         **error);
GArray    *_bb_statement_collect_keys (BbStatement  *statement,
                                    GError         **error);
gboolean   _bb_book_mark_stale     (BbBook          *self,
                                    const BbTable   *table,
                                    gconstpointer    record,
                                    GError         **error);
gboolean   _bb_book_write_search   (BbBook          *self,
                                    GError         **error);

G_END_DECLS
