/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * A disk in memory, for SQLite, of which it is known what has reached the platter: a write counts once its file was
 * synced, and until then it may be kept, lost or torn. Its power can be cut, and each of its operations can fail.
 *
 * It stands in for the system's files once sim_disk_install() was called, for the whole program. One connection to a
 * file at a time: locks are always granted.
 */

/* What an operation that fails comes to. */
typedef enum {
  SIM_FAULT_NONE = 0,
  SIM_FAULT_IO,      /* the operation fails, and does nothing */
  SIM_FAULT_FULL,    /* as the first, but a write says that the disk is full; others go well */
  SIM_FAULT_SHORT,   /* a write writes its first half, and then the disk is full; others go well */
  SIM_FAULT_SYNC,    /* a sync fails, and what it should have kept is lost at a cut; others go well */
  SIM_FAULT_POWER,   /* the power is cut: this operation and all after it fail */
} SimFault;

void     sim_disk_install    (void);
void     sim_disk_remove     (void);

/* The files as they are; sim_disk_restore() puts them back, all of it kept. */
GBytes  *sim_disk_read       (const char *path);
void     sim_disk_restore    (const char *path,
                              GBytes     *contents);

/* From now on the operation @at (from 1; 0 for none) of those that can meet @fault fails, and all after it where
 * @for_ever; and how many there were since. */
void     sim_disk_set_fault  (SimFault    fault,
                              guint       at,
                              gboolean    for_ever);
guint    sim_disk_get_count  (void);

/* The power is gone and comes back: what was not synced is kept, lost or torn, as chance has it. */
void     sim_disk_cut_power  (GRand      *rand);

G_END_DECLS
