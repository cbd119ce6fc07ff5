/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-chart.h"

G_BEGIN_DECLS

void  bb_chart_save_async  (BbChart             *chart,
                            GFile               *file,
                            gboolean             as_pdf,
                            GAsyncReadyCallback  callback,
                            gpointer             data);
void  bb_chart_copy_async  (GtkWidget           *widget,
                            BbChart             *chart,
                            GAsyncReadyCallback  callback,
                            gpointer             data);
char *bb_chart_copy_finish (GAsyncResult        *result);

G_END_DECLS
