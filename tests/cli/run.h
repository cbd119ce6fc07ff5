/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "bb-json.h"

/* What the program answered. */
typedef struct {
  int status;
  char *out;
  char *err;
} Answer;

Answer   *run_cli        (const char    *input,
                          gssize         length,
                          ...) G_GNUC_NULL_TERMINATED;
void      answer_free    (Answer        *self);
void      assert_refused (const Answer  *answer,
                          int            status,
                          const char    *part);
void      assert_told    (const Answer  *answer,
                          const char    *part);
JsonNode *parse          (const Answer  *answer);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Answer, answer_free)

/* Each test has a folder with a copy of the demo shop's book in it. */
typedef struct {
  char *folder;
  char *book;
} Fixture;

void      set_up         (Fixture       *self,
                          gconstpointer  data);
void      tear_down      (Fixture       *self,
                          gconstpointer  data);
