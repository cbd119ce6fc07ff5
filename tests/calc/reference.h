/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A file of tests/reference: comment lines that begin with #, one line of column names, rows; commas only in quotes. */
typedef struct _Reference Reference;

Reference  *reference_load       (const char      *name);
void        reference_free       (Reference       *self);
guint       reference_get_length (const Reference *self);
const char *reference_get_text   (const Reference *self,
                                  guint            row,
                                  const char      *column);
double      reference_get_number (const Reference *self,
                                  guint            row,
                                  const char      *column);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Reference, reference_free)

G_END_DECLS
