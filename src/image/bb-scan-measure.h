/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-png.h"
#include "bb-scan.h"

G_BEGIN_DECLS

gboolean bb_scan_measure        (BbScan               *scan,
                                 GBytes               *content,
                                 const char           *name,
                                 const BbImageWork    *work,
                                 GError              **error);
void     bb_scan_measure_async  (const BbScan         *scan,
                                 GBytes               *content,
                                 const char           *name,
                                 GCancellable         *cancellable,
                                 GAsyncReadyCallback   callback,
                                 gpointer              data);
BbScan  *bb_scan_measure_finish (GAsyncResult         *result,
                                 GError              **error);

G_END_DECLS
