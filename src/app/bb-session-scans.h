/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-scan.h"
#include "bb-session.h"

G_BEGIN_DECLS

void    bb_session_load_content_async  (BbSession            *self,
                                        gint64                picture,
                                        GCancellable         *cancellable,
                                        GAsyncReadyCallback   callback,
                                        gpointer              data);
GBytes *bb_session_load_content_finish (BbSession            *self,
                                        GAsyncResult         *result,
                                        GError              **error);
void    bb_session_save_scan_async     (BbSession            *self,
                                        const BbScan         *scan,
                                        const BbPicture      *picture,
                                        GBytes               *content,
                                        GAsyncReadyCallback   callback,
                                        gpointer              data);
BbScan *bb_session_save_scan_finish    (BbSession            *self,
                                        GAsyncResult         *result,
                                        GError              **error);
void    bb_session_keep_grade          (BbSession            *self,
                                        gint64                reading,
                                        BbSubject             subject,
                                        int                   grade);

G_END_DECLS
