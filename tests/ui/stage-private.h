/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "stage.h"

G_BEGIN_DECLS

struct _Stage {
  char *folder;
  GStrv environment;

  GSubprocess *daemon;
  GDBusConnection *bus;
  GSubprocess *display;
  GSubprocess *registry;
  Glass *glass;

  GSubprocess *program;
  guint runs;
};

GSubprocess *_stage_spawn         (Stage              *self,
                                   const char * const *argv,
                                   const char         *log,
                                   int                 descriptor);
void         _stage_start_servers (Stage              *self,
                                   const char         *size);

G_END_DECLS
