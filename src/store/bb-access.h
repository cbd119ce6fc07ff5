/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/**
 * BbAccess:
 * @BB_ACCESS_READ: sees the book as it was at the first read
 * @BB_ACCESS_WRITE: holds the book from the start, so that it can't fail half-way for want of it
 *
 * What a transaction is for, and what a connection is at most.
 */
typedef enum {
  BB_ACCESS_READ = 1,
  BB_ACCESS_WRITE,
} BbAccess;
