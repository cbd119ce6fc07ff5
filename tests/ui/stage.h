/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "glass.h"

G_BEGIN_DECLS

/*
 * A place of its own for a program: a virtual display, a message bus that is the accessibility bus at the same time, a
 * home folder that outlives the program and not the stage. Nothing of the person's own desktop is read or changed, and
 * everything it started ends with it, also when a test ends in the middle.
 */
typedef struct _Stage Stage;

Stage           *stage_new          (const char         *size);
void             stage_free         (Stage              *self);
const char      *stage_get_folder   (Stage              *self);
char            *stage_build_path   (Stage              *self,
                                     const char         *name);
Glass          *stage_get_glass   (Stage              *self);
GDBusConnection *stage_get_bus      (Stage              *self);

void             stage_set_variable (Stage              *self,
                                     const char         *name,
                                     const char         *value);
void             stage_start        (Stage              *self,
                                     const char * const *argv);
gboolean         stage_is_running   (Stage              *self);
int              stage_wait_end     (Stage              *self);
char            *stage_dup_log      (Stage              *self);
int              stage_run          (Stage              *self,
                                     const char * const *argv,
                                     char              **output);
void             stage_fail         (Stage              *self,
                                     const char         *format,
                                     ...) G_GNUC_PRINTF (2, 3) G_GNUC_NORETURN;

/* How long anything may take before a test gives up; longer under the sanitizers and valgrind. */
double           stage_get_patience (void);
void             stage_pause        (guint               milliseconds);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Stage, stage_free)

G_END_DECLS
