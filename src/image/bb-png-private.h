/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <png.h>

#include "bb-png-source-private.h"
#include "bb-png.h"

G_BEGIN_DECLS

/*
 * libpng reports an error by longjmp(). Whatever changes while it works is therefore kept in this struct and not in a
 * variable of a function that calls setjmp(), of which C says that it is lost (C17 7.13.2.1), and those functions call
 * one other and do nothing else.
 */
struct _BbPng
{
  char *name;
  BbPngForm form;
  BbPngSource source;
  png_structp png;
  png_infop info;
  BbPngInfo known;
  guint8 table[256][4];
  guint8 *row;
  gboolean started;
  gboolean has_profile_chunk;
  gboolean out_of_memory;

  const BbImageWork *work;
  BbPngRowFunc func;
  gpointer data;
  guint64 n_done;

  GError *error;
  char warning[128];
};

gboolean _bb_png_make_decoder   (BbPng         *self);
void     _bb_png_set_limits     (BbPng         *self);
gboolean _bb_png_take_signature (BbPng         *self);
void     _bb_png_take_error     (BbPng         *self,
                                 BbImageError   code,
                                 const char    *message);
gboolean _bb_png_check_memory  (BbPng         *self);
void     _bb_png_note_info      (BbPng         *self);
void     _bb_png_ask_for_form   (BbPng         *self);

G_END_DECLS
