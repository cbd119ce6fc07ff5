/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "bb-access.h"

G_BEGIN_DECLS

/*
 * The thin layer over the database. Nothing above it knows which database it is: statements stay in the part of SQL
 * that PostgreSQL shares, parameters are written ?1, ?2, …, and columns count from 0.
 */

/**
 * BbStep:
 * @BB_STEP_ERROR: the statement failed
 * @BB_STEP_DONE: there is no further row
 * @BB_STEP_ROW: there is a row to read
 *
 * What a step of a statement came to. No row and an error are different things.
 */
typedef enum {
  BB_STEP_ERROR = 1,
  BB_STEP_DONE,
  BB_STEP_ROW,
} BbStep;

typedef struct _BbDb BbDb;
typedef struct _BbStatement BbStatement;

BbDb        *bb_db_open                  (const char   *path,
                                          BbAccess      access,
                                          GError      **error);
BbDb        *bb_db_open_memory           (GError      **error);
gboolean     bb_db_settle                (BbDb         *self,
                                          GError      **error);
gboolean     bb_db_close                 (BbDb         *self,
                                          gboolean      untouched,
                                          GError      **error);
void         bb_db_set_patience          (BbDb         *self,
                                          guint         milliseconds);
void         bb_db_set_cancellable       (BbDb         *self,
                                          GCancellable *cancellable);

/* Transactions nest: within one, a further one can fail alone. */
gboolean     bb_db_begin                 (BbDb         *self,
                                          BbAccess      access,
                                          GError      **error);
gboolean     bb_db_commit                (BbDb         *self,
                                          GError      **error);
void         bb_db_rollback              (BbDb         *self);
guint        bb_db_get_depth             (BbDb         *self);

gboolean     bb_db_run_script            (BbDb         *self,
                                          const char   *sql,
                                          GError      **error);
gboolean     bb_db_query_integer         (BbDb         *self,
                                          const char   *sql,
                                          gint64       *value,
                                          GError      **error);

/* Statements are prepared once, and lent: release puts one back, without its parameters. */
BbStatement *bb_db_prepare               (BbDb         *self,
                                          const char   *sql,
                                          GError      **error);
void         bb_statement_release        (BbStatement  *self);
void         bb_statement_rewind         (BbStatement  *self);
void         bb_statement_bind_null      (BbStatement  *self,
                                          int           index);
void         bb_statement_bind_integer   (BbStatement  *self,
                                          int           index,
                                          gint64        value);
void         bb_statement_bind_number    (BbStatement  *self,
                                          int           index,
                                          double        value);
void         bb_statement_bind_text      (BbStatement  *self,
                                          int           index,
                                          const char   *value);
void         bb_statement_bind_bytes     (BbStatement  *self,
                                          int           index,
                                          GBytes       *value);
BbStep       bb_statement_step           (BbStatement  *self,
                                          GError      **error);
gboolean     bb_statement_run            (BbStatement  *self,
                                          GError      **error);
gboolean     bb_statement_is_null        (BbStatement  *self,
                                          int           column);
gint64       bb_statement_get_integer    (BbStatement  *self,
                                          int           column);
double       bb_statement_get_number     (BbStatement  *self,
                                          int           column);
const char  *bb_statement_get_text       (BbStatement  *self,
                                          int           column);
GBytes      *bb_statement_dup_bytes      (BbStatement  *self,
                                          int           column);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbStatement, bb_statement_release)

G_END_DECLS
