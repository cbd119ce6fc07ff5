/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

char *bb_document_name_page (const char *name,
                             guint       page,
                             guint       n_pages);

G_END_DECLS
