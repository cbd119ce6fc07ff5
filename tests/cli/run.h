/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

/* What the program answered. */
typedef struct {
  int status;
  char *out;
  char *err;
} Answer;

Answer *run_cli       (const char   *input,
                       gssize        length,
                       ...) G_GNUC_NULL_TERMINATED;
void    answer_free   (Answer       *self);
void    assert_refused (const Answer *answer,
                       int           status,
                       const char   *part);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Answer, answer_free)
