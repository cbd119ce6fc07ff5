/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

JsonNode *vectors_load         (const char *name);
void      vectors_enter_folder (void);

G_END_DECLS
