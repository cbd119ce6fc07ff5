/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

void    bb_picture_file_load_async  (GFile                *file,
                                     GCancellable         *cancellable,
                                     GAsyncReadyCallback   callback,
                                     gpointer              data);
GBytes *bb_picture_file_load_finish (GAsyncResult         *result,
                                     char                **name,
                                     GError              **error);

G_END_DECLS
