/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "store-helpers.h"

G_BEGIN_DECLS

/* A book of its own for one test, with the shop's records and a job in it. */
typedef struct {
  BbBook *book;
  Shop *shop;
} Bench;

void bench_set_up    (Bench         *bench,
                      gconstpointer  data);
void bench_tear_down (Bench         *bench,
                      gconstpointer  data);

#define BENCH_ADD(path, function) g_test_add (path, Bench, NULL, bench_set_up, function, bench_tear_down)

G_END_DECLS
