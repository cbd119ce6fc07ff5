/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * BbPageInfo:
 * @name: its name in the session
 * @title: what a person reads, to be translated
 * @icon_name: its icon
 * @group: the group it stands in, to be translated
 * @get_type: its type
 *
 * A page of the window.
 */
typedef struct {
  const char *name;
  const char *title;
  const char *icon_name;
  const char *group;
  GType (*get_type) (void);
} BbPageInfo;

/* The pages of the window, as a list in groups of which one is chosen. */

void              bb_page_list_fill     (GtkListBox     *list);
void              bb_page_list_select   (GtkListBox     *list,
                                         const char     *name);
const BbPageInfo *bb_page_list_get_info (GtkListBoxRow  *row);
void              bb_page_list_add_keys (GtkWidgetClass *klass,
                                         const char     *action);

G_END_DECLS
