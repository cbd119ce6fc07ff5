/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbPage:
 *
 * One page of the window. It gets a session and nothing else, and knows no other page.
 */
#define BB_TYPE_PAGE (bb_page_get_type ())
G_DECLARE_DERIVABLE_TYPE (BbPage, bb_page, BB, PAGE, AdwBin)

/**
 * BbPageClass:
 * @start: called once, when the session is there; makes what the page shows
 * @refresh: the book or the units changed while the page is shown, or before it is shown again
 * @show_record: shows the record with a key
 * @show_for: shows what the page has for a record of another page
 * @focus: puts the keyboard where a person who comes to the page starts
 * @find: puts the keyboard where one searches on this page
 * @add: starts a new record
 * @edit: starts to edit the record that is shown
 */
struct _BbPageClass
{
  AdwBinClass parent_class;

  void (*start)       (BbPage *self);
  void (*refresh)     (BbPage *self);
  void (*show_record) (BbPage *self,
                       gint64  id);
  void (*show_for)    (BbPage        *self,
                       const BbTable *table,
                       gint64         id);
  void (*focus)       (BbPage *self);
  void (*find)        (BbPage *self);
  void (*add)         (BbPage *self);
  void (*edit)        (BbPage *self);
};

void       bb_page_set_session (BbPage    *self,
                                BbSession *session);
BbSession *bb_page_get_session (BbPage    *self);
void       bb_page_show_record (BbPage    *self,
                                gint64     id);
void       bb_page_show_for    (BbPage        *self,
                                const BbTable *table,
                                gint64         id);
void       bb_page_focus       (BbPage    *self);
gboolean   bb_page_find        (BbPage    *self);
void       bb_page_add         (BbPage    *self);
void       bb_page_edit        (BbPage    *self);

G_END_DECLS
