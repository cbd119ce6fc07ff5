/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-form.h"

G_BEGIN_DECLS

/* For the form's own files. What no row shows is kept in the record that the form was loaded with. */
struct _BbForm
{
  GtkBox parent_instance;

  /* owned */
  BbSession *session;
  GPtrArray *rows;

  const BbTable *table;
  gpointer base;
};

G_END_DECLS
