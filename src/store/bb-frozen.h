/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * BbFrozen:
 *
 * What a file was like that nobody is expected to change.
 */
typedef struct _BbFrozen BbFrozen;

gboolean  bb_file_can_be_written (const char      *path);
BbFrozen *bb_frozen_new          (const char      *path);
void      bb_frozen_free         (BbFrozen        *self);
char     *bb_frozen_dup_address  (const BbFrozen  *self);
gboolean  bb_frozen_holds        (const BbFrozen  *self,
                                  GError         **error);

G_END_DECLS
