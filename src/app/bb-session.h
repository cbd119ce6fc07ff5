/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "bb-book.h"

G_BEGIN_DECLS

/**
 * BbReadFunc:
 * @book: the book
 * @data: what bb_session_read_async() was given
 * @error: return location for a #GError
 *
 * Reads the book.
 *
 * Returns: (transfer full) (nullable): what was read; %NULL with an error
 */
typedef gpointer (*BbReadFunc) (BbBook    *book,
                                gpointer   data,
                                GError   **error);

/**
 * BbSession:
 *
 * What every page works with: the open book, the units and the person. Pages know nothing of each other; they
 * ask the session to show a record, and hear from it when the book changed.
 */
#define BB_TYPE_SESSION (bb_session_get_type ())
G_DECLARE_FINAL_TYPE (BbSession, bb_session, BB, SESSION, GObject)

BbSession           *bb_session_new           (const char           *path,
                                               GSettings            *settings,
                                               GError              **error);
BbBook              *bb_session_get_book      (BbSession            *self);
GSettings           *bb_session_get_settings  (BbSession            *self);
const BbUnitContext *bb_session_get_units     (BbSession            *self);
BbUnitContext        bb_session_copy_units    (BbSession            *self);
void                 bb_session_set_box_area  (BbSession            *self,
                                               double                box_area_m2);
gint64               bb_session_get_person    (BbSession            *self);
void                 bb_session_set_person    (BbSession            *self,
                                               gint64                person);
void                 bb_session_close         (BbSession            *self);

/* Asking for things to be shown or said. */
void                 bb_session_show          (BbSession            *self,
                                               const char           *page,
                                               gint64                id);
void                 bb_session_show_for      (BbSession            *self,
                                               const char           *page,
                                               const BbTable        *table,
                                               gint64                id);
void                 bb_session_say           (BbSession            *self,
                                               const char           *text);
void                 bb_session_report        (BbSession            *self,
                                               const GError         *error);

/* Reading the book off the main loop. */
void                 bb_session_read_async    (BbSession            *self,
                                               BbReadFunc            func,
                                               gpointer              data,
                                               GDestroyNotify        free_data,
                                               GDestroyNotify        free_result,
                                               GCancellable         *cancellable,
                                               GAsyncReadyCallback   callback,
                                               gpointer              user_data);
gpointer             bb_session_read_finish   (BbSession            *self,
                                               GAsyncResult         *result,
                                               GError              **error);

/* Writing the book, off the main loop. */
void                 bb_session_write_async   (BbSession            *self,
                                               BbBookFunc            func,
                                               gpointer              data,
                                               GDestroyNotify        free_data,
                                               GAsyncReadyCallback   callback,
                                               gpointer              user_data);
gboolean             bb_session_write_finish  (BbSession            *self,
                                               GAsyncResult         *result,
                                               GError              **error);

void                 bb_session_write         (BbSession            *self,
                                               BbBookFunc            func,
                                               gpointer              data,
                                               GDestroyNotify        free_data);

/* What pages do alike. */
void                 bb_session_withdraw      (BbSession            *self,
                                               const BbTable        *table,
                                               gint64                id,
                                               const char           *name);
void                 bb_session_restore       (BbSession            *self,
                                               const BbTable        *table,
                                               gint64                id);
void                 bb_session_set_job_state (BbSession            *self,
                                               gint64                job,
                                               BbJobState            state);
void                 bb_session_keep_form     (BbSession            *self,
                                               const char           *key,
                                               const char           *state);
char                *bb_session_dup_form      (BbSession            *self,
                                               const char           *key);
void                 bb_session_put_aside     (BbSession            *self,
                                               const char           *key,
                                               const char           *name,
                                               const char           *state);
void                 bb_session_take_up       (BbSession            *self,
                                               const char           *key,
                                               const char           *state);
void                 bb_session_give_up       (BbSession            *self,
                                               const char           *key);
void                 bb_session_fill_in       (BbSession            *self,
                                               const BbTable        *table,
                                               gpointer              record);

G_END_DECLS
