/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-compat.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbSave:
 * @file: the file that was named
 * @replace: whether it was there when it was named: who named it was asked then, and agreed to replace it
 * @for_owner: whether nobody but its owner may read it
 *
 * What a person saves in a file of their choice. The file is written beside itself first, so that it is there whole, or
 * what was there before is as it was. What nobody agreed to replace is not replaced.
 */
typedef struct {
  GFile *file;
  gboolean replace;
  gboolean for_owner;
} BbSave;

/**
 * BbSaveMake:
 * @data: the data given with the function
 * @error: return location for a #GError
 *
 * Makes what the file shall hold, on a thread of its own.
 *
 * Returns: (transfer full) (nullable): its bytes; %NULL with an error
 */
typedef GBytes *(*BbSaveMake) (gpointer  data,
                               GError  **error);

void      bb_save_ask        (GtkWidget           *widget,
                              const char          *title,
                              const char          *name,
                              BbCompatFileFunc     func,
                              gpointer             data,
                              GDestroyNotify       free_data);
BbSave   *bb_save_new        (GFile               *file,
                              gboolean             for_owner);
void      bb_save_free       (BbSave              *self);
gboolean  bb_save_write      (const BbSave        *self,
                              GBytes              *bytes,
                              GCancellable        *cancellable,
                              GError             **error);
char     *bb_save_describe   (const BbSave        *self,
                              const GError        *error);
void      bb_save_run_async  (BbSave              *self,
                              BbSaveMake           make,
                              gpointer             data,
                              GDestroyNotify       free_data,
                              GAsyncReadyCallback  callback,
                              gpointer             user_data);
char     *bb_save_run_finish (GAsyncResult        *result);
void      bb_save_run        (BbSave              *self,
                              BbSaveMake           make,
                              gpointer             data,
                              GDestroyNotify       free_data,
                              BbSession           *session);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbSave, bb_save_free)

G_END_DECLS
