/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-db.h"
#include "bb-field.h"
#include "bb-statements.h"

G_BEGIN_DECLS

guint    bb_record_bind        (const BbTable *table,
                                gconstpointer  record,
                                BbColumns      scope,
                                BbStatement   *statement);
gboolean bb_record_read        (const BbTable *table,
                                gpointer       record,
                                BbStatement   *statement,
                                GError       **error);
gboolean bb_table_has_lists    (const BbTable *table);
gboolean bb_record_read_lists  (const BbTable *table,
                                gpointer       record,
                                BbDb          *db,
                                GError       **error);
gboolean bb_record_write_lists (const BbTable *table,
                               gconstpointer  record,
                               gint64         id,
                               BbDb          *db,
                               GError       **error);
gboolean bb_record_check_kinds (const BbTable *table,
                               gconstpointer  record,
                               BbDb          *db,
                               GError       **error);

G_END_DECLS
